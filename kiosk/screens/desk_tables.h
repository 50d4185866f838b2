// SPDX-License-Identifier: GPL-3.0-or-later
// The desk's figures, from the hub's answers and the hall alone: pure functions, so that tests need no hub.
// ISO weeks are written "2026-W10" as in the hub's answers.
#pragma once

#include <QDate>
#include <QJsonArray>
#include <QList>
#include <QString>
#include <QStringList>
#include <QVariantMap>

#include "kiosk/wire/hall.h"

namespace floorwheel::screens {

QString iso_week_of(const QDate&);
/// `count` ISO weeks ending with the one of `today`, oldest first.
QStringList weeks_until(const QDate& today, int count);

/// A bar for each week: {key, week (number as text), visits, part (of the highest, 0 to 1), running (not
/// over)}.
QList<QVariantMap> week_bars(const QJsonArray& frequency, const QStringList& weeks);
/// A row for each member with a visit in these weeks: {key, alias, cells: [text of each week], total}; most
/// first, then by alias.
QList<QVariantMap> member_weeks(const QJsonArray& frequency, const QStringList& weeks);
/// How many members come how often, by their mean of visits a week over `weeks`: {key, label, members, part,
/// often (two or more)}. `members` is how many members there are.
QList<QVariantMap> how_often(const QJsonArray& frequency, const QStringList& weeks, int members);
/// {key, date, name, expected, here}, latest first.
QList<QVariantMap> attendance_rows(const QJsonArray& attendance);

/// A card for each class of the hall: {key, time, name, state, line, beads: ["here" | "expected"], over};
/// those to come and under way first, by start.
QList<QVariantMap> class_cards(const wire::Hall&);
/// The people of a class: {key, alias, time, note}; by alias.
QList<QVariantMap> people_here(const wire::ClassView&, int utc_offset_s);
QList<QVariantMap> people_expected(const wire::ClassView&);
/// The last check-ins, latest first: {key, alias, time}.
QList<QVariantMap> last_check_ins(const wire::ClassView&, int utc_offset_s, int most);

}  // namespace floorwheel::screens
