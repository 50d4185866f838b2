// SPDX-License-Identifier: GPL-3.0-or-later
// A class as asked: plain values, as the class file or the store gives them, before any rule is applied.
// Slots count from 1; ranges include both ends. Lengths are whole centimetres, loads whole hectograms
// (0.1 kg), times whole seconds. Solver and auditor both start from this and share nothing else.
// Source: the rotation model, "Given" (see DEVELOPERS.md).
#pragma once

#include <array>
#include <cstdint>
#include <limits>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "scheduler/vocabulary.h"

namespace floorwheel {

struct Exercise {
  std::string id;    // "goblet-squat"
  std::string name;  // "Goblet squat"
  GroupSet primary;
  GroupSet assisting;
  FeatureSet features;
  ExerciseKind kind = ExerciseKind::compound;
  std::vector<int> loads_hg;             // loads a floor usually has, ascending; empty: body weight
  std::array<int, 2> reps{8, 12};        // usual range (seconds where hold is true)
  std::array<int, 2> rir{1, 3};          // usual repetitions in reserve
  bool hold = false;                     // held, not repeated
  std::vector<std::string> substitutes;  // ids, in order of preference
  std::vector<std::string> equipment{};  // what it needs, one unit of each; none: the floor
  bool per_side = false;                 // repetitions are those of one side
  std::string how{};                     // one line; may be empty
  std::string caution{};                 // one line; empty: nothing beyond the usual

  friend bool operator==(const Exercise&, const Exercise&) = default;
};
using ExerciseTable = std::map<std::string, Exercise, std::less<>>;

/// Slots first..last; `to_the_end` as last means the class's last slot, whatever T is.
struct SlotRange {
  static constexpr int to_the_end = std::numeric_limits<int>::max();
  int first = 1;
  int last = to_the_end;
  [[nodiscard]] bool contains(int slot) const { return first <= slot && slot <= last; }
  friend bool operator==(SlotRange, SlotRange) = default;
};

struct StationSpec {
  std::string id;
  std::string exercise;
  std::vector<std::string> substitutes;  // exercise ids, in order of preference
  int capacity = 1;                      // places, >= 1
  std::vector<std::string> equipment;    // one unit of each per working member
  int x_cm = 0;
  int y_cm = 0;
  std::vector<SlotRange> closed;
  std::vector<int> offers_hg;  // loads that stand there, ascending; empty: the exercise's
  std::optional<int> reps;     // planned repetitions; none: the exercise's upper end
  std::optional<int> rir;      // planned repetitions in reserve; none: the exercise's

  friend bool operator==(const StationSpec&, const StationSpec&) = default;
};

struct EquipmentSpec {
  std::string id;
  int units = 0;
  friend bool operator==(const EquipmentSpec&, const EquipmentSpec&) = default;
};

struct MemberSpec {
  std::string id;
  std::string shown_as;  // the alias on the wall
  Level level = Level::novice;
  SlotRange present;
  GroupSet excluded_groups;
  FeatureSet excluded_features;
  std::vector<std::string> excluded_exercises;
  std::vector<std::string> allowed_exercises;
  std::optional<std::vector<std::string>> required;  // station ids; none: every station with an exercise
  std::map<std::string, int, std::less<>> loads_hg;  // planned load by station id
  bool guest = false;

  friend bool operator==(const MemberSpec&, const MemberSpec&) = default;
};

struct PairSpec {
  std::string a;
  std::string b;
  PairRule rule = PairRule::together;
  friend bool operator==(const PairSpec&, const PairSpec&) = default;
};

struct BreakSpec {
  int after_slot = 0;
  int seconds = 0;
  friend bool operator==(const BreakSpec&, const BreakSpec&) = default;
};

struct ClassSpec {
  std::string name;
  std::optional<std::string> start;  // RFC 3339, as written
  std::optional<int> length_s;       // the room is ours this long
  int laps = 1;
  int work_s = 40;
  int change_s = 20;
  std::optional<int> slots;  // T, or none: the planner says what each number of slots buys
  Style style = Style::automatic;
  int show_s = 0;
  int warm_up_s = 0;
  int lead_in_s = 0;
  int cool_down_s = 0;
  std::array<int, level_count> recovery_s{60, 90, 120};  // by level
  std::vector<BreakSpec> breaks;
  std::vector<EquipmentSpec> equipment;
  std::vector<StationSpec> stations;
  std::vector<MemberSpec> members;  // named members in file order, then guests G1, G2, ...
  std::vector<PairSpec> pairs;
  ExerciseTable exercises;  // every exercise that stations and substitutes may name

  friend bool operator==(const ClassSpec&, const ClassSpec&) = default;
};

/// Seconds of the whole class with T slots: show + warm-up + lead-in + T (work + change) + breaks +
/// cool-down. A break after slot T or later falls away.
int class_seconds(const ClassSpec&, int slots);

/// Appends guests G1..Gn (novice, present throughout); ids skip those that members already have.
void add_guests(ClassSpec&, int count);

/// The letter each station has on the wall, in station order: its own id where that is one capital other
/// than I, O, Q and W, else the next free of A..Z without those, then 2..9, then AA, AB, ...
std::vector<std::string> wall_letters(const ClassSpec&);

}  // namespace floorwheel
