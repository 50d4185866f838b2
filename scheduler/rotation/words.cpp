// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/rotation/words.h"

namespace floorwheel {

std::string counted(std::int64_t n, const std::string& one, const std::string& many) {
  return std::to_string(n) + " " + (n == 1 ? one : many);
}

std::string listed(std::vector<std::string> words, std::size_t kept, std::size_t longest) {
  if (words.size() > longest) {
    const std::size_t more = words.size() - kept;
    words.resize(kept);
    words.push_back(std::to_string(more) + " more");
  }
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i)
    out += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
  return out;
}

}  // namespace floorwheel
