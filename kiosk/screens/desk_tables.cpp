// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/desk_tables.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QHash>
#include <QJsonObject>
#include <QLocale>
#include <QTimeZone>
#include <algorithm>
#include <array>

namespace floorwheel::screens {

namespace {

// QString of the standard strings of the wire.
QString q(const std::string& s) { return QString::fromStdString(s); }

QString text(const char* source, int n = -1) {
  return QCoreApplication::translate("Desk", source, nullptr, n);
}

bool by_alias(const QVariantMap& a, const QVariantMap& b) {
  const QString x = a.value(QStringLiteral("alias")).toString();
  const QString y = b.value(QStringLiteral("alias")).toString();
  const int order = QString::localeAwareCompare(x, y);
  return order != 0 ? order < 0
                    : a.value(QStringLiteral("key")).toString() < b.value(QStringLiteral("key")).toString();
}

QString local_time(qint64 unix_ms, int utc_offset_s) {
  if (unix_ms <= 0) return {};
  return QDateTime::fromMSecsSinceEpoch(unix_ms, QTimeZone(utc_offset_s)).toString(QStringLiteral("HH:mm"));
}

int here_count(const wire::ClassView& c) {
  return static_cast<int>(
      std::count_if(c.members.begin(), c.members.end(), [](const auto& m) { return m.here; }));
}

QString state_of(const wire::ClassView& c) {
  switch (c.clock.state) {
    case wire::Running::running:
      return text("running");
    case wire::Running::held:
      return text("held");
    case wire::Running::stopped:
      return text("stop and help");
    case wire::Running::over:
      return text("ended");
    case wire::Running::not_started:
      break;
  }
  return c.open ? text("check-in is open") : text("later");
}

QString line_of(const wire::ClassView& c, int here, int expected_in_all) {
  if (c.clock.state == wire::Running::over) return text("%1 of %2 came").arg(here).arg(expected_in_all);
  return text("%1 here, %2 expected").arg(here).arg(expected_in_all - here);
}

}  // namespace

QString iso_week_of(const QDate& date) {
  int year = 0;
  const int week = date.weekNumber(&year);
  return QStringLiteral("%1-W%2").arg(year).arg(week, 2, 10, QLatin1Char('0'));
}

QStringList weeks_until(const QDate& today, int count) {
  QStringList weeks;
  for (int back = count - 1; back >= 0; --back) weeks.append(iso_week_of(today.addDays(qint64{-7} * back)));
  return weeks;
}

QList<QVariantMap> week_bars(const QJsonArray& frequency, const QStringList& weeks) {
  QHash<QString, int> visits;
  for (const auto v : frequency)
    visits[v[QLatin1String("iso_week")].toString()] += v[QLatin1String("visits")].toInt();
  int highest = 1;
  for (const QString& week : weeks) highest = std::max(highest, visits.value(week));
  QList<QVariantMap> bars;
  for (const QString& week : weeks)
    bars.append({{QStringLiteral("key"), week},
                 {QStringLiteral("week"), QString::number(week.section(QLatin1Char('W'), 1).toInt())},
                 {QStringLiteral("visits"), visits.value(week)},
                 {QStringLiteral("part"), double(visits.value(week)) / highest},
                 {QStringLiteral("running"), week == weeks.last()}});
  return bars;
}

QList<QVariantMap> member_weeks(const QJsonArray& frequency, const QStringList& weeks) {
  struct Line {
    QString alias;
    QHash<QString, int> visits;
    int total = 0;
  };
  QHash<QString, Line> lines;
  for (const auto v : frequency) {
    const QString week = v[QLatin1String("iso_week")].toString();
    if (!weeks.contains(week)) continue;
    Line& line = lines[v[QLatin1String("member")].toString()];
    const int visits = v[QLatin1String("visits")].toInt();
    line.alias = v[QLatin1String("shown_as")].toString();
    line.visits[week] += visits;
    line.total += visits;
  }
  QList<QVariantMap> rows;
  for (auto it = lines.cbegin(); it != lines.cend(); ++it) {
    QStringList cells;
    for (const QString& week : weeks) {
      const int visits = it->visits.value(week);
      cells.append(visits > 0 ? QString::number(visits) : QString());
    }
    rows.append({{QStringLiteral("key"), it.key()},
                 {QStringLiteral("alias"), it->alias},
                 {QStringLiteral("cells"), cells},
                 {QStringLiteral("total"), it->total}});
  }
  std::sort(rows.begin(), rows.end(), [](const QVariantMap& a, const QVariantMap& b) {
    const int x = a.value(QStringLiteral("total")).toInt();
    const int y = b.value(QStringLiteral("total")).toInt();
    return x != y ? x > y : by_alias(a, b);
  });
  return rows;
}

QList<QVariantMap> how_often(const QJsonArray& frequency, const QStringList& weeks, int members) {
  QHash<QString, int> visits;
  for (const auto v : frequency)
    if (weeks.contains(v[QLatin1String("iso_week")].toString()))
      visits[v[QLatin1String("member")].toString()] += v[QLatin1String("visits")].toInt();
  // A member belongs to the highest band whose lower edge the mean reaches.
  std::array<int, 5> bands{};
  const int n = static_cast<int>(weeks.size());
  for (const int total : visits) ++bands[total < n ? 1u : total < 2 * n ? 2u : total < 3 * n ? 3u : 4u];
  bands[0] = std::max(0, members - static_cast<int>(visits.size()));
  const std::array<QString, 5> labels{text("none"), text("under 1"), text("1"), text("2"), text("3 or more")};
  const int highest = std::max(1, *std::max_element(bands.begin(), bands.end()));
  QList<QVariantMap> rows;
  for (std::size_t b = 0; b < bands.size(); ++b)
    rows.append({{QStringLiteral("key"), labels[b]},
                 {QStringLiteral("label"), labels[b]},
                 {QStringLiteral("members"), bands[b]},
                 {QStringLiteral("part"), double(bands[b]) / highest},
                 {QStringLiteral("often"), b >= 3}});
  return rows;
}

QList<QVariantMap> attendance_rows(const QJsonArray& attendance) {
  QList<QVariantMap> rows;
  for (const auto v : attendance)
    rows.append({{QStringLiteral("key"), v[QLatin1String("class")].toString()},
                 {QStringLiteral("date"), v[QLatin1String("date")].toString()},
                 {QStringLiteral("name"), v[QLatin1String("name")].toString()},
                 {QStringLiteral("expected"), v[QLatin1String("expected")].toInt()},
                 {QStringLiteral("here"), v[QLatin1String("here")].toInt()}});
  std::stable_sort(rows.begin(), rows.end(), [](const QVariantMap& a, const QVariantMap& b) {
    return a.value(QStringLiteral("date")).toString() > b.value(QStringLiteral("date")).toString();
  });
  return rows;
}

QList<QVariantMap> class_cards(const wire::Hall& hall) {
  struct Card {
    QString order;
    QVariantMap row;
  };
  QList<Card> cards;
  for (const auto& [id, c] : hall.classes) {
    const int here = here_count(c);
    const int expected = static_cast<int>(std::count_if(c.members.begin(), c.members.end(),
                                                        [](const auto& m) { return m.expected && !m.here; }));
    QStringList beads;
    for (int i = 0; i < here; ++i) beads.append(QStringLiteral("here"));
    for (int i = 0; i < expected; ++i) beads.append(QStringLiteral("expected"));
    const bool over = c.clock.state == wire::Running::over;
    const QDateTime start = QDateTime::fromString(q(c.start), Qt::ISODate);
    cards.append(
        {(over ? QStringLiteral("1") : QStringLiteral("0")) + q(c.start) + q(id),
         {{QStringLiteral("key"), q(id)},
          {QStringLiteral("time"), start.isValid() ? start.toString(QStringLiteral("HH:mm")) : QString()},
          {QStringLiteral("name"), q(c.name)},
          {QStringLiteral("state"), state_of(c)},
          {QStringLiteral("line"), line_of(c, here, here + expected)},
          {QStringLiteral("beads"), beads},
          {QStringLiteral("over"), over}}});
  }
  std::sort(cards.begin(), cards.end(), [](const Card& a, const Card& b) { return a.order < b.order; });
  QList<QVariantMap> rows;
  for (const Card& card : cards) rows.append(card.row);
  return rows;
}

QList<QVariantMap> people_here(const wire::ClassView& c, int utc_offset_s) {
  QList<QVariantMap> rows;
  for (const wire::MemberView& m : c.members) {
    if (!m.here) continue;
    rows.append({{QStringLiteral("key"), q(m.id)},
                 {QStringLiteral("alias"), q(m.shown_as.empty() ? m.id : m.shown_as)},
                 {QStringLiteral("time"), local_time(m.here_at_ms, utc_offset_s)},
                 {QStringLiteral("note"), m.guest      ? text("guest")
                                          : m.expected ? QString()
                                                       : text("walk-in")},
                 {QStringLiteral("guest"), m.guest}});
  }
  std::sort(rows.begin(), rows.end(), by_alias);
  return rows;
}

QList<QVariantMap> people_expected(const wire::ClassView& c) {
  QList<QVariantMap> rows;
  for (const wire::MemberView& m : c.members) {
    if (!m.expected || m.here) continue;
    rows.append({{QStringLiteral("key"), q(m.id)},
                 {QStringLiteral("alias"), q(m.shown_as.empty() ? m.id : m.shown_as)},
                 {QStringLiteral("time"), QString()},
                 {QStringLiteral("note"), m.guest ? text("guest") : QString()},
                 {QStringLiteral("guest"), m.guest}});
  }
  std::sort(rows.begin(), rows.end(), by_alias);
  return rows;
}

QList<QVariantMap> last_check_ins(const wire::ClassView& c, int utc_offset_s, int most) {
  std::vector<const wire::MemberView*> people;
  for (const wire::MemberView& m : c.members)
    if (m.here && !m.guest && m.here_at_ms > 0) people.push_back(&m);
  // Latest first; of one batch the one that joined the list last.
  std::reverse(people.begin(), people.end());
  std::stable_sort(people.begin(), people.end(),
                   [](const auto* a, const auto* b) { return a->here_at_ms > b->here_at_ms; });
  QList<QVariantMap> rows;
  for (const wire::MemberView* m : people) {
    if (rows.size() == most) break;
    rows.append({{QStringLiteral("key"), q(m->id)},
                 {QStringLiteral("alias"), q(m->shown_as)},
                 {QStringLiteral("time"), local_time(m->here_at_ms, utc_offset_s)}});
  }
  return rows;
}

}  // namespace floorwheel::screens
