// SPDX-License-Identifier: GPL-3.0-or-later
// What commands of all subjects need, and the table that finds them.
#include "kiosk/hub/command.h"

#include "kiosk/files/nearest.h"
#include "kiosk/store/people.h"

namespace floorwheel::hub {
namespace json = boost::json;

CommandFunction command_function(std::string_view kind) {
  for (const auto& subject : {member_commands(), class_commands(), floor_commands(), clock_commands(),
                              record_commands(), training_commands(), talk_commands()})
    for (const NamedCommand& c : subject)
      if (c.kind == kind) return c.function;
  return nullptr;
}

const wire::ClassView& class_of(const Room& room, const Fields& f) {
  const std::string id = store::text_of(f.uuid("class"));
  const auto found = room.hall.classes.find(id);
  if (found == room.hall.classes.end())
    refuse("not_found", "There is no class " + id + ".", "Ask 'classes' for those there are.");
  if (found->second.clock.state == wire::Running::over)
    refuse("refused", "The class '" + found->second.name + "' has ended.", "Choose another class.");
  return found->second;
}

store::Uuid id_of_class(const wire::ClassView& c) {
  return store::uuid_from(c.id).value_or(store::Uuid{});  // the hub wrote it: always one
}

void check_saw(const wire::ClassView& c, const Fields& f) {
  const int saw = f.whole("saw", 0, 1'000'000);
  if (saw == c.sheet.version) return;
  refuse("stale",
         "The screen showed run sheet " + std::to_string(saw) + ", but the latest is " +
             std::to_string(c.sheet.version) + ".",
         "Look at the latest run sheet and decide again.", {{"saw", saw}, {"version", c.sheet.version}});
}

const wire::StationView& station_of(const wire::ClassView& c, const Fields& f, std::string_view key) {
  const std::string id = f.text(key);
  if (const wire::StationView* s = wire::find_station(c, id)) return *s;
  std::vector<std::string> known;
  for (const wire::StationView& s : c.stations) known.push_back(s.id);
  std::string all;
  for (const std::string& k : known) all += (all.empty() ? "" : ", ") + k;
  refuse("not_found", "This class has no station '" + id + "'.", "Its stations are " + all + ".");
}

FindMember finder(const Room& room) {
  return [&room](const std::string& id) { return store::find_member(room.database, id); };
}

ClassSpec base_of(const Room& room, const wire::ClassView& c) {
  std::optional<ClassSpec> base = store::find_class(room.database, id_of_class(c));
  if (!base) refuse("store", "The store does not hold the class '" + c.name + "'.", "Restore a backup.");
  for (const auto& [id, e] : room.exercises) base->exercises.emplace(id, e);  // its own win
  return *std::move(base);
}

const Exercise& exercise_of(const Room& room, const wire::ClassView&, const std::string& id) {
  const auto found = room.exercises.find(id);
  if (found != room.exercises.end()) return found->second;
  std::vector<std::string> known;
  for (const auto& [key, e] : room.exercises) known.push_back(key);
  refuse("not_found", "There is no exercise '" + id + "'.", files::did_you_mean(id, known));
}

wire::ClassView after_row(const Room& room, const wire::ClassView& before, std::string_view kind,
                          const json::object& body, const json::object& words) {
  wire::Hall copy;
  copy.current = room.hall.current;
  copy.exercise_names = room.hall.exercise_names;
  copy.classes.emplace(before.id, before);
  wire::fold(copy, {.seq = 1,
                    .at_ms = room.at_ms,
                    .civil_ms = room.now.ms,
                    .kind = std::string(kind),
                    .body = json::serialize(body),
                    .words = json::serialize(words)});
  return std::move(copy.classes.at(before.id));
}

}  // namespace floorwheel::hub
