// SPDX-License-Identifier: GPL-3.0-or-later
// The site's own words on the wall: what to do in an emergency and the last words of a class. They are the
// site's to say, in a TOML file; without one the wall points to the instructor and claims nothing.
#pragma once

#include <QString>
#include <vector>

namespace floorwheel::screens {

struct WallWord {
  QString head;
  QString text;
  friend bool operator==(const WallWord&, const WallWord&) = default;
};

struct WallSite {
  std::vector<WallWord> emergency;   // four at most: left from the top, then right; head small, text large
  int first_aid = -1;                // which of them carries the first-aid sign; -1: none
  QString keep;                      // the line at the foot of stop and help
  std::vector<WallWord> last_words;  // four at most: left from the top, then right; head large, text small
};

/// What is shown where the site has said nothing.
WallSite plain_site();
/// Reads [emergency] and [[last_word]]; on failure returns what is wrong (file:line:column) in `trouble`.
WallSite read_site(const QString& file, QString* trouble);

}  // namespace floorwheel::screens
