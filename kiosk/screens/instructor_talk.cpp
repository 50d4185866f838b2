// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_talk.h"

#include <QJsonArray>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_words.h"
#include "kiosk/screens/json_fields.h"

namespace floorwheel::screens {

namespace {

const QString goal_field = QStringLiteral("goal");
const QString agreed_field = QStringLiteral("agreed");

QString band_text(const QString& id) {
  if (id == QLatin1String("under_3")) return InstructorTalk::tr("under 3");
  if (id == QLatin1String("3_to_9")) return InstructorTalk::tr("3 to 9");
  if (id == QLatin1String("10_to_15")) return InstructorTalk::tr("10 to 15");
  return InstructorTalk::tr("over 15");
}

QList<QVariantMap> group_rows(const QJsonArray& groups) {
  int widest = 1;
  for (const auto g : groups)
    widest = std::max({widest, whole_in(g.toObject(), "done"), whole_in(g.toObject(), "planned")});
  QList<QVariantMap> rows;
  for (const auto v : groups) {
    const QJsonObject g = v.toObject();
    const int done = whole_in(g, "done");
    const int planned = whole_in(g, "planned");
    rows.append(
        {{QStringLiteral("group"), words::group_word(text_in(g, "group").toStdString())},
         {QStringLiteral("amount"),
          planned == 0 ? QString::number(done) : InstructorTalk::tr("%1 of %2").arg(done).arg(planned)},
         {QStringLiteral("band"), done == 0 ? InstructorTalk::tr("none yet") : band_text(text_in(g, "band"))},
         {QStringLiteral("donePart"), static_cast<double>(done) / widest},
         {QStringLiteral("plannedPart"), static_cast<double>(planned) / widest}});
  }
  return rows;
}

/// The load of a visit; with body weight what counts is repetitions.
QString amount_text(const QJsonObject& point, bool by_load) {
  return by_load ? words::kg_text(number_in(point, "load_kg"))
                 : InstructorTalk::tr("%1 repetitions").arg(whole_in(point, "reps"));
}

/// x and y of each visit in turn: from the first to the last day, from the least to the most.
QList<double> dots(const QJsonArray& points, bool by_load) {
  const auto value = [by_load](const QJsonObject& p) { return number_in(p, by_load ? "load_kg" : "reps"); };
  const auto day = [](const QJsonObject& p) {
    return QDate::fromString(text_in(p, "day"), Qt::ISODate).toJulianDay();
  };
  double least = value(points.first().toObject());
  double most = least;
  for (const auto p : points) {
    least = std::min(least, value(p.toObject()));
    most = std::max(most, value(p.toObject()));
  }
  const auto first = day(points.first().toObject());
  const auto days = std::max<qint64>(1, day(points.last().toObject()) - first);
  QList<double> out;
  for (const auto p : points) {
    out << static_cast<double>(day(p.toObject()) - first) / static_cast<double>(days);
    out << (most > least ? (value(p.toObject()) - least) / (most - least) : 0.5);
  }
  return out;
}

QList<QVariantMap> load_rows(const QJsonArray& loads) {
  QList<QVariantMap> rows;
  for (const auto v : loads) {
    const QJsonObject o = v.toObject();
    const QJsonArray points = o.value(QLatin1String("points")).toArray();
    if (points.isEmpty()) continue;
    const QJsonObject first = points.first().toObject();
    const QJsonObject last = points.last().toObject();
    const bool by_load = std::ranges::any_of(
        points, [](const QJsonValue& p) { return number_in(p.toObject(), "load_kg") > 0; });
    const auto at = [by_load](const QJsonObject& p) {
      return InstructorTalk::tr("%1 on %2").arg(amount_text(p, by_load), words::day_text(text_in(p, "day")));
    };
    const double rise = number_in(o, "per_week_kg");
    const QString sign = rise > 0 ? QStringLiteral("+") : rise < 0 ? QString(QChar(0x2212)) : QString();
    const QString strength = sign + QLocale().toString(std::abs(rise), 'f', 1);
    const int visits = static_cast<int>(points.size());
    rows.append(
        {{QStringLiteral("name"), text_in(o, "name")},
         {QStringLiteral("from"), at(first)},
         {QStringLiteral("to"), at(last)},
         {QStringLiteral("trend"), by_load ? InstructorTalk::tr("%1; strength by estimate %2 kg a week")
                                                 .arg(words::visits_text(visits), strength)
                                           : words::visits_text(visits)},
         {QStringLiteral("points"), QVariant::fromValue(dots(points, by_load))}});
  }
  return rows;
}

}  // namespace

InstructorTalk::InstructorTalk(InstructorFlow& flow, InstructorPen& pen, QObject* parent)
    : QObject(parent),
      flow_(flow),
      pen_(pen),
      groups_(new RowModel({"group", "amount", "band", "donePart", "plannedPart"}, this)),
      loads_(new RowModel({"name", "from", "to", "trend", "points"}, this)) {
  connect(&hub_link(), &HubLink::answer, this, [this](const QString& id, const QJsonObject& body) {
    if (id != question_) return;
    sheet_ = body;
    trouble_.clear();
    show();
  });
  connect(&hub_link(), &HubLink::receipt, this, [this](const QString& id) {
    if (id != told_) return;
    told_.clear();
    ask();
    pen_.done();
  });
  connect(&hub_link(), &HubLink::refused, this,
          [this](const QString& id, const QString&, const QString& text, const QString& hint) {
            if (id == told_) {
              pen_.not_done();
              flow_.set_notice(hint.isEmpty() ? text : tr("%1; %2").arg(text, hint));
            } else if (id == question_) {
              trouble_ = text;
              Q_EMIT changed();
            }
          });
  connect(&hub_link(), &HubLink::connectedChanged, this, [this] {
    if (hub_link().connected() && flow_.page() == QLatin1String("talk")) ask();
  });
}

void InstructorTalk::ask() {
  question_ = hub_link().ask(QStringLiteral("talk.sheet"), {{QStringLiteral("member"), member_}});
}

void InstructorTalk::open(const QString& member) {
  if (member != member_) sheet_ = {};
  member_ = member;
  from_ = flow_.page();
  ask();
  show();
  flow_.open(QStringLiteral("talk"));
}

void InstructorTalk::back() { flow_.open(from_); }

void InstructorTalk::show() {
  show_in_places(*groups_, group_rows(sheet_.value(QLatin1String("groups")).toArray()));
  show_in_places(*loads_, load_rows(sheet_.value(QLatin1String("loads")).toArray()));
  Q_EMIT changed();
}

QString InstructorTalk::alias() const { return text_in(sheet_, "shown_as"); }

QString InstructorTalk::about() const {
  if (!trouble_.isEmpty()) return trouble_;
  if (!ready()) return tr("One moment …");
  const auto level = level_from(text_in(sheet_, "level").toStdString());
  return tr("%1, ISO week %2")
      .arg(words::level_word(level.value_or(Level::novice)), text_in(sheet_, "week").mid(6));
}

QStringList InstructorTalk::done() const {
  if (!ready()) return {};
  const QJsonObject visits = sheet_.value(QLatin1String("visits")).toObject();
  const QJsonObject sets = sheet_.value(QLatin1String("sets")).toObject();
  return {tr("This week: %1, %2 of %3 planned.")
              .arg(words::visits_text(whole_in(visits, "week")), words::sets_text(whole_in(sets, "week")))
              .arg(whole_in(sets, "planned")),
          tr("Last four weeks: %1, %2.")
              .arg(words::visits_text(whole_in(visits, "four_weeks")),
                   words::sets_text(whole_in(sets, "four_weeks")))};
}

QString InstructorTalk::stands(const QString& field) const { return sheet_.value(field).toString(); }

QString InstructorTalk::note_of(const QString& field) const {
  if (!ready()) return {};
  const QString day = sheet_.value(field + QStringLiteral("_day")).toString();
  return day.isEmpty() ? tr("nothing yet") : tr("written on %1").arg(words::day_text(day));
}

QString InstructorTalk::goal() const { return stands(goal_field); }
QString InstructorTalk::agreed() const { return stands(agreed_field); }
QString InstructorTalk::goalNote() const { return note_of(goal_field); }
QString InstructorTalk::agreedNote() const { return note_of(agreed_field); }

void InstructorTalk::write(const QString& field, const QString& title) {
  if (!ready()) return;
  const QString member = member_;
  pen_.open(
      member + QLatin1Char('/') + field, title, stands(field),
      [this, member, field](const QString& line) {
        told_ =
            hub_link().tell(QStringLiteral("talk.note"), {{QStringLiteral("member"), member}, {field, line}});
      },
      [this] { flow_.open(QStringLiteral("talk")); });
}

void InstructorTalk::writeGoal() { write(goal_field, tr("%1: the goal, in their own words").arg(alias())); }
void InstructorTalk::writeAgreed() { write(agreed_field, tr("%1: what we agreed").arg(alias())); }

}  // namespace floorwheel::screens
