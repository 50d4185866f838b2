// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/wall_text.h"

#include <QFont>
#include <cmath>

namespace floorwheel::screens {
namespace {
constexpr double cap_of_em = 0.70;
constexpr double figure_of_em = 0.714;  // the clock has figures only
}  // namespace

int wall_pixel_size(double cap) {
  return static_cast<int>(std::lround(cap / (cap == wall_cap::clock ? figure_of_em : cap_of_em)));
}

const QFontMetricsF& WallText::metrics(int pixel_size, bool bold) const {
  const auto key = std::make_pair(pixel_size, bold);
  const auto known = metrics_.find(key);
  if (known != metrics_.end()) return known->second;
  QFont font(family_);
  font.setPixelSize(pixel_size);
  font.setBold(bold);
  font.setHintingPreference(QFont::PreferNoHinting);  // as drawn: places are not whole px
  return metrics_.emplace(key, QFontMetricsF(font)).first->second;
}

double WallText::width(const QString& text, double cap, bool bold) const {
  return metrics(wall_pixel_size(cap), bold).horizontalAdvance(text);
}

QString WallText::shortened(const QString& word, double cap, bool bold, double most) const {
  QString kept = word;
  while (kept.size() > 1 && width(kept + QLatin1Char('.'), cap, bold) > most) {
    kept.chop(1);
    if (kept.back().isHighSurrogate()) kept.chop(1);
    while (kept.size() > 1 && !kept.back().isLetterOrNumber()) kept.chop(1);
  }
  return kept + QLatin1Char('.');
}

QStringList WallText::lines(const QString& text, double cap, bool bold, double most, double shorter,
                            int count) const {
  if (width(text, cap, bold) <= most) return {text};
  QStringList made;
  for (const QString& word : text.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
    if (!made.isEmpty() && width(made.back() + QLatin1Char(' ') + word, cap, bold) <= most)
      made.back() += QLatin1Char(' ') + word;
    else
      made.append(word);
  }
  if (made.size() > count) {
    made[count - 1] = made.mid(count - 1).join(QLatin1Char(' '));
    made.resize(count);
  }
  for (QString& line : made)
    if (width(line, cap, bold) > most) line = shortened(line, cap, bold, shorter);
  return made;
}

}  // namespace floorwheel::screens
