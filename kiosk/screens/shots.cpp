// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/shots.h"

#include <QQuickWindow>
#include <QTimer>
#include <memory>

#include "kiosk/screens/class_time.h"
#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/picture.h"

namespace floorwheel::screens {

namespace {
constexpr int first_contact_ms = 3000;  // then `now` shows a screen that has no hub
}

std::optional<ShotMoment> moment_from(const QString& text) {
  if (text == QLatin1String("now")) return ShotMoment{};
  if (text == QLatin1String("held")) return ShotMoment{ShotMoment::What::held, {}, 0, 0};
  QStringList words = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
  ShotMoment m{ShotMoment::What::segment, {}, 0, 0};
  bool ok = true;
  if (words.size() == 4 && words.first() == QLatin1String("slot")) {
    m.slot = words.at(1).toInt(&ok);
    if (!ok || m.slot < 1) return std::nullopt;
    words = words.mid(2);
  }
  if (words.size() != 2) return std::nullopt;
  const auto kind = wire::segment_kind_from(words.at(0).toStdString());
  m.seconds = words.at(1).toInt(&ok);
  if (!kind || !ok || m.seconds < 0) return std::nullopt;
  m.kind = *kind;
  const bool of_a_slot = m.kind == wire::SegmentKind::work || m.kind == wire::SegmentKind::change ||
                         m.kind == wire::SegmentKind::pause;
  if (of_a_slot != (m.slot > 0)) return std::nullopt;
  return m;
}

std::optional<qint64> elapsed_of(const ShotMoment& m, const std::vector<wire::Segment>& segments) {
  qint64 start_ms = 0;
  for (const wire::Segment& s : segments) {
    if (s.kind == m.kind && s.slot == m.slot) {
      const qint64 in_ms = qint64{m.seconds} * 1000;
      return in_ms < s.length_ms ? std::optional(start_ms + in_ms) : std::nullopt;
    }
    start_ms += s.length_ms;
  }
  return std::nullopt;
}

void after_drawn(QQuickWindow& window, QObject* context, std::function<void()> then) {
  const auto frames = std::make_shared<int>(0);
  const auto link = std::make_shared<QMetaObject::Connection>();
  *link = QObject::connect(
      &window, &QQuickWindow::frameSwapped, context,
      [&window, frames, link, then = std::move(then)] {
        if (++*frames < 2) {
          window.update();
          return;
        }
        const auto act = then;
        QObject::disconnect(*link);
        act();
      },
      Qt::QueuedConnection);
  window.update();
}

Shots::Shots(QQuickWindow& window, QList<Shot> shots, bool live, QObject* parent)
    : QObject(parent), window_(window), waiting_(std::move(shots)), live_(live) {}

void Shots::start() {
  if (waiting_.isEmpty()) return;
  connect(&hub_link(), &HubLink::hallChanged, this, &Shots::look);
  connect(&class_time(), &ClassTime::phaseChanged, this, &Shots::look);
  connect(&class_time(), &ClassTime::ticked, this, &Shots::look);
  QTimer::singleShot(first_contact_ms, this, [this] {
    patient_ = false;
    look();
  });
  look();
}

void Shots::look() {
  if (taking_) return;
  ClassTime& time = class_time();
  const bool contact = hub_link().everConnected() && hub_link().hall().reached > 0;
  for (const Shot& shot : waiting_) {
    switch (shot.moment.what) {
      case ShotMoment::What::now:
        if (contact || !patient_) return take(shot, std::nullopt);
        break;
      case ShotMoment::What::held:
        if (time.held()) return take(shot, std::nullopt);
        break;
      case ShotMoment::What::segment: {
        if (time.segments().empty()) break;
        const auto target = elapsed_of(shot.moment, time.segments());
        const wire::Moment m = time.moment();
        const bool runs = m.state == wire::Running::running && !m.past_end;
        if (!target) {
          if (live_ && (runs || m.state == wire::Running::not_started)) break;  // a later sheet may have it
          const Shot lost = shot;
          waiting_.clear();
          Q_EMIT failed(
              QStringLiteral("--at '%1': this class has no such second; see 'floorwheel plan' for its slots")
                  .arg(lost.at));
          return;
        }
        const bool gone_by = m.elapsed_ms >= *target && (runs || m.past_end);
        if (gone_by || (!live_ && !runs)) return take(shot, *target);
        break;
      }
    }
  }
}

void Shots::take(const Shot& due, std::optional<qint64> freeze_ms) {
  taking_ = true;
  const Shot shot = due;
  waiting_.removeIf([&](const Shot& s) { return s.file == shot.file; });
  if (freeze_ms) class_time().freeze_at(*freeze_ms);
  after_drawn(window_, this, [this, shot, freeze_ms] {
    const QString trouble = save_picture(window_, shot.file);
    if (freeze_ms) class_time().freeze_at(-1);
    taking_ = false;
    if (!trouble.isEmpty()) {
      waiting_.clear();
      Q_EMIT failed(trouble);
      return;
    }
    if (waiting_.isEmpty())
      Q_EMIT finished();
    else
      look();
  });
}

}  // namespace floorwheel::screens
