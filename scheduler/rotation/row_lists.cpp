// SPDX-License-Identifier: GPL-3.0-or-later
// Lists rows slot by slot, after a look at how many there would be.
#include "scheduler/rotation/row_lists.h"

#include <algorithm>

namespace floorwheel {
namespace {

class Lister {
 public:
  Lister(const Problem& p, int m, std::size_t most) : p_(p), m_(m), most_(most), row_(ix(p.slots), nowhere) {
    for (int t = 0; t < p.from; ++t) row_[ix(t)] = p.history(m, t);
  }

  std::optional<std::vector<PricedRow>> list() {
    if (!extend(p_.from)) return std::nullopt;
    std::stable_sort(rows_.begin(), rows_.end(),
                     [](const PricedRow& a, const PricedRow& b) { return a.cost < b.cost; });
    return std::move(rows_);
  }

 private:
  bool extend(int t) {
    if (t == p_.slots) {
      if (rows_.size() == most_) return false;
      rows_.push_back({row_, price_row(p_, m_, row_.data())});
      return true;
    }
    if (p_.present(m_, t))
      for (int s : p_.required[ix(m_)]) {
        if (p_.places(s, t) < 1) continue;
        row_[ix(t)] = s;
        if (laps_hold(p_, row_.data()) && !extend(t + 1)) return false;
      }
    row_[ix(t)] = nowhere;
    return extend(t + 1);
  }

  const Problem& p_;
  const int m_;
  const std::size_t most_;
  Row row_;
  std::vector<PricedRow> rows_;
};

}  // namespace

namespace {

/// Rows without a second lap, were every station open, as far as a billion: the sum over j of
/// (slots choose j) · list · (list - 1) · ...
std::int64_t rows_about(int slots, int list) {
  std::int64_t sum = 1;
  std::int64_t term = 1;
  for (int j = 0; j < std::min(slots, list) && sum < 1'000'000'000; ++j) {
    term = term * (slots - j) * (list - j) / (j + 1);
    sum += term;
  }
  return sum;
}

}  // namespace

std::optional<RowLists> list_rows(const Problem& p, std::size_t most) {
  std::int64_t about = 0;
  for (int m = 0; m < p.members; ++m) {
    const int slots_left = p.last[ix(m)] - std::max(p.from, p.first[ix(m)]) + 1;
    about += rows_about(std::max(0, slots_left), static_cast<int>(p.required[ix(m)].size()));
  }
  if (about > 50 * static_cast<std::int64_t>(most))
    return std::nullopt;  // closed slots do not make up for that
  RowLists lists;
  for (int m = 0; m < p.members; ++m) {
    auto list = Lister(p, m, most).list();
    if (!list) return std::nullopt;
    most -= list->size();
    lists.push_back(std::move(*list));
  }
  return lists;
}

RowLists rows_on_ring(const Problem& p, const RowLists& lists, const std::vector<int>& place) {
  RowLists out(lists.size());
  for (std::size_t m = 0; m < lists.size(); ++m)
    for (const PricedRow& row : lists[m])
      if (steps_hold(p, place, row.row.data())) out[m].push_back(row);
  return out;
}

}  // namespace floorwheel
