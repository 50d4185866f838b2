// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/text_file.h"

#include <sys/stat.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>

namespace floorwheel::files {

OrFileError<std::string> read_text(const std::string& path, const std::string& kind) {
  constexpr std::size_t most = std::size_t{64} * 1024 * 1024;
  const auto fail = [&](const std::string& what) {
    return FileError{path, 0, 0, "", what, "give the path of a " + kind};
  };
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(path.c_str(), "rb"), &std::fclose);
  if (!file) return fail("cannot be opened (" + std::string(std::strerror(errno)) + ")");
  struct stat about {};
  if (::fstat(::fileno(file.get()), &about) != 0 || S_ISDIR(about.st_mode)) return fail("is a folder");

  std::string text;
  char block[65536];
  while (const std::size_t got = std::fread(block, 1, sizeof block, file.get())) {
    text.append(block, got);
    if (text.size() > most) return fail("is larger than 64 MB");
  }
  if (std::ferror(file.get())) return fail("cannot be read (" + std::string(std::strerror(errno)) + ")");
  if (text.starts_with("\xEF\xBB\xBF")) text.erase(0, 3);
  return text;
}

}  // namespace floorwheel::files
