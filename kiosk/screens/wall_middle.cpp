// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/wall_middle.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

namespace floorwheel::screens {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Wall)
};
using From = TextSetter::From;

constexpr double middle_x = wheel::centre.x;
constexpr double clock_base = 837;
constexpr double clock_tracking = -12;
constexpr double most_seconds = 99;   // above it whole minutes
constexpr double middle_width = 560;  // of a text inside the wheel
constexpr double note_base = 912;
constexpr double note_in_show = 938;  // below what is planned there
constexpr double two_notes = 893;
constexpr double two_in_show = 885;  // in place of what is planned there
constexpr double note_row = 52;
// One figure of minutes and its unit stand as far left as drawn, or as far right as discs ask.
constexpr double minutes_from = 644;
constexpr double minutes_to = 690;
constexpr double minute_gap = 4;
constexpr double bearing = 10;  // least empty space beside a figure
constexpr double disc_gap = 4;

bool clear_of_discs(const WheelRect& r, const WheelLayout& layout) {
  return std::all_of(layout.discs.begin(), layout.discs.end(), [&](const WheelDisc& d) {
    const double dx = std::max({r.x - d.centre.x, d.centre.x - r.right(), 0.0});
    const double dy = std::max({r.y - d.centre.y, d.centre.y - r.bottom(), 0.0});
    return std::hypot(dx, dy) >= wheel::disc + disc_gap;
  });
}

void add_clock(const WallFace& f, const WallText& measure, const WheelLayout& layout, TextSetter& put) {
  const QString key = QStringLiteral("clock");
  if (f.seconds_left <= most_seconds) {
    const QString figures = QString::number(f.seconds_left);
    // The tracking after the last figure counts where there are two.
    const double off = figures.size() > 1 ? -clock_tracking / 2 : 0;
    put.set(key, figures, From::middle, middle_x + off, clock_base, wall_cap::clock, true, false,
            clock_tracking);
    return;
  }
  const QString minutes = QString::number((f.seconds_left + 30) / 60);
  const QString unit = Words::tr("min");
  const double figure = measure.width(minutes, wall_cap::clock);
  const double wide = minute_gap + figure + measure.width(unit, wall_cap::word);
  for (double x = minutes_from; minutes.size() == 1 && x <= minutes_to; x += 2) {
    const double unit_x = x + figure + minute_gap;
    if (!clear_of_discs({x + bearing, clock_base - wall_cap::clock, figure - 2 * bearing, wall_cap::clock},
                        layout) ||
        !clear_of_discs({unit_x, clock_base - wall_cap::word, x + wide - unit_x, wall_cap::word}, layout))
      continue;
    put.set(key, minutes, From::left, x, clock_base, wall_cap::clock, true, false, clock_tracking);
    put.set(QStringLiteral("unit"), unit, From::left, unit_x, clock_base, wall_cap::word);
    return;
  }
  // Wider than the wheel has room: one above the other.
  put.set(key, minutes, From::middle, middle_x, 660, wall_cap::letter_shown);
  put.set(QStringLiteral("unit"), unit, From::middle, middle_x, 840, wall_cap::word);
}

void add_shown(const WallFace& f, const WallText& measure, bool plan, TextSetter& put) {
  if (f.shown < 0) return;
  const WallStation& s = f.stations[static_cast<std::size_t>(f.shown)];
  put.set(QStringLiteral("letter"), s.letter, From::middle, middle_x, 684, wall_cap::letter_shown);
  const QStringList name = measure.lines(s.exercise, wall_cap::go, true, middle_width, middle_width, 2);
  double base = 790;
  for (qsizetype i = 0; i < name.size(); ++i, base += 85)
    put.set(QStringLiteral("shown:%1").arg(i), name[i], From::middle, middle_x, base, wall_cap::go);
  if (plan && measure.width(s.plan, wall_cap::near, false) <= (name.size() == 1 ? 460 : 360))
    put.set(QStringLiteral("plan"), s.plan, From::middle, middle_x, name.size() == 1 ? 873 : 930,
            wall_cap::near, false, true);
}

void add_before(const WallFace& f, const WallText& measure, TextSetter& put) {
  const QStringList name = measure.lines(f.class_name, wall_cap::go, true, middle_width, middle_width, 3);
  const bool many = name.size() > 2;
  double base = many ? 490 : 540;
  if (!f.start.isEmpty())
    put.set(QStringLiteral("start"), f.start, From::middle, middle_x, base, wall_cap::word);
  base += many ? 108 : 120;
  for (qsizetype i = 0; i < name.size(); ++i, base += many ? 84 : 92)
    put.set(QStringLiteral("class:%1").arg(i), name[i], From::middle, middle_x, base, wall_cap::go);
  if (f.state == WallState::gather)
    put.set(QStringLiteral("here"), Words::tr("%1 here", "people").arg(f.here.size()), From::middle, middle_x,
            base - 15, wall_cap::near, false, true);
}

}  // namespace

void add_middle(const WallFace& f, const WallText& measure, const QStringList& notes,
                const QString& time_of_day, const WheelLayout& layout, std::vector<WallTextItem>& out) {
  TextSetter put(measure, out);
  switch (f.state) {
    case WallState::nobody:
      put.set(QStringLiteral("time"), time_of_day, From::middle, middle_x, 660, wall_cap::word);
      put.set(QStringLiteral("waits"), Words::tr("waits for a class"), From::middle, middle_x, 760,
              wall_cap::near, false, true);
      break;
    case WallState::gather:
    case WallState::ready:
      add_before(f, measure, put);
      break;
    case WallState::show:
      add_shown(f, measure, notes.size() < 2, put);
      break;
    case WallState::past_end:
      put.set(QStringLiteral("time"), time_of_day, From::middle, middle_x, 660, wall_cap::word);
      break;
    case WallState::stopped:
      return;
    default:
      add_clock(f, measure, layout, put);
      break;
  }
  const bool shown = f.state == WallState::show;
  double base = notes.size() == 1 ? (shown ? note_in_show : note_base) : (shown ? two_in_show : two_notes);
  for (qsizetype i = 0; i < notes.size(); ++i, base += note_row)
    put.set(QStringLiteral("note:%1").arg(i), notes[i], From::middle, middle_x, base, wall_cap::near, false,
            true);
}

}  // namespace floorwheel::screens
