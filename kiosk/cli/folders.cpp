// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/folders.h"

#include <pwd.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <stdexcept>

namespace floorwheel::cli {
namespace {

std::string environment(const char* name) {
  const char* value = std::getenv(name);
  return value ? value : "";
}

std::string home() {
  if (std::string folder = environment("HOME"); folder.starts_with('/')) return folder;
  if (const passwd* user = ::getpwuid(::getuid())) return user->pw_dir;
  throw std::runtime_error("there is no home folder; give one with --data");
}

}  // namespace

std::string default_data_folder() {
  const std::string data = environment("XDG_DATA_HOME");
  return (data.starts_with('/') ? data : home() + "/.local/share") + "/floorwheel";
}

std::string program_folder() {
  std::error_code error;
  const auto self = std::filesystem::read_symlink("/proc/self/exe", error);
  if (error) throw std::runtime_error("/proc/self/exe cannot be read (" + error.message() + ")");
  return self.parent_path().string();
}

}  // namespace floorwheel::cli
