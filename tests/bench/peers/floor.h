// SPDX-License-Identifier: GPL-3.0-or-later
// The part of the rotation problem that general solvers are asked: regular floors, on which all members are
// alike and present throughout, visit every station once, and stations have as many places each. Slots,
// members and stations count from 0 here. Everything is read from the class alone, not from the planner.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "scheduler/class_spec.h"
#include "scheduler/rotation/rotation.h"

namespace floorwheel::peers {

struct Size {
  int members = 1;
  int stations = 1;
  int slots = 1;
  int capacity = 1;
};
std::string name_of(const Size&);  // "40x20x20 c2"

enum class Layout {
  scattered,  // anywhere in a hall of 12 m by 8 m
  in_a_row,   // along a wall, a metre apart, in random order: walks are whole metres
};

/// A regular class made from a number: one or two of nine groups and an assisting one at each station, so
/// that a hidden order of the stations is a ring without a bad joint. Nobody needs the recovery time that
/// short_rest counts, and nothing has a load, so these components are 0 in every rotation.
ClassSpec regular_class(const Size&, std::uint64_t seed, Layout = Layout::scattered);

/// What exporters need of such a class.
struct Floor {
  Size size;
  std::vector<std::vector<int>> groups;   // stations that share a primary group, two at least in each
  std::vector<std::vector<bool>> clash;   // [a][b]: share a primary group
  std::vector<std::vector<bool>> assist;  // [a][b]: an overlap of theirs is assisting only
  std::vector<std::vector<int>> walk;     // [a][b]: in units
  int walk_unit_cm = 1;                   // the largest that divides all walks
};

/// Throws std::invalid_argument for a class that is not regular.
Floor floor_of(const ClassSpec&, int slots);

/// idle, assist_overlap and walk_cm in the order of the model as one sum: no change of a later component
/// outweighs one unit of an earlier one. Back-to-backs are forbidden, which loses nothing where a rotation
/// without them exists.
struct Weights {
  std::int64_t idle = 0;
  std::int64_t assist = 0;
  std::int64_t walk = 1;  // a unit of walking
};
Weights weights_of(const Floor&);
std::int64_t weighed(const Floor&, const Cost&);

/// The number, from 1, of the choice 'member m works at station s in slot t' in every format.
int choice(const Floor&, int m, int t, int s);
int choices(const Floor&);

/// The rotation that the choices say; nothing if somebody is to be at two stations at once.
/// `chosen[v]`: choice number v is taken; index 0 is not used.
std::optional<Rotation> rotation_of(const Floor&, const std::vector<bool>& chosen);

}  // namespace floorwheel::peers
