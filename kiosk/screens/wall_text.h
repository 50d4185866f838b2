// SPDX-License-Identifier: GPL-3.0-or-later
// Text of the wall, measured: how wide it is at a capital height, and how a name that is too wide is broken.
// Nothing is shrunk and nothing elided; one word wider than a line keeps its first letters and a full stop.
#pragma once

#include <QFontMetricsF>
#include <QString>
#include <QStringList>
#include <map>

namespace floorwheel::screens {

/// Capital heights of the wall's texts, in units; the tiers they serve are in DEVELOPERS.md.
namespace wall_cap {
inline constexpr double clock = 426;  // height of its figures
inline constexpr double letter_shown = 284;
inline constexpr double word = 142;
inline constexpr double emergency = 75;
inline constexpr double go = 71;  // aliases that go, letters of discs and tags
inline constexpr double tag_over_rows = 88;
inline constexpr double last_word = 57;
inline constexpr double alias = 44;  // while people work
inline constexpr double near = 43;
}  // namespace wall_cap

namespace wall_fit {
inline constexpr double alias_go = 370;   // px at 71 px capitals
inline constexpr double shortened = 340;  // of one long word, before its full stop
inline constexpr double near_line = 474;
inline constexpr double headline = 880;
inline constexpr double headline_tight = 860;  // above it letters and words move together
}  // namespace wall_fit

/// The pixel size of a font whose capitals (or the clock's figures) are so high.
int wall_pixel_size(double cap);

class WallText {
 public:
  explicit WallText(QString family) : family_(std::move(family)) {}

  [[nodiscard]] double width(const QString& text, double cap, bool bold = true) const;
  /// Lines no wider than `most`, broken between words; a word that is wider alone is shortened to
  /// `shortened` px and a full stop. At most `lines`: what is left over goes into the last, shortened.
  [[nodiscard]] QStringList lines(const QString& text, double cap, bool bold, double most, double shortened,
                                  int lines) const;
  [[nodiscard]] QString shortened(const QString& word, double cap, bool bold, double most) const;

 private:
  const QFontMetricsF& metrics(int pixel_size, bool bold) const;
  QString family_;
  mutable std::map<std::pair<int, bool>, QFontMetricsF> metrics_;
};

}  // namespace floorwheel::screens
