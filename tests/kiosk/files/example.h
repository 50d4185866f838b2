// SPDX-License-Identifier: GPL-3.0-or-later
// The complete examples of the class file and the rotation format, for tests that read it or break it in one
// place.
#pragma once

#include <string>

namespace example {

inline const std::string class_file = R"([class]
name = "Thursday evening ring"
start = 2026-03-05T18:30:00+01:00
length_min = 60
laps = 1
work_s = 40
change_s = 20
slots = 3
style = "auto"
show_s = 60
warm_up_s = 360
lead_in_s = 30
cool_down_s = 300
recovery_s = { novice = 60, intermediate = 90, advanced = 120 }
guests = 1

[[break]]
after_slot = 2
s = 90

[[equipment]]
id = "kettlebell"
units = 6

[[station]]
id = "A"
exercise = "goblet-squat"
substitutes = ["box-squat"]
capacity = 2
equipment = ["kettlebell"]
at = [1.0, 2.5]
offers_kg = [8, 12, 16]
reps = 12
rir = 2
closed = [[3, 3]]

[[station]]
id = "B"
exercise = "seated-row"
capacity = 1
at = [4.0, 2.5]

[[member]]
id = "m01"
shown_as = "Robin K."
level = "novice"
present = [1, 3]
excluded_groups = ["shoulders"]
excluded_features = ["overhead"]
excluded_exercises = []
allowed_exercises = ["seated-row"]
required = ["A", "B"]
loads_kg = { A = 16.0 }

[[member]]
id = "m02"
shown_as = "Sam L."
level = "advanced"

[[pair]]
members = ["m01", "m02"]
rule = "apart"

[[exercise]]
id = "goblet-squat"
name = "Goblet squat"
primary = ["quadriceps", "glutes"]
assisting = ["lower_back", "abs"]
features = ["deep-knee"]
kind = "compound"
)";

/// The example with the first `from` replaced.
inline std::string with(const std::string& from, const std::string& to) {
  std::string text = class_file;
  const auto at = text.find(from);
  return at == std::string::npos ? std::string() : text.replace(at, from.size(), to);
}

/// The same class, smaller: nothing that may be left out.
inline const std::string smallest = R"([class]
name = "Small"
laps = 1
work_s = 40
change_s = 20
[[station]]
id = "A"
exercise = "seated-row"
capacity = 1
at = [0, 0]
[[member]]
id = "m01"
shown_as = "Robin K."
level = "novice"
)";

/// A rotation of it, as the format shows one.
inline const std::string rotation_file =
    R"({ "format": "floorwheel-rotation", "version": 1,
  "class": "Thursday evening ring", "slots": 3, "work_s": 40, "change_s": 20,
  "style": "ring", "ring": ["A", "B"],
  "members": [ { "id": "m01", "stations": ["A", "B", null] },
               { "id": "m02", "stations": ["B", "A", null] },
               { "id": "G1", "stations": ["A", null, "B"] } ],
  "cost":  { "missed": 0, "uneven": 0, "back_to_back": 0, "short_rest": 0, "idle": 1, "assist_overlap": 0, "walk_cm": 900, "reload_hg": 0 },
  "bound": { "missed": 0, "uneven": 0, "back_to_back": 0, "short_rest": 0, "idle": 1, "assist_overlap": 0, "walk_cm": 900, "reload_hg": 0 },
  "proven": ["missed", "uneven", "back_to_back", "short_rest", "idle", "assist_overlap", "walk_cm", "reload_hg"],
  "reasons": ["A ring: everybody moves one on, and no free rotation does better.",
              "Idle 1: \"B\" has one place."],
  "seed": 1 }
)";

}  // namespace example
