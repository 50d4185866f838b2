// SPDX-License-Identifier: GPL-3.0-or-later
// A play: what people do on the four screens in the course of one class, one line each, done in order.
//   # a comment
//   say TEXT               a heading for the reader
//   ROLE tap NAME          touch the visible item of that accessible name on this screen
//   ROLE type TEXT         type on it
//   ROLE await NAME        wait until an item of that name is visible
//   ROLE shot FILE.png     picture of this screen, into the pictures folder
//   ROLE start | ROLE end  a screen that comes late or is switched off (all four run from the beginning)
// ROLE is wall, touch, instructor or desk. The grammar is ours; see DEVELOPERS.md.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "kiosk/files/file_error.h"
#include "kiosk/wire/row.h"

namespace floorwheel::play {

enum class Verb : std::uint8_t { say, tap, type, await, shot, start, end };
std::string_view id_of(Verb);

struct Step {
  int line = 0;
  wire::Role role = wire::Role::wall;  // not of say
  Verb verb = Verb::say;
  std::string rest;
};

files::OrFileError<std::vector<Step>> parse_script(std::string_view text, const std::string& file);

}  // namespace floorwheel::play
