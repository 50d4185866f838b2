// SPDX-License-Identifier: GPL-3.0-or-later
// Every kind of command and question with its fields: `floorwheel tell --list` and `ask --list` print these
// tables, the hub refuses what they do not name, and screens are written against them. Each command that
// succeeds becomes one journal row of the same kind, with the body and words given here.
#pragma once

#include <span>
#include <string_view>

#include "kiosk/wire/row.h"

namespace floorwheel::wire {

struct CommandKind {
  std::string_view kind;
  std::string_view fields;    // of the command's body; "?" marks what may be left out
  std::string_view row_body;  // ids and numbers of the journal row
  std::string_view words;     // what may be erased, with its audience
  Audience audience;          // who gets the row; the others get its number only
  std::string_view what;
};

struct QuestionKind {
  std::string_view kind;
  std::string_view fields;
  std::string_view answer;
  Audience audience;  // who may ask
  std::string_view what;
};

std::span<const CommandKind> command_kinds();
std::span<const QuestionKind> question_kinds();
const CommandKind* find_command(std::string_view kind);
const QuestionKind* find_question(std::string_view kind);

}  // namespace floorwheel::wire
