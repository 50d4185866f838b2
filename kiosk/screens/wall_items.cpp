// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/wall_items.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "kiosk/screens/wall_columns.h"
#include "kiosk/screens/wall_middle.h"

namespace floorwheel::screens {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Wall)
};

constexpr double middle_x = wheel::centre.x;
constexpr double headline_base = 164;
constexpr double headline_tracking = -4.5;
constexpr double headline_space = 33;
constexpr double corner_left = 530;
constexpr double corner_right = 1390;
constexpr double corner_base = 89;
constexpr double corner_next = 155;
constexpr double corner_gap = 12;    // least between a corner and the headline
constexpr double plate_margin = 56;  // of 'Held' round its word

using From = TextSetter::From;

WallTextItem headline_item(const WallFace& f, const WallText& measure) {
  std::vector<WallTextItem> one;
  WallTextItem item = TextSetter(measure, one)
                          .set(QStringLiteral("headline"), headline_of(f), From::middle, middle_x,
                               headline_base, wall_cap::word);
  if (f.state != WallState::stopped && item.width > wall_fit::headline_tight) {
    item.spacing = headline_tracking;
    item.word_spacing = headline_space - measure.width(QStringLiteral(" "), wall_cap::word) - item.spacing;
    item.width += item.spacing * static_cast<double>(item.label.size() - 1) +
                  item.word_spacing * static_cast<double>(item.label.count(QLatin1Char(' ')));
    item.x = middle_x - (item.width + item.spacing) / 2;
  }
  return item;
}

void add_corners(const WallFace& f, const WallText& measure, double headline, TextSetter& put) {
  QString texts[4];
  if (f.held) {
    texts[0] = Words::tr("Clock", "upper line of 'Clock is still'");
    texts[1] = Words::tr("is still", "lower line of 'Clock is still'");
    texts[2] = Words::tr("Stay", "upper line of 'Stay in place'");
    texts[3] = Words::tr("in place", "lower line of 'Stay in place'");
  } else if (f.state == WallState::work) {
    texts[0] = Words::tr("Slot %1").arg(f.slot);
    texts[1] = Words::tr("of %1", "slots").arg(f.slot_count);
    texts[2] = Words::tr("Lap %1").arg(f.lap);
    texts[3] = Words::tr("of %1", "laps").arg(f.lap_count);
  } else if (f.state == WallState::show) {
    texts[0] = QString::number(f.shown + 1);
    texts[1] = Words::tr("of %1", "stations").arg(f.stations.size());
    texts[2] = Words::tr("then");
    texts[3] = f.then == WallState::warm_up   ? Words::tr("warm-up")
               : f.then == WallState::lead_in ? Words::tr("first place")
                                              : Words::tr("work");
  } else {
    return;
  }
  double widest = 0;
  for (int i = 0; i < 4; ++i) widest = std::max(widest, measure.width(texts[i], wall_cap::near, i % 2 == 0));
  if (!corner_room(headline + (f.held ? 2 * plate_margin : 0), widest)) return;
  put.set(QStringLiteral("corner:0"), texts[0], From::left, corner_left, corner_base, wall_cap::near);
  put.set(QStringLiteral("corner:1"), texts[1], From::left, corner_left, corner_next, wall_cap::near, false,
          true);
  put.set(QStringLiteral("corner:2"), texts[2], From::right, corner_right, corner_base, wall_cap::near);
  put.set(QStringLiteral("corner:3"), texts[3], From::right, corner_right, corner_next, wall_cap::near, false,
          true);
}

void add_discs(const WallFace& f, const WheelLayout& layout, WallItems& items) {
  items.rail = {0};
  for (std::size_t i = 0; i < layout.discs.size(); ++i) {
    const WallStation& s = f.stations[i];
    items.discs.push_back(
        {s.id, s.letter, layout.discs[i].centre, is_filled(f, static_cast<int>(i)) && !s.closed, s.closed});
    items.rail.push_back(layout.discs[i].angle);
  }
  items.rail.push_back(360);
  items.gaps = layout.gaps;
  items.chevrons = layout.chevrons;
}

void add_last_words(const WallSite& site, const WallText& measure, WallItems& items) {
  TextSetter put(measure, items.texts);
  for (std::size_t i = 0; i < site.last_words.size(); ++i) {
    const WallWord& w = site.last_words[i];
    const bool left = i < 2;
    const double down = i % 2 == 0 ? 0 : 330;
    const double x = left ? wheel::left_flush : wheel::right_flush;
    const From from = left ? From::right : From::left;
    const auto one = [&](const QString& label, double cap, bool bold) {
      return measure.lines(label, cap, bold, wall_fit::near_line, wall_fit::near_line, 1).constFirst();
    };
    put.set(QStringLiteral("last:%1:head").arg(i), one(w.head, wall_cap::last_word, true), from, x,
            420 + down, wall_cap::last_word);
    put.set(QStringLiteral("last:%1:text").arg(i), one(w.text, wall_cap::near, false), from, x, 497.5 + down,
            wall_cap::near, false, true);
    const double line_x = left ? 504 : 1416;
    items.lines.append({QPolygonF(QList<QPointF>{{line_x, 350 + down}, {line_x, 519 + down}})});
  }
}

}  // namespace

QString headline_of(const WallFace& f) {
  if (f.held) return Words::tr("Held");
  switch (f.state) {
    case WallState::nobody:
      return QStringLiteral("Floorwheel");
    case WallState::gather:
      return Words::tr("Come in");
    case WallState::ready:
    case WallState::lead_in:
      return Words::tr("First place");
    case WallState::show:
      return Words::tr("Watch");
    case WallState::warm_up:
      return Words::tr("Warm-up");
    case WallState::work:
    case WallState::last:
      return Words::tr("Work");
    case WallState::change:
      return f.ring ? Words::tr("Move one on") : Words::tr("Next place");
    case WallState::pause:
      return f.lap_ends ? Words::tr("Lap break") : Words::tr("Break");
    case WallState::cool_down:
      return Words::tr("Cool-down");
    case WallState::past_end:
      return Words::tr("Done");
    case WallState::stopped:
      return Words::tr("Stop and help");
  }
  return {};
}

bool corner_room(double headline_width, double corner_width) {
  return corner_left + corner_width + corner_gap <= middle_x - headline_width / 2;
}

QPolygonF chevron(double angle, double radius, double half_length, double half_width) {
  const double a = angle * std::numbers::pi / 180;
  const WheelPoint c = wheel_point(angle, radius);
  const auto at = [&](double along, double out) {
    return QPointF(c.x + along * std::cos(a) + out * std::sin(a),
                   c.y + along * std::sin(a) - out * std::cos(a));
  };
  return QPolygonF({at(-half_length, half_width), at(half_length, 0), at(-half_length, -half_width)});
}

WallItems wall_items(const WallFace& f, const WallText& measure, const WallSite& site, const QString& note,
                     const QString& time_of_day, int page) {
  WallItems items;
  items.headline = headline_item(f, measure);
  if (f.state == WallState::stopped) return items;

  const WallColumns columns(f, measure);
  const WheelLayout layout = columns.layout(page);
  items.pages = layout.pages;
  add_discs(f, layout, items);
  if (f.state == WallState::gather) {
    items.pages = columns.add_gathering(page, items);
  } else if (f.state == WallState::cool_down || f.state == WallState::past_end) {
    add_last_words(site, measure, items);
  } else if (f.state != WallState::nobody) {
    columns.add(layout, items);
    items.plate = f.waiting_place;
  }
  TextSetter put(measure, items.texts);
  add_corners(f, measure, items.headline.width, put);

  // The most pressing first: there is room for two.
  QStringList notes;
  if (!note.isEmpty()) notes.append(note);
  if (items.pages > 1)
    notes.append(Words::tr("%1 of %2", "pages").arg(page % items.pages + 1).arg(items.pages));
  if (f.power_cut) notes.append(Words::tr("After a power cut"));
  add_middle(f, measure, notes.mid(0, 2), time_of_day, layout, items.middle);
  return items;
}

}  // namespace floorwheel::screens
