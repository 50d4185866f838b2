// SPDX-License-Identifier: GPL-3.0-or-later
// Rows are collected depth first; then always the place or the members with the fewest rows left are served.
#include "scheduler/rotation/row_cover.h"

#include <algorithm>
#include <map>

namespace floorwheel {
namespace {

constexpr std::size_t rows_most = 6000;
constexpr std::int64_t looks_most = 400'000;      // while collecting
constexpr std::int64_t checks_most = 30'000'000;  // rows looked at while choosing
constexpr std::int64_t checks_a_step = 100;

/// Members who can have the same rows.
struct Kind {
  std::vector<int> members;
  std::vector<Row> rows;
};

class Collector {
 public:
  explicit Collector(const Problem& p) : p_(p) {}

  /// False: there are too many.
  bool collect(std::vector<Kind>& kinds) {
    std::map<std::vector<std::uint32_t>, std::size_t> index;
    for (int m = 0; m < p_.members; ++m) {
      std::vector<std::uint32_t> key{static_cast<std::uint32_t>(p_.first[ix(m)]),
                                     static_cast<std::uint32_t>(p_.last[ix(m)])};
      for (int s = 0; s < p_.stations; ++s) {
        key.push_back(p_.work(m, s).required ? 1 : 0);
        key.push_back(p_.work(m, s).primary);
      }
      const auto [it, is_new] = index.try_emplace(std::move(key), kinds.size());
      if (is_new) kinds.push_back({});
      kinds[it->second].members.push_back(m);
    }
    for (Kind& kind : kinds)
      if (!collect(kind)) return false;
    return true;
  }

 private:
  bool collect(Kind& kind) {
    const int m = kind.members.front();
    row_.assign(ix(p_.slots), nowhere);
    seen_.assign(ix(p_.stations), 0);
    rests_ = std::max(0, p_.slots_present(m) - p_.visits_wanted(m));
    return extend(kind, m, p_.first[ix(m)]);
  }

  bool extend(Kind& kind, int m, int t) {
    if (++looks_ > looks_most) return false;
    if (t > p_.last[ix(m)]) {
      kind.rows.push_back(row_);
      return ++rows_ <= rows_most;
    }
    const StationIndex before = t > 0 ? row_[ix(t - 1)] : nowhere;
    for (int s : p_.required[ix(m)]) {
      if (seen_[ix(s)] || p_.places(s, t) < 1 ||
          (before != nowhere && (p_.work(m, before).primary & p_.work(m, s).primary)))
        continue;
      seen_[ix(s)] = 1;
      row_[ix(t)] = s;
      const bool few = extend(kind, m, t + 1);
      row_[ix(t)] = nowhere;
      seen_[ix(s)] = 0;
      if (!few) return false;
    }
    if (rests_ == 0) return true;
    --rests_;
    const bool few = extend(kind, m, t + 1);
    ++rests_;
    return few;
  }

  const Problem& p_;
  Row row_;
  std::vector<std::uint8_t> seen_;
  int rests_ = 0;
  std::int64_t looks_ = 0;
  std::size_t rows_ = 0;
};

class Cover {
 public:
  Cover(const Problem& p, const std::vector<Kind>& kinds, Budget& budget, const Found& found)
      : p_(p), kinds_(kinds), budget_(budget), found_(found), room_(p.stations, p.slots) {
    std::int64_t places = 0;
    std::int64_t visits = 0;
    for (int s = 0; s < p.stations; ++s)
      for (int t = 0; t < p.slots; ++t) places += room_(s, t) = p.places(s, t);
    for (std::size_t k = 0; k < kinds.size(); ++k) {
      left_.push_back(static_cast<int>(kinds[k].members.size()));
      const int m = kinds[k].members.front();
      visits += std::int64_t{left_.back()} * (p.visits_wanted(m) - p.forced_missed(m));
      for (std::size_t r = 0; r < kinds[k].rows.size(); ++r)
        all_.push_back({static_cast<int>(k), static_cast<int>(r)});
    }
    full_ = places == visits;
    chosen_.resize(kinds.size());
  }

  bool choose() { return choose(all_); }

  [[nodiscard]] std::vector<Row> rows() const {
    std::vector<Row> out(ix(p_.members));
    for (std::size_t k = 0; k < kinds_.size(); ++k)
      for (std::size_t i = 0; i < chosen_[k].size(); ++i)
        out[ix(kinds_[k].members[i])] = kinds_[k].rows[ix(chosen_[k][i])];
    return out;
  }

 private:
  struct Candidate {
    int kind, row;
  };
  [[nodiscard]] const Row& row(Candidate c) const { return kinds_[ix(c.kind)].rows[ix(c.row)]; }

  [[nodiscard]] bool fits(Candidate c) const {
    if (left_[ix(c.kind)] == 0) return false;
    const Row& r = row(c);
    for (int t = 0; t < p_.slots; ++t)
      if (r[ix(t)] != nowhere && room_(r[ix(t)], t) < 1) return false;
    return true;
  }

  /// What has the fewest rows to be served with: a kind of members, or a place of a floor that has to be
  /// full.
  void hardest(const std::vector<Candidate>& alive, int& kind, int& station, int& slot) const {
    std::vector<int> of_kind(kinds_.size(), 0);
    Grid<int> of_place(p_.stations, p_.slots, 0);
    for (const Candidate& c : alive) {
      ++of_kind[ix(c.kind)];
      const Row& r = row(c);
      for (int t = 0; t < p_.slots; ++t)
        if (r[ix(t)] != nowhere) ++of_place(r[ix(t)], t);
    }
    int fewest = 1 << 30;
    for (int k = 0; k < static_cast<int>(kinds_.size()); ++k)
      if (left_[ix(k)] > 0 && of_kind[ix(k)] < fewest) {
        fewest = of_kind[ix(k)];
        kind = k;
      }
    for (int s = 0; full_ && s < p_.stations; ++s)
      for (int t = 0; t < p_.slots; ++t)
        if (room_(s, t) > 0 && of_place(s, t) < fewest) {
          fewest = of_place(s, t);
          kind = -1;
          station = s;
          slot = t;
        }
  }

  bool choose(std::vector<Candidate> alive) {
    if (std::all_of(left_.begin(), left_.end(), [](int n) { return n == 0; })) return true;
    int kind = -1;
    int station = nowhere;
    int slot = -1;
    hardest(alive, kind, station, slot);
    const auto serves = [&](Candidate c) { return kind >= 0 ? c.kind == kind : row(c)[ix(slot)] == station; };
    std::vector<Candidate> ways;
    std::copy_if(alive.begin(), alive.end(), std::back_inserter(ways), serves);
    for (const Candidate& c : ways) {
      checks_ += static_cast<std::int64_t>(alive.size());
      if (checks_ > checks_most ||
          !budget_.spend(static_cast<std::int64_t>(alive.size()) / checks_a_step, found_.cost, found_.bound))
        return false;
      put(c, -1);
      std::vector<Candidate> next;
      std::copy_if(alive.begin(), alive.end(), std::back_inserter(next),
                   [&](Candidate other) { return fits(other); });
      if (choose(std::move(next))) return true;
      put(c, 1);
      // Whatever this row is part of has been looked at.
      std::erase_if(alive, [&](Candidate other) { return other.kind == c.kind && other.row == c.row; });
    }
    return false;
  }

  void put(Candidate c, int sign) {
    const Row& r = row(c);
    for (int t = 0; t < p_.slots; ++t)
      if (r[ix(t)] != nowhere) room_(r[ix(t)], t) += sign;
    left_[ix(c.kind)] += sign;
    if (sign < 0)
      chosen_[ix(c.kind)].push_back(c.row);
    else
      chosen_[ix(c.kind)].pop_back();
  }

  const Problem& p_;
  const std::vector<Kind>& kinds_;
  Budget& budget_;
  const Found& found_;
  Grid<int> room_;
  std::vector<int> left_;
  std::vector<Candidate> all_;
  std::vector<std::vector<int>> chosen_;
  bool full_ = false;
  std::int64_t checks_ = 0;
};

}  // namespace

bool cover_with_rows(const Problem& p, Found& found, Budget& budget) {
  if (p.is_repair || p.laps > 1 || p.kinds > 0 || static_cast<int>(p.teams.size()) < p.members) return false;
  std::int64_t forced = 0;
  for (int m = 0; m < p.members; ++m) {
    if (!p.foes[ix(m)].empty()) return false;
    forced += p.forced_missed(m);
  }
  if (found.bound[Component::missed] > forced) return false;
  std::vector<Kind> kinds;
  if (!Collector(p).collect(kinds)) return false;
  Cover cover(p, kinds, budget, found);
  if (!cover.choose()) return false;
  found.rows = cover.rows();
  found.cost = price(p, Sheet(p, found.rows));
  return true;
}

}  // namespace floorwheel
