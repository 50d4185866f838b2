// SPDX-License-Identifier: GPL-3.0-or-later
// Packing against brute force: the planner's and the check's against every choice of rows, and claims of type
// `packing` against every rotation of tiny classes.
#include <QTest>

#include "scheduler/rotation/certificate_pack.h"
#include "scheduler/rotation/row_packing.h"
#include "scheduler/rotation/solve.h"
#include "tests/support/brute_force.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;

namespace {

constexpr CheckLimits some{.table = 20'000'000, .search = 200'000, .packing = 50'000};

}  // namespace

class TestPacking : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  /// Packing under prices that say little: what it accepts is true, by brute force, and under weights that
  /// leave the earlier components no choice it goes up to the truth wherever rule 5 is out of it.
  void packing_goes_up_to_the_truth_and_no_further() {
    int accepted = 0;
    int tight = 0;
    int above_prices = 0;
    const std::uint64_t first = tiny::first_seed();
    const int cases = tiny::cases_wanted(60);
    for (std::uint64_t seed = first; seed < first + static_cast<std::uint64_t>(cases); ++seed) {
      tiny::Case t = tiny::make_case(seed, tiny::most_wanted(4000));
      t.spec.laps = 1;
      t.spec.style = Style::free;
      Certificate all;
      PlanOptions options;
      options.certificate = &all;
      if (!std::holds_alternative<Plan>(plan(t.spec, t.slots, options))) continue;
      const auto least =
          brute::least_after({.spec = t.spec, .slots = all.slots, .style = all.style}, all.cost);
      tiny::Draw d(seed);
      for (const Component c : {Component::missed, Component::uneven, Component::back_to_back,
                                Component::idle, Component::assist_overlap, Component::walk_cm}) {
        const std::int64_t true_value = least[static_cast<std::size_t>(c)];
        if (true_value == brute::none) continue;
        Claim claim{c, 0, {ProofType::packing, {}, {}, 0}};
        PriceList& prices = claim.proof.prices;
        prices.scale = d.from(1, 3);
        for (Component earlier : components) {
          if (earlier == c) break;
          if (earlier != Component::moved && earlier != Component::short_rest)
            prices.weights[earlier] = d.one_in(4) ? d.below(50) : 20'000;
        }
        prices.weights[c] = prices.scale;
        for (std::size_t s = 0; s < t.spec.stations.size(); ++s) {
          prices.places.emplace_back();
          for (int slot = 0; slot < t.slots; ++slot)
            prices.places.back().push_back(d.one_in(2) ? 0 : d.below(400));
        }
        for (std::size_t e = 0; e < t.spec.equipment.size(); ++e)
          prices.units.emplace_back(static_cast<std::size_t>(t.slots), d.below(200));
        for (const std::int64_t bound : {true_value, true_value + 1, true_value + 1 + d.below(100)}) {
          claim.bound = bound;
          const ClaimVerdict v = check_claim(t.spec, all, claim, some);
          const std::string where = std::string(id_of(c)) + " >= " + std::to_string(bound) + ": " + v.text +
                                    ", seed " + std::to_string(seed) + "\n" + tiny::dump(t.spec, t.slots);
          QVERIFY2(v.verdict != Verdict::holds || bound <= true_value, where.c_str());
          if (v.verdict != Verdict::holds || bound == 0) continue;
          ++accepted;
          tight += bound == true_value ? 1 : 0;
          claim.proof.type = ProofType::lagrange;
          above_prices += check_claim(t.spec, all, claim, some).verdict == Verdict::holds ? 0 : 1;
          claim.proof.type = ProofType::packing;
        }
      }
    }
    qInfo("%d accepted, %d of them the truth, %d above what prices alone show", accepted, tight,
          above_prices);
    QVERIFY(tight > 10 && above_prices > 10);
  }

  /// Packing against every choice of rows there is, the planner's and the check's: one is found where there
  /// is one within the budget, and only there.
  void packing_finds_what_there_is() {
    int there = 0;
    int not_there = 0;
    int in_turn = 0;
    for (std::uint64_t seed = 1; seed <= 400; ++seed) {
      tiny::Draw d(seed);
      Packing p;
      certify::Choices choices(1'000'000);
      const int limits = d.from(2, 6);
      for (int l = 0; l < limits; ++l) {
        p.room.push_back(d.from(1, 2));
        p.price.push_back(d.below(4));
        choices.limit(p.room.back(), p.price.back());
      }
      for (int k = 0; k < 2; ++k) {
        p.count.push_back(d.from(1, 2));
        choices.kind(p.count.back());
        for (int r = d.from(1, 5); r > 0; --r) {
          PackRow row;
          row.kind = k;
          row.over = d.below(6);
          for (int l = 0; l < limits; ++l)
            if (d.one_in(3)) row.limits.push_back(l);
          choices.row(row.over, row.limits);
          p.rows.push_back(row);
        }
      }
      std::stable_sort(p.rows.begin(), p.rows.end(),
                       [](const PackRow& a, const PackRow& b) { return a.over < b.over; });
      p.budget = d.below(14);
      std::vector<int> room = p.room;
      std::vector<int> count = p.count;
      const std::function<bool(std::size_t, std::int64_t)> any = [&](std::size_t from, std::int64_t spent) {
        if (std::all_of(count.begin(), count.end(), [](int n) { return n == 0; })) {
          for (std::size_t l = 0; l < room.size(); ++l) spent += std::int64_t{room[l]} * p.price[l];
          return spent <= p.budget;
        }
        for (std::size_t r = from; r < p.rows.size(); ++r) {
          const PackRow& row = p.rows[r];
          int& left = count[static_cast<std::size_t>(row.kind)];
          if (left == 0) continue;
          --left;
          bool fits = true;
          for (int l : row.limits) fits = --room[static_cast<std::size_t>(l)] >= 0 && fits;
          const bool found = fits && any(r, spent + row.over);
          for (int l : row.limits) ++room[static_cast<std::size_t>(l)];
          ++left;
          if (found) return true;
        }
        return false;
      };
      const bool truth = any(0, 0);
      std::int64_t steps = 1'000'000;
      const std::vector<int> chosen = pack(p, steps);
      QVERIFY(steps > 0);
      if (p.count[0] ==
          1) {  // row by row of the first kind comes to the same, and says of which nothing comes
        p.first_kind = 0;
        std::vector<int> without;
        QVERIFY2(pack(p, steps, {}, &without).empty() == chosen.empty(), std::to_string(seed).c_str());
        for (int r : without) {
          --count[0];
          for (int l : p.rows[static_cast<std::size_t>(r)].limits) --room[static_cast<std::size_t>(l)];
          QVERIFY(!any(0, p.rows[static_cast<std::size_t>(r)].over));
          for (int l : p.rows[static_cast<std::size_t>(r)].limits) ++room[static_cast<std::size_t>(l)];
          ++count[0];
        }
        in_turn += without.empty() ? 0 : 1;
      }
      QVERIFY2(truth == !chosen.empty(), std::to_string(seed).c_str());
      QVERIFY2(choices.look(p.budget) == (truth ? certify::Choices::Is::there : certify::Choices::Is::none),
               std::to_string(seed).c_str());
      (truth ? there : not_there)++;
    }
    qInfo("%d there, %d not; in %d rows of the first kind were ruled out", there, not_there, in_turn);
    QVERIFY(there > 50 && not_there > 50 && in_turn > 20);
  }
};

QTEST_APPLESS_MAIN(TestPacking)
#include "tst_packing.moc"
