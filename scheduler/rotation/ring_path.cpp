// SPDX-License-Identifier: GPL-3.0-or-later
// Ring rows: a table over (slot, steps gone since the first station), one for working there and one for
// waiting after it; rule 6 bounds the steps. One table for each starting station.
#include <algorithm>
#include <limits>

#include "scheduler/rotation/member_path.h"

namespace floorwheel {
namespace {

struct Label {
  int parent = -1;  // the label of the visit before
  int slot = -1;    // the last worked one
  int steps = 0;    // gone since the row's first station
  int lap = 0;
  int lap_began = 0;  // steps gone at the lap's first station
  int visits = 0;
  PathPrice price;
};

constexpr int none = -1;

class RingPath {
 public:
  RingPath(const Problem& p, const Sheet& sheet, int m, const Openings& open,
           const std::vector<StationIndex>& ring, const std::vector<int>& place, bool thorough)
      : p_(p),
        sheet_(sheet),
        m_(m),
        open_(open),
        ring_(ring),
        place_(place),
        n_(p.stations),
        skip_most_(thorough ? p.stations * p.laps : 2),
        wait_most_(thorough ? p.slots : 2),
        moves_count_(p.is_repair && p.counts[ix(m)] != 0) {
    begin_ = std::max(p.from, p.first[ix(m)]);
    end_ = p.last[ix(m)];
  }

  Row find(bool thorough, Random& random) {
    Row best(ix(p_.slots), nowhere);
    for (int t = 0; t < p_.from; ++t) best[ix(t)] = sheet_.at(m_, t);
    if (end_ < begin_) return best;
    history();
    best_ = empty_price();
    if (past_ != none) {
      run(place_[ix(station_of(0))]);  // label 0 is the first visit
    } else if ((thorough && random.below(2) == 0) || !straight(random) || thorough) {
      const int turn = random.below(n_);
      int tries = 0;
      for (int i = 0; i < n_; ++i) {
        if (!run((turn + i) % n_)) continue;
        if (!thorough && ++tries == 4) break;
      }
    }
    for (const auto& [slot, s] : kept_) best[ix(slot)] = s;
    return best;
  }

 private:
  /// Tries rows that move one on in every slot, from every start; false: none visits all it could.
  bool straight(Random& random) {
    const auto& list = p_.required[ix(m_)];
    const int wanted = std::min(static_cast<int>(list.size()) * p_.laps, end_ - begin_ + 1);
    const int turn = random.below(n_);
    for (int i = 0; i < n_; ++i) {
      const int start = (turn + i) % n_;
      labels_.clear();
      labels_station_.clear();
      int last = none;
      for (int t = begin_; t <= end_ && t - begin_ < n_ * p_.laps; ++t) {
        const StationIndex s = ring_[ix((start + t - begin_) % n_)];
        if (!p_.work(m_, s).required) continue;
        if (!open_.may(t, s) || (open_.must[ix(t)] != nowhere && open_.must[ix(t)] != s)) break;
        const Label label = last == none ? started(t, s) : extended(last, t, t - begin_, s);
        if (label.lap > p_.laps) break;
        last = push(label, s);
      }
      if (last == none || labels_[ix(last)].visits < wanted || !(finished(last) < best_)) continue;
      best_ = finished(last);
      keep(last);
    }
    return !kept_.empty();
  }

  StationIndex station_of(int i) const { return labels_station_[ix(i)]; }

  int push(const Label& label, StationIndex s) {
    labels_.push_back(label);
    labels_station_.push_back(s);
    return static_cast<int>(labels_.size()) - 1;
  }

  void history() {
    for (int t = 0; t < p_.from; ++t) {
      const StationIndex s = sheet_.at(m_, t);
      if (s == nowhere) continue;
      Label to;
      if (past_ != none) {
        const int ahead = (place_[ix(s)] - place_[ix(station_of(past_))] + n_) % n_;
        to = extended(past_, t, labels_[ix(past_)].steps + (ahead == 0 ? n_ : ahead), s);
      } else {
        to = started(t, s);
      }
      past_ = push(to, s);
    }
    past_labels_ = labels_.size();
  }

  Label started(int t, StationIndex s) const {
    Label to;
    to.slot = t;
    to.lap = 1;
    to.visits = 1;
    to.price = path::step_price(p_, m_, s, t, nowhere, none);
    to.price.high += moved(t, s);
    return to;
  }

  /// The label of working s, `steps` gone, in slot t after label i. Its lap is past the last one allowed
  /// where rule 6 or 4 forbids it.
  Label extended(int i, int t, int steps, StationIndex s) const {
    const Label& from = labels_[ix(i)];
    Label to;
    to.parent = i;
    to.slot = t;
    to.steps = steps;
    to.lap = from.lap;
    to.lap_began = from.lap_began;
    to.visits = from.visits + 1;
    if (steps - from.lap_began >= n_) {
      const bool visited = visited_in_lap(i, s);
      to.lap = visited ? from.lap + 1 : p_.laps + 1;
      to.lap_began = steps;
    }
    if (steps >= p_.laps * n_) to.lap = p_.laps + 1;
    const PathPrice step = path::step_price(p_, m_, s, t, station_of(i), from.slot);
    to.price.high = from.price.high + step.high + moved(t, s);
    to.price.low = from.price.low + step.low + short_rests(i, t, s);
    return to;
  }

  bool visited_in_lap(int i, StationIndex s) const {
    const int began = labels_[ix(i)].lap_began;
    for (; i != none && labels_[ix(i)].steps >= began; i = labels_[ix(i)].parent)
      if (station_of(i) == s) return true;
    return false;
  }

  /// An entry of working s is weighed against that of waiting, so that waits add nothing.
  std::int64_t moved(int t, StationIndex s) const {
    if (!moves_count_ || t < p_.from) return 0;
    return (p_.old(m_, t) != s ? 1 : 0) - (p_.old(m_, t) != nowhere ? 1 : 0);
  }

  std::int64_t short_rests(int i, int t, StationIndex s) const {
    const int earliest = p_.rest_from(p_.level[ix(m_)], t);
    std::int64_t count = 0;
    for (; i != none && labels_[ix(i)].slot >= earliest; i = labels_[ix(i)].parent)
      if (labels_[ix(i)].slot < t - 1 && (p_.work(m_, station_of(i)).primary & p_.work(m_, s).primary))
        ++count;
    return count << path::short_rest_bit;
  }

  PathPrice empty_price() const { return past_ == none ? PathPrice{} : finished(past_); }

  PathPrice finished(int i) const {
    PathPrice price = labels_[ix(i)].price;
    price.low +=
        path::idle_price(std::max(0, labels_[ix(i)].slot - p_.first[ix(m_)] + 1 - labels_[ix(i)].visits));
    return price;
  }

  /// All rows that start at ring place `start`; false: nothing is open there at all.
  bool run(int start) {
    const int span = p_.laps * n_;
    labels_.resize(past_labels_);
    labels_station_.resize(past_labels_);
    std::vector<int> working(ix(span), none);  // in the slot before
    std::vector<int> waiting(ix(span), none);
    if (past_ != none && labels_[ix(past_)].steps < span)
      (labels_[ix(past_)].slot == begin_ - 1 ? working : waiting)[ix(labels_[ix(past_)].steps)] = past_;
    bool any = false;
    for (int t = begin_; t <= end_; ++t) {
      std::vector<int> now(ix(span), none);
      for (int steps = 0; steps < span; ++steps) {
        const StationIndex s = ring_[ix((start + steps) % n_)];
        if (!open_.may(t, s) || (open_.must[ix(t)] != nowhere && open_.must[ix(t)] != s)) continue;
        now[ix(steps)] = best_into(working, waiting, t, steps, s);
        any = any || now[ix(steps)] != none;
      }
      for (int steps = 0; steps < span; ++steps) {
        const int i = working[ix(steps)];
        if (i != none && better(i, waiting[ix(steps)])) waiting[ix(steps)] = i;
        int& w = waiting[ix(steps)];
        if (w != none && w != past_ && t - labels_[ix(w)].slot >= wait_most_) w = none;
      }
      working.swap(now);
    }
    return any;
  }

  int best_into(const std::vector<int>& working, const std::vector<int>& waiting, int t, int steps,
                StationIndex s) {
    Label best;
    bool found = false;
    if (steps == 0 && past_ == none) {
      best = started(t, s);
      found = true;
    }
    for (int before = std::max(0, steps - skip_most_); before < steps; ++before)
      for (const int i : {working[ix(before)], waiting[ix(before)]}) {
        if (i == none || hopeless(i, t, steps)) continue;
        // a visit more, and perhaps an entry less moved, is all the step can gain
        if (found && labels_[ix(i)].price.high - (std::int64_t{1} << path::worked_bit) - 1 > best.price.high)
          continue;
        const Label to = extended(i, t, steps, s);
        if (to.lap > p_.laps || (found && !(to.price < best.price))) continue;
        best = to;
        found = true;
      }
    if (!found) return none;
    const int i = push(best, s);
    if (const PathPrice price = finished(i); price < best_) {
      best_ = price;
      keep(i);
    }
    return i;
  }

  /// Whether no row that goes on from label i with a visit in slot t can be better than the best one known:
  /// were every slot and step left a visit that costs nothing.
  bool hopeless(int i, int t, int steps) const {
    const Label& from = labels_[ix(i)];
    const std::int64_t visits = 1 + std::min(end_ - t, p_.laps * n_ - 1 - steps);
    PathPrice least = from.price;
    least.high -= visits * ((std::int64_t{1} << path::worked_bit) + (moves_count_ ? 1 : 0));
    least.low += path::idle_price(std::max(0, t - p_.first[ix(m_)] - from.visits));
    return best_ < least;
  }

  bool better(int i, int other) const {
    return other == none || labels_[ix(i)].price < labels_[ix(other)].price;
  }

  /// Labels of other starts are dropped, so the best row is copied out at once.
  void keep(int i) {
    kept_.clear();
    for (; i != none && i >= static_cast<int>(past_labels_); i = labels_[ix(i)].parent)
      kept_.emplace_back(labels_[ix(i)].slot, station_of(i));
  }

  const Problem& p_;
  const Sheet& sheet_;
  const int m_;
  const Openings& open_;
  const std::vector<StationIndex>& ring_;
  const std::vector<int>& place_;
  const int n_;
  const int skip_most_, wait_most_;
  const bool moves_count_;
  int begin_ = 0, end_ = -1;
  int past_ = none;
  std::size_t past_labels_ = 0;
  std::vector<Label> labels_;
  std::vector<StationIndex> labels_station_;
  PathPrice best_;
  std::vector<std::pair<int, StationIndex>> kept_;  // slot and station of the best row
};

}  // namespace

Row ring_path(const Problem& p, const Sheet& sheet, int m, const Openings& open,
              const std::vector<StationIndex>& ring, const std::vector<int>& place, bool thorough,
              Random& random) {
  return RingPath(p, sheet, m, open, ring, place, thorough).find(thorough, random);
}

}  // namespace floorwheel
