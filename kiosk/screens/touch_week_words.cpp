// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/touch_week_words.h"

#include <QDate>
#include <QJsonArray>
#include <QLocale>
#include <algorithm>

namespace floorwheel::screens {
namespace {

/// "62.5", "60": at most one decimal.
QString number(double v) {
  const QString text = QLocale().toString(v, 'f', 1);
  const QString zero = QLocale().decimalPoint() + QLocale().zeroDigit();
  return text.endsWith(zero) ? text.chopped(zero.size()) : text;
}

double kg_of(const QJsonValue& point) { return point[QLatin1String("one_rm_kg")].toDouble(); }
QDate day_of(const QJsonValue& point) {
  return QDate::fromString(point[QLatin1String("day")].toString(), Qt::ISODate);
}

}  // namespace

QString TouchWeekWords::group(Group g) {
  switch (g) {
    case Group::chest:
      return tr("Chest");
    case Group::shoulders:
      return tr("Shoulders");
    case Group::triceps:
      return tr("Back of upper arm");
    case Group::biceps:
      return tr("Front of upper arm");
    case Group::forearms:
      return tr("Forearms");
    case Group::lats:
      return tr("Broad back");
    case Group::upper_back:
      return tr("Upper back");
    case Group::lower_back:
      return tr("Lower back");
    case Group::abs:
      return tr("Front of trunk");
    case Group::obliques:
      return tr("Side of trunk");
    case Group::glutes:
      return tr("Buttocks");
    case Group::quadriceps:
      return tr("Front of thigh");
    case Group::hamstrings:
      return tr("Back of thigh");
    case Group::adductors:
      return tr("Inner thigh");
    case Group::abductors:
      return tr("Outer hip");
    case Group::calves:
      return tr("Calves");
    case Group::hip_flexors:
      return tr("Front of hip");
    case Group::serratus:
      return tr("Side of ribs");
    case Group::rotator_cuff:
      return tr("Shoulder, deep");
    case Group::shin:
      return tr("Shin");
    case Group::neck:
      return tr("Neck");
  }
  return {};
}

QString TouchWeekWords::sets(int sets, int band) {
  if (sets == 0) return tr("none yet");
  const QString many = sets == 1 ? tr("one set") : tr("%1 sets").arg(sets);
  switch (band) {
    case 1:
      return tr("%1, under 3").arg(many);
    case 2:
      return tr("%1, 3 to 9").arg(many);
    case 3:
      return tr("%1, 10 to 15").arg(many);
    default:
      return tr("%1, over 15").arg(many);
  }
}

QString TouchWeekWords::load(const QJsonObject& next) {
  const QJsonValue kg = next[QLatin1String("load_kg")];
  const QString load = kg.isNull()            ? tr("ask for a load")
                       : kg.toDouble() == 0.0 ? tr("own body")
                                              : tr("%1 kg").arg(number(kg.toDouble()));
  const QJsonArray range = next[QLatin1String("reps")].toArray();
  const int low = range[0].toInt();
  const int top = range[1].toInt();
  QString reps = low == top ? QString::number(low) : tr("%1–%2").arg(low).arg(top);
  if (next[QLatin1String("hold")].toBool()) reps = tr("%1 s").arg(reps);
  const int sets = next[QLatin1String("sets")].toInt();
  return sets == 1 ? tr("%1 × %2, one set").arg(load, reps)
                   : tr("%1 × %2, %3 sets").arg(load, reps).arg(sets);
}

QString TouchWeekWords::reason(const QJsonObject& next) {
  const QString rule = next[QLatin1String("rule")].toString();
  if (rule == QLatin1String("pain")) return tr("It hurt last time: ask the instructor before you lift.");
  const QJsonObject by = next[QLatin1String("override")].toObject();
  if (!by.isEmpty()) {
    const QDate day = QDate::fromString(by[QLatin1String("decided_on")].toString(), Qt::ISODate);
    return tr("Decided by the instructor on %1.").arg(QLocale().toString(day, QStringLiteral("d MMMM")));
  }
  const bool down = next[QLatin1String("change")].toString() == QLatin1String("down");
  if (rule == QLatin1String("return"))
    return down ? tr("Lighter: the last visit is three weeks ago or more.")
                : tr("The last visit is three weeks ago or more: begin gently.");
  if (rule == QLatin1String("below-range"))
    return down ? tr("Lighter: the first set stayed under the range twice.")
                : tr("The first set stayed under the range twice; nothing lighter is there.");
  if (rule == QLatin1String("top-of-range"))
    return tr("Up: all sets reached the top. Begin at %1.").arg(next[QLatin1String("reps")][0].toInt());
  if (rule == QLatin1String("big-step")) return tr("Up by a big step: ask the instructor first.");
  if (rule == QLatin1String("more-reps")) return tr("The next load is a big step: more repetitions first.");
  if (rule == QLatin1String("stall")) return tr("Four visits alike: ask the instructor what to change.");
  return next[QLatin1String("ask_instructor")].toBool()
             ? tr("Same as last time: ask the instructor for a load.")
             : tr("Same: not yet all sets at the top number.");
}

QString TouchWeekWords::trend(const QJsonObject& trend) {
  const QJsonArray points = trend[QLatin1String("points")].toArray();
  if (points.isEmpty()) return {};
  const double week = trend[QLatin1String("per_week_kg")].toDouble();
  const QString sign = week > 0 ? QStringLiteral("+") : QString();
  return tr("%1 to %2 kg, %3%4 a week")
      .arg(number(kg_of(points.first())), number(kg_of(points.last())), sign, number(week));
}

QList<QPointF> TouchWeekWords::line(const QJsonObject& trend) {
  const QJsonArray points = trend[QLatin1String("points")].toArray();
  if (points.size() < 2) return {};
  double least = kg_of(points.first());
  double most = least;
  for (const auto p : points) {
    least = std::min(least, kg_of(p));
    most = std::max(most, kg_of(p));
  }
  const auto days =
      static_cast<double>(std::max<qint64>(1, day_of(points.first()).daysTo(day_of(points.last()))));
  QList<QPointF> out;
  for (const auto p : points)
    out.append({static_cast<double>(day_of(points.first()).daysTo(day_of(p))) / days,
                most > least ? (most - kg_of(p)) / (most - least) : 0.5});
  return out;
}

}  // namespace floorwheel::screens
