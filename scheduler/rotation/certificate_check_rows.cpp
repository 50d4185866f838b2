// SPDX-License-Identifier: GPL-3.0-or-later
// The cheapest row of one member under prices, slot by slot over what each station remembers of those visited
// (Bellman 1962; Held and Karp 1962), and the bound that prices give: rules 2 and 5 are all that binds
// members together, so leaving rule 5 out and paying for places and units in place of counting them never
// makes the best rotation dearer (Lagrange's relaxation, Geoffrion 1974). Short rests are counted two slots
// apart, which is never too many.
#include <algorithm>
#include <array>
#include <bit>
#include <limits>

#include "scheduler/rotation/certificate_facts.h"

namespace floorwheel::certify {
namespace {

constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max();
constexpr int remembered_most = 23;  // others, at one station
constexpr int half = 12;             // bits of a code that are looked up at once

class RowTable {
 public:
  RowTable(const Facts& f, const Person& p, const PriceList& prices, bool forced_only)
      : f_(f), p_(p), prices_(prices), n_(static_cast<int>(p.list.size())), laps_(f.spec.laps) {
    for (int t = p.first + 2; t <= p.last; ++t)
      looks_back_ = looks_back_ || (w(Component::short_rest) > 0 && f.too_near(p.recovery_s, t - 2, t));
    befores_ = looks_back_ ? n_ + 1 : 1;
    bool all = true;
    for (int i = 0; i < n_; ++i) {
      bits_.emplace_back(at(n_), -1);
      int bit = 0;
      for (int j = 0; j < n_; ++j)
        if (j != i && (prices.memory.empty() || remembers(p.list[at(i)], p.list[at(j)])))
          bits_.back()[at(j)] = bit++;
      all = all && bit == n_ - 1;
      count_.push_back(bit);
      most_ = std::max(most_, bit);
    }
    const bool uneven = w(Component::uneven) > 0;
    if ((!all && (uneven || p.slots() > f.wanted(p))) || (laps_ > 1 && uneven))
      visits_ = static_cast<int>(std::min<std::int64_t>(f.wanted(p), p.slots()));
    if (forced_only && all && visits_ == 0 && (laps_ == 1 || f.forced(p) == 0))
      spare_ = p.slots() - static_cast<int>(f.wanted(p) - f.forced(p));
  }

  [[nodiscard]] bool fits() const { return most_ <= remembered_most; }

  [[nodiscard]] Wide entries() const {
    Wide codes = 0;
    for (int count : count_) codes += Wide{1} << count;
    const int slots = spare_ >= 0 ? std::min(p_.slots(), spare_ + 2) : p_.slots();
    return Wide{laps_} * std::max(1, visits_) * codes * n_ * befores_ * std::max(1, slots);
  }

  std::int64_t least() {
    for (int count : count_) {
      begin_.push_back(codes_);
      codes_ += std::size_t{1} << count;
    }
    for (int i = 0; i < n_; ++i)
      for (int j = 0; j < n_; ++j) thens_.push_back(then(i, j));
    const std::size_t states = at(std::max(1, visits_)) * at(laps_) * codes_;
    worked_.assign(states * at(befores_), never);
    rested_once_.assign(states, never);
    rested_.assign(states, never);
    std::int64_t best = ended(0, 0);
    for (int t = p_.first; t <= p_.last; ++t) best = std::min(best, advance(t));
    return best;
  }

 private:
  [[nodiscard]] std::int64_t w(Component c) const { return prices_.weights[c]; }
  [[nodiscard]] bool remembers(int here, int station) const {
    const std::vector<int>& list = prices_.memory[at(here)];
    return std::find(list.begin(), list.end(), station) != list.end();
  }
  /// `visits` before this one, where they are counted, else 0.
  [[nodiscard]] std::size_t key(int visits, int lap, int last, std::uint32_t code) const {
    return (at(visits) * at(laps_) + at(lap)) * codes_ + begin_[at(last)] + code;
  }

  /// What is remembered at j after i, by the lower and the upper half of what was at i.
  using Then = std::array<std::vector<std::uint32_t>, 2>;
  [[nodiscard]] Then then(int i, int j) const {
    Then out;
    for (int upper = 0; upper < 2; ++upper) {
      const int from = upper * half;
      const int bits = std::clamp(count_[at(i)] - from, 0, half);
      out[at(upper)].assign(std::size_t{1} << bits, 0);
      for (std::size_t part = 0; part < out[at(upper)].size(); ++part)
        for (int s = 0; s < n_; ++s) {
          const int bit = bits_[at(i)][at(s)];
          const bool in =
              s == i ? upper == 0 : bit >= from && bit < from + bits && (part >> (bit - from) & 1U);
          if (in && bits_[at(j)][at(s)] >= 0) out[at(upper)][part] |= 1U << bits_[at(j)][at(s)];
        }
    }
    return out;
  }

  /// A row that ends with so many visits, `missed` counted down for each on the way.
  [[nodiscard]] std::int64_t ended(std::int64_t so_far, int visits) const {
    const std::int64_t beyond = f_.wanted(p_) - visits - f_.forced(p_);
    return so_far + w(Component::missed) * f_.wanted(p_) + w(Component::uneven) * beyond * beyond;
  }

  /// Working the list's i-th station in slot t, by itself.
  [[nodiscard]] std::int64_t visit(int i, int t) const {
    const int s = p_.list[at(i)];
    std::int64_t sum = -w(Component::missed);
    if (!prices_.places.empty()) sum += prices_.places[at(s)][at(t)];
    if (!prices_.units.empty())
      for (int e : f_.takes[at(s)]) sum += prices_.units[at(e)][at(t)];
    return sum;
  }

  [[nodiscard]] std::int64_t joint(int i, int j, bool next_to) const {
    const int a = p_.list[at(i)];
    const int b = p_.list[at(j)];
    std::int64_t sum = w(Component::walk_cm) * f_.walk[at(a)][at(b)];
    if (next_to && Facts::back_to_back(p_, a, b)) sum += w(Component::back_to_back);
    if (next_to && Facts::assists(p_, a, b)) sum += w(Component::assist_overlap);
    return sum;
  }

  /// Work at i in slot t - 2 (-1: none) and at j in slot t.
  [[nodiscard]] std::int64_t rest(int i, int j, bool near) const {
    return near && i >= 0 && Facts::back_to_back(p_, p_.list[at(i)], p_.list[at(j)])
               ? w(Component::short_rest)
               : 0;
  }

  static void lower(std::int64_t& to, std::int64_t value) { to = std::min(to, value); }

  /// The tables after slot t from those before it; the least row that ends with work in t.
  std::int64_t advance(int t) {
    const std::int64_t idle = w(Component::idle);
    const bool near = looks_back_ && t - 2 >= p_.first && f_.too_near(p_.recovery_s, t - 2, t);
    std::vector<std::int64_t> worked(worked_.size(), never);
    std::vector<std::int64_t> once(rested_.size(), never);
    std::vector<std::int64_t> rested(rested_.size(), never);
    std::vector<std::uint8_t> open;
    for (int s : p_.list) open.push_back(f_.places(s, t) > 0 ? 1 : 0);
    for (int j = 0; j < n_; ++j)
      if (open[at(j)]) lower(worked[key(0, 0, j, 0) * at(befores_)], visit(j, t) + idle * (t - p_.first));
    const int groups = std::max(1, visits_) * laps_;
    for (int group = 0; group < groups; ++group)
      for (int i = 0; i < n_; ++i)
        for (std::uint32_t code = 0; code < 1U << count_[at(i)]; ++code) {
          const int visits = group / laps_;
          const int lap = group % laps_;
          if (spare_ >= 0) {
            const int rests = t - p_.first - (lap * n_ + std::popcount(code) + 1);
            if (rests < 0 || rests > spare_) continue;
          }
          const std::size_t here = key(visits, lap, i, code);
          std::int64_t any = never;
          for (int b = 0; b < befores_; ++b) lower(any, worked_[here * at(befores_) + at(b)]);
          const std::int64_t once_here = rested_once_[here];
          const std::int64_t long_here = rested_[here];
          if (any == never && once_here == never && long_here == never) continue;
          if (any != never) lower(once[here], any + idle);
          if (once_here != never) lower(rested[here], once_here + idle);
          if (long_here != never) lower(rested[here], long_here + idle);
          if (visits_ > 0 && visits + 1 == visits_) continue;
          for (int j = 0; j < n_; ++j) {
            if (!open[at(j)]) continue;
            const int bit = bits_[at(i)][at(j)];
            const bool new_lap = i == j || (bit >= 0 && (code >> bit & 1U) != 0);
            if (new_lap && lap + 1 == laps_) continue;
            const Then& then = thens_[at(i) * at(n_) + at(j)];
            const std::uint32_t to_code =
                new_lap ? 0 : then[0][code & ((1U << half) - 1)] | then[1][code >> half];
            const std::size_t to =
                key(visits_ > 0 ? visits + 1 : 0, lap + (new_lap ? 1 : 0), j, to_code) * at(befores_);
            const std::int64_t step = visit(j, t);
            if (any != never) {
              const std::size_t before = looks_back_ ? at(i + 1) : 0;
              for (int b = 0; b < befores_; ++b)
                if (const std::int64_t so_far = worked_[here * at(befores_) + at(b)]; so_far != never)
                  lower(worked[to + before], so_far + step + joint(i, j, true) + rest(b - 1, j, near));
            }
            if (once_here != never)
              lower(worked[to], once_here + step + joint(i, j, false) + rest(i, j, near));
            if (long_here != never) lower(worked[to], long_here + step + joint(i, j, false));
          }
        }
    worked_.swap(worked);
    rested_once_.swap(once);
    rested_.swap(rested);
    std::int64_t best = never;
    for (int group = 0; group < groups; ++group)
      for (int i = 0; i < n_; ++i)
        for (std::uint32_t code = 0; code < 1U << count_[at(i)]; ++code) {
          const std::size_t k = key(group / laps_, group % laps_, i, code) * at(befores_);
          for (int b = 0; b < befores_; ++b)
            if (worked_[k + at(b)] != never)
              lower(best,
                    ended(worked_[k + at(b)], visits_ > 0 ? group / laps_ + 1 : std::popcount(code) + 1));
        }
    return best;
  }

  const Facts& f_;
  const Person& p_;
  const PriceList& prices_;
  const int n_;
  const int laps_;
  bool looks_back_ = false;
  int befores_ = 1;  // 0: nothing two slots ago; i + 1: the list's i-th station
  int visits_ = 0;   // counted up to so many; 0: need not be counted
  int spare_ = -1;   // slots not worked, where all laps are whole and no visit but forced ones missed
  int most_ = 0;     // the largest of count_
  std::vector<std::vector<int>> bits_;  // [at][other] bit in what is remembered there, -1: is not
  std::vector<int> count_;              // [at] others remembered
  std::vector<std::size_t> begin_;
  std::size_t codes_ = 0;
  std::vector<Then> thens_;           // [from][to]
  std::vector<std::int64_t> worked_;  // [visits][lap][last, code][before] work in the last slot
  std::vector<std::int64_t>
      rested_once_;                   // [visits][lap][last, code] not in the last slot, but in that before
  std::vector<std::int64_t> rested_;  // not worked in the last two
};

bool table_fits(const std::vector<std::vector<std::int64_t>>& table, int rows, int slots,
                std::int64_t& most) {
  if (table.empty()) return true;
  if (static_cast<int>(table.size()) != rows) return false;
  for (const auto& row : table) {
    if (static_cast<int>(row.size()) != slots) return false;
    for (std::int64_t price : row) {
      if (price < 0) return false;
      most = std::max(most, price);
    }
  }
  return true;
}

}  // namespace

std::string prices_hold(const Facts& f, Component component, const PriceList& prices) {
  if (prices.scale < 1 || prices.weights[component] != prices.scale)
    return "the component's own weight is not the scale";
  bool later = false;
  for (Component c : order()) {
    if (prices.weights[c] < 0) return "a weight is below 0";
    if (later && prices.weights[c] != 0) return "a later component has a weight";
    later = later || c == component;
  }
  if (prices.weights[Component::reload_hg] != 0 || prices.weights[Component::moved] != 0)
    return "rows alone say nothing of this component";
  std::int64_t place = 0;
  std::int64_t unit = 0;
  if (!table_fits(prices.places, f.stations, f.slots, place) ||
      !table_fits(prices.units, f.kinds, f.slots, unit))
    return "the prices are not one for each slot, or one is below 0";
  if (!prices.memory.empty() && static_cast<int>(prices.memory.size()) != f.stations)
    return "the memory is not one list for each station";
  // Nothing below may leave 64 bits: no row costs more than this.
  Wide most = Wide{f.slots} * (Wide{place} + Wide{unit} * std::max(1, f.kinds));
  for (Component c : order()) {
    Wide count = Wide{f.slots} * f.slots + Wide{f.stations} * f.spec.laps * f.stations * f.spec.laps;
    if (c == Component::walk_cm) count = Wide{f.slots} * std::numeric_limits<int>::max();
    most += count * prices.weights[c];
  }
  if (most > (Wide{1} << 61)) return "the prices are too large to be summed";
  return {};
}

std::optional<std::int64_t> cheapest_row(const Facts& f, const Person& p, const PriceList& prices,
                                         bool forced_only, std::int64_t& entries) {
  RowTable table(f, p, prices, forced_only);
  if (!table.fits() || table.entries() > entries) return std::nullopt;
  entries -= static_cast<std::int64_t>(table.entries());
  return table.least();
}

ClaimVerdict check_rows(const Facts& f, const Certificate& all, const Claim& claim, std::int64_t table) {
  const PriceList& prices = claim.proof.prices;
  if (std::string wrong = prices_hold(f, claim.component, prices); !wrong.empty())
    return {Verdict::fails, wrong};
  if (claim.proof.type == ProofType::member && !(prices.places.empty() && prices.units.empty()))
    return {Verdict::fails, "members alone pay no prices"};
  Wide sum = 0;
  // Nobody then misses more than the own window forces, as the claim says of the rotations it is about.
  const bool forced_only = claim.component != Component::missed && all.cost[Component::missed] == f.forced();
  std::vector<std::pair<const Person*, std::int64_t>> known;
  for (const Person& p : f.people) {
    const auto same = std::find_if(known.begin(), known.end(), [&](auto& k) { return k.first->like(p); });
    if (same != known.end()) {
      sum += same->second;
      continue;
    }
    const auto least = cheapest_row(f, p, prices, forced_only, table);
    if (!least) return {Verdict::not_rechecked, "the table of rows would be too large"};
    known.emplace_back(&p, *least);
    sum += *least;
  }
  for (int t = 0; t < f.slots; ++t) {
    if (!prices.places.empty())
      for (int s = 0; s < f.stations; ++s) sum -= Wide{prices.places[at(s)][at(t)]} * f.places(s, t);
    if (!prices.units.empty())
      for (int e = 0; e < f.kinds; ++e)
        sum -= Wide{prices.units[at(e)][at(t)]} * f.spec.equipment[at(e)].units;
  }
  return reached(claim, beyond_given(all, claim, sum));
}

}  // namespace floorwheel::certify
