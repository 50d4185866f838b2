// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_flow.h"

#include <QDateTime>
#include <QJsonArray>
#include <QLocale>
#include <QMap>
#include <algorithm>
#include <numeric>
#include <set>

#include "kiosk/screens/class_time.h"
#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_words.h"
#include "kiosk/screens/wall_view.h"

namespace floorwheel::screens {

namespace {

constexpr int health_every_ms = 5000;
constexpr int health_soon_ms = 500;  // while a screen catches up
constexpr int fright_ms = 1500;

bool is_live(const wire::ClassView& c) { return c.clock.started && c.clock.state != wire::Running::over; }

}  // namespace

InstructorFlow::InstructorFlow(QObject* parent) : QObject(parent) {
  connect(&hub_link(), &HubLink::hallChanged, this, &InstructorFlow::look);
  connect(&hub_link(), &HubLink::connectedChanged, this, [this] {
    look();
    ask_health();
  });
  connect(&hub_link(), &HubLink::answer, this, [this](const QString& id, const QJsonObject& body) {
    if (id == health_) take_health(body);
  });
  connect(&hub_link(), &HubLink::refused, this,
          [this](const QString& id, const QString&, const QString& text, const QString& hint) {
            if (told_.remove(id)) set_notice(hint.isEmpty() ? text : tr("%1; %2").arg(text, hint));
          });
  connect(&hub_link(), &HubLink::receipt, this, [this](const QString& id) {
    if (told_.remove(id)) set_notice({});
  });
  connect(&class_time(), &ClassTime::phaseChanged, this, &InstructorFlow::look);
  connect(&class_time(), &ClassTime::secondChanged, this, [this] {
    Q_EMIT changed();
    if (stage_ == QLatin1String("stopped")) Q_EMIT sinceStopChanged();
  });
  health_timer_.setInterval(health_every_ms);
  connect(&health_timer_, &QTimer::timeout, this, &InstructorFlow::ask_health);
  health_timer_.start();
  fright_timer_.setSingleShot(true);
  fright_timer_.setInterval(fright_ms);
  connect(&fright_timer_, &QTimer::timeout, this, &InstructorFlow::pageChanged);
  look();
}

const wire::ClassView* InstructorFlow::view() const { return wire::current_class(hub_link().hall()); }

QString InstructorFlow::class_id() const { return words::text(hub_link().hall().current); }

int InstructorFlow::saw() const { return view() != nullptr ? view()->sheet.version : 0; }

int InstructorFlow::step() const {
  if (stage_ == QLatin1String("class")) return 0;
  if (stage_ == QLatin1String("heads")) return 1;
  if (stage_ == QLatin1String("proposal")) return 2;
  if (stage_ == QLatin1String("start")) return 3;
  return 4;
}

bool InstructorFlow::live() const { return view() != nullptr && is_live(*view()); }

bool InstructorFlow::held() const {
  return view() != nullptr && view()->clock.state == wire::Running::held && live();
}

/// The published sheet is for exactly the people who are here, and nobody is sent to a closed station.
bool InstructorFlow::sheet_fits() const {
  const wire::ClassView& c = *view();
  std::set<std::string_view> here;
  for (const wire::MemberView& m : c.members)
    if (m.here) here.insert(m.id);
  std::set<std::string_view> placed;
  for (const RunSheetRow& r : c.sheet.rows) {
    placed.insert(r.member);
    for (const wire::StationView& s : c.stations)
      if (s.closed_now && std::ranges::find(r.stations, s.id) != r.stations.end()) return false;
  }
  return here == placed;
}

QString InstructorFlow::stage_now() const {
  const wire::ClassView* c = view();
  if (local_stop_ || (c != nullptr && c->clock.state == wire::Running::stopped))
    return QStringLiteral("stopped");
  if (c == nullptr) return QStringLiteral("class");
  if (is_live(*c)) {
    if (class_time().phase() == QLatin1String("past-end")) return QStringLiteral("ended");
    return held() ? QStringLiteral("held") : QStringLiteral("run");
  }
  if (!c->heads_counted) return QStringLiteral("heads");
  if (c->sheet.version == 0 || (wanted_ && wanted_at_version_ == c->sheet.version) || !sheet_fits())
    return QStringLiteral("proposal");
  return QStringLiteral("start");
}

void InstructorFlow::look() {
  if (class_ != class_id()) {
    class_ = class_id();
    over_it_.clear();
    wanted_ = false;
  }
  const QString stage = stage_now();
  const auto resting = [](const QString& s) {
    return s == QLatin1String("run") || s == QLatin1String("held");
  };
  // What was opened beside a class survives hold and resume, and nothing else the class does.
  if (stage != stage_ && !(resting(stage) && resting(stage_))) over_it_.clear();
  stage_ = stage;
  show(over_it_.isEmpty() ? stage_ : over_it_);
  Q_EMIT changed();
}

void InstructorFlow::show(const QString& page) {
  const bool turned = page != page_;
  page_ = page;
  if (turned) set_notice({});
  Q_EMIT pageChanged();
}

void InstructorFlow::open(const QString& page) {
  over_it_ = page;
  show(page);
  Q_EMIT changed();
}

void InstructorFlow::leave() {
  over_it_.clear();
  look();
}

void InstructorFlow::set_notice(const QString& text) {
  if (notice_ == text) return;
  notice_ = text;
  Q_EMIT noticeChanged();
}

QString InstructorFlow::title() const {
  if (view() == nullptr) return tr("Floorwheel");
  return words::text(view()->name);
}

QString InstructorFlow::subtitle() const {
  const wire::ClassView* c = view();
  if (c == nullptr) {
    const QDateTime now =
        QDateTime::fromMSecsSinceEpoch(hub_link().civilNowMs(), Qt::OffsetFromUTC, hub_link().utcOffsetS());
    return tr("%1, ISO week %2")
        .arg(QLocale().toString(now.date(), QStringLiteral("dddd d MMMM")))
        .arg(now.date().weekNumber());
  }
  if (page_ == QLatin1String("floor")) return tr("The floor differs from the file?");
  const QString at = words::start_text(c->start);
  if (stage_ == QLatin1String("start"))
    return at.isEmpty() ? tr("Run sheet %1 is on all walls.").arg(c->sheet.version)
                        : tr("Run sheet %1 is on all walls. Class at %2.").arg(c->sheet.version).arg(at);
  const QString when = words::starts_in(words::start_ms(c->start), hub_link().civilNowMs());
  QStringList parts;
  if (!at.isEmpty()) parts << at;
  if (!when.isEmpty()) parts << when;
  QString line = parts.join(QStringLiteral(", "));
  if (c->heads_counted) {
    const auto here = std::ranges::count_if(c->members, [](const wire::MemberView& m) { return m.here; });
    const QString people =
        tr("%1 are here, %2 stations, laps: %3").arg(here).arg(c->stations.size()).arg(c->timing.laps);
    line = line.isEmpty() ? people : line + QStringLiteral(". ") + people;
  }
  return line;
}

bool InstructorFlow::canBeOver() const {
  return stage_ == QLatin1String("stopped") && !fright_timer_.isActive();
}

QList<QString> InstructorFlow::emergency() const {
  QList<QString> out;
  for (const WallWord& w : wall_site().emergency) out << tr("%1: %2").arg(w.head, w.text);
  return out;
}

int InstructorFlow::sinceStop() const {
  if (view() != nullptr && view()->clock.stopped_at_ms) return class_time().secondsSinceStop();
  return since_stop_.isValid() ? static_cast<int>(since_stop_.elapsed() / 1000) : 0;
}

QString InstructorFlow::tell(const QString& kind, QJsonObject fields) {
  fields.insert(QStringLiteral("class"), class_id());
  if (kind != QLatin1String("heads.count") && kind != QLatin1String("class.open") &&
      kind != QLatin1String("class.over"))
    fields.insert(QStringLiteral("saw"), saw());
  const QString id = hub_link().tell(kind, fields);
  told_.insert(id);
  return id;
}

void InstructorFlow::want_proposal() {
  wanted_ = true;
  wanted_at_version_ = saw();
  look();
}

void InstructorFlow::start() { tell(QStringLiteral("class.start")); }
void InstructorFlow::hold() { tell(QStringLiteral("class.hold")); }
void InstructorFlow::resume() { tell(QStringLiteral("class.resume")); }
void InstructorFlow::skip() {
  // With its index: a second tap must not end the next segment as well.
  tell(QStringLiteral("class.skip"), {{QStringLiteral("segment"), class_time().moment().segment}});
}

void InstructorFlow::giveTime() {
  tell(QStringLiteral("class.more_time"), {{QStringLiteral("s"), stepSeconds()}});
}

void InstructorFlow::repeatSlot() {
  tell(QStringLiteral("class.repeat"));
  leave();
}

void InstructorFlow::stop() {
  if (stage_ == QLatin1String("stopped")) return;
  // The page comes at once, whatever the hub says: it is about a person, not about the class.
  local_stop_ = true;
  since_stop_.start();
  fright_timer_.start();
  if (view() != nullptr) tell(QStringLiteral("class.stop"));
  look();
}

void InstructorFlow::over() {
  local_stop_ = false;
  if (view() != nullptr && view()->clock.state == wire::Running::stopped) tell(QStringLiteral("class.over"));
  look();
}

void InstructorFlow::end() { tell(QStringLiteral("class.end")); }

void InstructorFlow::ask_health() {
  if (hub_link().connected()) health_ = hub_link().ask(QStringLiteral("health"));
}

void InstructorFlow::take_health(const QJsonObject& body) {
  const qint64 journal = body.value(QStringLiteral("journal")).toInteger();
  const QJsonArray screens = body.value(QStringLiteral("screens")).toArray();
  int in_step = 0;
  QMap<QString, int> kinds;
  for (const auto s : screens) {
    const QJsonObject screen = s.toObject();
    const QString role = screen.value(QStringLiteral("role")).toString();
    if (role == QLatin1String("tool")) continue;
    ++kinds[role];
    in_step += screen.value(QStringLiteral("reached")).toInteger() >= journal ? 1 : 0;
  }
  const auto all = std::accumulate(kinds.begin(), kinds.end(), 0);
  screens_text_ = in_step == all ? (all == 1 ? tr("1 screen in step") : tr("%1 screens in step").arg(all))
                                 : tr("%1 of %2 screens in step").arg(in_step).arg(all);
  health_timer_.start(in_step == all ? health_every_ms : health_soon_ms);
  const int walls = kinds.value(QStringLiteral("wall"));
  screens_note_ = walls == 0 ? tr("no wall") : walls == 1 ? tr("1 wall") : tr("%1 walls").arg(walls);
  if (const int touch = kinds.value(QStringLiteral("touch")); touch > 0)
    screens_note_ += touch == 1 ? tr(", 1 touch screen") : tr(", %1 touch screens").arg(touch);
  ready_text_ = all == 0 ? tr("The hub is in touch; no screen is.")
                         : tr("The hub is in touch; %1, %2.").arg(screens_text_, screens_note_);
  Q_EMIT changed();
}

}  // namespace floorwheel::screens
