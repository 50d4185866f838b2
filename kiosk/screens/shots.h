// SPDX-License-Identifier: GPL-3.0-or-later
// Pictures asked for on the command line: --shot FILE --at MOMENT, several pairs allowed. A MOMENT is `now`,
// `held`, or a segment and the seconds elapsed in it: `slot 3 work 20`, `slot 3 change 5`, `slot 3 break 5`,
// `warm-up 10`. While the class runs, a moment to come is waited for; one gone by, or of a class that does
// not run, is computed from the run sheet. The picture shows exactly that second, taken once it has been
// drawn.
#pragma once

#include <QList>
#include <QObject>
#include <QString>
#include <functional>
#include <optional>

#include "kiosk/wire/timeline.h"

class QQuickWindow;

namespace floorwheel::screens {

struct ShotMoment {
  enum class What { now, held, segment };
  What what = What::now;
  wire::SegmentKind kind = wire::SegmentKind::work;
  int slot = 0;
  int seconds = 0;
};
std::optional<ShotMoment> moment_from(const QString& text);
/// Where this is on a timeline, ms from its start; none: there is no such segment or it is shorter.
std::optional<qint64> elapsed_of(const ShotMoment&, const std::vector<wire::Segment>&);

struct Shot {
  QString file;
  QString at;  // as written
  ShotMoment moment;
};

/// Calls `then` once the window has drawn what is now set, two frames on: one for bindings, one for layout.
void after_drawn(QQuickWindow&, QObject* context, std::function<void()> then);

class Shots : public QObject {
  Q_OBJECT
 public:
  /// `live`: a moment is always waited for on the class clock, never computed.
  Shots(QQuickWindow&, QList<Shot>, bool live, QObject* parent);
  void start();
  [[nodiscard]] bool busy() const { return !waiting_.isEmpty() || taking_; }

 Q_SIGNALS:
  void finished();
  void failed(const QString& text);

 private:
  void look();
  void take(const Shot&, std::optional<qint64> freeze_ms);

  QQuickWindow& window_;
  QList<Shot> waiting_;
  bool live_;
  bool patient_ = true;  // still waiting for the first contact
  bool taking_ = false;
};

}  // namespace floorwheel::screens
