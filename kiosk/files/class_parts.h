// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of a class file, read in this order into one ClassSpec; each part knows the ids of those before.
#pragma once

#include "kiosk/files/toml_reader.h"

namespace floorwheel::files {

/// What has been read so far: the class and the ids that later parts may name.
struct ClassParts {
  const TomlDocument& document;
  ClassSpec spec;
  int guests = 0;
  Known exercises{"exercise"};
  Known equipment{"equipment"};
  Known stations{"station"};
  Known members{"member"};
};

void read_head(ClassParts&);       // [class], [[break]]
void read_exercises(ClassParts&);  // [[exercise]], over the table that spec.exercises holds already
void read_stations(ClassParts&);   // [[equipment]], [[station]]
void read_members(ClassParts&);    // [[member]], guests, [[pair]]

/// The tables under [[key]]; none where the key is left out.
std::vector<const toml::table*> tables_of(const ClassParts&, std::string_view key);

}  // namespace floorwheel::files
