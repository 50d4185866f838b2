// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/questions_programme.h"

#include <algorithm>

#include "kiosk/files/findings_json.h"
#include "kiosk/files/nearest.h"
#include "kiosk/files/programme_folder.h"

namespace floorwheel::hub {
namespace json = boost::json;
namespace {

std::string folder_of(const Room& room) { return room.folder + "/programmes"; }

}  // namespace

AnswerOrPlan programmes(Room& room, const Fields&) {
  return json::object{{"programmes", wire::json_of(files::programme_names(folder_of(room)))}};
}

AnswerOrPlan programme_check(Room& room, const Fields& f) {
  const std::string name = f.text("name");
  if (!files::is_programme_name(name))
    refuse("bad_body", "'" + name + "' is no name of a programme.",
           "It is a file's name without its folder and without '.programme.toml'.");
  const std::vector<std::string> names = files::programme_names(folder_of(room));
  if (std::ranges::find(names, name) == names.end())
    refuse("not_found", "There is no programme '" + name + "'.",
           names.empty() ? "Put files into the folder 'programmes' beside the hub's database."
                         : files::did_you_mean(name, names));
  json::object out{{"name", name}};
  const auto read = files::read_programme_in(folder_of(room), name, room.exercises);
  if (const auto* error = std::get_if<files::FileError>(&read)) {
    out["error"] = files::text_of(*error);
    return out;
  }
  const auto& programme = std::get<Programme>(read);
  out["title"] = programme.name;
  out["level"] = id_of(programme.level);
  out["days"] = programme.days.size();
  out["weeks"] = programme.weeks;
  const std::string findings = files::findings_json(check_programme(programme, room.exercises));
  out["findings"] = json::parse(findings).at("findings");
  return out;
}

}  // namespace floorwheel::hub
