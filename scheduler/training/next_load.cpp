// SPDX-License-Identifier: GPL-3.0-or-later
// Loads are compared as whole numbers: "at most 10 % more" is 10 * next <= 11 * last.
#include "scheduler/training/next_load.h"

#include <algorithm>
#include <cassert>
#include <functional>

namespace floorwheel::training {
namespace {

constexpr int widest = 5;  // repetitions that a range may grow by before a big step

struct Case {
  const NextQuestion& q;
  const std::vector<Visit>& worked;  // at least one
  [[nodiscard]] const Visit& last() const { return worked.back(); }
  [[nodiscard]] const Visit* before() const { return worked.size() < 2 ? nullptr : &worked.rbegin()[1]; }

  /// The heaviest load of the floor that `holds`; loads are ascending.
  template <class Holds>
  [[nodiscard]] std::optional<Weight> heaviest(Holds holds) const {
    for (auto w = q.loads.rbegin(); w != q.loads.rend(); ++w)
      if (holds(w->mass)) return *w;
    return std::nullopt;
  }
  [[nodiscard]] std::optional<Weight> stand_in() const {
    return heaviest([&](Mass m) { return m <= last().load; });
  }
  [[nodiscard]] std::optional<Weight> up() const {
    const auto above =
        std::find_if(q.loads.begin(), q.loads.end(), [&](const Weight& w) { return w.mass > last().load; });
    return above == q.loads.end() ? std::nullopt : std::optional(*above);
  }
  [[nodiscard]] bool small_step() const { return up() && 10 * up()->mass <= 11 * last().load; }
  [[nodiscard]] bool big_step() const { return up() && !small_step(); }

  /// "10 repetitions", "40 s".
  [[nodiscard]] std::string amount(int n) const {
    if (q.hold) return std::to_string(n) + " s";
    return std::to_string(n) + (n == 1 ? " repetition" : " repetitions");
  }
  [[nodiscard]] std::string sets(int n) const { return std::to_string(n) + (n == 1 ? " set" : " sets"); }
  /// A load as the floor's list has it, else as kilograms.
  [[nodiscard]] std::string said(Mass m) const {
    if (m == Mass{}) return "body weight";
    for (const Weight& w : q.loads)
      if (w.mass == m) return text_of(w);
    return shown(m);
  }
  [[nodiscard]] std::string said(const Weight& w) const { return said(w.mass); }
};

NextAnswer answer(const Case& c, NextRule rule, Change change, const std::optional<Weight>& load,
                  std::string reason) {
  return {load, c.q.reps, c.q.sets, change, rule, std::move(reason), !load, ""};
}

/// 'Same': the last load, or what stands for it.
NextAnswer same(const Case& c, NextRule rule, std::string reason) {
  const auto load = c.stand_in();
  if (!load)
    reason += "; the floor has nothing as light as " + c.said(c.last().load) + " now, so ask the instructor";
  else if (load->mass != c.last().load)
    reason += "; the floor no longer has " + c.said(c.last().load) + ", " + c.said(*load) + " stands for it";
  return answer(c, rule, Change::same, load, std::move(reason));
}

/// Down to at most `percent` of the last load, or else the next lighter, or else the same.
NextAnswer down(const Case& c, NextRule rule, int percent, const std::string& reason) {
  const Mass last = c.last().load;
  auto load = c.heaviest([&](Mass m) { return m < last && 100 * m <= percent * last; });
  if (!load) load = c.heaviest([&](Mass m) { return m < last; });
  if (!load) return same(c, rule, reason + "; there is no lighter load");
  return answer(c, rule, Change::down, load, reason + "; " + c.said(*load) + " after " + c.said(last));
}

/// The fewest repetitions of the best N sets at the visit's load that have `least` or more with `reserve` or
/// more left; fewer than N such sets: nothing. A reserve not recorded counts where `trusting`.
std::optional<int> fewest(const Visit& v, int sets, int least, int reserve, bool trusting) {
  std::vector<int> reps;
  for (const DoneSet& s : v.at_load)
    if (s.reps >= least && (s.rir ? *s.rir >= reserve : trusting)) reps.push_back(s.reps);
  if (static_cast<int>(reps.size()) < sets) return std::nullopt;
  std::sort(reps.begin(), reps.end(), std::greater<>());
  return reps[static_cast<std::size_t>(sets) - 1];
}

struct Earned {
  int fewest = 0;  // repetitions of the N sets of the last visit
  bool recorded = false;
};

/// All N sets had `least` or more with `reserve` left; where the reserve is not recorded, or `twice` is asked
/// for, so in the last two visits, both at one load.
std::optional<Earned> earned(const Case& c, int least, int reserve, bool twice = false) {
  const auto recorded = fewest(c.last(), c.q.sets, least, reserve, false);
  if (recorded && !twice) return Earned{*recorded, true};
  const Visit* before = c.before();
  if (before == nullptr || before->load != c.last().load) return std::nullopt;
  if (!fewest(*before, c.q.sets, least, reserve, true)) return std::nullopt;
  const auto trusted = fewest(c.last(), c.q.sets, least, reserve, true);
  if (!trusted) return std::nullopt;
  return Earned{recorded.value_or(*trusted), recorded.has_value()};
}

/// "All 3 sets reached 10 repetitions or more with at least 1 in reserve".
std::string reached(const Case& c, const Earned& e, int least, int reserve) {
  return (c.q.sets == 1 ? "The set" : "All " + c.sets(c.q.sets)) + " reached " + c.amount(least) +
         " or more " +
         (e.recorded ? "with at least " + std::to_string(reserve) + " in reserve"
                     : std::string("in two visits running, the reserve not all recorded"));
}

using Rule = std::optional<NextAnswer> (*)(const Case&);

std::optional<NextAnswer> comeback(const Case& c) {
  const int away = c.q.today - c.last().day;
  if (away < 21) return std::nullopt;
  const int percent = away >= 56 ? 80 : 90;
  return down(c, NextRule::comeback, percent,
              "The last visit was " + std::to_string(away) + " days ago, so begin again with at most " +
                  std::to_string(percent) + " % of the last load");
}

std::optional<NextAnswer> below_range(const Case& c) {
  const int lo = c.q.reps[0];
  if (c.before() == nullptr || c.last().first_reps >= lo || c.before()->first_reps >= lo) return std::nullopt;
  return down(c, NextRule::below_range, 90,
              "The first set stayed under " + c.amount(lo) + " in the last two visits");
}

NextAnswer rise(const Case& c, NextRule rule, const std::string& why) {
  return answer(c, rule, Change::up, c.up(), why + "; begin at " + c.amount(c.q.reps[0]));
}

std::optional<NextAnswer> top_of_range(const Case& c) {
  if (!c.small_step()) return std::nullopt;
  const auto e = earned(c, c.q.reps[1], 1, c.q.slow_to_rise);
  if (!e) return std::nullopt;
  return rise(c, NextRule::top_of_range,
              reached(c, *e, c.q.reps[1], 1) + ", and " + c.said(*c.up()) + " is at most 10 % more than " +
                  c.said(c.last().load));
}

std::optional<NextAnswer> big_step(const Case& c) {
  if (!c.big_step()) return std::nullopt;
  const int least = c.q.reps[1] + widest;
  const auto e = earned(c, least, 2, c.q.slow_to_rise);
  if (!e) return std::nullopt;
  NextAnswer a = rise(c, NextRule::big_step,
                      reached(c, *e, least, 2) + ", and the next load, " + c.said(*c.up()) +
                          ", is more than 10 % above " + c.said(c.last().load) + ", so ask the instructor");
  a.ask_instructor = true;
  return a;
}

std::optional<NextAnswer> more_reps(const Case& c) {
  if (c.small_step()) return std::nullopt;
  const auto e = earned(c, c.q.reps[1], 1);
  if (!e) return std::nullopt;
  const int top = std::min(c.q.reps[1] + widest, e->fewest + 1);
  NextAnswer a = same(c, NextRule::more_reps,
                      reached(c, *e, c.q.reps[1], 1) +
                          (c.up() ? ", but the next load, " + c.said(*c.up()) + ", is more than 10 % above it"
                                  : ", and there is no heavier load") +
                          ", so aim at up to " + c.amount(top));
  a.reps[1] = top;
  return a;
}

std::optional<NextAnswer> stall(const Case& c) {
  if (c.worked.size() < 4) return std::nullopt;
  const auto four = c.worked.end() - 4;
  for (auto v = four; v != c.worked.end(); ++v)
    if (v->load != four->load || v->total_reps > four->total_reps) return std::nullopt;
  return same(c, NextRule::stall,
              "Four visits with " + c.said(c.last().load) + " and no more " +
                  (c.q.hold ? "seconds" : "repetitions") +
                  " in the last three than in the first; try one more set a week, then the next level");
}

std::optional<NextAnswer> in_range(const Case& c) {
  return same(c, NextRule::in_range,
              "Not yet all " + c.sets(c.q.sets) + " at " + c.amount(c.q.reps[1]) +
                  (c.q.hold ? "" : " with 1 or more in reserve") + ", so add to them at this load");
}

NextAnswer without_pain(const Case& c) {
  for (const Rule rule : {comeback, below_range, top_of_range, big_step, more_reps, stall})
    if (auto a = rule(c)) return *std::move(a);
  return *in_range(c);
}

/// The lesser of the last load and what the other rules answer.
NextAnswer with_pain(const Case& c) {
  const NextAnswer other = without_pain(c);
  NextAnswer a = same(c, NextRule::pain, "Pain was noted at the last visit");
  if (other.load && a.load && other.load->mass < a.load->mass)
    a = answer(
        c, NextRule::pain, other.change, other.load,
        "Pain was noted at the last visit; " + c.said(*other.load) + " after " + c.said(c.last().load));
  if (!c.q.substitutes.empty()) a.substitute = c.q.substitutes.front();
  a.reason += "; stop on pain and ask the instructor first";
  if (!a.substitute.empty()) a.reason += ", or do " + a.substitute + " instead";
  a.ask_instructor = true;
  return a;
}

NextAnswer first_time(const Case& c, bool pain) {
  NextAnswer a =
      answer(c, NextRule::first, Change::first, c.q.loads.front(),
             "No working set yet, so the lightest load there is, at a slower tempo and with three or "
             "more in reserve, shown by the instructor" +
                 std::string(pain ? "; pain was noted, so stop on pain" : ""));
  a.ask_instructor = true;
  return a;
}

}  // namespace

std::string_view id_of(NextRule rule) {
  constexpr std::array<std::string_view, 9> ids = {
      "first", "pain", "return", "below-range", "top-of-range", "big-step", "more-reps", "stall", "in-range"};
  return ids[static_cast<std::size_t>(rule)];
}

std::string_view id_of(Change change) {
  constexpr std::array<std::string_view, 4> ids = {"up", "same", "down", "first"};
  return ids[static_cast<std::size_t>(change)];
}

NextAnswer next_load(std::span<const SetRecord> records, const NextQuestion& q) {
  assert(!q.loads.empty());
  const Visits visits = visits_of(records, q.today);
  const Case c{q, visits.worked};
  NextAnswer a = visits.worked.empty()     ? first_time(c, visits.pain_at_the_last)
                 : visits.pain_at_the_last ? with_pain(c)
                                           : without_pain(c);
  a.reason += ".";
  return a;
}

}  // namespace floorwheel::training
