// SPDX-License-Identifier: GPL-3.0-or-later
// Dose: working sets by muscle group and ISO week. A working set counts once for each primary group of its
// exercise; warm-up and practice never do. Assisting groups stand apart; a setting adds a part of them.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "scheduler/class_spec.h"
#include "scheduler/training/set_record.h"

namespace floorwheel::training {

/// Sets in hundredths, since a part of the assisting ones may be counted.
using Centisets = int;

struct DoseRow {
  std::string member;
  IsoWeek week;
  Group group = Group::chest;
  int primary_sets = 0;
  int assisting_sets = 0;
  int days = 0;           // days of the week with primary work
  Centisets counted = 0;  // primary plus the part of assisting that the setting counts
};

struct DoseOptions {
  std::optional<IsoWeek> week = {};  // this one only
  std::string_view member = {};      // this one only; empty: all
  int assisting_percent = 0;         // 50 is the published fraction (checks C028)
};

/// Rows by member, week and group, for groups that were worked or assisted. Every exercise is in the table.
std::vector<DoseRow> dose(std::span<const SetRecord>, const ExerciseTable&, const DoseOptions& = {});

/// A teaching rule of the trade, no source. Each band reaches to the next one's lower end; over 15 is the
/// last.
enum class DoseBand : std::uint8_t { under_3, from_3_to_9, from_10_to_15, over_15 };
DoseBand band_of(Centisets);
std::string_view id_of(DoseBand);  // "under_3", "3_to_9", "10_to_15", "over_15"

// Two published classifications that stand beside the bands; words in the order of the studies' classes.
/// Under 5, 5 to 9, 10 and more weekly sets: "low", "middle", "high". Schoenfeld, Ogborn, Krieger 2017,
/// J Sports Sci 35(11):1073-1082.
std::string_view class_by_schoenfeld_2017(Centisets);
/// Under 12, 12 to 20, over 20: "low", "moderate", "high". Baz-Valle et al. 2022, J Hum Kinet 81:199-210.
std::string_view class_by_baz_valle_2022(Centisets);

}  // namespace floorwheel::training
