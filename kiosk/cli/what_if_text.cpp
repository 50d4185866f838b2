// SPDX-License-Identifier: GPL-3.0-or-later
// `plan --what-if` as a table.
#include <algorithm>

#include "kiosk/cli/plan_text.h"
#include "kiosk/cli/text.h"
#include "scheduler/rotation/what_if.h"
#include "scheduler/rotation/words.h"

namespace floorwheel::cli {
namespace {

/// The value, with a sign where no rotation of this style has less.
std::string judged(const WhatIfRow& row, Component c) {
  int rank = 0;
  for (Component k : components) {
    if (k == c) break;
    rank += k != Component::moved;
  }
  return std::to_string(row.cost[c]) + (rank < row.proven ? "*" : "");
}

std::string waits(const WhatIfRow& row) {
  const std::string least = std::to_string(row.waits_least);
  return row.waits_least == row.waits_most ? least : least + "–" + std::to_string(row.waits_most);
}

}  // namespace

std::string what_if_text(const ClassSpec& c, const WhatIf& w) {
  std::string out = c.name + ": " + floorwheel::counted(w.people, "person", "people") + " and " +
                    floorwheel::counted(w.places, "place", "places") + "\n\nWhat a change would buy\n";
  std::vector<std::vector<std::string>> rows{{"change", "slots", "class"}};
  if (c.length_s) rows[0].emplace_back("fits");
  for (const char* name : {"missed", "uneven", "back-to-back", "short rest", "idle", "waits", "buys"})
    rows[0].emplace_back(name);
  for (const WhatIfRow& row : w.rows) {
    std::vector<std::string> cells{in_words(row.change)};
    if (row.refused) {
      cells.push_back("cannot be planned: " + row.refused->reason);
      rows.push_back(std::move(cells));
      continue;
    }
    cells.push_back(std::to_string(row.slots));
    cells.push_back(clock_text(row.class_s));
    if (c.length_s) cells.emplace_back(row.fits ? "yes" : "no");
    for (Component k : {Component::missed, Component::uneven, Component::back_to_back, Component::short_rest,
                        Component::idle})
      cells.push_back(judged(row, k));
    cells.push_back(waits(row));
    cells.push_back(&row == &w.rows.front() ? "" : what_it_buys(w.rows.front(), row));
    rows.push_back(std::move(cells));
  }
  out +=
      columns(rows, "  ") + "\n* no rotation of its style has less. Waits: slots present and not worked.\n";
  if (w.left > 0)
    out += "Stopped: " + floorwheel::counted(w.left, "change was", "changes were") + " not looked at.\n";
  return out;
}

}  // namespace floorwheel::cli
