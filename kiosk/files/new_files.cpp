// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/new_files.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <string_view>

#include "kiosk/files/text_file.h"

namespace floorwheel::files {
namespace {

FileError failed(const std::string& path, const std::string& what) {
  return {path, 0, 0, "", what + " (" + std::strerror(errno) + ")", "give a folder that can be written"};
}

}  // namespace

bool write_whole(const std::string& path, std::string_view text) {
  const int fd = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0644);
  if (fd < 0) return false;
  bool good = true;
  while (good && !text.empty()) {
    const ssize_t n = ::write(fd, text.data(), text.size());
    if (n < 0 && errno == EINTR) continue;
    good = n > 0;
    if (good) text.remove_prefix(static_cast<std::size_t>(n));
  }
  good = good && ::fsync(fd) == 0;
  const int reason = errno;
  ::close(fd);
  if (!good) {
    ::unlink(path.c_str());
    errno = reason;
  }
  return good;
}

std::optional<FileError> write_new_files(const std::string& folder,
                                         const std::vector<std::pair<std::string, std::string>>& files) {
  const bool made = ::mkdir(folder.c_str(), 0755) == 0;
  if (!made && errno != EEXIST) return failed(folder, "cannot be made");
  std::vector<std::string> parts, placed;
  // A name without its text never shows: each text is whole under another name first.
  const auto take_back = [&] {
    for (const std::string& path : parts) ::unlink(path.c_str());
    for (const std::string& path : placed) ::unlink(path.c_str());
    if (made) ::rmdir(folder.c_str());
  };
  std::vector<std::string> missing;
  for (const auto& [name, text] : files) {
    const std::string path = folder + "/" + name;
    if (::access(path.c_str(), F_OK) == 0) {
      const auto there = read_text(path, "class file");
      if (const auto* same = std::get_if<std::string>(&there); same && *same == text) continue;
      take_back();
      return FileError{path,
                       0,
                       0,
                       "",
                       "is there already with another text, and nothing was written",
                       "move it away or give another folder"};
    }
    parts.push_back(path + ".part" + std::to_string(::getpid()));
    missing.push_back(path);
    if (!write_whole(parts.back(), text)) {
      const FileError error = failed(path, "cannot be written");
      parts.pop_back();
      take_back();
      return error;
    }
  }
  for (std::size_t i = 0; i < missing.size(); ++i) {
    if (::link(parts[i].c_str(), missing[i].c_str()) != 0) {
      const FileError error = failed(missing[i], "cannot be written");
      take_back();
      return error;
    }
    placed.push_back(missing[i]);
  }
  for (const std::string& path : parts) ::unlink(path.c_str());
  return {};
}

}  // namespace floorwheel::files
