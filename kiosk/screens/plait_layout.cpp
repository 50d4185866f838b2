// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/plait_layout.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <optional>

namespace floorwheel::screens {
namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// The page: which slots and rows are drawn, and where.
class Grid {
 public:
  explicit Grid(const PlaitAsk& ask) : ask_(ask) {
    rows_all_ = static_cast<int>(ask.letters.size()) + (ask.waiting ? 1 : 0);
    slots_ = std::min(ask.slots, plait_slots_page);
    rows_ = std::min(rows_all_, plait_rows_page);
    first_slot_ = std::clamp(focus_slot() - plait_slots_page / 2, 1, ask.slots - slots_ + 1);
    first_row_ = std::clamp(focus_row() - plait_rows_page / 2, 0, rows_all_ - rows_);
    column_ = std::min(plait_column_most, plait_width / slots_);
    row_ = plait_height / rows_;
  }

  [[nodiscard]] int first_slot() const { return first_slot_; }
  [[nodiscard]] int last_slot() const { return first_slot_ + slots_ - 1; }
  [[nodiscard]] int slots() const { return slots_; }
  [[nodiscard]] int first_row() const { return first_row_; }
  [[nodiscard]] int rows() const { return rows_; }
  [[nodiscard]] int rows_all() const { return rows_all_; }
  [[nodiscard]] double column() const { return column_; }
  [[nodiscard]] double row() const { return row_; }
  [[nodiscard]] double left(int slot) const { return plait_left + (slot - first_slot_) * column_; }
  [[nodiscard]] double x(int slot) const { return left(slot) + column_ / 2; }
  [[nodiscard]] double y(int row) const { return plait_top + (row - first_row_ + 0.5) * row_; }
  [[nodiscard]] double right() const { return plait_left + slots_ * column_; }
  [[nodiscard]] bool has(int slot, int row) const {
    return slot >= first_slot_ && slot <= last_slot() && row >= first_row_ && row < first_row_ + rows_;
  }

 private:
  [[nodiscard]] int focus_slot() const { return std::max(ask_.present, ask_.gone); }
  [[nodiscard]] int focus_row() const {
    if (ask_.chosen < 0) return 0;
    const std::vector<int>& row = ask_.at[index(ask_.chosen)];
    for (int t = std::max(focus_slot(), 1); t <= ask_.slots; ++t)
      if (row[index(t - 1)] != no_row) return row[index(t - 1)];
    return 0;
  }

  const PlaitAsk& ask_;
  int rows_all_ = 0;
  int slots_ = 0;
  int rows_ = 0;
  int first_slot_ = 1;
  int first_row_ = 0;
  double column_ = 0;
  double row_ = 0;
};

/// The part of a line that lies on the page (Liang and Barsky's way: one parameter range, cut four times).
std::optional<PlaitLine> clip(PlaitPoint a, PlaitPoint b, double right) {
  double from = 0;
  double to = 1;
  const double dx = b.x - a.x;
  const double dy = b.y - a.y;
  const auto cut = [&](double p, double q) {
    if (p == 0) return q >= 0;
    const double r = q / p;
    if (p < 0)
      from = std::max(from, r);
    else
      to = std::min(to, r);
    return from < to;
  };
  if (!cut(-dx, a.x - plait_left) || !cut(dx, right - a.x) || !cut(-dy, a.y - plait_top) ||
      !cut(dy, plait_top + plait_height - a.y))
    return std::nullopt;
  return PlaitLine{{a.x + from * dx, a.y + from * dy}, {a.x + to * dx, a.y + to * dy}};
}

/// Draws the strands of one ask onto its grid.
class Weaver {
 public:
  Weaver(const PlaitAsk& ask, const Grid& grid) : ask_(ask), grid_(grid) {
    // Members of one station in one slot lie side by side, in the order of the roster.
    beside_.assign(ask.at.size(), std::vector<double>(index(ask.slots), 0.0));
    for (int t = 0; t < ask.slots; ++t)
      for (int row = 0; row < grid.rows_all(); ++row) spread(t, row);
  }

  [[nodiscard]] PlaitPoint point(int member, int slot) const {
    return {grid_.x(slot), grid_.y(at(member, slot)) + beside_[index(member)][index(slot - 1)]};
  }
  [[nodiscard]] int at(int member, int slot) const { return ask_.at[index(member)][index(slot - 1)]; }

  /// The strand of one member from one slot on.
  void strand(PlaitStrands& into, int member, int from_slot, int to_slot) const {
    for (int t = from_slot; t <= to_slot; ++t) {
      if (at(member, t) == no_row) continue;
      if (grid_.has(t, at(member, t))) into.dots.push_back(point(member, t));
      if (t < ask_.slots && at(member, t + 1) != no_row) step(into, member, t, t + 1);
    }
  }

  /// Small dots from the last worked slot before a hole to the first after it.
  void stretch(std::vector<PlaitPoint>& into, int member, int hole) const {
    int a = hole;
    int b = hole;
    while (a >= 1 && at(member, a) == no_row) --a;
    while (b <= ask_.slots && at(member, b) == no_row) ++b;
    if (a < 1 || b > ask_.slots) return;
    PlaitStrands way;
    step(way, member, a, b);
    for (const PlaitLine& line : way.lines) {
      const double length = std::hypot(line[1].x - line[0].x, line[1].y - line[0].y);
      for (double d = 6; d < length; d += 6)
        into.push_back({line[0].x + (line[1].x - line[0].x) * d / length,
                        line[0].y + (line[1].y - line[0].y) * d / length});
    }
  }

 private:
  void spread(int t, int row) {
    std::vector<int> there;
    for (int m = 0; m < static_cast<int>(ask_.at.size()); ++m)
      if (ask_.at[index(m)][index(t)] == row) there.push_back(m);
    if (there.size() < 2) return;
    const auto count = static_cast<double>(there.size());
    const double apart = std::min(plait_apart, (grid_.row() - 4) / count);
    for (std::size_t i = 0; i < there.size(); ++i)
      beside_[index(there[i])][index(t)] = (static_cast<double>(i) - (count - 1) / 2) * apart;
  }

  /// From one worked slot to another: one line, or on a ring two where it leaves below and comes in above.
  void step(PlaitStrands& into, int member, int a, int b) const {
    const PlaitPoint p = point(member, a);
    const PlaitPoint q = point(member, b);
    const auto stations = static_cast<int>(ask_.letters.size());
    const bool wraps = ask_.ring && at(member, b) <= at(member, a) && at(member, a) < stations;
    const double around = wraps ? stations * grid_.row() : 0;
    if (auto line = clip(p, {q.x, q.y + around}, grid_.right())) into.lines.push_back(*line);
    if (!wraps) return;
    if (auto line = clip({p.x, p.y - around}, q, grid_.right())) into.lines.push_back(*line);
  }

  const PlaitAsk& ask_;
  const Grid& grid_;
  std::vector<std::vector<double>> beside_;
};

void frame(Plait& plait, const PlaitAsk& ask, const Grid& grid) {
  for (int r = grid.first_row(); r < grid.first_row() + grid.rows(); ++r) {
    const bool waits = r == static_cast<int>(ask.letters.size());
    plait.letters.push_back({waits ? "W" : ask.letters[index(r)], grid.y(r), waits});
  }
  for (int t = grid.first_slot(); t <= grid.last_slot(); ++t)
    if (grid.column() >= 30 || t % 2 == 0 || t == ask.present)
      plait.numbers.push_back({t, grid.x(t), t == ask.present});
  for (int t = grid.first_slot(); t < grid.last_slot(); ++t)
    if ((t - 1) * ask.laps / ask.slots != t * ask.laps / ask.slots)
      plait.lap_lines.push_back(grid.left(t + 1));
  if (const int last = std::min(ask.gone, grid.last_slot()); last >= grid.first_slot())
    plait.gone = {plait_left, plait_top - 4, grid.left(last + 1) - plait_left, plait_height + 7};
  if (ask.present >= grid.first_slot() && ask.present <= grid.last_slot())
    plait.present = {grid.left(ask.present), plait_top - 33, grid.column(), plait_height + 41};
  for (const PlaitClosure& c : ask.closed) {
    const int first = std::max(c.first, grid.first_slot());
    const int last = std::min(c.last, grid.last_slot());
    if (first > last || !grid.has(first, c.row)) continue;
    const double height = std::min(34.0, grid.row() - 4);
    plait.closed.push_back(
        {grid.left(first) + 2, grid.y(c.row) - height / 2, (last - first + 1) * grid.column() - 2, height});
  }
}

bool differs(const PlaitAsk& ask, int member, int slot) {
  const std::vector<int>& old = ask.before[index(member)];
  const int was = slot <= static_cast<int>(old.size()) ? old[index(slot - 1)] : no_row;
  return was != ask.at[index(member)][index(slot - 1)];
}

}  // namespace

Plait lay_plait(const PlaitAsk& ask) {
  Plait plait;
  if (ask.slots < 1 || ask.letters.empty()) return plait;
  assert(ask.before.empty() || ask.before.size() == ask.at.size());
  const Grid grid(ask);
  plait.first_slot = grid.first_slot();
  plait.slots = grid.slots();
  plait.first_row = grid.first_row();
  plait.rows = grid.rows();
  plait.column = grid.column();
  plait.row = grid.row();
  frame(plait, ask, grid);

  const Weaver weaver(ask, grid);
  for (int m = 0; m < static_cast<int>(ask.at.size()); ++m) {
    if (m == ask.chosen) continue;
    int changes = 0;
    if (!ask.before.empty())
      for (int t = std::max(ask.from_slot, 1); t <= ask.slots; ++t) changes += differs(ask, m, t) ? 1 : 0;
    if (changes == 0) {
      weaver.strand(plait.grey, m, 1, ask.slots);
      continue;
    }
    const int turn = std::max(ask.from_slot - 1, 1);  // sky from the slot that nothing can change any more
    weaver.strand(plait.grey, m, 1, turn - 1);
    weaver.strand(plait.sky, m, turn, ask.slots);
    for (int t = ask.from_slot; t <= ask.slots; ++t)
      if (t >= 1 && weaver.at(m, t) == no_row && differs(ask, m, t) &&
          (t == ask.from_slot || weaver.at(m, t - 1) != no_row || !differs(ask, m, t - 1)))
        weaver.stretch(plait.skipped, m, t);
  }
  if (ask.chosen >= 0) weaver.strand(plait.yellow, ask.chosen, 1, ask.slots);
  return plait;
}

}  // namespace floorwheel::screens
