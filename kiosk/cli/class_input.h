// SPDX-License-Identifier: GPL-3.0-or-later
// The files that plan, audit and repair read; what cannot be read is thrown as files::FileError.
#pragma once

#include <string>

#include "kiosk/cli/args.h"
#include "kiosk/files/rotation_file.h"
#include "scheduler/class_spec.h"

namespace floorwheel::cli {

inline constexpr Option exercises_option{"--exercises", "FILE",
                                         "an exercise table (CSV) in place of the shipped one"};

/// The table of --exercises, else the shipped one.
ExerciseTable exercises_of(const Args&);
ClassSpec class_of(const std::string& path, const Args&);
files::RotationFile rotation_file_of(const std::string& path);

/// The value, or the error thrown.
template <class T>
T value_or_throw(files::OrFileError<T> result) {
  if (auto* error = std::get_if<files::FileError>(&result)) throw std::move(*error);
  return std::get<T>(std::move(result));
}

}  // namespace floorwheel::cli
