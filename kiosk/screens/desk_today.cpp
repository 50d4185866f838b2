// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/desk_today.h"

#include <QDateTime>
#include <QFont>
#include <QFontMetricsF>
#include <QLocale>
#include <QTimeZone>

#include "kiosk/screens/class_time.h"
#include "kiosk/screens/desk_tables.h"
#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/this_screen.h"

namespace floorwheel::screens {

namespace {

constexpr int last_most = 6;
constexpr int known_most = 3;
constexpr double wall_alias_cap_px = 71;
constexpr double cap_of_em = 0.70;

const QByteArrayList person_roles{"alias", "time", "note", "guest"};

}  // namespace

DeskToday::DeskToday(QObject* parent)
    : QObject(parent),
      classes_({"time", "name", "state", "line", "beads", "over"}, this),
      here_(person_roles, this),
      expected_(person_roles, this),
      last_({"alias", "time"}, this),
      known_({"alias", "level"}, this) {
  HubLink& link = hub_link();
  connect(&link, &HubLink::hallChanged, this, &DeskToday::fold);
  connect(&link, &HubLink::connectedChanged, this, [this] {
    fold();
    ask_members();
  });
  connect(&class_time(), &ClassTime::secondChanged, this, [this] {
    const QString text = dateText();
    if (text == date_text_) return;
    date_text_ = text;
    Q_EMIT dateChanged();
  });
  connect(&link, &HubLink::answer, this, [this](const QString& id, const QJsonObject& body) {
    if (id != members_ask_) return;
    members_ = body.value(QLatin1String("members")).toArray();
    find_known();
  });
  connect(&link, &HubLink::receipt, this, [this](const QString& id, qint64, const QJsonObject& body) {
    if (id != last_added_id_) return;
    last_added_id_.clear();
    hub_link().tell(QStringLiteral("check_in"),
                    {{QStringLiteral("class"), seat_in_class_},
                     {QStringLiteral("member"), body.value(QLatin1String("member"))}});
    say(tr("%1 has a seat").arg(walk_in_));
    setWalkIn({});
    ask_members();
  });
  connect(&link, &HubLink::refused, this,
          [this](const QString& id, const QString&, const QString& text, const QString& hint,
                 const QJsonObject&) {
            if (id == members_ask_) return;  // asked again with the next contact
            if (id == last_added_id_) last_added_id_.clear();
            say(hint.isEmpty() ? text : text + QStringLiteral("; ") + hint);
          });
  fold();
  ask_members();
}

const wire::ClassView* DeskToday::chosen() const {
  const auto& all = hub_link().hall().classes;
  const auto it = all.find(chosen_class_.toStdString());
  return it == all.end() ? nullptr : &it->second;
}

const wire::MemberView* DeskToday::chosen_one() const {
  const wire::ClassView* c = chosen();
  return c == nullptr ? nullptr : wire::find_member(*c, chosen_member_.toStdString());
}

void DeskToday::fold() {
  const wire::Hall& hall = hub_link().hall();
  classes_.set_rows(class_cards(hall));
  // Until somebody chooses, the class at hand is shown.
  if (chosen() == nullptr)
    chosen_class_ = hall.current.empty() ? classes_.keyAt(0) : QString::fromStdString(hall.current);
  const wire::ClassView* c = chosen();
  const int offset_s = hub_link().utcOffsetS();
  here_.set_rows(c != nullptr ? people_here(*c, offset_s) : QList<QVariantMap>());
  expected_.set_rows(c != nullptr ? people_expected(*c) : QList<QVariantMap>());
  last_.set_rows(c != nullptr ? last_check_ins(*c, offset_s, last_most) : QList<QVariantMap>());
  if (chosen_one() == nullptr) chosen_member_.clear();
  find_known();
  Q_EMIT changed();
}

void DeskToday::chooseClass(const QString& id) {
  if (id == chosen_class_) return;
  chosen_class_ = id;
  chosen_member_.clear();
  fold();
}

void DeskToday::chooseMember(const QString& id) {
  if (id == chosen_member_) return;
  chosen_member_ = id;
  Q_EMIT changed();
}

QString DeskToday::classTime() const {
  const wire::ClassView* c = chosen();
  if (c == nullptr) return {};
  const QDateTime start = QDateTime::fromString(QString::fromStdString(c->start), Qt::ISODate);
  return start.isValid() ? start.toString(QStringLiteral("HH:mm")) : QString::fromStdString(c->name);
}

QString DeskToday::classTitle() const {
  const wire::ClassView* c = chosen();
  if (c == nullptr) return {};
  const QString name = QString::fromStdString(c->name);
  return classTime() == name ? name : classTime() + QLatin1Char(' ') + name;
}

QString DeskToday::chosenAlias() const {
  const wire::MemberView* m = chosen_one();
  if (m == nullptr) return {};
  return QString::fromStdString(m->shown_as.empty() ? m->id : m->shown_as);
}

bool DeskToday::canSeat() const {
  const wire::ClassView* c = chosen();
  return c != nullptr && c->open && c->clock.state != wire::Running::over;
}

bool DeskToday::canCheckIn() const {
  const wire::MemberView* m = chosen_one();
  return canSeat() && m != nullptr && !m->here && !m->guest;
}

bool DeskToday::canUndo() const {
  const wire::MemberView* m = chosen_one();
  return canSeat() && m != nullptr && m->here && !m->guest;
}

bool DeskToday::canShowPage() const {
  const wire::MemberView* m = chosen_one();
  return m != nullptr && !m->guest;
}

bool DeskToday::pageShown() const {
  return hub_link().hall().pages_shown.contains(chosen_member_.toStdString());
}

QString DeskToday::dateText() const {
  const qint64 now_ms = hub_link().civilNowMs();
  if (now_ms <= 0) return {};
  const QDate date = QDateTime::fromMSecsSinceEpoch(now_ms, QTimeZone(hub_link().utcOffsetS())).date();
  return tr("%1, ISO week %2").arg(QLocale().toString(date, QLocale::LongFormat)).arg(date.weekNumber());
}

int DeskToday::walkInPx() const {
  QFont font(this_screen().narrowFamily());
  font.setBold(true);
  font.setPixelSize(qRound(wall_alias_cap_px / cap_of_em));
  return qRound(QFontMetricsF(font).horizontalAdvance(walk_in_.trimmed()));
}

void DeskToday::setWalkIn(const QString& alias) {
  if (alias == walk_in_) return;
  walk_in_ = alias;
  find_known();
  Q_EMIT walkInChanged();
}

void DeskToday::ask_members() {
  if (hub_link().connected()) members_ask_ = hub_link().ask(QStringLiteral("members"));
}

void DeskToday::find_known() {
  QList<QVariantMap> rows;
  const wire::ClassView* c = chosen();
  const QString typed = walk_in_.trimmed();
  if (c != nullptr && !typed.isEmpty()) {
    for (const auto v : std::as_const(members_)) {
      const QString id = v[QLatin1String("member")].toString();
      const QString alias = v[QLatin1String("shown_as")].toString();
      if (!alias.startsWith(typed, Qt::CaseInsensitive)) continue;
      const wire::MemberView* m = wire::find_member(*c, id.toStdString());
      if (m != nullptr && (m->here || m->expected)) continue;
      rows.append({{QStringLiteral("key"), id},
                   {QStringLiteral("alias"), alias},
                   {QStringLiteral("level"), v[QLatin1String("level")].toString()}});
      if (rows.size() == known_most) break;
    }
  }
  known_.set_rows(rows);
}

void DeskToday::say(const QString& text) {
  said_ = text;
  Q_EMIT saidChanged();
}

void DeskToday::checkIn(const QString& member) {
  const wire::ClassView* c = chosen();
  if (c == nullptr || member.isEmpty()) return;
  hub_link().tell(QStringLiteral("check_in"),
                  {{QStringLiteral("class"), chosen_class_}, {QStringLiteral("member"), member}});
  say({});
}

void DeskToday::undo(const QString& member) {
  if (chosen() == nullptr || member.isEmpty()) return;
  hub_link().tell(QStringLiteral("check_in.undo"),
                  {{QStringLiteral("class"), chosen_class_}, {QStringLiteral("member"), member}});
  say({});
}

void DeskToday::showPage(const QString& member, bool on) {
  if (member.isEmpty()) return;
  hub_link().tell(QStringLiteral("page.show"),
                  {{QStringLiteral("member"), member}, {QStringLiteral("on"), on}});
  say({});
}

void DeskToday::seatNew(const QString& level) {
  const QString alias = walk_in_.trimmed();
  if (!canSeat() || alias.isEmpty() || !last_added_id_.isEmpty()) return;
  if (walkInPx() > alias_most_px) {
    say(tr("%1 is too wide for the wall; a shorter alias, please").arg(alias));
    return;
  }
  seat_in_class_ = chosen_class_;
  last_added_id_ = hub_link().tell(QStringLiteral("member.add"),
                                   {{QStringLiteral("shown_as"), alias}, {QStringLiteral("level"), level}});
}

void DeskToday::seatKnown(const QString& member) {
  if (!canSeat()) return;
  checkIn(member);
  setWalkIn({});
}

}  // namespace floorwheel::screens
