// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/touch_week.h"

#include <algorithm>
#include <utility>

#include "kiosk/screens/touch_ring.h"
#include "kiosk/screens/touch_week_words.h"

namespace floorwheel::screens {
namespace {

/// People look first for what is not as last time.
bool changes(const QJsonValue& next) {
  const QString change = next[QLatin1String("change")].toString();
  return change != QLatin1String("same") || next[QLatin1String("ask_instructor")].toBool() ||
         next.toObject().contains(QLatin1String("override"));
}

QString q(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QVariantList points_of(const QList<QPointF>& line) {
  QVariantList out;
  for (const QPointF& p : line) out.append(p);
  return out;
}

}  // namespace

TouchWeek::TouchWeek(Send ask, Send tell, QObject* parent)
    : QObject(parent),
      ask_(std::move(ask)),
      tell_(std::move(tell)),
      sectors_({"from", "sweep", "band", "word", "said", "atRight", "rowY", "x1", "y1", "x2", "y2"}, this),
      loads_({"name", "load", "reason"}, this),
      trends_({"name", "said", "points"}, this) {}

void TouchWeek::open(const QString& member, const QString& alias, bool asked_for) {
  forget();
  member_ = member;
  alias_ = alias;
  told_id_.clear();
  just_off_ = false;
  asked_for_ = asked_for;
  state_ = QStringLiteral("off");
  if (asked_for) ask();
  Q_EMIT changed();
}

void TouchWeek::ask() {
  state_ = QStringLiteral("asking");
  asked_id_ = ask_(QStringLiteral("member.page"), {{QStringLiteral("member"), member_}});
}

void TouchWeek::close() {
  if (!is_open()) return;
  forget();
  state_.clear();
  member_.clear();
  alias_.clear();
  told_id_.clear();
  Q_EMIT changed();
}

void TouchWeek::forget() {
  asked_id_.clear();
  trouble_.clear();
  week_ = working_sets_ = page_ = 0;
  next_ = {};
  for (RowModel* rows : {&sectors_, &loads_, &trends_}) rows->set_rows({});
}

void TouchWeek::on_hall(bool asked_for) {
  if (!is_open() || asked_for == asked_for_) return;
  asked_for_ = asked_for;
  just_off_ = !asked_for && !told_id_.isEmpty();
  forget();
  state_ = QStringLiteral("off");
  if (asked_for) ask();  // the desk switched it on while the member stands here
  Q_EMIT changed();
}

void TouchWeek::on_answer(const QString& id, const QJsonObject& body) {
  if (asked_id_.isEmpty() || id != asked_id_) return;
  asked_id_.clear();
  state_ = QStringLiteral("shown");
  week_ = body[QLatin1String("week")].toString().section(QLatin1Char('W'), 1).toInt();
  working_sets_ = body[QLatin1String("working_sets")].toInt();
  lay_ring(body[QLatin1String("dose")].toArray());
  QList<QJsonValue> next;
  for (const auto v : body[QLatin1String("next")].toArray()) next.append(v);
  std::stable_partition(next.begin(), next.end(), changes);
  for (const QJsonValue& v : next) next_.append(v);
  lay_loads();
  lay_trends(body[QLatin1String("trends")].toArray());
  Q_EMIT changed();
}

void TouchWeek::on_refused(const QString& id, const QString& code, const QString& trouble) {
  if (!told_id_.isEmpty() && id == told_id_) {  // it stays on: say so beside the numbers
    told_id_.clear();
    trouble_ = trouble;
    Q_EMIT changed();
  }
  if (asked_id_.isEmpty() || id != asked_id_) return;
  asked_id_.clear();
  state_ = code == QLatin1String("away")      ? QStringLiteral("away")
           : code == QLatin1String("refused") ? QStringLiteral("off")
                                              : QStringLiteral("refused");
  trouble_ = trouble;
  Q_EMIT changed();
}

void TouchWeek::dontShow() {
  if (!is_open() || state_ == QLatin1String("off")) return;
  trouble_.clear();
  told_id_ = tell_(QStringLiteral("page.show"),
                   {{QStringLiteral("member"), member_}, {QStringLiteral("on"), false}});
  Q_EMIT changed();
}

int TouchWeek::pages() const { return pages_of(next_.size(), loads_a_page); }

void TouchWeek::turn() {
  page_ = (page_ + 1) % pages();
  lay_loads();
  Q_EMIT changed();
}

void TouchWeek::lay_ring(const QJsonArray& dose) {
  std::vector<GroupDose> trained;
  for (const auto row : dose) {
    const auto group = group_from(row[QLatin1String("group")].toString().toStdString());
    const int sets = row[QLatin1String("sets")].toInt();
    if (group)
      trained.push_back(
          {*group, sets, band_number(row[QLatin1String("band")].toString().toStdString(), sets)});
  }
  const DoseRing ring = ring_of(trained);
  row_height_ = ring.row_height;
  QList<QVariantMap> rows;
  for (const RingSector& s : ring.sectors)
    rows.append({{QStringLiteral("key"), q(id_of(s.dose.group))},
                 {QStringLiteral("from"), s.from_deg},
                 {QStringLiteral("sweep"), s.sweep_deg},
                 {QStringLiteral("band"), s.dose.band},
                 {QStringLiteral("word"), TouchWeekWords::group(s.dose.group)},
                 {QStringLiteral("said"), TouchWeekWords::sets(s.dose.sets, s.dose.band)},
                 {QStringLiteral("atRight"), s.at_right},
                 {QStringLiteral("rowY"), s.row_y},
                 {QStringLiteral("x1"), s.leader_x1},
                 {QStringLiteral("y1"), s.leader_y1},
                 {QStringLiteral("x2"), s.leader_x2},
                 {QStringLiteral("y2"), s.leader_y2}});
  sectors_.set_rows(rows);
}

void TouchWeek::lay_loads() {
  QList<QVariantMap> rows;
  for (int i = page_ * loads_a_page; i < std::min(static_cast<int>(next_.size()), (page_ + 1) * loads_a_page);
       ++i) {
    const QJsonObject next = next_[i].toObject();
    rows.append({{QStringLiteral("key"), next[QLatin1String("exercise")].toString()},
                 {QStringLiteral("name"), next[QLatin1String("name")].toString()},
                 {QStringLiteral("load"), TouchWeekWords::load(next)},
                 {QStringLiteral("reason"), TouchWeekWords::reason(next)}});
  }
  loads_.set_rows(rows);
}

void TouchWeek::lay_trends(const QJsonArray& trends) {
  QList<QVariantMap> rows;
  for (const auto v : trends) {
    const QJsonObject trend = v.toObject();
    rows.append({{QStringLiteral("key"), trend[QLatin1String("exercise")].toString()},
                 {QStringLiteral("name"), trend[QLatin1String("name")].toString()},
                 {QStringLiteral("said"), TouchWeekWords::trend(trend)},
                 {QStringLiteral("points"), points_of(TouchWeekWords::line(trend))}});
  }
  trends_.set_rows(rows);
}

}  // namespace floorwheel::screens
