// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/class_input.h"

#include "kiosk/files/class_file.h"
#include "kiosk/files/exercise_table.h"
#include "kiosk/files/text_file.h"

namespace floorwheel::cli {

ExerciseTable exercises_of(const Args& args) {
  if (!args.has("--exercises")) return files::shipped_exercises();
  const std::string path = args.value("--exercises");
  return value_or_throw(
      files::parse_exercises(value_or_throw(files::read_text(path, "CSV of exercises")), path));
}

ClassSpec class_of(const std::string& path, const Args& args) {
  return value_or_throw(files::read_class(path, exercises_of(args)));
}

files::RotationFile rotation_file_of(const std::string& path) {
  return value_or_throw(
      files::parse_rotation(value_or_throw(files::read_text(path, "rotation (JSON)")), path));
}

}  // namespace floorwheel::cli
