// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/class_time.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QJSEngine>
#include <QTimeZone>

#include "kiosk/screens/hub_link.h"

namespace floorwheel::screens {

namespace {

constexpr int tick_ms = 100;  // ten steps of the hand a second
constexpr int last_seconds_ms = 5000;
constexpr double calm_above_speed = 4;

int seconds_up(std::int64_t ms) { return static_cast<int>((ms + 999) / 1000); }

QString time_of_day(qint64 civil_ms) {
  if (civil_ms <= 0) return {};
  return QDateTime::fromMSecsSinceEpoch(civil_ms, QTimeZone(hub_link().utcOffsetS()))
      .toString(QStringLiteral("HH:mm"));
}

}  // namespace

ClassTime::ClassTime(QObject* parent) : QObject(parent) {
  timer_.setTimerType(Qt::PreciseTimer);
  timer_.setInterval(tick_ms);
  connect(&timer_, &QTimer::timeout, this, &ClassTime::step);
  connect(&hub_link(), &HubLink::hallChanged, this, [this] {
    read_hall();
    step();
    Q_EMIT phaseChanged();  // slot counts and the class itself may be others though the phase is the same
  });
  connect(&hub_link(), &HubLink::connectedChanged, this, &ClassTime::step);
  read_hall();
  timer_.start();
  step();
}

ClassTime* ClassTime::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(&class_time(), QJSEngine::CppOwnership);
  return &class_time();
}

void ClassTime::read_hall() {
  segments_.clear();
  const wire::ClassView* c = wire::current_class(hub_link().hall());
  if (c == nullptr) return;
  if (!c->clock.segments.empty())
    segments_ = c->clock.segments;
  else if (c->sheet.version > 0)
    segments_ = wire::lay_out(c->sheet.timing);
  else if (c->timing.slots > 0)
    segments_ = wire::lay_out(c->timing);
}

void ClassTime::step() {
  const wire::ClassView* c = wire::current_class(hub_link().hall());
  const qint64 now_ms = hub_link().classNowMs();
  wire::Moment m;
  if (frozen_ms_ >= 0) {
    wire::ClassClock still;
    still.segments = segments_;
    still.state = wire::Running::running;
    still.started = true;
    still.elapsed_ms = frozen_ms_;
    m = wire::moment_at(still, 0);
  } else if (c != nullptr) {
    m = wire::moment_at(c->clock, now_ms);
  }

  QString phase = QStringLiteral("none");
  if (c != nullptr) {
    if (m.state == wire::Running::over)
      phase = QStringLiteral("over");
    else if (m.past_end)
      phase = QStringLiteral("past-end");
    else if (m.state == wire::Running::not_started || m.segment < 0)
      phase = QStringLiteral("ready");
    else
      phase = QString::fromUtf8(wire::id_of(segments_.at(static_cast<std::size_t>(m.segment)).kind));
  }

  const bool moved = m.elapsed_ms != moment_.elapsed_ms;
  moment_ = m;
  if (phase != phase_ || m.state != shown_state_ || m.segment != shown_segment_ || calm() != shown_calm_) {
    phase_ = phase;
    shown_state_ = m.state;
    shown_segment_ = m.segment;
    shown_calm_ = calm();
    Q_EMIT phaseChanged();
  }

  const int left = seconds_up(m.left_ms);
  const int in = static_cast<int>(m.in_ms / 1000);
  const int since = c != nullptr && c->clock.stopped_at_ms && frozen_ms_ < 0
                        ? static_cast<int>((now_ms - *c->clock.stopped_at_ms) / 1000)
                        : 0;
  const qint64 civil_ms = hub_link().civilNowMs();
  const QString clock = time_of_day(civil_ms);
  const QString end =
      c != nullptr && m.total_ms > 0 ? time_of_day(civil_ms + m.total_ms - m.elapsed_ms) : QString();
  if (left != seconds_left_ || in != seconds_in_ || since != since_stop_s_ || clock != clock_text_ ||
      end != end_text_) {
    seconds_left_ = left;
    seconds_in_ = in;
    since_stop_s_ = since;
    clock_text_ = clock;
    end_text_ = end;
    Q_EMIT secondChanged();
  }
  if (moved) Q_EMIT ticked();
}

const wire::Segment* ClassTime::segment() const {
  if (moment_.segment < 0 || static_cast<std::size_t>(moment_.segment) >= segments_.size()) return nullptr;
  return &segments_[static_cast<std::size_t>(moment_.segment)];
}

QString ClassTime::phase() const { return phase_; }
bool ClassTime::held() const {
  return moment_.state == wire::Running::held || moment_.state == wire::Running::stopped;
}
bool ClassTime::stopped() const { return moment_.state == wire::Running::stopped; }

bool ClassTime::powerCut() const {
  const wire::ClassView* c = wire::current_class(hub_link().hall());
  return c != nullptr && c->clock.power_cut && held();
}

bool ClassTime::lapBreak() const {
  const wire::Segment* s = segment();
  return s != nullptr && s->kind == wire::SegmentKind::pause && s->lap_ends;
}

int ClassTime::slot() const {
  const wire::Segment* s = segment();
  return s != nullptr ? s->slot : 0;
}

int ClassTime::slotCount() const {
  const wire::ClassView* c = wire::current_class(hub_link().hall());
  if (c == nullptr) return 0;
  return c->sheet.version > 0 ? c->sheet.timing.slots : c->timing.slots;
}

int ClassTime::lap() const {
  return slot() > 0 && slotCount() > 0 ? wire::lap_of(slot(), lapCount(), slotCount()) : 0;
}

int ClassTime::lapCount() const {
  const wire::ClassView* c = wire::current_class(hub_link().hall());
  if (c == nullptr) return 0;
  return c->sheet.version > 0 ? c->sheet.timing.laps : c->timing.laps;
}

int ClassTime::secondsLeft() const { return seconds_left_; }
int ClassTime::secondsIn() const { return seconds_in_; }
int ClassTime::secondsSinceStop() const { return since_stop_s_; }

int ClassTime::secondsLong() const {
  const wire::Segment* s = segment();
  return s != nullptr ? seconds_up(s->length_ms) : 0;
}

bool ClassTime::lastSeconds() const {
  const wire::Segment* s = segment();
  return s != nullptr && s->kind == wire::SegmentKind::work && moment_.left_ms <= last_seconds_ms;
}

double ClassTime::fraction() const {
  const wire::Segment* s = segment();
  return s != nullptr && s->length_ms > 0
             ? static_cast<double>(moment_.in_ms) / static_cast<double>(s->length_ms)
             : 0;
}

QString ClassTime::clockText() const { return clock_text_; }
QString ClassTime::endText() const { return end_text_; }
bool ClassTime::calm() const { return frozen_ms_ >= 0 || hub_link().speed() > calm_above_speed; }

void ClassTime::freeze_at(qint64 elapsed_ms) {
  frozen_ms_ = elapsed_ms;
  step();
}

ClassTime& class_time() {
  static ClassTime* const time = new ClassTime(QCoreApplication::instance());
  return *time;
}

}  // namespace floorwheel::screens
