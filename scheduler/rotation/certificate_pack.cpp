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
  return decide(std::move(rest));
}

bool Choices::pay(Rest& rest, std::vector<std::vector<int>>& who) {
  std::vector<std::size_t> by_few;
  for (std::size_t l = 0; l < room_.size(); ++l)
    if (room_[l] > 0) by_few.push_back(l);
  std::stable_sort(by_few.begin(), by_few.end(),
                   [&](std::size_t a, std::size_t b) { return who[a].size() < who[b].size(); });
  for (std::size_t l : by_few) {
    const bool may_be_left = l < price_.size();
    if (!may_be_left && who[l].empty()) return false;
    std::int64_t least = may_be_left ? rest.left_over[l] : std::numeric_limits<std::int64_t>::max();
    for (int i : who[l]) least = std::min(least, rest.rows[at(i)].second);
    if (least == 0) continue;
    if (least > rest.budget) return false;
    for (int i : who[l]) rest.rows[at(i)].second -= least;
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
  std::vector<std::vector<int>> who;  // [limit, kind] rows that take it
  for (bool again = true; again;) {
    who.assign(room_.size(), {});
    std::int64_t takes = 0;
    for (std::size_t i = 0; i < rest.rows.size(); ++i) {
      const One& one = rows_[at(rest.rows[i].first)];
      for (int l : one.takes) who[at(l)].push_back(static_cast<int>(i));
      takes += static_cast<std::int64_t>(one.takes.size());
    }
    if ((steps_ -= 1 + takes / 256) < 0) return Is::unknown;
    if (!pay(rest, who)) return Is::none;
    const std::size_t before = rest.rows.size();
    std::erase_if(rest.rows, [&](const auto& row) { return row.second > rest.budget; });
    again = rest.rows.size() < before;
  }
  std::size_t best = room_.size();
  for (std::size_t l = 0; l < room_.size(); ++l) {
    if (room_[l] == 0 || (l < price_.size() && rest.left_over[l] <= rest.budget)) continue;
    if (best == room_.size() || who[l].size() < who[best].size()) best = l;
  }
  std::vector<std::uint8_t> out(rest.rows.size(), 0);  // tried, and not there
  for (int i : who[best]) {
    const auto [taken, beyond] = rest.rows[at(i)];
    out[at(i)] = 1;
    const One& one = rows_[at(taken)];
    for (int l : one.takes) --room_[at(l)];
    --to_choose_;
    Rest next;
    next.left_over = rest.left_over;
    next.budget = rest.budget - beyond;
    for (std::size_t other = 0; other < rest.rows.size(); ++other) {
      // The same row once more is possible too where there is room for two.
      if (out[other] && other != at(i)) continue;
      const std::vector<int>& takes = rows_[at(rest.rows[other].first)].takes;
      if (rest.rows[other].second <= next.budget &&
          std::all_of(takes.begin(), takes.end(), [&](int l) { return room_[at(l)] > 0; }))
        next.rows.push_back(rest.rows[other]);
    }
    const Is is = decide(std::move(next));
    for (int l : one.takes) ++room_[at(l)];
    ++to_choose_;
    if (is != Is::none) return is;
  }
  return Is::none;
}

}  // namespace floorwheel::certify
