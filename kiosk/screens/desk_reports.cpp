// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/desk_reports.h"

#include <QDateTime>
#include <QLocale>
#include <QTimeZone>
#include <algorithm>

#include "kiosk/screens/desk_tables.h"
#include "kiosk/screens/hub_link.h"

namespace floorwheel::screens {

namespace {

constexpr int long_range_weeks = 12;
constexpr int short_range_weeks = 4;
constexpr int habit_weeks = 4;  // how often members come is judged over so many

int ended_classes() {
  const auto& all = hub_link().hall().classes;
  return static_cast<int>(std::count_if(
      all.begin(), all.end(), [](const auto& c) { return c.second.clock.state == wire::Running::over; }));
}

}  // namespace

DeskReports::DeskReports(QObject* parent)
    : QObject(parent),
      bars_({"week", "visits", "part", "running"}, this),
      member_weeks_({"alias", "cells", "total"}, this),
      how_often_({"label", "members", "part", "often"}, this),
      attendance_({"date", "name", "expected", "here"}, this) {
  HubLink& link = hub_link();
  connect(&link, &HubLink::hallChanged, this, [this] {
    if (ended_classes() != ended_) ask();
  });
  connect(&link, &HubLink::connectedChanged, this, &DeskReports::ask);
  connect(&link, &HubLink::answer, this, [this](const QString& id, const QJsonObject& body) {
    const QJsonArray rows = body.value(QLatin1String("rows")).toArray();
    if (id == attendance_ask_) {
      attendance_.set_rows(attendance_rows(rows));
    } else if (id == frequency_ask_) {
      frequency_ = rows;
      answered_ = true;
    } else if (id == members_ask_) {
      member_count_ = static_cast<int>(body.value(QLatin1String("members")).toArray().size());
    } else {
      return;
    }
    lay_out();
  });
  ask();
}

void DeskReports::ask() {
  if (!hub_link().connected()) return;
  ended_ = ended_classes();
  attendance_ask_ = hub_link().ask(QStringLiteral("attendance"));
  frequency_ask_ = hub_link().ask(QStringLiteral("frequency"));
  members_ask_ = hub_link().ask(QStringLiteral("members"));
}

QDate DeskReports::today() const {
  return QDateTime::fromMSecsSinceEpoch(hub_link().civilNowMs(), QTimeZone(hub_link().utcOffsetS())).date();
}

void DeskReports::lay_out() {
  const QStringList weeks = weeks_until(today(), week_count_);
  bars_.set_rows(week_bars(frequency_, weeks));
  member_weeks_.set_rows(member_weeks(frequency_, weeks));
  how_often_.set_rows(how_often(frequency_, weeks_until(today(), habit_weeks), member_count_));
  Q_EMIT changed();
}

void DeskReports::otherRange() {
  week_count_ = week_count_ == long_range_weeks ? short_range_weeks : long_range_weeks;
  lay_out();
}

QStringList DeskReports::weeks() const {
  QStringList numbers;
  for (const QVariantMap& bar : bars_.rows()) numbers.append(bar.value(QStringLiteral("week")).toString());
  return numbers;
}

QString DeskReports::rangeText() const {
  if (hub_link().civilNowMs() <= 0) return {};
  // From the Monday of the first week to the Sunday of this one.
  const QDate sunday = today().addDays(7 - today().dayOfWeek());
  const QDate monday = sunday.addDays(1 - 7 * week_count_);
  const QLocale locale;
  return tr("%1 to %2")
      .arg(locale.toString(monday, QStringLiteral("d MMMM")),
           locale.toString(sunday, QStringLiteral("d MMMM yyyy")));
}

int DeskReports::oftenCount() const {
  int sum = 0;
  for (const QVariantMap& row : how_often_.rows())
    if (row.value(QStringLiteral("often")).toBool()) sum += row.value(QStringLiteral("members")).toInt();
  return sum;
}

}  // namespace floorwheel::screens
