// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/ring_walk.h"

#include <algorithm>
#include <bit>
#include <limits>

#include "scheduler/rotation/bounds.h"

namespace floorwheel {
namespace {

constexpr int stations_most = 20;
constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max() / 4;

/// Joints by how many walk them: `free_` have everybody, of those left out by a cohort there are `cut_`, and
/// one may be left out by the rest. A layer of the table is how many of both have been used.
class Table {
 public:
  Table(const Problem& p, const JointWeights& weights)
      : n_(p.stations), cohort_(p.places_always()), cut_(p.members / cohort_), rest_(p.members % cohort_) {
    if (cut_ >= n_) {
      base_ = p.members - cohort_;
      cut_ = rest_ = 0;
    } else {
      base_ = p.members;
    }
    layers_ = (cut_ + 1) * (rest_ > 0 ? 2 : 1);
    joint_ = Grid<std::int64_t>(n_, n_);
    for (int a = 0; a < n_; ++a)
      for (int b = 0; b < n_; ++b) {
        const Work& one = p.work(0, a);
        const Work& other = p.work(0, b);
        std::int64_t w = weights.walk_cm * p.walk_cm(a, b);
        if (one.primary & other.primary)
          w += weights.back_to_back;
        else if ((one.primary & other.assisting) | (one.assisting & other.primary))
          w += weights.assist;
        joint_(a, b) = w;
      }
  }

  /// Sets hold the stations but the last, n - 1, where the ring starts and ends.
  RingWalk find() {
    const int k = n_ - 1;
    const std::uint32_t all = (1U << k) - 1;
    best_.assign((std::size_t{all} + 1) * ix(k) * ix(layers_), never);
    for (int v = 0; v < k; ++v)
      for (const Use& use : uses(0)) lower(at(1U << v, v, use.to), joint_(k, v) * use.walkers);
    for (std::uint32_t set = 1; set <= all; ++set)
      for (std::uint32_t lasts = set; lasts; lasts &= lasts - 1) {
        const int last = std::countr_zero(lasts);
        for (int layer = 0; layer < layers_; ++layer) {
          const std::int64_t here = at(set, last, layer);
          if (here >= never) continue;
          const auto ways = uses(layer);
          for (std::uint32_t next = all & ~set; next; next &= next - 1) {
            const int v = std::countr_zero(next);
            for (const Use& use : ways)
              lower(at(set | 1U << v, v, use.to), here + joint_(last, v) * use.walkers);
          }
        }
      }
    RingWalk out{never, {}};
    int last = 0;
    int layer = 0;
    for (int v = 0; v < k; ++v)
      for (int l = 0; l < layers_; ++l)
        for (const Use& use : uses(l))
          if (const std::int64_t sum = at(all, v, l) + joint_(v, k) * use.walkers;
              at(all, v, l) < never && sum < out.least) {
            out.least = sum;
            last = v;
            layer = l;
          }
    out.order = back(all, last, layer);
    return out;
  }

 private:
  struct Use {
    int walkers, to;
  };
  /// Who walks the next joint, and the layer after it.
  [[nodiscard]] std::vector<Use> uses(int layer) const {
    const int cut = layer % (cut_ + 1);
    std::vector<Use> out{{base_, layer}};
    if (cut < cut_) out.push_back({base_ - cohort_, layer + 1});
    if (rest_ > 0 && layer <= cut_) out.push_back({base_ - rest_, layer + cut_ + 1});
    return out;
  }
  std::int64_t& at(std::uint32_t set, int last, int layer) {
    return best_[(std::size_t{set} * ix(n_ - 1) + ix(last)) * ix(layers_) + ix(layer)];
  }
  static void lower(std::int64_t& to, std::int64_t value) { to = std::min(to, value); }

  std::vector<StationIndex> back(std::uint32_t set, int last, int layer) {
    std::vector<StationIndex> order{n_ - 1};
    while (true) {
      order.push_back(last);
      const std::uint32_t before = set & ~(1U << last);
      if (before == 0) break;
      const std::int64_t here = at(set, last, layer);
      bool found = false;
      for (std::uint32_t lasts = before; lasts && !found; lasts &= lasts - 1) {
        const int v = std::countr_zero(lasts);
        for (int l = 0; l < layers_ && !found; ++l)
          for (const Use& use : uses(l))
            if (use.to == layer && at(before, v, l) < never &&
                at(before, v, l) + joint_(v, last) * use.walkers == here) {
              set = before;
              last = v;
              layer = l;
              found = true;
              break;
            }
      }
    }
    std::reverse(order.begin() + 1, order.end());
    return order;
  }

  const int n_;
  const int cohort_;
  int cut_, rest_;
  int base_ = 0;
  int layers_ = 1;
  Grid<std::int64_t> joint_;
  std::vector<std::int64_t> best_;
};

}  // namespace

std::int64_t ring_walk_entries(const Problem& p) {
  if (p.members == 0 || !everybody_alike(p) || p.stations > stations_most) return 0;
  for (int m = 0; m < p.members; ++m)
    for (int s = 0; s < p.stations; ++s)
      if (p.work(m, s).assisting != p.work(0, s).assisting) return 0;
  const int cohort = p.places_always();
  if (cohort < 1 || cohort * p.stations < p.members) return 0;
  const int cut = p.members / cohort;
  const std::int64_t layers = cut >= p.stations ? 1 : std::int64_t{2} * (cut + 1);
  return (std::int64_t{1} << (p.stations - 1)) * p.stations * p.stations / 2 * layers;
}

RingWalk cheapest_ring(const Problem& p, const JointWeights& weights) { return Table(p, weights).find(); }

JointWeights in_order(const Problem& p, Component last) {
  std::int64_t longest = 1;
  for (int a = 0; a < p.stations; ++a)
    for (int b = 0; b < p.stations; ++b) longest = std::max<std::int64_t>(longest, p.walk_cm(a, b));
  const std::int64_t joints = std::int64_t{p.members} * p.stations;
  JointWeights w;
  w.walk_cm = last == Component::walk_cm ? 1 : 0;
  if (last >= Component::assist_overlap) w.assist = w.walk_cm * joints * longest + 1;
  w.back_to_back = w.assist * joints + (w.walk_cm * joints * longest) + 1;
  return w;
}

}  // namespace floorwheel
