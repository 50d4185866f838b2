// SPDX-License-Identifier: GPL-3.0-or-later
// The instructor's sentences: what a rotation costs, what one more slot buys, when things are. Pure functions
// of values; every text goes through the translator.
#pragma once

#include <QCoreApplication>
#include <QString>
#include <QStringList>
#include <string_view>

#include "kiosk/wire/hall.h"
#include "scheduler/rotation/cost.h"

class QJsonObject;

namespace floorwheel::screens::words {

inline QString text(std::string_view s) {
  return QString::fromUtf8(s.data(), static_cast<qsizetype>(s.size()));
}

/// "18:30" local time of a Unix time.
QString clock_text(qint64 civil_ms, int utc_offset_s);
/// Unix time of a class's start, or -1 where the file gives none or it cannot be read.
qint64 start_ms(std::string_view rfc3339);
/// "18:30" as the class file says it (its own offset), or "" without a start.
QString start_text(std::string_view rfc3339);
/// "starts in 12 min", "starts now", "started 5 min ago".
QString starts_in(qint64 start_ms, qint64 now_ms);
/// "0:41" of seconds.
QString minutes_text(qint64 seconds);
/// "4 seats left.", "2 more than there are places."
QString seats_text(int left);
/// "Robin K., Ana P. and 3 more".
QString name_list(const QStringList& names, int most);

Cost cost_from(const QJsonObject&);
/// What it costs, a sentence each, the important first.
QStringList cost_sentences(const Cost&);
/// What a change would do to the cost: "14 visits missed, now 0."
QStringList cost_change_sentences(const Cost& now, const Cost& then);
/// A row of the table held against the chosen one: "18 visits missed", "2 short rests less", "as above".
QString row_gain(const Cost& row, const Cost& chosen, bool is_chosen, bool fits);

/// The word of a segment as the wall says it: "Work", "Move one on", "Lap break".
QString segment_word(const wire::Segment&, Style);
QString level_word(Level);
/// The everyday word of a muscle group's id: "lower back".
QString group_word(std::string_view id);
/// "12.5 kg"; "body weight" for 0.
QString kg_text(double kg);
/// "27 November" of "2026-11-27".
QString day_text(const QString& iso);
/// "page 2 of 3" for page 1, counted from 0.
QString page_text(int page, int pages);
/// "1 visit", "3 visits"; "1 set", "3 sets".
QString visits_text(int n);
QString sets_text(int n);

}  // namespace floorwheel::screens::words
