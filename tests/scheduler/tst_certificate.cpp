// SPDX-License-Identifier: GPL-3.0-or-later
// Certificates against brute force on tiny classes with every feature: what the planner certifies its check
// accepts, and no claim that the check accepts is above the truth, be it the planner's or one with a number
// changed. FLOORWHEEL_TINY_CASES, _SEED and _MOST as in tst_planner_truth.
#include <QTest>

#include "scheduler/rotation/certificate.h"
#include "scheduler/rotation/solve.h"
#include "tests/support/brute_force.h"
#include "tests/support/builders.h"
#include "tests/support/floors.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

namespace {

const double most = tiny::most_wanted(8000);
constexpr CheckLimits some{.table = 20'000'000, .search = 200'000, .packing = 50'000};

struct Certified {
  Plan plan;
  Certificate certificate;
};

std::optional<Certified> certified(const ClassSpec& c, int slots) {
  Certified out;
  PlanOptions options;
  options.certificate = &out.certificate;
  auto answer = plan(c, slots, options);
  if (!std::holds_alternative<Plan>(answer)) return std::nullopt;
  out.plan = std::get<Plan>(answer);
  return out;
}

std::string shown(const Claim& claim, const ClaimVerdict& v) {
  return std::string(id_of(claim.component)) + " >= " + std::to_string(claim.bound) + " by " +
         std::string(id_of(claim.proof.type)) + ": " + v.text;
}

/// The least of each component where the earlier ones equal `cost`; `none` where no rotation has such a cost.
std::array<std::int64_t, component_count> truth(const ClassSpec& c, const Certificate& all) {
  return brute::least_after({.spec = c, .slots = all.slots, .style = all.style}, all.cost);
}

/// Whether what the check accepts is true.
std::string untrue(const ClassSpec& c, const Certificate& all) {
  const CertificateVerdict v = check_certificate(c, all.slots, all, some);
  if (!v.mismatch.empty()) return {};
  const auto least = truth(c, all);
  for (std::size_t i = 0; i < all.claims.size(); ++i) {
    const Claim& claim = all.claims[i];
    if (v.claims[i].verdict == Verdict::holds &&
        claim.bound > least[static_cast<std::size_t>(claim.component)])
      return shown(claim, v.claims[i]) + ", but " +
             std::to_string(least[static_cast<std::size_t>(claim.component)]) + " is possible";
  }
  return {};
}

}  // namespace

class TestCertificate : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void what_is_certified_is_accepted_and_true() {
    std::map<std::string, int> by;
    const std::uint64_t first = tiny::first_seed();
    const int cases = tiny::cases_wanted(60);
    for (std::uint64_t seed = first; seed < first + static_cast<std::uint64_t>(cases); ++seed) {
      const tiny::Case t = tiny::make_case(seed, most);
      const auto made = certified(t.spec, t.slots);
      if (!made) continue;
      const Certificate& all = made->certificate;
      QCOMPARE(all.slots, t.slots);
      QCOMPARE(all.style, made->plan.rotation.style);
      QCOMPARE(all.cost, made->plan.cost);
      QCOMPARE(all.claims.size(), components.size() - 1);
      const CertificateVerdict v = check_certificate(t.spec, t.slots, all);
      const std::string where = "seed " + std::to_string(seed) + "\n" + tiny::dump(t.spec, t.slots);
      QCOMPARE(v.mismatch, std::string());
      for (std::size_t i = 0; i < all.claims.size(); ++i) {
        QCOMPARE(all.claims[i].bound, made->plan.bound[all.claims[i].component]);
        // Brute force is no more than the check's own limit away: all is looked at again.
        QVERIFY2(v.claims[i].verdict == Verdict::holds,
                 (shown(all.claims[i], v.claims[i]) + "\n" + where).c_str());
        ++by[std::string(id_of(all.claims[i].proof.type))];
      }
      QVERIFY2(untrue(t.spec, all).empty(), (untrue(t.spec, all) + "\n" + where).c_str());
    }
    for (const auto& [type, count] : by) qInfo("%s: %d", type.c_str(), count);
    QVERIFY(by["hall"] > 0 && by["member"] + by["majority"] > 0 && by["search"] > 0);
  }

  /// A claim raised by one is refused wherever it was the best possible.
  void a_bound_too_high_is_refused() {
    int refused = 0;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
      const tiny::Case t = tiny::make_case(seed, most);
      auto made = certified(t.spec, t.slots);
      if (!made) continue;
      const auto least = truth(t.spec, made->certificate);
      for (Claim& claim : made->certificate.claims) {
        const std::int64_t true_value = least[static_cast<std::size_t>(claim.component)];
        if (claim.bound != true_value) continue;
        ++claim.bound;
        const ClaimVerdict v = check_claim(t.spec, made->certificate, claim, some);
        QVERIFY2(v.verdict != Verdict::holds, shown(claim, v).c_str());
        ++refused;
        --claim.bound;
      }
    }
    QVERIFY(refused > 100);
  }

  /// The rule: nothing is called proven but what the check accepted; on halls with every feature too, where
  /// rule 5 is part of the count, and where no table is small enough.
  void what_is_proven_was_accepted() {
    int proven = 0;
    int together = 0;
    const auto judge = [&](const ClassSpec& c, int slots) {
      const auto made = certified(c, slots);
      QVERIFY(made);
      for (int i = 0; i < static_cast<int>(made->certificate.claims.size()); ++i) {
        const Claim& claim = made->certificate.claims[static_cast<std::size_t>(i)];
        const ClaimVerdict v = check_claim(c, made->certificate, claim);
        QVERIFY2(v.verdict == Verdict::holds, shown(claim, v).c_str());
        if (i < made->plan.proven) {
          QCOMPARE(claim.bound, made->plan.cost[claim.component]);
          ++proven;
        }
        for (const HallPart& part : claim.proof.hall) together += static_cast<int>(part.together.size());
      }
    };
    for (std::uint64_t seed : {15U, 81U}) judge(floors::hall_like(seed), 14);
    for (std::uint64_t seed = 1; seed <= 12; ++seed) judge(floors::hall(seed, 8, 5, 6), 6);
    judge(floors::plain(12, 24, 1, 1), 24);
    QVERIFY(proven > 30);
    QVERIFY(together > 0);
  }

  /// One place at A: of two held together one goes there alone, and the other never. A pair that is none, a
  /// station or a member that does not exist says nothing.
  void a_pair_counts_only_where_it_is_one() {
    ClassSpec c = floors::plain(3, 2, 1, 1);
    for (StationSpec& s : c.stations) s.capacity = 2;
    c.stations[0].capacity = 1;
    c.pairs.push_back({c.members[0].id, c.members[1].id, PairRule::together});
    c.style = Style::free;
    const auto made = certified(c, 4);
    QVERIFY(made);
    QCOMPARE(made->plan.cost[Component::missed], 1);
    Claim claim = made->certificate.claims.front();
    QCOMPARE(claim.proof.type, ProofType::hall);
    QCOMPARE(claim.proof.hall.front().together.size(), std::size_t{1});
    const auto verdict = [&] { return check_claim(c, made->certificate, claim, some).verdict; };
    QCOMPARE(verdict(), Verdict::holds);
    HallPart::Together& pair = claim.proof.hall.front().together.front();
    const HallPart::Together was = pair;
    for (const HallPart::Together& other : std::vector<HallPart::Together>{
             {1, {0, 1}}, {0, {0, 2}}, {0, {0, 0}}, {0, {0}}, {0, {0, 1, 2}}, {2, {0, 1}}, {0, {-1, 1}}}) {
      pair = other;
      QCOMPARE(verdict(), Verdict::fails);
    }
    pair = was;
    c.pairs.front().rule = PairRule::apart;
    QCOMPARE(verdict(), Verdict::fails);
    c.pairs.front().rule = PairRule::together;
    c.members[1].present.first = 3;  // the first of them may go before, the second after
    c.members[0].present.last = 3;
    QCOMPARE(verdict(), Verdict::fails);
  }

  /// Prices of any kind never prove too much: random ones, on random classes.
  void prices_by_chance_prove_nothing_untrue() {
    int said_something = 0;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
      const tiny::Case t = tiny::make_case(seed, most);
      auto made = certified(t.spec, t.slots);
      if (!made) continue;
      Certificate& all = made->certificate;
      const auto least = truth(t.spec, all);
      tiny::Draw d(seed);
      for (std::size_t i = 0; i < all.claims.size(); ++i)
        for (int again = 0; again < 3; ++again) {
          Claim claim = all.claims[i];
          claim.proof = {ProofType::lagrange, {}, {}, 0};
          PriceList& prices = claim.proof.prices;
          prices.scale = d.from(1, 9);
          for (Component c : components) {
            if (c == claim.component) break;
            if (c == Component::moved) continue;
            prices.weights[c] = d.below(60) * (d.one_in(2) ? 20 : 1);
          }
          prices.weights[claim.component] = prices.scale;
          for (std::size_t s = 0; s < t.spec.stations.size(); ++s) {
            prices.places.emplace_back();
            for (int slot = 0; slot < t.slots; ++slot)
              prices.places.back().push_back(d.one_in(2) ? 0 : d.below(20));
          }
          for (std::size_t e = 0; e < t.spec.equipment.size(); ++e)
            prices.units.emplace_back(static_cast<std::size_t>(t.slots), d.below(6));
          if (prices.units.empty()) prices.units.clear();
          if (d.one_in(3)) {
            prices.memory.resize(t.spec.stations.size());
            for (auto& list : prices.memory)
              for (std::size_t s = 0; s < t.spec.stations.size(); ++s)
                if (d.one_in(2)) list.push_back(static_cast<int>(s));
          }
          const std::int64_t true_value = least[static_cast<std::size_t>(claim.component)];
          if (true_value == brute::none) continue;
          claim.bound = 1;  // the largest that is accepted
          while (check_claim(t.spec, all, claim, some).verdict == Verdict::holds) {
            QVERIFY2(claim.bound <= true_value,
                     qPrintable(QString("seed %1, %2 claimed %3, true %4")
                                    .arg(seed)
                                    .arg(QString::fromStdString(std::string(id_of(claim.component))))
                                    .arg(claim.bound)
                                    .arg(true_value)));
            ++said_something;
            claim.bound = claim.component == Component::walk_cm ? claim.bound * 5 / 4 + 1 : claim.bound + 1;
          }
        }
    }
    QVERIFY(said_something > 50);
  }

  /// Every field of the class that rules or cost depend on is in the hash; names are not.
  void the_hash_tells_classes_apart() {
    const ClassSpec c = floors::hall_like(1);
    std::set<std::uint64_t> hashes{class_hash(c)};
    const auto differs = [&](auto change) {
      ClassSpec other = c;
      change(other);
      return hashes.insert(class_hash(other)).second;
    };
    QVERIFY(differs([](ClassSpec& o) { ++o.laps; }));
    QVERIFY(differs([](ClassSpec& o) { ++o.work_s; }));
    QVERIFY(differs([](ClassSpec& o) { ++o.change_s; }));
    QVERIFY(differs([](ClassSpec& o) { ++o.recovery_s[1]; }));
    QVERIFY(differs([](ClassSpec& o) { o.breaks.push_back({3, 30}); }));
    QVERIFY(differs([](ClassSpec& o) { ++o.equipment[0].units; }));
    QVERIFY(differs([](ClassSpec& o) { ++o.stations[3].capacity; }));
    QVERIFY(differs([](ClassSpec& o) { ++o.stations[3].x_cm; }));
    QVERIFY(differs([](ClassSpec& o) { ++o.stations[3].y_cm; }));
    QVERIFY(differs([](ClassSpec& o) { o.stations[3].closed.push_back({2, 2}); }));
    QVERIFY(differs([](ClassSpec& o) {
      o.stations[3].equipment.clear();
      o.stations[1].equipment.clear();
    }));
    QVERIFY(differs([](ClassSpec& o) { o.stations[2].substitutes.push_back("do-S1"); }));
    QVERIFY(differs([](ClassSpec& o) { ++o.members[4].present.first; }));
    QVERIFY(differs([](ClassSpec& o) { o.members[4].present.last = 9; }));
    QVERIFY(differs([](ClassSpec& o) {
      o.members[4].level = o.members[4].level == Level::novice ? Level::advanced : Level::novice;
    }));
    QVERIFY(differs([](ClassSpec& o) { o.members[4].required = {{"S1"}}; }));
    QVERIFY(differs([](ClassSpec& o) { o.members[4].required = std::vector<std::string>{}; }));
    QVERIFY(differs([](ClassSpec& o) { o.members[9].loads_hg["S1"] += 1; }));
    QVERIFY(differs([](ClassSpec& o) { o.members[9].excluded_groups.insert(Group::neck); }));
    QVERIFY(differs([](ClassSpec& o) { o.members[9].excluded_features.insert(Feature::jump); }));
    QVERIFY(differs([](ClassSpec& o) { o.members[9].excluded_exercises.push_back("do-S1"); }));
    QVERIFY(differs([](ClassSpec& o) { o.members[9].allowed_exercises.push_back("do-S1"); }));
    QVERIFY(differs([](ClassSpec& o) { o.pairs.pop_back(); }));
    QVERIFY(differs([](ClassSpec& o) { o.exercises["do-S1"].primary.insert(Group::neck); }));
    QVERIFY(differs([](ClassSpec& o) { o.exercises["do-S1"].assisting.insert(Group::neck); }));
    QVERIFY(differs([](ClassSpec& o) { o.exercises["do-S1"].features.insert(Feature::jump); }));
    QVERIFY(differs([](ClassSpec& o) { o.members.pop_back(); }));
    QVERIFY(!differs([](ClassSpec& o) {
      o.name = "another";
      o.members[0].shown_as = "X";
      o.cool_down_s = 5;
    }));
  }

  void another_class_or_length_is_refused() {
    const ClassSpec c = floors::plain(4, 4, 1, 3);
    const auto made = certified(c, 5);
    QVERIFY(made);
    QVERIFY(check_certificate(c, 5, made->certificate).holds());
    QVERIFY(!check_certificate(c, 6, made->certificate).holds());
    QVERIFY(!check_certificate(floors::plain(4, 4, 1, 4), 5, made->certificate).holds());
  }
};

QTEST_APPLESS_MAIN(TestCertificate)
#include "tst_certificate.moc"
