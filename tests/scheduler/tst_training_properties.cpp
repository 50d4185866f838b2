// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold of the training rules for any input. RapidCheck draws and shrinks the cases; it prints the
// seed of a failure, FLOORWHEEL_SEED=N repeats it, FLOORWHEEL_LONG=1 takes a hundred times the cases.
#include <rapidcheck.h>
#include <QTest>

#include <algorithm>
#include <map>
#include <set>

#include "scheduler/training/barbell.h"
#include "scheduler/training/dose.h"
#include "scheduler/training/next_load.h"
#include "scheduler/training/strength.h"

using namespace floorwheel;
using namespace floorwheel::training;

namespace {

int drawn(int low, int high) { return *rc::gen::inRange(low, high + 1); }

/// A floor of one to six loads on a grid that makes small and big steps alike.
std::vector<Weight> any_floor() {
  std::set<int> quarters;  // of a kilogram
  const int n = drawn(1, 6);
  for (int i = 0; i < n; ++i) quarters.insert(drawn(0, 40) == 0 ? 0 : drawn(8, 60));
  std::vector<Weight> loads;
  for (int q : quarters) loads.push_back({Mass::grams(250 * q)});
  return loads;
}

/// Up to six dates, mostly with loads of the floor, repetitions about a range of 6 to 10.
std::vector<SetRecord> any_log(const std::vector<Weight>& floor) {
  std::vector<SetRecord> log;
  const int dates = drawn(0, 6);
  std::int32_t day = 20'000;
  Mass load = floor[static_cast<std::size_t>(drawn(0, static_cast<int>(floor.size()) - 1))].mass;
  for (int d = 0; d < dates; ++d) {
    day += drawn(0, 9) == 0 ? drawn(1, 70) : drawn(1, 4);
    if (drawn(0, 2) == 0) load = Mass::grams(250 * drawn(8, 60));
    const int sets = drawn(1, 4);
    for (int s = 0; s < sets; ++s) {
      SetRecord r;
      r.member = "m";
      r.exercise = "e";
      r.day = {day};
      r.instant_us = day * std::int64_t{86'400'000'000} + drawn(0, 3);
      const int kind = drawn(0, 9);
      r.kind = kind == 0 ? SetKind::warm_up : kind == 1 ? SetKind::practice : SetKind::working;
      r.load = drawn(0, 9) == 0 ? Mass::grams(250 * drawn(8, 60)) : load;
      r.reps = drawn(3, 18);
      if (drawn(0, 2) > 0) r.rir = drawn(0, 4);
      r.pain = drawn(0, 30) == 0;
      log.push_back(r);
    }
  }
  return log;
}

NextQuestion any_question(const std::vector<Weight>& floor, const std::vector<SetRecord>& log) {
  NextQuestion q;
  q.reps[0] = drawn(4, 8);
  q.reps[1] = q.reps[0] + drawn(0, 6);
  q.sets = drawn(1, 3);
  q.loads = floor;
  q.today = {(log.empty() ? 20'000 : log.back().day.number) + drawn(0, 9) * drawn(0, 8)};
  q.slow_to_rise = drawn(0, 3) == 0;
  return q;
}

bool same(const NextAnswer& a, const NextAnswer& b) {
  return a.load == b.load && a.reps == b.reps && a.change == b.change && a.rule == b.rule &&
         a.reason == b.reason && a.ask_instructor == b.ask_instructor;
}

Barbell any_barbell() {
  Barbell b{{Mass::kilograms(20)}, {Mass::grams(drawn(0, 1) * 2500)}, {}};
  const int kinds = drawn(0, 3);
  for (int k = 0; k < kinds; ++k) {
    const bool pounds = drawn(0, 2) == 0;
    const Mass each = pounds ? Mass{Mass::per_lb / 2 * drawn(1, 20)} : Mass::grams(1250 * drawn(1, 12));
    b.discs.push_back({{each, pounds ? MassUnit::lb : MassUnit::kg}, drawn(1, 7)});
  }
  return b;
}

using Hanging = std::vector<Mass>;  // one side, heaviest first

/// Every way to hang one side, by taking each pair of discs or not.
std::set<Hanging, std::greater<>> all_ways(const Barbell& b) {
  std::vector<Mass> pairs;
  std::map<Mass, int> count;
  for (const Discs& d : b.discs) count[d.each.mass] += d.count;
  for (const auto& [each, n] : count) pairs.insert(pairs.end(), static_cast<std::size_t>(n / 2), each);
  std::ranges::reverse(pairs);
  std::set<Hanging, std::greater<>> ways;
  for (unsigned chosen = 0; chosen < 1U << pairs.size(); ++chosen) {
    Hanging way;
    for (std::size_t i = 0; i < pairs.size(); ++i)
      if ((chosen >> i & 1U) != 0) way.push_back(pairs[i]);
    ways.insert(way);
  }
  return ways;
}

Mass load_of(const Barbell& b, const Hanging& way) {
  Mass load = b.empty();
  for (const Mass m : way) load = load + 2 * m;
  return load;
}

int changes(const Hanging& a, const Hanging& b) {
  std::size_t common = 0;
  while (common < a.size() && common < b.size() && a[common] == b[common]) ++common;
  return static_cast<int>(2 * (a.size() + b.size() - 2 * common));
}

}  // namespace

class TestTrainingProperties : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void never_a_load_the_floor_lacks_and_never_far_up() {
    QVERIFY(rc::check([] {
      const auto floor = any_floor();
      const auto log = any_log(floor);
      const NextQuestion q = any_question(floor, log);
      const NextAnswer a = next_load(log, q);
      RC_ASSERT(!a.load || std::ranges::find(floor, *a.load) != floor.end());
      RC_ASSERT(a.load || (a.change == Change::same && a.ask_instructor));
      RC_ASSERT(a.reason.size() > 10 && a.reason.find('.') != std::string::npos && a.reason.back() == '.');
      RC_ASSERT(a.reps[0] == q.reps[0] && a.reps[1] >= q.reps[1] && a.reps[1] <= q.reps[1] + 5);
      const Visits visits = visits_of(log, q.today);
      if (visits.worked.empty()) {
        RC_ASSERT(a.rule == NextRule::first);
        return;
      }
      const Mass last = visits.worked.back().load;
      RC_ASSERT((a.change == Change::up) == (a.load && a.load->mass > last));
      if (a.change == Change::down) RC_ASSERT(a.load->mass < last);
      if (a.change != Change::up) return;
      const auto above = std::ranges::find_if(floor, [&](const Weight& w) { return w.mass > last; });
      RC_ASSERT(a.load->mass == above->mass);  // always the single next load
      if (a.rule == NextRule::big_step) {
        RC_ASSERT(a.ask_instructor);
      } else {
        RC_ASSERT(a.rule == NextRule::top_of_range);
        RC_ASSERT(10 * a.load->mass <= 11 * last);
      }
      RC_ASSERT(!visits.pain_at_the_last);
    }));
  }

  void better_performance_never_lowers_the_answer() {
    QVERIFY(rc::check([] {
      const auto floor = any_floor();
      auto log = any_log(floor);
      RC_PRE(!log.empty());
      const NextQuestion q = any_question(floor, log);
      const NextAnswer before = next_load(log, q);
      const int times = drawn(1, 4);
      for (int i = 0; i < times; ++i) {
        SetRecord& r = log[static_cast<std::size_t>(drawn(0, static_cast<int>(log.size()) - 1))];
        r.reps += drawn(0, 4);
        if (r.rir) *r.rir += drawn(0, 2);
      }
      const NextAnswer after = next_load(log, q);
      const auto weight = [](const NextAnswer& a) { return a.load ? a.load->mass : Mass{-1}; };
      RC_ASSERT(weight(after) >= weight(before));
    }));
  }

  void same_input_same_answer_whatever_the_order_of_rows() {
    QVERIFY(rc::check([] {
      const auto floor = any_floor();
      const auto log = any_log(floor);
      const NextQuestion q = any_question(floor, log);
      const NextAnswer a = next_load(log, q);
      RC_ASSERT(same(a, next_load(log, q)));
      auto turned = log;
      for (std::size_t i = 1; i < turned.size(); ++i)
        std::swap(turned[i], turned[static_cast<std::size_t>(drawn(0, static_cast<int>(i)))]);
      RC_ASSERT(same(a, next_load(turned, q)));
    }));
  }

  void every_working_set_is_counted_once_for_each_primary_group() {
    QVERIFY(rc::check([] {
      ExerciseTable table;
      std::map<std::string, int> primaries;
      for (const char* id : {"a", "b"}) {
        Exercise e;
        e.id = id;
        for (int g = 0; g < group_count; ++g) {
          const int part = drawn(0, 8);
          if (part == 0) e.primary.insert(static_cast<Group>(g));
          if (part == 1) e.assisting.insert(static_cast<Group>(g));
          primaries[id] += part == 0 ? 1 : 0;
        }
        table.emplace(e.id, e);
      }
      auto log = any_log({{Mass::kilograms(5)}});
      int wanted = 0;
      for (SetRecord& r : log) {
        r.exercise = drawn(0, 1) == 0 ? "a" : "b";
        r.member = drawn(0, 1) == 0 ? "m" : "n";
        if (r.kind == SetKind::working) wanted += primaries[r.exercise];
      }
      int counted = 0;
      const int percent = drawn(0, 100);
      for (const DoseRow& row : dose(log, table, {.assisting_percent = percent})) {
        counted += row.primary_sets;
        RC_ASSERT(row.counted == 100 * row.primary_sets + percent * row.assisting_sets);
        RC_ASSERT(row.days <= std::min(row.primary_sets, 7) && (row.days == 0) == (row.primary_sets == 0));
      }
      RC_ASSERT(counted == wanted);
    }));
  }

  void nearest_loads_are_nearest() {
    QVERIFY(rc::check([] {
      const Barbell b = any_barbell();
      const Mass target =
          b.empty() + Mass{drawn(0, 120) * (Mass::per_lb / 2) + drawn(0, 90) * (Mass::per_kg / 4)};
      const auto near = nearest_hung(b, target);
      RC_ASSERT(near.has_value());
      Hanging shown;
      for (const Weight& w : near->below.per_side) shown.push_back(w.mass);
      RC_ASSERT(load_of(b, shown) == near->below.load);  // C041
      std::optional<Mass> below;
      std::optional<Mass> above;
      for (const Hanging& way : all_ways(b)) {
        const Mass load = load_of(b, way);
        if (load <= target && (!below || load > *below)) below = load;
        if (load >= target && (!above || load < *above)) above = load;
      }
      RC_ASSERT(near->below.load == below);
      RC_ASSERT(near->above.has_value() == above.has_value());
      if (above) RC_ASSERT(near->above->load == *above);
      // Of equal loads the fewest discs, then the heavier first disc.
      for (const Hanging& way : all_ways(b)) {
        if (load_of(b, way) != *below) continue;
        RC_ASSERT(shown.size() <= way.size());
        if (shown.size() == way.size()) RC_ASSERT(shown >= way);
      }
    }));
  }

  void disc_changes_are_fewest() {
    QVERIFY(rc::check([] {
      Barbell b = any_barbell();
      b.discs.push_back({{Mass::kilograms(5)}, 4});
      b.discs.push_back({{Mass::kilograms(10)}, 2});
      const auto every = all_ways(b);
      const std::vector<Hanging> ways(every.begin(), every.end());
      std::vector<Mass> users;
      for (int i = 0; i < 3; ++i)
        users.push_back(
            load_of(b, ways[static_cast<std::size_t>(drawn(0, static_cast<int>(ways.size()) - 1))]));
      std::vector<std::vector<Hanging>> choices(3);
      for (std::size_t u = 0; u < 3; ++u)
        std::ranges::copy_if(ways, std::back_inserter(choices[u]),
                             [&](const Hanging& way) { return load_of(b, way) == users[u]; });
      int best = 1000;
      for (const Hanging& x : choices[0])
        for (const Hanging& y : choices[1])
          for (const Hanging& z : choices[2]) best = std::min(best, changes(x, y) + changes(y, z));
      const auto sequence = fewest_changes(b, users);
      RC_ASSERT(sequence.has_value());
      RC_ASSERT(sequence->changes == best);
      int said = 0;
      Hanging last;
      for (std::size_t u = 0; u < 3; ++u) {
        Hanging way;
        for (const Weight& w : sequence->users[u].per_side) way.push_back(w.mass);
        RC_ASSERT(load_of(b, way) == users[u]);
        if (u > 0) said += changes(last, way);
        last = way;
      }
      RC_ASSERT(said == best);
    }));
  }

  // C010 and C044: linear in the load up to the rounding, and pounds come back.
  void estimates_are_linear_and_pounds_come_back() {
    QVERIFY(rc::check([] {
      const Mass load = Mass::grams(250 * drawn(1, 800));
      const int reps = drawn(1, 15);
      for (const Estimate& e : estimates(load, reps)) {
        const auto twice = one_rm(*e.equation, 2 * load, reps);
        RC_ASSERT(twice.has_value());
        const std::int64_t off = twice->units - 2 * e.one_rm.units;
        RC_ASSERT(off >= -2000 && off <= 2000);  // 20 µg
        RC_ASSERT(e.one_rm >= load);
      }
      const std::int64_t milli_lb = drawn(1, 1'300'000);
      const Weight typed{Mass{milli_lb * (Mass::per_lb / 1000)}, MassUnit::lb};
      std::string text = text_of(typed);
      text.resize(text.find(' '));
      RC_ASSERT(static_cast<std::int64_t>(std::stod(text) * 1000 + 0.5) == milli_lb);
    }));
  }
};

int main(int argc, char** argv) {
  const char* seed = std::getenv("FLOORWHEEL_SEED");
  const std::string cases = std::getenv("FLOORWHEEL_LONG") != nullptr ? "20000" : "200";
  const std::string params = "max_success=" + cases + (seed != nullptr ? std::string(" seed=") + seed : "");
  setenv("RC_PARAMS", params.c_str(), 0);
  qInfo("RC_PARAMS: %s", std::getenv("RC_PARAMS"));
  TestTrainingProperties test;
  return QTest::qExec(&test, argc, argv);
}

#include "tst_training_properties.moc"
