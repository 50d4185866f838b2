// SPDX-License-Identifier: GPL-3.0-or-later
// Counts of places and units, and the rules that a single row or pair can break: 4, 5 and 6.
#include "scheduler/rotation/sheet.h"

#include <algorithm>

namespace floorwheel {
namespace {

/// True: a visit to s begins a lap.
bool count_lap(StationIndex s, int& lap, std::vector<int>& seen_in) {
  const bool begins = lap == 0 || seen_in[ix(s)] == lap;
  if (begins) ++lap;
  seen_in[ix(s)] = lap;
  return begins;
}

}  // namespace

bool laps_hold(const Problem& p, const StationIndex* row) {
  std::vector<int> seen_in(ix(p.stations), 0);
  int lap = 0;
  for (int t = 0; t < p.slots; ++t) {
    if (row[t] == nowhere) continue;
    count_lap(row[t], lap, seen_in);
    if (t >= p.from && lap > p.laps) return false;
  }
  return true;
}

RingSteps step_on(const Problem& p, const std::vector<int>& place, RingSteps gone, StationIndex s,
                  std::vector<int>& seen_in) {
  const bool new_lap = count_lap(s, gone.lap, seen_in);
  if (gone.at != nowhere) {
    const int ahead = (place[ix(s)] - place[ix(gone.at)] + p.stations) % p.stations;
    const int step = ahead == 0 ? p.stations : ahead;
    gone.in_lap = new_lap ? 0 : gone.in_lap + step;
    gone.in_row += step;
  }
  gone.at = s;
  return gone;
}

bool steps_hold(const Problem& p, const RingSteps& gone) {
  return gone.in_lap < p.stations && gone.in_row < p.laps * p.stations;
}

bool steps_hold(const Problem& p, const std::vector<int>& place, const StationIndex* row) {
  std::vector<int> seen_in(ix(p.stations), 0);
  RingSteps gone;
  for (int t = 0; t < p.slots; ++t) {
    if (row[t] == nowhere) continue;
    gone = step_on(p, place, gone, row[t], seen_in);
    if (t >= p.from && !steps_hold(p, gone)) return false;
  }
  return true;
}

Sheet::Sheet(const Problem& p)
    : p_(&p),
      at_(p.members, p.slots, nowhere),
      words_((p.members + 63) / 64),
      who_(p.stations, p.slots * words_),
      used_(p.stations, p.slots),
      units_used_(p.kinds, p.slots),
      visits_(p.members, p.stations) {
  for (int m = 0; m < p.members; ++m)
    for (int t = 0; t < p.from; ++t) put(m, t, p.history(m, t));
}

Sheet::Sheet(const Problem& p, const std::vector<Row>& rows) : Sheet(p) {
  for (int m = 0; m < p.members; ++m) set_row(m, rows[ix(m)].data());
}

int Sheet::room(int s, int t) const {
  if (!p_->open(s, t)) return -used_(s, t);
  int free = p_->capacity[ix(s)] - used_(s, t);
  for (int k : p_->takes[ix(s)]) free = std::min(free, p_->units[ix(k)] - units_used_(k, t));
  return free;
}

bool Sheet::rooms_hold() const {
  for (int s = 0; s < p_->stations; ++s)
    for (int t = 0; t < p_->slots; ++t)
      if (room(s, t) < 0) return false;
  return true;
}

void Sheet::put(int m, int t, StationIndex s) {
  StationIndex& cell = at_(m, t);
  if (cell == s) return;
  const int word = t * words_ + m / 64;
  const std::uint64_t bit = std::uint64_t{1} << (m % 64);
  if (cell != nowhere) {
    who_(cell, word) &= ~bit;
    --used_(cell, t);
    --visits_(m, cell);
    for (int k : p_->takes[ix(cell)]) --units_used_(k, t);
  }
  cell = s;
  if (s == nowhere) return;
  who_(s, word) |= bit;
  ++used_(s, t);
  ++visits_(m, s);
  for (int k : p_->takes[ix(s)]) ++units_used_(k, t);
}

void Sheet::clear(int m) {
  for (int t = p_->from; t < p_->slots; ++t) put(m, t, nowhere);
}

void Sheet::set_row(int m, const StationIndex* row) {
  for (int t = p_->from; t < p_->slots; ++t) put(m, t, row[t]);
}

bool Sheet::laps_hold(int m) const {
  if (p_->laps > 1) return floorwheel::laps_hold(*p_, at_.row(m));
  for (int t = p_->from; t < p_->slots; ++t)
    if (const StationIndex s = at_(m, t); s != nowhere && visits_(m, s) > 1)
      return p_->from > 0 && floorwheel::laps_hold(*p_, at_.row(m));
  return p_->from == 0 || floorwheel::laps_hold(*p_, at_.row(m));
}

bool Sheet::pairs_hold(int m, int t) const {
  const StationIndex s = at_(m, t);
  for (int foe : p_->foes[ix(m)])
    if (s != nowhere && at_(foe, t) == s) return false;
  for (int mate : p_->mates[ix(m)]) {
    if (!p_->present(m, t) || !p_->present(mate, t)) continue;
    const StationIndex other = at_(mate, t);
    if (s == other) continue;
    if (s != nowhere && other != nowhere) return false;
    if (s != nowhere ? visits_(mate, s) > 0 : visits_(m, other) > 0) return false;
  }
  return true;
}

bool Sheet::pairs_hold(int m) const {
  if (p_->foes[ix(m)].empty() && p_->mates[ix(m)].empty()) return true;
  for (int t = p_->from; t < p_->slots; ++t)
    if (!pairs_hold(m, t)) return false;
  return true;
}

std::vector<Row> Sheet::rows() const {
  std::vector<Row> out;
  for (int m = 0; m < p_->members; ++m) out.emplace_back(at_.row(m), at_.row(m) + p_->slots);
  return out;
}

}  // namespace floorwheel
