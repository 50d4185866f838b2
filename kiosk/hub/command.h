// SPDX-License-Identifier: GPL-3.0-or-later
// What a command or question sees and what it answers with. Commands only check and describe a change; the
// ledger writes row, words and tables in one transaction and folds the row into the hall. One function for
// each kind, in files by subject.
#pragma once

#include <boost/json.hpp>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "kiosk/hub/fields.h"
#include "kiosk/hub/plan_shelf.h"
#include "kiosk/hub/problem.h"
#include "kiosk/store/classes.h"

namespace floorwheel::hub {

struct Room {
  store::Database& database;
  const wire::Hall& hall;  // with everything the instructor may know
  const ExerciseTable& exercises;
  PlanShelf& plans;
  store::Uuid command;     // of this command; of a question: all zero
  std::int64_t at_ms = 0;  // class clock
  store::CivilTime now;
  boost::json::object health;          // what only the running hub knows: for the question of that name
  wire::Role role = wire::Role::tool;  // of the screen that tells or asks
  std::string folder = {};             // the hub's data folder
};

/// A change to be written: the row with its words, and what else the tables keep of it.
struct Change {
  std::optional<store::Uuid> class_id;
  boost::json::object body;
  std::vector<store::WordPart> words;
  boost::json::object receipt;
  std::function<void(store::Database&, std::int64_t seq)> write;  // may be empty
};
/// Nothing to change: it is so already. The receipt is the same as if it had been.
struct Already {
  boost::json::object receipt;
};
/// Ask the planner this, then call again.
struct NeedsPlan {
  PlanRequest request;
};
using Outcome = std::variant<Change, Already, NeedsPlan>;
using AnswerOrPlan = std::variant<boost::json::object, NeedsPlan>;

using CommandFunction = Outcome (*)(Room&, const Fields&);
using QuestionFunction = AnswerOrPlan (*)(Room&, const Fields&);
CommandFunction command_function(std::string_view kind);
QuestionFunction question_function(std::string_view kind);

struct NamedCommand {
  std::string_view kind;
  CommandFunction function;
};
// Each subject's commands; the ledger's table is all of them.
std::span<const NamedCommand> member_commands();
std::span<const NamedCommand> class_commands();
std::span<const NamedCommand> floor_commands();
std::span<const NamedCommand> clock_commands();
std::span<const NamedCommand> record_commands();
std::span<const NamedCommand> training_commands();
std::span<const NamedCommand> talk_commands();

// --- what many commands need
/// The class a body names; refused where there is none or it has ended.
const wire::ClassView& class_of(const Room&, const Fields&);
store::Uuid id_of_class(const wire::ClassView&);
/// Refused where the screen showed another version of the run sheet.
void check_saw(const wire::ClassView&, const Fields&);
const wire::StationView& station_of(const wire::ClassView&, const Fields&, std::string_view key = "station");
FindMember finder(const Room&);
/// The class of the file, with the shipped exercises beside its own.
ClassSpec base_of(const Room&, const wire::ClassView&);
const Exercise& exercise_of(const Room&, const wire::ClassView&, const std::string& id);

/// The class after a row of this kind, by the hall's own fold.
wire::ClassView after_row(const Room&, const wire::ClassView&, std::string_view kind,
                          const boost::json::object& body, const boost::json::object& words);

// --- changes of the floor or of who is there: with a published sheet each makes the next version
struct FloorChange {
  std::string kind;
  boost::json::object body;  // of the row, without its sheet
  std::vector<store::WordPart> words;
  std::vector<std::string> added;  // members who join the sheet
  std::string sentence;            // what the change is
  int from_slot = 1;               // first slot it may move
  std::function<void(store::Database&, std::int64_t seq)> write;
};
/// The change as a row with its new sheet; NeedsPlan until that is planned.
Outcome with_sheet(Room&, const wire::ClassView&, FloorChange);
/// What it would do, before it is done.
AnswerOrPlan preview_of(Room&, const wire::ClassView&, const FloorChange&);
/// The change that a command or the `change` of a preview describes.
FloorChange describe_change(Room&, const wire::ClassView&, std::string_view kind, const Fields&);
bool is_floor_change(std::string_view kind);

}  // namespace floorwheel::hub
