// SPDX-License-Identifier: GPL-3.0-or-later
// One side of the bar is a pile: how many of each kind of disc. All different sums of piles are built kind by
// kind, heaviest first, keeping of equal sums the best pile; that stays best whatever lighter discs follow.
#include "scheduler/training/barbell.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <limits>

namespace floorwheel::training {
namespace {

struct Kind {
  Weight each;
  int per_side = 0;
};

/// Kinds that have at least one disc for each side, heaviest first, equal masses joined.
std::vector<Kind> kinds_of(const Barbell& b) {
  std::vector<Discs> discs = b.discs;
  std::ranges::stable_sort(discs, std::ranges::greater(), [](const Discs& d) { return d.each.mass; });
  std::vector<Kind> kinds;
  for (const Discs& d : discs) {
    assert(d.each.mass > Mass{} && d.count >= 0 && d.count <= most_discs);
    if (kinds.empty() || kinds.back().each.mass != d.each.mass) kinds.push_back({d.each, 0});
    kinds.back().per_side += d.count;
  }
  for (Kind& k : kinds) k.per_side /= 2;
  std::erase_if(kinds, [](const Kind& k) { return k.per_side == 0; });
  assert(kinds.size() <= most_kinds);
  return kinds;
}

struct Pile {
  Mass sum;
  int discs = 0;
  std::array<std::uint8_t, most_kinds> counts{};  // by kind, heaviest first
};

/// Ascending sums; of equal ones the fewest discs first, then the heavier first disc.
bool before(const Pile& a, const Pile& b) {
  if (a.sum != b.sum) return a.sum < b.sum;
  if (a.discs != b.discs) return a.discs < b.discs;
  return a.counts > b.counts;
}

/// The best pile of every sum up to `most`, ascending; nothing beyond most_sums.
std::optional<std::vector<Pile>> piles_of(const std::vector<Kind>& kinds, Mass most) {
  std::vector<Pile> piles{Pile{}};
  for (std::size_t k = 0; k < kinds.size(); ++k) {
    std::vector<Pile> next;
    for (const Pile& pile : piles)
      for (int n = 0; n <= kinds[k].per_side; ++n) {
        Pile more = pile;
        more.sum = pile.sum + n * kinds[k].each.mass;
        if (more.sum > most) break;
        more.discs += n;
        more.counts[k] = static_cast<std::uint8_t>(n);
        next.push_back(more);
      }
    std::ranges::sort(next, before);
    const auto alike = [](const Pile& a, const Pile& b) { return a.sum == b.sum; };
    next.erase(std::unique(next.begin(), next.end(), alike), next.end());
    if (next.size() > most_sums) return std::nullopt;
    piles = std::move(next);
  }
  return piles;
}

Hung hung(const Barbell& b, const std::vector<Kind>& kinds, const Pile& pile) {
  Hung h{b.empty() + 2 * pile.sum, {}};
  for (std::size_t k = 0; k < kinds.size(); ++k)
    h.per_side.insert(h.per_side.end(), pile.counts[k], kinds[k].each);
  return h;
}

MassUnit unit_of(const Barbell& b, const std::vector<Kind>& kinds) {
  const auto pounds = [](const Weight& w) { return w.unit == MassUnit::lb || w.mass == Mass{}; };
  const bool all = b.bar.unit == MassUnit::lb && pounds(b.collar) &&
                   std::ranges::all_of(kinds, [&](const Kind& k) { return pounds(k.each); });
  return all ? MassUnit::lb : MassUnit::kg;
}

/// Every pile of exactly `sum`, fewest discs first; nothing beyond most_sums.
class Ways {
 public:
  explicit Ways(const std::vector<Kind>& kinds) : kinds_(kinds) {}
  std::optional<std::vector<Pile>> of(Mass sum) {
    found_.clear();
    if (!search({}, 0, sum)) return std::nullopt;
    for (Pile& pile : found_) pile.sum = sum;
    std::ranges::sort(found_, before);
    return found_;
  }

 private:
  bool search(Pile pile, std::size_t k, Mass left) {
    if (left == Mass{}) {
      found_.push_back(pile);
      return found_.size() <= most_sums;
    }
    Mass most;
    for (std::size_t i = k; i < kinds_.size(); ++i) most = most + kinds_[i].per_side * kinds_[i].each.mass;
    if (most < left) return true;
    for (int n = 0; n <= kinds_[k].per_side; ++n) {
      const Mass rest = left - n * kinds_[k].each.mass;
      if (rest < Mass{}) break;
      Pile more = pile;
      more.discs += n;
      more.counts[k] = static_cast<std::uint8_t>(n);
      if (!search(more, k + 1, rest)) return false;
    }
    return true;
  }

  const std::vector<Kind>& kinds_;
  std::vector<Pile> found_;
};

/// Discs that stay when a pile gives way to another: the inner ones that both begin with.
int common(const Pile& a, const Pile& b) {
  int discs = 0;
  for (std::size_t k = 0; k < most_kinds; ++k) {
    discs += std::min(a.counts[k], b.counts[k]);
    if (a.counts[k] != b.counts[k]) break;
  }
  return discs;
}

}  // namespace

std::optional<NearestHung> nearest_hung(const Barbell& b, Mass target) {
  assert(target >= b.empty());
  const std::vector<Kind> kinds = kinds_of(b);
  const Mass both = target - b.empty();
  // The lightest pile over the target is no longer over it without its lightest disc.
  const Mass most{both.units / 2 + 1 + (kinds.empty() ? 0 : kinds.front().each.mass.units)};
  const auto piles = piles_of(kinds, most);
  if (!piles) return std::nullopt;
  const auto over = std::ranges::partition_point(*piles, [&](const Pile& p) { return 2 * p.sum < both; });
  NearestHung out;
  const bool exact = over != piles->end() && 2 * over->sum == both;
  out.below = hung(b, kinds, exact ? *over : *(over - 1));
  if (over != piles->end()) out.above = hung(b, kinds, *over);
  return out;
}

std::optional<std::vector<Weight>> loads_of(const Barbell& b) {
  const std::vector<Kind> kinds = kinds_of(b);
  const auto piles = piles_of(kinds, heaviest_load);
  if (!piles) return std::nullopt;
  std::vector<Weight> loads;
  for (const Pile& pile : *piles)
    if (const Mass load = b.empty() + 2 * pile.sum; load <= heaviest_load)
      loads.push_back({load, unit_of(b, kinds)});
  return loads;
}

std::optional<Sequence> fewest_changes(const Barbell& b, std::span<const Mass> loads) {
  const std::vector<Kind> kinds = kinds_of(b);
  Ways ways(kinds);
  // Best chain up to each way of the user at hand: changes first, then discs.
  struct Best {
    Pile pile;
    int changes = 0;
    int discs = 0;
    std::size_t from = 0;
  };
  std::vector<std::vector<Best>> users;
  for (const Mass load : loads) {
    const Mass both = load - b.empty();
    if (both < Mass{} || both.units % 2 != 0) return std::nullopt;
    const auto piles = ways.of({both.units / 2});
    if (!piles || piles->empty()) return std::nullopt;
    if (!users.empty() && piles->size() * users.back().size() > 50 * most_sums) return std::nullopt;
    std::vector<Best> now;
    for (const Pile& pile : *piles) {
      Best best{pile, 0, pile.discs, 0};
      if (!users.empty()) best.changes = std::numeric_limits<int>::max();
      for (std::size_t i = 0; !users.empty() && i < users.back().size(); ++i) {
        const Best& was = users.back()[i];
        const int changes = was.changes + 2 * (was.pile.discs + pile.discs - 2 * common(was.pile, pile));
        const int discs = was.discs + pile.discs;
        if (std::pair(changes, discs) < std::pair(best.changes, best.discs)) best = {pile, changes, discs, i};
      }
      now.push_back(best);
    }
    users.push_back(std::move(now));
  }
  Sequence out;
  if (users.empty()) return out;
  const auto cheaper = [](const Best& x, const Best& y) {
    return std::pair(x.changes, x.discs) < std::pair(y.changes, y.discs);
  };
  auto at = static_cast<std::size_t>(std::ranges::min_element(users.back(), cheaper) - users.back().begin());
  out.changes = users.back()[at].changes;
  for (auto user = users.rbegin(); user != users.rend(); ++user) {
    out.users.push_back(hung(b, kinds, (*user)[at].pile));
    at = (*user)[at].from;
  }
  std::ranges::reverse(out.users);
  return out;
}

}  // namespace floorwheel::training
