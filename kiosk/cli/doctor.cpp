// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel doctor`: looks at this machine and says what to do. Changes nothing.
#include <unistd.h>

#include <array>
#include <boost/json.hpp>
#include <cstdlib>
#include <ctime>
#include <filesystem>

#include "kiosk/cli/command.h"
#include "kiosk/cli/folders.h"
#include "kiosk/cli/hub_client.h"
#include "kiosk/cli/port.h"
#include "kiosk/cli/text.h"
#include "kiosk/files/exercise_table.h"
#include "kiosk/store/store.h"

namespace floorwheel::cli {
namespace {

namespace fs = std::filesystem;

enum class Health { fine, note, wrong };

struct Finding {
  Health health = Health::fine;
  std::string what;
  std::string says;
};

std::string environment(const char* name) {
  const char* value = std::getenv(name);
  return value ? value : "";
}

/// The folder itself, or the nearest one above it that exists: there it would be made.
fs::path nearest_folder(fs::path path) {
  std::error_code error;
  while (!fs::exists(path, error) && path.has_relative_path()) path = path.parent_path();
  return path;
}

Finding check_folder(const std::string& data) {
  const fs::path there = nearest_folder(fs::absolute(data));
  std::error_code error;
  if (!fs::is_directory(there, error))
    return {Health::wrong, "data folder", there.string() + " is no folder; give another with --data"};
  if (::access(there.c_str(), W_OK | X_OK) != 0)
    return {Health::wrong, "data folder",
            there.string() + " cannot be written; let this user write there, or give another with --data"};
  return {Health::fine, "data folder",
          data + (there == fs::absolute(data) ? "" : " (is made at the first start of the hub)")};
}

Finding check_database(const std::string& data) {
  std::error_code error;
  if (!fs::exists(data + "/floorwheel.db", error))
    return {Health::fine, "database", "none yet; the first start of the hub makes it"};
  auto opened = store::Store::open_to_read(data);
  if (const auto* e = std::get_if<store::StoreError>(&opened))
    return {Health::wrong, "database", e->what + " " + e->right};
  const auto& store = std::get<std::unique_ptr<store::Store>>(opened);
  try {
    store::Statement check = store->database().statement("PRAGMA quick_check(1)");
    const std::string said = check.step() ? check.text(0) : "no answer";
    if (said != "ok")
      return {Health::wrong, "database",
              store->path() + " is damaged (" + said +
                  "); stop the hub, keep a copy of the folder, restore a backup"};
  } catch (const store::SqlError& e) {
    return {Health::wrong, "database", store->path() + ": " + e.what() + "; check the disk"};
  }
  return {Health::fine, "database", store->path() + " is sound"};
}

Finding check_hub(const std::string& url) {
  try {
    HubClient hub(url);
    const auto result = hub.ask("health", "{}");
    const auto* answer = std::get_if<wire::Answer>(&result);
    const auto health = answer ? boost::json::parse(answer->body) : boost::json::value();
    const auto* object = health.if_object();
    const auto* screens = object ? object->if_contains("screens") : nullptr;
    const auto count = screens && screens->is_array() ? screens->get_array().size() : 0;
    return {Health::fine, "hub",
            "answers at " + url + ", journal at " + std::to_string(hub.welcome().journal) + ", " +
                counted(static_cast<std::int64_t>(count), "connection", "connections")};
  } catch (const HubAway&) {
    const std::string port = url.substr(url.rfind(':') + 1);
    if (is_free(std::atoi(port.c_str())))
      return {Health::note, "hub", "none runs; port " + port + " is free: start one with `floorwheel hub`"};
    return {
        Health::wrong, "hub",
        "another program holds port " + port + "; stop it, or start the hub with --listen 127.0.0.1:PORT"};
  }
}

/// Whether a file of this name lies in one of the font folders.
bool has_font(const std::string& file) {
  std::vector<std::string> folders{"/usr/share/fonts", "/usr/local/share/fonts"};
  if (const std::string home = environment("HOME"); !home.empty()) {
    folders.push_back(home + "/.local/share/fonts");
    folders.push_back(home + "/.fonts");
  }
  for (const std::string& folder : folders) {
    std::error_code error;
    fs::recursive_directory_iterator it(folder, fs::directory_options::skip_permission_denied, error);
    for (; !error && it != fs::recursive_directory_iterator(); it.increment(error))
      if (it->path().filename() == file) return true;
  }
  return false;
}

Finding check_fonts() {
  std::vector<std::string> missing;
  if (!has_font("PTS55F.ttf")) missing.emplace_back("PT Sans (Debian package fonts-paratype)");
  if (!has_font("DejaVuSans.ttf")) missing.emplace_back("DejaVu Sans (Debian package fonts-dejavu-core)");
  if (missing.empty()) return {Health::fine, "fonts", "PT Sans and DejaVu Sans"};
  return {Health::wrong, "fonts",
          "missing: " + listed(missing) + "; install them, or screens are hard to read"};
}

Finding check_screens() {
  const std::string program = program_folder() + "/floorwheel-screen";
  if (::access(program.c_str(), X_OK) != 0)
    return {Health::wrong, "screens", program + " is not there; build or install it beside floorwheel"};
  const std::string wayland = environment("WAYLAND_DISPLAY");
  const std::string x11 = environment("DISPLAY");
  if (wayland.empty() && x11.empty())
    return {Health::note, "screens",
            "no display here: `floorwheel-screen ROLE --shot FILE` draws off-screen; with a display it opens "
            "a window"};
  return {Health::fine, "screens", "display " + (wayland.empty() ? x11 : wayland)};
}

Finding check_exercises() {
  return {Health::fine, "exercises",
          std::to_string(files::shipped_exercises().size()) + " in the shipped table"};
}

/// Attendance counts by local days: a machine without a time zone, or with a dead clock, counts wrong.
Finding check_time() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  ::localtime_r(&now, &local);
  std::array<char, 64> text{};
  std::strftime(text.data(), text.size(), "%Y-%m-%d %H:%M, zone %Z, UTC%z", &local);
  constexpr int year_of_this_program = 2026;
  if (local.tm_year + 1900 < year_of_this_program)
    return {Health::wrong, "clock",
            std::string(text.data()) + " is in the past; set the clock (timedatectl)"};
  std::error_code error;
  if (environment("TZ").empty() && !fs::exists("/etc/localtime", error))
    return {Health::note, "clock",
            std::string(text.data()) + "; no time zone is set, days begin by UTC: timedatectl set-timezone"};
  return {Health::fine, "clock", text.data()};
}

std::string word_of(Health h) {
  switch (h) {
    case Health::fine:
      return "ok";
    case Health::note:
      return "note";
    case Health::wrong:
      return "WRONG";
  }
  return {};
}

int run(const Args& args) {
  const std::string data = args.has("--data") ? args.value("--data") : default_data_folder();
  const std::vector<Finding> findings{
      check_folder(data), check_database(data), check_hub(args.value("--hub", default_hub)),
      check_screens(),    check_fonts(),        check_exercises(),
      check_time()};
  std::vector<std::vector<std::string>> rows;
  int wrong = 0;
  for (const Finding& f : findings) {
    rows.push_back({word_of(f.health), f.what, f.says});
    wrong += f.health == Health::wrong ? 1 : 0;
  }
  print(columns(rows) + (wrong == 0
                             ? std::string("\nThis machine is ready.\n")
                             : "\n" + counted(wrong, "thing has", "things have") + " to be put right.\n"));
  return wrong == 0 ? exit_done : exit_holds_not;
}

}  // namespace

Command doctor_command() {
  return {{"doctor",
           "Looks at this machine: folder, database, hub, screens, fonts, clock; says what to do.",
           {},
           {{"--data", "DIR", "the hub's data folder (default $XDG_DATA_HOME/floorwheel)"}, hub_option},
           {"floorwheel doctor"}},
          run};
}

}  // namespace floorwheel::cli
