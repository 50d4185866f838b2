// SPDX-License-Identifier: GPL-3.0-or-later
// The assignment of one slot against every way there is to fill it, in classes without pairs and loads; and
// what it does to crowded classes.
#include <QTest>

#include "scheduler/rotation/slot_assignment.h"
#include "scheduler/rotation/weights.h"
#include "tests/support/floors.h"

using namespace floorwheel;

namespace {

constexpr int slots = 5;

/// More people than places, one kind of equipment; nobody in a pair, no loads.
ClassSpec crowded(std::uint64_t seed, int members, int stations) {
  ClassSpec c = floors::hall(seed, members, stations, slots);
  c.pairs.clear();
  for (MemberSpec& m : c.members) m.loads_hg.clear();
  for (StationSpec& s : c.stations) s.capacity = 1;
  return c;
}

Sheet sheet_of(const Problem& p, const std::vector<Row>& rows) {
  Sheet sheet(p);
  for (int m = 0; m < p.members; ++m) sheet.set_row(m, rows[ix(m)].data());
  return sheet;
}

/// The least that the class weighs when slot t alone is filled in another way.
class EveryFilling {
 public:
  EveryFilling(const Problem& p, const std::vector<Row>& rows) : p_(p), sheet_(sheet_of(p, rows)) {}

  std::int64_t least(int t) {
    least_ = std::numeric_limits<std::int64_t>::max();
    before_.clear();
    for (int m = 0; m < p_.members; ++m) {
      before_.push_back(sheet_.at(m, t));
      sheet_.put(m, t, nowhere);
    }
    fill(0, t);
    for (int m = 0; m < p_.members; ++m) sheet_.put(m, t, before_[ix(m)]);
    return least_;
  }

 private:
  void fill(int m, int t) {
    if (m == p_.members) {
      least_ = std::min(least_, weighed(price(p_, sheet_)));
      return;
    }
    fill(m + 1, t);
    if (!p_.present(m, t)) return;
    for (int s = 0; s < p_.stations; ++s) {
      if (!p_.work(m, s).required || sheet_.room(s, t) < 1) continue;
      sheet_.put(m, t, s);
      if (sheet_.laps_hold(m)) fill(m + 1, t);
      sheet_.put(m, t, nowhere);
    }
  }

  const Problem& p_;
  Sheet sheet_;
  std::vector<StationIndex> before_;
  std::int64_t least_ = 0;
};

/// A rotation that nothing has bettered yet.
Found poor(const Problem& p, std::uint64_t seed) {
  Task task;
  task.style = Style::free;
  task.seed = seed;
  task.effort = 1;
  return first(p, task).found;
}

}  // namespace

class TestSlotAssignment : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void no_slot_can_be_filled_better() {
    int bettered = 0;
    const int cases = tiny::cases_wanted(60);
    for (int seed = 1; seed <= cases; ++seed) {
      const ClassSpec c = crowded(static_cast<std::uint64_t>(seed), 5, 4);
      const auto made = make_problem(c, slots);
      if (std::holds_alternative<Refusal>(made)) continue;
      const Problem& p = std::get<Problem>(made);
      Found found = poor(p, 1);
      const Cost before = found.cost;
      Budget budget(1'000'000, {}, {});
      assign_slots(p, found, budget);
      const Sheet sheet = sheet_of(p, found.rows);
      const auto seeded = "seed " + std::to_string(seed);
      QVERIFY2(price(p, sheet) == found.cost && found.cost <= before, seeded.c_str());
      bettered += found.cost < before ? 1 : 0;
      EveryFilling every(p, found.rows);
      for (int t = 0; t < slots; ++t) QVERIFY2(every.least(t) == weighed(found.cost), seeded.c_str());
    }
    QVERIFY(bettered * 4 >= cases);
  }

  void those_in_pairs_stay() {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
      ClassSpec c = crowded(seed, 8, 5);
      c.pairs = {{"m0", "m1", PairRule::apart}, {"m2", "m3", PairRule::apart}};
      const auto made = make_problem(c, slots);
      if (std::holds_alternative<Refusal>(made)) continue;
      const Problem& p = std::get<Problem>(made);
      Found found = poor(p, seed);
      const auto before = found.rows;
      Budget budget(1'000'000, {}, {});
      assign_slots(p, found, budget);
      for (int m = 0; m < 4; ++m) QVERIFY(found.rows[ix(m)] == before[ix(m)]);
      const Sheet sheet = sheet_of(p, found.rows);
      for (int m = 0; m < p.members; ++m) QVERIFY(sheet.pairs_hold(m) && sheet.laps_hold(m));
    }
  }
};

QTEST_APPLESS_MAIN(TestSlotAssignment)
#include "tst_slot_assignment.moc"
