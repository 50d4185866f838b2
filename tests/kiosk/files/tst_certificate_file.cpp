// SPDX-License-Identifier: GPL-3.0-or-later
// Certificates as files: read back as written; and each number, word and id in one changed, which must be no
// certificate any more (2), be refused by the check, or still be true by brute force.
#include <QTest>

#include <boost/json.hpp>

#include "kiosk/files/certificate_file.h"
#include "scheduler/rotation/solve.h"
#include "tests/support/brute_force.h"
#include "tests/support/regular.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

namespace {

constexpr CheckLimits some{.table = 20'000'000, .search = 100'000, .packing = 10'000};

std::optional<Certificate> certified(const ClassSpec& c, int slots) {
  Certificate out;
  PlanOptions options;
  options.certificate = &out;
  if (!std::holds_alternative<Plan>(plan(c, slots, options))) return std::nullopt;
  return out;
}

Certificate read_back(const ClassSpec& c, const std::string& json) {
  auto read = files::parse_certificate(json, "c.json", c);
  if (auto* error = std::get_if<files::FileError>(&read)) qFatal("%s", files::text_of(*error).c_str());
  return std::get<Certificate>(std::move(read));
}

/// Every number and text of a document, each to be changed and put back.
void each_leaf(boost::json::value& v, const std::function<void(boost::json::value&)>& change) {
  if (auto* object = v.if_object())
    for (auto& item : *object) each_leaf(item.value(), change);
  else if (auto* list = v.if_array())
    for (auto& item : *list) each_leaf(item, change);
  else
    change(v);
}

}  // namespace

class TestCertificateFile : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void is_read_back_as_written() {
    int read = 0;
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
      const tiny::Case t = tiny::make_case(seed, 3000);
      const auto made = certified(t.spec, t.slots);
      if (!made) continue;
      const std::string json = files::to_json(t.spec, *made);
      QVERIFY2(read_back(t.spec, json) == *made, json.c_str());
      ++read;
    }
    QVERIFY(read > 30);
  }

  void all_kinds_of_proof_are_read_back() {
    ClassSpec c = tiny::make_case(1, 3000).spec;
    c.equipment = {{"k", 2}};
    Certificate all;
    all.class_hash = class_hash(c);
    all.slots = 2;
    const std::size_t n = c.stations.size();
    Proof hall{ProofType::hall, {{0, {0}, {{0, {1, 2}}}, {{0, {2}}}, {{1, {0, 1}}}}}, {}, 0};
    Proof priced{ProofType::lagrange, {}, {}, 0};
    priced.prices.scale = 7;
    priced.prices.weights[Component::idle] = 7;
    priced.prices.weights[Component::missed] = 900;
    priced.prices.places.assign(n, {3, 0});
    priced.prices.units = {{1, 2}};
    priced.prices.memory.assign(n, {0});
    Proof packed = priced;
    packed.type = ProofType::packing;
    Proof ring{ProofType::ring, {}, {}, 0};
    ring.prices.weights[Component::walk_cm] = 1;
    all.claims = {{Component::missed, 3, hall},
                  {Component::uneven, 0, {}},
                  {Component::back_to_back, 1, {ProofType::majority, {}, {}, 0}},
                  {Component::idle, 2, priced},
                  {Component::assist_overlap, 2, packed},
                  {Component::walk_cm, 900, ring},
                  {Component::reload_hg, 1, {ProofType::search, {}, {}, 12}}};
    QVERIFY(read_back(c, files::to_json(c, all)) == all);
  }

  void one_field_changed_is_refused_or_still_true() {
    int changed = 0;
    int unreadable = 0;
    int refused = 0;
    const std::uint64_t first = tiny::first_seed();
    const int cases = tiny::cases_wanted(20);
    for (std::uint64_t seed = first; seed < first + static_cast<std::uint64_t>(cases); ++seed) {
      const tiny::Case t = tiny::make_case(seed, 1500);
      const auto made = certified(t.spec, t.slots);
      if (!made) continue;
      boost::json::value document = boost::json::parse(files::to_json(t.spec, *made));
      std::map<std::pair<Style, std::array<std::int64_t, component_count>>,
               std::array<std::int64_t, component_count>>
          known;
      const auto judge = [&] {
        ++changed;
        const auto read = files::parse_certificate(boost::json::serialize(document), "c.json", t.spec);
        const auto* all = std::get_if<Certificate>(&read);
        if (!all) {
          ++unreadable;
          return;
        }
        const CertificateVerdict v = check_certificate(t.spec, t.slots, *all, some);
        if (!v.holds()) ++refused;
        if (!v.mismatch.empty()) return;
        const auto [least, is_new] = known.try_emplace({all->style, all->cost.value});
        if (is_new)
          least->second =
              brute::least_after({.spec = t.spec, .slots = t.slots, .style = all->style}, all->cost);
        for (std::size_t i = 0; i < all->claims.size(); ++i)
          if (v.claims[i].verdict == Verdict::holds &&
              all->claims[i].bound > least->second[static_cast<std::size_t>(all->claims[i].component)])
            QFAIL(("seed " + std::to_string(seed) + ": " + boost::json::serialize(document)).c_str());
      };
      each_leaf(document, [&](boost::json::value& leaf) {
        const boost::json::value was = leaf;
        if (const auto* number = leaf.if_int64()) {
          for (const std::int64_t other :
               {*number + 1, *number - 1, *number * 10 + 7, std::int64_t{INT64_MAX}}) {
            leaf = other;
            judge();
          }
        } else if (const auto* text = leaf.if_string()) {
          const std::string word(*text);
          for (const std::string& other :
               {word + "x", std::string("A"), std::string("m1"), std::string("walk_cm"),
                std::string("member"), std::string("packing"), std::string("majority"),
                std::string("nothing"), std::string("ring"), std::string("free")}) {
            if (other == word) continue;
            leaf = boost::json::string(other);
            judge();
          }
        }
        leaf = was;
      });
    }
    qInfo("%d changed: %d no certificate, %d refused, %d still true", changed, unreadable, refused,
          changed - unreadable - refused);
    QVERIFY(unreadable > 100 && refused > 100);
  }

  /// Prices, weights and scale: the plan is proven to be the best, so no claim above its cost is true.
  void one_price_changed_is_refused_or_still_true() {
    struct Case {
      ClassSpec c;
      Style style;
      int slots;
      ProofType wanted;
    };
    int refused = 0;
    int still_true = 0;
    for (auto& [styled, style, slots, wanted] :
         {Case{floors::regular(6, 6, 1, 2), Style::free, 6, ProofType::lagrange},
          Case{floors::regular(6, 6, 1, 2), Style::ring, 6, ProofType::ring},
          Case{floors::regular(6, 5, 1, 2), Style::free, 7, ProofType::packing}}) {
      ClassSpec c = styled;
      c.style = style;
      const auto made = certified(c, slots);
      QVERIFY(made && check_certificate(c, slots, *made).holds());
      QVERIFY(std::any_of(made->claims.begin(), made->claims.end(),
                          [&](const Claim& claim) { return claim.proof.type == wanted; }));
      boost::json::value document = boost::json::parse(files::to_json(c, *made));
      each_leaf(document.as_object()["claims"], [&](boost::json::value& leaf) {
        const auto* number = leaf.if_int64();
        if (!number) return;
        const std::int64_t was = *number;
        for (const std::int64_t other : {was + 1, was - 1, was * 10 + 7, was / 2, std::int64_t{INT64_MAX}}) {
          leaf = other;
          const auto read = files::parse_certificate(boost::json::serialize(document), "c.json", c);
          const auto* all = std::get_if<Certificate>(&read);
          const CertificateVerdict v =
              all ? check_certificate(c, slots, *all, some) : CertificateVerdict{"none", {}};
          v.holds() ? ++still_true : ++refused;
          for (std::size_t i = 0; i < v.claims.size(); ++i)
            QVERIFY(v.claims[i].verdict != Verdict::holds ||
                    all->claims[i].bound <= all->cost[all->claims[i].component]);
        }
        leaf = was;
      });
    }
    qInfo("%d refused, %d still true", refused, still_true);
    QVERIFY(refused > 50);
  }

  void what_is_no_certificate_is_said() {
    const ClassSpec c = tiny::make_case(1, 3000).spec;
    const auto says = [&](const std::string& json) {
      const auto read = files::parse_certificate(json, "c.json", c);
      const auto* error = std::get_if<files::FileError>(&read);
      return error ? files::text_of(*error) : std::string("a certificate");
    };
    QVERIFY(says("nonsense").find("this is no JSON") != std::string::npos);
    QVERIFY(says("nonsense").find("--certificate FILE") != std::string::npos);
    QVERIFY(says("{}").find("has no format") != std::string::npos);
    QVERIFY(says(R"({"format": "floorwheel-rotation"})").find("a certificate says") != std::string::npos);
    QVERIFY(says(R"({"format": "floorwheel-certificate", "version": 2})").find("version 1") !=
            std::string::npos);
    QVERIFY(
        says(R"({"format": "floorwheel-certificate", "version": 1, "class_hash": "12"})").find("16 of 0-9") !=
        std::string::npos);
  }
};

QTEST_APPLESS_MAIN(TestCertificateFile)
#include "tst_certificate_file.moc"
