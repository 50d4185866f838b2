// SPDX-License-Identifier: GPL-3.0-or-later
// Free rows: slot by slot, each label either works an open station or waits; the best labels go on.
#include "scheduler/rotation/member_path.h"

#include <algorithm>

namespace floorwheel {

PathPrice path::step_price(const Problem& p, int m, StationIndex s, int t, StationIndex before,
                           int t_before) {
  PathPrice price;
  price.high = -(std::int64_t{1} << worked_bit);
  if (before == nowhere) return price;
  price.low = std::min<std::int64_t>(p.walk_cm(before, s), walk_most / 256);
  if (t_before != t - 1) return price;
  const Work& now = p.work(m, s);
  const Work& then = p.work(m, before);
  if (now.primary & then.primary)
    price.high += std::int64_t{1} << back_to_back_bit;
  else if ((now.primary & then.assisting) | (now.assisting & then.primary))
    price.low += std::int64_t{1} << assist_bit;
  return price;
}

namespace {

struct Label {
  int parent = -1;
  StationIndex station = nowhere;  // in this slot
  int slot = -1;
  StationIndex last = nowhere;
  int last_slot = -1;
  int lap = 0;
  int in_lap = 0;  // stations visited in this lap
  PathPrice price;
  PathPrice rank;             // price with what is surely lost
  std::uint64_t visited = 0;  // hash of the lap's stations
  int tie = 0;
};

class FreePath {
 public:
  FreePath(const Problem& p, const Sheet& sheet, int m, const Openings& open, int width, Random& random)
      : p_(p), sheet_(sheet), m_(m), open_(open), width_(width), random_(random) {
    for (int s = 0; s < p.stations; ++s) key_.push_back(Random(ix(s) + 1).next());
    seen_.assign(ix(p.stations), 0);
    last_open_.assign(ix(p.stations), -1);
    for (int s : p.required[ix(m)])
      for (int t = p.from; t < p.slots; ++t)
        if (open.may(t, s)) last_open_[ix(s)] = t;
  }

  Row find() {
    Label start;
    for (int t = 0; t < p_.from; ++t) {
      labels_.push_back(start);
      if (sheet_.at(m_, t) == nowhere) continue;
      look_back(static_cast<int>(labels_.size()) - 1);
      start = work(static_cast<int>(labels_.size()) - 1, t, sheet_.at(m_, t));
    }
    labels_.push_back(start);
    std::vector<int> beam{static_cast<int>(labels_.size()) - 1};
    for (int t = std::max(p_.from, p_.first[ix(m_)]); t <= p_.last[ix(m_)]; ++t) beam = advance(beam, t);
    return unfold(*std::min_element(beam.begin(), beam.end(),
                                    [&](int a, int b) { return final_price(a) < final_price(b); }));
  }

 private:
  /// Marks in seen_ the stations that label i has visited in its lap.
  void look_back(int i) {
    std::fill(seen_.begin(), seen_.end(), 0);
    for (int left = labels_[ix(i)].in_lap; left > 0; i = labels_[ix(i)].parent) {
      if (labels_[ix(i)].station == nowhere) continue;
      seen_[ix(labels_[ix(i)].station)] = 1;
      --left;
    }
  }

  /// Label i, looked back from, with s worked in slot t.
  Label work(int i, int t, StationIndex s) const {
    const Label& from = labels_[ix(i)];
    Label to;
    to.parent = i;
    to.station = s;
    to.slot = t;
    to.last = s;
    to.last_slot = t;
    const bool new_lap = from.lap == 0 || seen_[ix(s)];
    to.lap = from.lap + (new_lap ? 1 : 0);
    to.in_lap = new_lap ? 1 : from.in_lap + 1;
    to.visited = (new_lap ? 0 : from.visited) ^ key_[ix(s)];
    to.price = from.price;
    const PathPrice step = path::step_price(p_, m_, s, t, from.last, from.last_slot);
    to.price.high += step.high + moved(t, s);
    to.price.low += step.low + short_rests(i, t, s);
    return to;
  }

  std::int64_t moved(int t, StationIndex s) const {
    return p_.is_repair && p_.counts[ix(m_)] && t >= p_.from && p_.old(m_, t) != s ? 1 : 0;
  }

  std::int64_t short_rests(int i, int t, StationIndex s) const {
    const int earliest = p_.rest_from(p_.level[ix(m_)], t);
    std::int64_t count = 0;
    for (; i >= 0 && labels_[ix(i)].slot >= earliest; i = labels_[ix(i)].parent) {
      const Label& then = labels_[ix(i)];
      if (then.slot < t - 1 && then.station != nowhere &&
          (p_.work(m_, then.station).primary & p_.work(m_, s).primary))
        ++count;
    }
    return count << path::short_rest_bit;
  }

  std::vector<int> advance(const std::vector<int>& beam, int t) {
    next_.clear();
    const auto& list = p_.required[ix(m_)];
    const auto opens = [&](StationIndex s) { return last_open_[ix(s)] > t ? 1 : 0; };
    int all_later = 0;
    for (int s : list) all_later += opens(s);
    for (int i : beam) {
      look_back(i);
      int later = 0;  // stations of this lap that are still to come and open again
      for (int s : list) later += seen_[ix(s)] ? 0 : opens(s);
      const StationIndex must = open_.must[ix(t)];
      bool followed = false;
      for (int s : list) {
        if (must != nowhere ? s != must : !open_.may(t, s)) continue;
        Label to = work(i, t, s);
        if (to.lap > p_.laps) continue;
        followed = true;
        rank(to, t, (to.in_lap == 1 ? all_later : later) - opens(s));
        next_.push_back(to);
      }
      if (must != nowhere && followed) continue;
      Label to = labels_[ix(i)];
      to.parent = i;
      to.station = nowhere;
      to.slot = t;
      to.price.high += moved(t, nowhere);
      rank(to, t, later);
      next_.push_back(to);
    }
    return keep_best(t);
  }

  /// Price with the visits that can still come: as slots are left, and stations in this lap and the next.
  void rank(Label& label, int t, int later_in_lap) {
    const int slots_left = p_.last[ix(m_)] - t;
    const int can =
        later_in_lap + (p_.laps - std::max(label.lap, 1)) * static_cast<int>(p_.required[ix(m_)].size());
    label.rank = label.price;
    label.rank.high -= std::int64_t{std::min(slots_left, can)} << path::worked_bit;
    if (label.last_slot >= 0) label.rank.low += path::idle_price(t - label.last_slot);
    label.tie = random_.below(1 << 16);
  }

  std::vector<int> keep_best(int t) {
    std::sort(next_.begin(), next_.end(), [](const Label& a, const Label& b) {
      return a.rank != b.rank ? a.rank < b.rank : a.tie < b.tie;
    });
    std::vector<int> beam;
    std::vector<std::uint64_t> kept;
    for (const Label& label : next_) {
      const std::uint64_t state =
          label.visited * 31 + ix(label.last + 1) * 7 + (label.last_slot == t ? 1 : 0) + ix(label.lap) * 1009;
      if (std::find(kept.begin(), kept.end(), state) != kept.end()) continue;
      kept.push_back(state);
      beam.push_back(static_cast<int>(labels_.size()));
      labels_.push_back(label);
      if (static_cast<int>(beam.size()) == width_) break;
    }
    return beam;
  }

  PathPrice final_price(int i) const {
    PathPrice price = labels_[ix(i)].price;
    if (labels_[ix(i)].last_slot < 0) return price;
    const auto worked = -(price.high >> path::worked_bit);
    price.low += path::idle_price(labels_[ix(i)].last_slot - p_.first[ix(m_)] + 1 - static_cast<int>(worked));
    return price;
  }

  Row unfold(int i) const {
    Row row(ix(p_.slots), nowhere);
    for (; i >= 0; i = labels_[ix(i)].parent)
      if (labels_[ix(i)].slot >= 0) row[ix(labels_[ix(i)].slot)] = labels_[ix(i)].station;
    return row;
  }

  const Problem& p_;
  const Sheet& sheet_;
  const int m_;
  const Openings& open_;
  const int width_;
  Random& random_;
  std::vector<std::uint64_t> key_;
  std::vector<int> last_open_;
  std::vector<std::uint8_t> seen_;
  std::vector<Label> labels_;
  std::vector<Label> next_;
};

}  // namespace

Row free_path(const Problem& p, const Sheet& sheet, int m, const Openings& open, int width, Random& random) {
  return FreePath(p, sheet, m, open, width, random).find();
}

}  // namespace floorwheel
