// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/nearest.h"

#include <algorithm>

namespace floorwheel::files {

std::size_t distance(std::string_view a, std::string_view b) {
  // Longer words are never near anything; the cut keeps a hostile file from costing quadratic time.
  constexpr std::size_t longest = 80;
  a = a.substr(0, longest);
  b = b.substr(0, longest);
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), now(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    now[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      now[j] = std::min({last[j] + 1, now[j - 1] + 1, change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        now[j] = std::min(now[j], before[j - 2] + 1);
    }
    std::swap(before, last);
    std::swap(last, now);
  }
  return last[b.size()];
}

std::string nearest(std::string_view word, const std::vector<std::string>& known) {
  const std::string* best = nullptr;
  std::size_t best_distance = 0;
  for (const std::string& k : known) {
    const std::size_t d = distance(word, k);
    if (best && d >= best_distance) continue;
    best = &k;
    best_distance = d;
  }
  return best ? *best : std::string();
}

std::string did_you_mean(std::string_view word, const std::vector<std::string>& known,
                         std::string_view otherwise) {
  const std::string near = nearest(word, known);
  return near.empty() ? std::string(otherwise) : "did you mean " + near + "?";
}

}  // namespace floorwheel::files
