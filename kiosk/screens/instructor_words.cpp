// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_words.h"

#include <QDateTime>
#include <QJsonObject>
#include <QLocale>
#include <QTimeZone>
#include <array>

namespace floorwheel::screens::words {
namespace {

QString tr(const char* source, int n = -1) {
  return QCoreApplication::translate("Instructor", source, nullptr, n);
}

QString count(std::int64_t n, const char* one, const char* many) {
  return n == 1 ? tr(one) : tr(many, static_cast<int>(n));
}

QString amount(Component c, std::int64_t n) {
  switch (c) {
    case Component::missed:
      return count(n, QT_TRANSLATE_NOOP("Instructor", "1 visit missed"),
                   QT_TRANSLATE_NOOP("Instructor", "%n visits missed"));
    case Component::back_to_back:
      return count(n, QT_TRANSLATE_NOOP("Instructor", "1 group twice in a row"),
                   QT_TRANSLATE_NOOP("Instructor", "%n groups twice in a row"));
    case Component::moved:
      return count(n, QT_TRANSLATE_NOOP("Instructor", "1 entry moved"),
                   QT_TRANSLATE_NOOP("Instructor", "%n entries moved"));
    case Component::short_rest:
      return count(n, QT_TRANSLATE_NOOP("Instructor", "1 short rest"),
                   QT_TRANSLATE_NOOP("Instructor", "%n short rests"));
    case Component::idle:
      return count(n, QT_TRANSLATE_NOOP("Instructor", "1 idle slot"),
                   QT_TRANSLATE_NOOP("Instructor", "%n idle slots"));
    default:
      return {};
  }
}

constexpr std::array told = {Component::missed, Component::back_to_back, Component::short_rest,
                             Component::idle};

}  // namespace

QString clock_text(qint64 civil_ms, int utc_offset_s) {
  return QDateTime::fromMSecsSinceEpoch(civil_ms, QTimeZone(utc_offset_s)).toString(QStringLiteral("HH:mm"));
}

qint64 start_ms(std::string_view rfc3339) {
  const QDateTime at = QDateTime::fromString(text(rfc3339), Qt::ISODate);
  return at.isValid() ? at.toMSecsSinceEpoch() : -1;
}

QString start_text(std::string_view rfc3339) {
  const QDateTime at = QDateTime::fromString(text(rfc3339), Qt::ISODate);
  return at.isValid() ? at.time().toString(QStringLiteral("HH:mm")) : QString();
}

QString starts_in(qint64 start_ms, qint64 now_ms) {
  if (start_ms < 0) return {};
  const qint64 minutes = (start_ms - now_ms) / 60000;
  if (start_ms >= now_ms) {
    if (minutes == 0) return tr("starts now");
    if (minutes < 180) return count(minutes, "starts in 1 min", "starts in %n min");
    return tr("starts in %n h", static_cast<int>((minutes + 30) / 60));
  }
  if (minutes > -180) return tr("was to start %n min ago", static_cast<int>(-minutes));
  return {};
}

QString minutes_text(qint64 seconds) {
  return QStringLiteral("%1:%2").arg(seconds / 60).arg(seconds % 60, 2, 10, QLatin1Char('0'));
}

QString seats_text(int left) {
  if (left < 0) return tr("%n more than there are places.", -left);
  return count(left, "1 seat left.", "%n seats left.");
}

QString name_list(const QStringList& names, int most) {
  if (names.size() <= most) return names.join(QStringLiteral(", "));
  return tr("%1 and %n more", static_cast<int>(names.size()) - most)
      .arg(names.mid(0, most).join(QStringLiteral(", ")));
}

Cost cost_from(const QJsonObject& json) {
  Cost cost;
  for (const Component c : components) cost[c] = json.value(text(id_of(c))).toInteger();
  return cost;
}

QStringList cost_sentences(const Cost& cost) {
  QStringList out;
  for (const Component c : told) {
    if (cost[c] > 0)
      out << amount(c, cost[c]) + QLatin1Char('.');
    else if (c == Component::missed)
      out << tr("Nobody misses a station.");
    else if (c == Component::back_to_back)
      out << tr("No group comes twice in a row.");
  }
  return out;
}

QStringList cost_change_sentences(const Cost& now, const Cost& then) {
  QStringList out;
  if (then[Component::moved] > 0) out << amount(Component::moved, then[Component::moved]) + QLatin1Char('.');
  for (const Component c : told) {
    if (now[c] == 0 && then[c] == 0 && c != Component::missed) continue;
    out << (now[c] == then[c] ? tr("%1, as now.").arg(amount(c, then[c]))
                              : tr("%1, now %2.").arg(amount(c, then[c])).arg(now[c]));
  }
  return out;
}

QString row_gain(const Cost& row, const Cost& chosen, bool is_chosen, bool fits) {
  if (is_chosen) return tr("as above");
  if (!fits) return tr("too long for the room");
  for (const Component c : told) {
    if (row[c] == chosen[c]) continue;
    if (c == Component::missed && row[c] > chosen[c]) return amount(c, row[c]);
    return row[c] < chosen[c] ? tr("%1 less").arg(amount(c, chosen[c] - row[c]))
                              : tr("%1 more").arg(amount(c, row[c] - chosen[c]));
  }
  return tr("nothing more");
}

QString segment_word(const wire::Segment& s, Style style) {
  switch (s.kind) {
    case wire::SegmentKind::show:
      return tr("Watch");
    case wire::SegmentKind::warm_up:
      return tr("Warm-up");
    case wire::SegmentKind::lead_in:
      return tr("First place");
    case wire::SegmentKind::work:
      return tr("Work");
    case wire::SegmentKind::change:
      return style == Style::ring ? tr("Move one on") : tr("Next place");
    case wire::SegmentKind::pause:
      return s.lap_ends ? tr("Lap break") : tr("Break");
    case wire::SegmentKind::cool_down:
      return tr("Cool-down");
  }
  return {};
}

QString level_word(Level level) {
  switch (level) {
    case Level::novice:
      return tr("novice");
    case Level::intermediate:
      return tr("intermediate");
    case Level::advanced:
      return tr("advanced");
  }
  return {};
}

QString group_word(std::string_view id) {
  return QString(text(id)).replace(QLatin1Char('_'), QLatin1Char(' '));
}

QString kg_text(double kg) {
  return kg <= 0 ? tr("body weight") : tr("%1 kg").arg(QLocale().toString(kg, 'g', 6));
}

QString day_text(const QString& iso) {
  return QLocale().toString(QDate::fromString(iso, Qt::ISODate), QStringLiteral("d MMMM"));
}

QString page_text(int page, int pages) { return tr("page %1 of %2").arg(page + 1).arg(pages); }

QString visits_text(int n) { return count(n, "1 visit", "%n visits"); }
QString sets_text(int n) { return count(n, "1 set", "%n sets"); }

}  // namespace floorwheel::screens::words
