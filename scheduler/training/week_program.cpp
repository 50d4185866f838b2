// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/training/week_program.h"

#include <algorithm>
#include <numeric>

namespace floorwheel::training {

namespace {

using Terms = std::vector<std::pair<int, int>>;

// What is split first: whether a day clashes, then how many stations of a class work a group, or which
// equipment stands out, last which exercises.
constexpr int rank_day = 1;
constexpr int rank_total = 2;
constexpr int rank_aim = 3;
constexpr int rank_other = 4;
constexpr int rank_type = 5;

class Writer {
 public:
  Writer(const WeekFloor& floor, int goal, const WeekValues& held)
      : floor_(floor), goal_(goal), held_(held), n_(floor.classes.size()) {}

  WeekProgram write() {
    add_types();
    if (n_ > 1 && goal_ != no_goal) add_totals();
    if (counts(WeekGoal::shortfall)) add_under();
    if (counts(WeekGoal::excess)) add_over();
    if (counts(WeekGoal::clashes)) add_days();
    if (counts(WeekGoal::loss)) add_lacks();
    if (counts(WeekGoal::change)) add_moves();
    for (auto& row : later_) p_.add_row(std::move(row.terms), row.low, row.high, row.rank);
    out_.program = std::move(p_);
    return std::move(out_);
  }

  void set_step() {
    int step = floor_.lap_step;
    if (goal_ == static_cast<int>(WeekGoal::change)) step = 2;
    if (goal_ == no_goal || goal_ == static_cast<int>(WeekGoal::clashes)) step = 1;
    const bool lower = goal_ == 0 || goal_ == 3;
    for (const SetTarget t : floor_.targets) {
      if (lower) step = std::gcd(step, t.at_least);
      if (goal_ == 1 && t.at_most != SetTarget::no_limit) step = std::gcd(step, t.at_most);
    }
    out_.step = step;
  }

 private:
  struct Later {
    Terms terms;
    int low, high, rank;
  };

  [[nodiscard]] bool counts(WeekGoal g) const { return goal_ >= static_cast<int>(g); }
  [[nodiscard]] bool aim(WeekGoal g) const { return goal_ == static_cast<int>(g); }
  [[nodiscard]] std::int64_t held(WeekGoal g) const { return held_[static_cast<std::size_t>(g)]; }
  /// Whether the goal may be above 0 at all.
  [[nodiscard]] bool priced(WeekGoal g) const { return aim(g) || held(g) > 0; }
  [[nodiscard]] int limit(WeekGoal g) const { return static_cast<int>(held(g)); }
  void row(Terms terms, int low, int high, int rank = 0) {
    if (!terms.empty()) later_.push_back({std::move(terms), low, high, rank});
  }

  /// More sets than the week has for any group, or for all the lower ends together.
  [[nodiscard]] int sets_most() const {
    int most = 0;
    for (const FloorClass& c : floor_.classes) most += c.stations * c.laps * group_count;
    return most;
  }
  /// Stations of class c that work group g, each times `factor`.
  void add_group(Terms& terms, std::size_t c, std::size_t g, int factor) const {
    const FloorClass& f = floor_.classes[c];
    for (std::size_t t = 0; t < f.types.size(); ++t)
      if (f.types[t].groups.contains(static_cast<Group>(g))) terms.emplace_back(out_.column[c][t], factor);
  }
  void add_kind(Terms& terms, std::size_t c, std::size_t k, int factor) const {
    const FloorClass& f = floor_.classes[c];
    for (std::size_t t = 0; t < f.types.size(); ++t)
      if (std::ranges::find(f.types[t].kinds, k) != f.types[t].kinds.end())
        terms.emplace_back(out_.column[c][t], factor);
  }
  /// Sets of group g in the week but for one class (n_: in all of it).
  [[nodiscard]] Terms sets_without(std::size_t g, std::size_t missed) const {
    Terms terms;
    for (std::size_t c = 0; c < n_; ++c)
      if (c != missed) add_group(terms, c, g, floor_.classes[c].laps);
    return terms;
  }
  [[nodiscard]] int step_without(std::size_t missed) const {
    int step = 0;
    for (std::size_t c = 0; c < n_; ++c)
      if (c != missed) step = std::gcd(step, floor_.classes[c].laps);
    return step;
  }

  void add_types() {
    for (std::size_t c = 0; c < n_; ++c) {
      const FloorClass& f = floor_.classes[c];
      std::vector<int>& columns = out_.column.emplace_back();
      Terms all;
      for (const WeekType& t : f.types) {
        columns.push_back(p_.add_column(t.kept, t.size(), 0, rank_type));
        all.emplace_back(columns.back(), 1);
      }
      row(all, f.stations, f.stations);
      for (std::size_t g = 0; g < group_count; ++g) {
        Terms terms;
        add_group(terms, c, g, 1);
        row(terms, 0, f.same_group_most, aim(WeekGoal::change) ? rank_other : rank_aim);
      }
      for (std::size_t k = 0; k < floor_.kinds; ++k) {
        Terms terms;
        add_kind(terms, c, k, 1);
        int most = 0;
        for (const auto& [column, factor] : terms) most += p_.high[static_cast<std::size_t>(column)];
        if (most > f.units[k] || aim(WeekGoal::change))
          row(terms, 0, f.units[k], aim(WeekGoal::change) ? rank_aim : rank_other);
      }
    }
  }

  /// total + lack >= at least, for totals that are multiples of `step`: the line between the last two
  /// multiples under the target is higher than the plain one, where the target is no multiple.
  void lack_rows(const Terms& total, int lack, int at_least, int step) {
    Terms plain = total;
    plain.emplace_back(lack, 1);
    row(plain, at_least, most_of_any_row);
    const int rest = step > 0 ? at_least % step : 0;
    if (rest == 0 || total.empty()) return;
    Terms steep;
    for (const auto& [column, factor] : total) steep.emplace_back(column, factor / step * rest);
    steep.emplace_back(lack, 1);
    row(steep, rest * (at_least / step + 1), most_of_any_row);
  }

  /// The week's sets of each group, to be split before the classes'.
  void add_totals() {
    for (std::size_t g = 0; g < group_count; ++g) {
      Terms steps = sets_without(g, n_);
      for (auto& [column, factor] : steps) factor /= floor_.lap_step;
      row(std::move(steps), 0, most_of_any_row, aim(WeekGoal::change) ? rank_other : rank_total);
    }
  }

  void add_under() {
    Terms all;
    for (std::size_t g = 0; g < group_count; ++g) {
      const int least = floor_.targets[g].at_least;
      if (least == 0) continue;
      if (!priced(WeekGoal::shortfall)) {
        row(sets_without(g, n_), least, most_of_any_row);
        continue;
      }
      const int under = p_.add_column(0, least, aim(WeekGoal::shortfall) ? 1 : 0, 0);
      lack_rows(sets_without(g, n_), under, least, floor_.lap_step);
      all.emplace_back(under, 1);
    }
    if (!aim(WeekGoal::shortfall)) row(all, limit(WeekGoal::shortfall), limit(WeekGoal::shortfall));
  }

  void add_over() {
    Terms all;
    for (std::size_t g = 0; g < group_count; ++g) {
      const int most = floor_.targets[g].at_most;
      Terms total = sets_without(g, n_);
      if (most == SetTarget::no_limit || total.empty()) continue;
      if (!priced(WeekGoal::excess)) {
        row(std::move(total), 0, most);
        continue;
      }
      const int over = p_.add_column(0, sets_most(), aim(WeekGoal::excess) ? 1 : 0, 0);
      Terms plain = total;
      plain.emplace_back(over, -1);
      row(plain, 0, most);
      const int step = floor_.lap_step;
      if (const int rest = step - most % step; rest < step) {
        Terms steep;
        for (const auto& [column, factor] : total) steep.emplace_back(column, factor / step * rest);
        steep.emplace_back(over, -1);
        row(steep, -most_of_any_row, rest * (most / step));
      }
      all.emplace_back(over, 1);
    }
    if (!aim(WeekGoal::excess)) row(all, limit(WeekGoal::excess), limit(WeekGoal::excess));
  }

  /// A column that is 1 where a day has three or more sets of a group, or -1 for a day that never has.
  int heavy_day(int day, std::size_t g) {
    Terms terms;
    int most = 0;
    for (std::size_t c = 0; c < n_; ++c) {
      if (floor_.classes[c].weekday != day) continue;
      const std::size_t before = terms.size();
      add_group(terms, c, g, floor_.classes[c].laps);
      int stations = 0;
      for (std::size_t i = before; i < terms.size(); ++i)
        stations += p_.high[static_cast<std::size_t>(terms[i].first)];
      most += floor_.classes[c].laps * std::min(stations, floor_.classes[c].same_group_most);
    }
    if (most < 3) return -1;
    const int heavy = p_.add_column(0, 1, 0, rank_day);
    terms.emplace_back(heavy, -(most - 2));
    row(terms, -most_of_any_row, 2);
    return heavy;
  }

  void add_days() {
    std::array<std::array<int, group_count>, 7> heavy{};
    std::array<bool, 7> there{};
    for (const FloorClass& c : floor_.classes) there[static_cast<std::size_t>(c.weekday)] = true;
    for (std::size_t d = 0; d < 7; ++d)
      for (std::size_t g = 0; g < group_count; ++g)
        heavy[d][g] =
            there[d] && (there[(d + 1) % 7] || there[(d + 6) % 7]) ? heavy_day(static_cast<int>(d), g) : -1;
    Terms all;
    for (std::size_t d = 0; d < 7; ++d)
      for (std::size_t g = 0; g < group_count; ++g) {
        const int a = heavy[d][g], b = heavy[(d + 1) % 7][g];
        if (a < 0 || b < 0) continue;
        if (!priced(WeekGoal::clashes)) {
          row({{a, 1}, {b, 1}}, 0, 1);
          continue;
        }
        const int clash = p_.add_column(0, 1, aim(WeekGoal::clashes) ? 1 : 0, 0);
        row({{a, 1}, {b, 1}, {clash, -1}}, -1, 1);
        all.emplace_back(clash, 1);
      }
    if (!aim(WeekGoal::clashes)) row(all, 0, limit(WeekGoal::clashes));
  }

  /// Missing class c costs what the groups then lack, less what they lack anyhow.
  void add_lacks() {
    const int worst = aim(WeekGoal::loss) ? p_.add_column(0, sets_most(), 1, 0) : -1;
    for (std::size_t c = 0; c < n_; ++c) {
      Terms all;
      for (std::size_t g = 0; g < group_count; ++g) {
        const int least = floor_.targets[g].at_least;
        if (least == 0) continue;
        const int lack = p_.add_column(0, least, 0, 0);
        lack_rows(sets_without(g, c), lack, least, step_without(c));
        all.emplace_back(lack, 1);
      }
      if (worst >= 0) all.emplace_back(worst, -1);
      // The shortfall is the same in every plan that is looked at here.
      row(all, -most_of_any_row, limit(WeekGoal::shortfall) + (worst >= 0 ? 0 : limit(WeekGoal::loss)));
    }
  }

  void add_moves() {
    if (n_ == 1) return;
    for (std::size_t c = 0; c < n_; ++c)
      for (std::size_t k = 0; k < floor_.kinds; ++k) {
        Terms terms;
        add_kind(terms, c, k, 1);
        add_kind(terms, (c + 1) % n_, k, -1);
        if (terms.empty()) continue;
        const int most = std::max(floor_.classes[c].units[k], floor_.classes[(c + 1) % n_].units[k]);
        const int away = p_.add_column(0, most, 1, 0);
        const int out = p_.add_column(0, most, 1, 0);
        terms.emplace_back(away, -1);
        terms.emplace_back(out, 1);
        row(terms, 0, 0);
      }
  }

  const WeekFloor& floor_;
  int goal_;
  WeekValues held_;
  std::size_t n_;
  WholeProgram p_;
  WeekProgram out_;
  std::vector<Later> later_;
};

}  // namespace

WeekProgram program_of(const WeekFloor& floor, int goal, const WeekValues& held) {
  Writer writer(floor, goal, held);
  writer.set_step();
  return writer.write();
}

}  // namespace floorwheel::training
