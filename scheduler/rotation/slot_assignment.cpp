// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/slot_assignment.h"

#include <optional>

#include "scheduler/rotation/cheapest_flow.h"
#include "scheduler/rotation/draft.h"
#include "scheduler/rotation/weights.h"

namespace floorwheel {
namespace {

class SlotAssignment {
 public:
  SlotAssignment(const Problem& p, Found& found, Budget& budget)
      : p_(p), found_(found), budget_(budget), draft_(p, found.rows) {}

  void run() {
    for (bool better = true; better;) {
      better = false;
      for (int t = p_.from; t < p_.slots; ++t) {
        if (!budget_.spend(steps(), found_.cost, found_.bound)) return;
        better = assign(t) || better;
      }
    }
  }

 private:
  struct Choice {
    int member;
    StationIndex station;
    std::size_t arc;
  };

  /// A slot takes that long: rows to price, then paths to find.
  [[nodiscard]] std::int64_t steps() const {
    return 1 + std::int64_t{p_.members} * p_.stations * (p_.members + p_.slots) / 400;
  }

  /// Alone in what they do.
  [[nodiscard]] bool movable(int m, int t) const {
    return p_.present(m, t) && p_.mates[ix(m)].empty() && p_.foes[ix(m)].empty();
  }

  /// What the row weighs with s in slot t, or nothing where it may not stand there.
  [[nodiscard]] std::optional<std::int64_t> weight(int m, int t, StationIndex s) {
    Row row(draft_.sheet().row(m), draft_.sheet().row(m) + p_.slots);
    if (s != nowhere) {
      const bool again = row[ix(t)] == s;
      if (!p_.work(m, s).required || p_.places(s, t) == 0) return std::nullopt;
      if (draft_.sheet().visits(m, s) - (again ? 1 : 0) >= p_.laps) return std::nullopt;
    }
    row[ix(t)] = s;
    if (!laps_hold(p_, row.data())) return std::nullopt;
    return weighed(price_row(p_, m, row.data()));
  }

  /// Members, stations, kinds of equipment, the end. Places and units that those who stay take are gone.
  bool assign(int t) {
    const int station_node = p_.members;
    const int kind_node = station_node + p_.stations;
    const int end = kind_node + p_.kinds;
    CheapestFlow flow(end + 1);
    std::vector<int> places(ix(p_.stations));
    std::vector<int> units = p_.units;
    for (int s = 0; s < p_.stations; ++s) places[ix(s)] = p_.open(s, t) ? p_.capacity[ix(s)] : 0;
    for (int m = 0; m < p_.members; ++m)
      if (const StationIndex s = draft_.sheet().at(m, t); s != nowhere && !movable(m, t)) {
        --places[ix(s)];
        for (int k : p_.takes[ix(s)]) --units[ix(k)];
      }
    for (int s = 0; s < p_.stations; ++s) {
      int scarce = -1;  // of several kinds the scarcest; the draft has the last word
      for (int k : p_.takes[ix(s)])
        if (scarce < 0 || units[ix(k)] < units[ix(scarce)]) scarce = k;
      if (places[ix(s)] > 0)
        flow.join(station_node + s, scarce < 0 ? end : kind_node + scarce, places[ix(s)], 0);
    }
    for (int k = 0; k < p_.kinds; ++k)
      if (units[ix(k)] > 0) flow.join(kind_node + k, end, units[ix(k)], 0);
    std::vector<Choice> choices;
    std::vector<int> movables;
    for (int m = 0; m < p_.members; ++m) {
      if (!movable(m, t)) continue;
      movables.push_back(m);
      for (StationIndex s = nowhere; s < p_.stations; ++s)
        if (const auto w = weight(m, t, s))
          choices.push_back({m, s, flow.join(m, s == nowhere ? end : station_node + s, 1, *w)});
    }
    for (int m : movables)
      if (!flow.send(m, end)) return false;
    return take(t, flow, choices);
  }

  bool take(int t, const CheapestFlow& flow, const std::vector<Choice>& choices) {
    bool differs = false;
    for (const Choice& c : choices)
      if (flow.used(c.member, c.arc) && draft_.sheet().at(c.member, t) != c.station) {
        draft_.set(c.member, t, c.station);
        differs = true;
      }
    if (!differs || !draft_.holds() || !(draft_.weigh() < draft_.cost())) {
      draft_.take_back();
      return false;
    }
    draft_.keep();
    found_.rows = draft_.sheet().rows();
    found_.cost = draft_.cost();
    return true;
  }

  const Problem& p_;
  Found& found_;
  Budget& budget_;
  Draft draft_;
};

}  // namespace

void assign_slots(const Problem& p, Found& found, Budget& budget) { SlotAssignment(p, found, budget).run(); }

}  // namespace floorwheel
