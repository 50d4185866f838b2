// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/plan_text.h"

#include <algorithm>
#include <set>

#include "kiosk/cli/text.h"
#include "scheduler/rotation/audit.h"

namespace floorwheel::cli {
namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

std::string title(const ClassSpec& c, int slots) {
  std::string text = c.name + ": " + counted(slots, "slot", "slots") + " of " + std::to_string(c.work_s) +
                     " s work and " + std::to_string(c.change_s) + " s changeover";
  if (c.laps > 1) text += ", " + std::to_string(c.laps) + " laps";
  const int seconds = class_seconds(c, slots);
  text += ", " + clock_text(seconds) + " in all";
  if (c.length_s)
    text += seconds <= *c.length_s ? " of " + clock_text(*c.length_s)
                                   : ", which is longer than the " + clock_text(*c.length_s) + " of the room";
  return text + "\n";
}

/// What a member works at a station: the exercise by rule 3; in a repair's history the station's own.
const Exercise& worked(const ClassSpec& c, int m, StationIndex s) {
  if (const Exercise* e = audited_exercise(c, m, s)) return *e;
  return c.exercises.at(c.stations[index(s)].exercise);
}

bool is_back_to_back(const ClassSpec& c, const Rotation& r, int m, int t) {
  if (t < 2) return false;
  const auto& row = r.at[index(m)];
  const StationIndex now = row[index(t - 1)];
  const StationIndex last = row[index(t - 2)];
  if (now == nowhere || last == nowhere) return false;
  return worked(c, m, now).primary.meets(worked(c, m, last).primary);
}

/// The table, and which of its signs occur in it.
struct Sheet {
  std::vector<std::vector<std::string>> rows;
  bool marks = false;
  bool waits = false;
  bool absences = false;
};

Sheet sheet_of(const ClassSpec& c, const Rotation& r) {
  const std::vector<std::string> letters = wall_letters(c);
  Sheet sheet;
  sheet.rows.push_back({""});
  for (int t = 1; t <= r.slots; ++t) sheet.rows[0].push_back(std::to_string(t));
  for (int m = 0; m < static_cast<int>(c.members.size()); ++m) {
    const MemberSpec& member = c.members[index(m)];
    std::vector<std::string> cells{member.shown_as};
    for (int t = 1; t <= r.slots; ++t) {
      const StationIndex s = r.at[index(m)][index(t - 1)];
      if (s != nowhere) {
        const bool marked = is_back_to_back(c, r, m, t);
        sheet.marks = sheet.marks || marked;
        cells.push_back(letters[index(s)] + (marked ? "!" : ""));
      } else if (member.present.contains(t)) {
        sheet.waits = true;
        cells.emplace_back("–");
      } else {
        sheet.absences = true;
        cells.emplace_back("");
      }
    }
    sheet.rows.push_back(std::move(cells));
  }
  return sheet;
}

std::string legend(const Sheet& sheet) {
  std::vector<std::string> signs;
  if (sheet.marks) signs.emplace_back("!  the same muscle group as in the slot before");
  if (sheet.waits) signs.emplace_back("–  waits at the waiting place, W on the wall");
  if (sheet.absences) signs.emplace_back("blank  not here yet, or gone");
  std::string out;
  for (const std::string& s : signs) out += s + "\n";
  return out;
}

std::string groups_text(const Exercise& e) {
  std::vector<std::string> words;
  for (int g = 0; g < group_count; ++g)
    if (e.primary.contains(static_cast<Group>(g))) {
      words.emplace_back(id_of(static_cast<Group>(g)));
      std::replace(words.back().begin(), words.back().end(), '_', ' ');
    }
  return listed(words);
}

std::string stations_text(const ClassSpec& c) {
  const std::vector<std::string> letters = wall_letters(c);
  std::vector<std::vector<std::string>> rows;
  for (std::size_t s = 0; s < c.stations.size(); ++s) {
    const StationSpec& station = c.stations[s];
    const Exercise& e = c.exercises.at(station.exercise);
    rows.push_back({letters[s], e.name, counted(station.capacity, "place", "places"), groups_text(e)});
    if (letters[s] != station.id) rows.back()[1] += " (" + station.id + ")";
  }
  return "Stations\n" + columns(rows, "  ");
}

std::string substitutes_text(const ClassSpec& c, const Rotation& r) {
  const std::vector<std::string> letters = wall_letters(c);
  std::string out;
  for (int m = 0; m < static_cast<int>(c.members.size()); ++m) {
    const auto& row = r.at[index(m)];
    for (StationIndex s : std::set<StationIndex>(row.begin(), row.end())) {
      if (s == nowhere) continue;
      const Exercise& e = worked(c, m, s);
      if (e.id != c.stations[index(s)].exercise)
        out += "  " + c.members[index(m)].shown_as + " at " + letters[index(s)] + ": " + e.name + "\n";
    }
  }
  return out.empty() ? out : "\nInstead of the station's exercise\n" + out;
}

std::string ring_text(const ClassSpec& c, const Rotation& r) {
  if (r.style != Style::ring) return "A free rotation: everybody reads the next place on the wall.\n";
  const std::vector<std::string> letters = wall_letters(c);
  std::string out = "A ring, everybody moves one on:";
  for (StationIndex s : r.ring) out += " " + letters[index(s)];
  return out + "\n";
}

std::string paragraph(const std::string& heading, const std::vector<std::string>& sentences) {
  std::string out = "\n" + heading + "\n";
  for (const std::string& s : sentences) out += "  " + s + "\n";
  return out;
}

std::string slots_text(const ClassSpec& c, const SlotTable& table) {
  std::vector<std::vector<std::string>> rows{{"slots", "class", "style"}};
  if (c.length_s) rows[0].insert(rows[0].begin() + 2, "fits");
  for (Component k : components) {
    if (k == Component::moved) continue;
    std::string name(id_of(k));
    std::replace(name.begin(), name.end(), '_', ' ');
    rows[0].push_back(name == "back to back" ? "back-to-back" : name);
  }
  for (const SlotRow& row : table.rows) {
    const bool chosen = row.slots == table.chosen.rotation.slots;
    std::vector<std::string> cells{std::to_string(row.slots) + (chosen ? " <" : ""), clock_text(row.class_s)};
    if (c.length_s) cells.emplace_back(row.fits ? "yes" : "no");
    cells.emplace_back(id_of(row.style));
    for (Component k : components)
      if (k != Component::moved) cells.push_back(std::to_string(row.cost[k]));
    rows.push_back(std::move(cells));
  }
  return "What one more slot buys (< is chosen)\n" + columns(rows, "  ") + "\n";
}

}  // namespace

std::string plan_text(const ClassSpec& c, const Plan& plan) {
  const Sheet sheet = sheet_of(c, plan.rotation);
  std::string out = title(c, plan.rotation.slots) + ring_text(c, plan.rotation);
  if (plan.at_slot > 1) out += "Slots 1 to " + std::to_string(plan.at_slot - 1) + " are over.\n";
  out += "\n" + columns(sheet.rows) + legend(sheet) + "\n" + stations_text(c);
  out += substitutes_text(c, plan.rotation);
  out += "\nCost\n" + cost_sentences(plan, c.recovery_s);
  out += "\nProof (of the order of stations only)\n" + proof_sentences(plan);
  if (!plan.reasons.empty()) out += paragraph("Why", plan.reasons);
  return out;
}

std::string plan_text(const ClassSpec& c, const SlotTable& table) {
  return slots_text(c, table) + plan_text(c, table.chosen);
}

std::string refusal_text(const Refusal& r, const std::string& class_file) {
  std::string out = class_file + ": cannot be planned (rule " + std::to_string(r.rule) + "): " + r.reason;
  std::string entries;
  const auto add = [&](const std::string& noun, const std::vector<std::string>& ids) {
    if (!ids.empty()) entries += (entries.empty() ? "" : "; ") + noun + " " + listed(ids);
  };
  add("members", r.members);
  add("stations", r.stations);
  std::vector<std::string> slots;
  for (int t : r.slots) slots.push_back(std::to_string(t));
  add("slots", slots);
  return entries.empty() ? out : out + " [" + entries + "]";
}

}  // namespace floorwheel::cli
