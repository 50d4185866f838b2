// SPDX-License-Identifier: GPL-3.0-or-later
// Depth first. Of what every row that takes a limit costs at least, and of what it costs to leave it, the
// limit is paid for at once; rows that cost more than is then left of the budget are out. Goes on with the
// limit that must be filled and has the fewest rows, or with a kind.
#include "scheduler/rotation/certificate_pack.h"

#include <algorithm>
#include <limits>

namespace floorwheel::certify {

void Choices::limit(int room, std::int64_t price) {
  room_.push_back(room);
  price_.push_back(price);
}

void Choices::kind(int members) {
  kinds_.push_back(members);
  to_choose_ += members;
}

void Choices::row(std::int32_t beyond, std::vector<int> takes) {
  takes.push_back(static_cast<int>(price_.size() + kinds_.size()) - 1);
  rows_.push_back({beyond, std::move(takes)});
}

Wide Choices::worth() const {
  Wide sum = 0;
  for (std::size_t l = 0; l < price_.size(); ++l) sum += Wide{price_[l]} * room_[l];
  return sum;
}

Choices::Is Choices::look(std::int64_t budget) {
  room_.insert(room_.end(), kinds_.begin(), kinds_.end());
  Rest rest;
  for (std::size_t r = 0; r < rows_.size(); ++r) rest.rows.emplace_back(static_cast<int>(r), rows_[r].beyond);
  rest.left_over = price_;
  rest.budget = budget;
  for (int room : room_) full_.push_back(room == 0);
  return decide(std::move(rest));
}

/// Rows by what they take.
void Choices::find_who(const Rest& rest) {
  from_.assign(room_.size() + 1, 0);
  for (const auto& row : rest.rows)
    for (int l : rows_[at(row.first)].takes) ++from_[at(l) + 1];
  for (std::size_t l = 0; l < room_.size(); ++l) from_[l + 1] += from_[l];
  at_.assign(from_.begin(), from_.end() - 1);
  who_.resize(from_.back());
  for (std::size_t i = 0; i < rest.rows.size(); ++i)
    for (int l : rows_[at(rest.rows[i].first)].takes) who_[at_[at(l)]++] = static_cast<int>(i);
  steps_ -= 1 + static_cast<std::int64_t>(who_.size()) / 256;
}

bool Choices::pay(Rest& rest) {
  std::vector<std::size_t> by_few;
  for (std::size_t l = 0; l < room_.size(); ++l)
    if (room_[l] > 0) by_few.push_back(l);
  std::stable_sort(by_few.begin(), by_few.end(),
                   [&](std::size_t a, std::size_t b) { return many(a) < many(b); });
  for (std::size_t l : by_few) {
    const bool may_be_left = l < price_.size();
    if (!may_be_left && many(l) == 0) return false;
    std::int64_t least = may_be_left ? rest.left_over[l] : std::numeric_limits<std::int64_t>::max();
    for (std::size_t w = from_[l]; w < from_[l + 1] && least > 0; ++w)
      least = std::min(least, rest.rows[at(who_[w])].second);
    if (least == 0) continue;
    if (least > rest.budget) return false;
    for (std::size_t w = from_[l]; w < from_[l + 1]; ++w) rest.rows[at(who_[w])].second -= least;
    if (may_be_left) rest.left_over[l] -= least;
    rest.budget -= least * room_[l];
    if (rest.budget < 0) return false;
  }
  return true;
}

Choices::Is Choices::decide(Rest rest) {
  if (to_choose_ == 0) {
    Wide sum = 0;
    for (std::size_t l = 0; l < price_.size(); ++l) sum += Wide{rest.left_over[l]} * room_[l];
    return sum <= rest.budget ? Is::there : Is::none;
  }
  for (bool again = true; again;) {
    find_who(rest);
    if (steps_ < 0) return Is::unknown;
    if (!pay(rest)) return Is::none;
    const std::size_t before = rest.rows.size();
    std::erase_if(rest.rows, [&](const auto& row) { return row.second > rest.budget; });
    again = rest.rows.size() < before;
  }
  std::size_t best = room_.size();
  for (std::size_t l = 0; l < room_.size(); ++l) {
    if (room_[l] == 0 || (l < price_.size() && rest.left_over[l] <= rest.budget)) continue;
    if (best == room_.size() || many(l) < many(best)) best = l;
  }
  const std::vector<int> ways(who_.begin() + static_cast<std::ptrdiff_t>(from_[best]),
                              who_.begin() + static_cast<std::ptrdiff_t>(from_[best + 1]));
  std::vector<std::uint8_t> out(rest.rows.size(), 0);  // tried, and not there
  for (int i : ways) {
    const auto [taken, beyond] = rest.rows[at(i)];
    const One& one = rows_[at(taken)];
    for (int l : one.takes) full_[at(l)] = --room_[at(l)] == 0;
    --to_choose_;
    Rest next;
    next.left_over = rest.left_over;
    next.budget = rest.budget - beyond;
    next.rows.reserve(rest.rows.size());
    for (std::size_t other = 0; other < rest.rows.size(); ++other) {
      if (out[other] || rest.rows[other].second > next.budget) continue;
      const std::vector<int>& takes = rows_[at(rest.rows[other].first)].takes;
      if (std::none_of(takes.begin(), takes.end(), [&](int l) { return full_[at(l)]; }))
        next.rows.push_back(rest.rows[other]);
    }
    out[at(i)] = 1;  // with it all has been looked at
    const Is is = decide(std::move(next));
    for (int l : one.takes) full_[at(l)] = ++room_[at(l)] == 0;
    ++to_choose_;
    if (is != Is::none) return is;
  }
  return Is::none;
}

}  // namespace floorwheel::certify
