// SPDX-License-Identifier: GPL-3.0-or-later
// The present moment of the current class for QML, stepped ten times a second from the hub link's clock
// (no animation object). Everything the screens show of time comes from here; no rule of time is in QML.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QString>
#include <QTimer>
#include <vector>

#include "kiosk/wire/timeline.h"

class QQmlEngine;
class QJSEngine;

namespace floorwheel::screens {

class ClassTime : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  // "none" (no class chosen), "ready" (chosen, not started), "show", "warm-up", "lead-in", "work", "change",
  // "break", "cool-down", "past-end", "over". While held or stopped: the segment it stopped in.
  Q_PROPERTY(QString phase READ phase NOTIFY phaseChanged FINAL)
  Q_PROPERTY(bool held READ held NOTIFY phaseChanged FINAL)        // includes stopped
  Q_PROPERTY(bool stopped READ stopped NOTIFY phaseChanged FINAL)  // stop and help
  Q_PROPERTY(bool powerCut READ powerCut NOTIFY phaseChanged FINAL)
  Q_PROPERTY(bool lapBreak READ lapBreak NOTIFY phaseChanged FINAL)
  Q_PROPERTY(int slot READ slot NOTIFY phaseChanged FINAL)  // present slot, 0 outside the slots
  Q_PROPERTY(int slotCount READ slotCount NOTIFY phaseChanged FINAL)
  Q_PROPERTY(int lap READ lap NOTIFY phaseChanged FINAL)
  Q_PROPERTY(int lapCount READ lapCount NOTIFY phaseChanged FINAL)
  Q_PROPERTY(int secondsLeft READ secondsLeft NOTIFY secondChanged FINAL)  // of the segment, rounded up
  Q_PROPERTY(int secondsIn READ secondsIn NOTIFY secondChanged FINAL)
  Q_PROPERTY(int secondsLong READ secondsLong NOTIFY phaseChanged FINAL)  // the whole segment, rounded up
  Q_PROPERTY(int secondsSinceStop READ secondsSinceStop NOTIFY secondChanged FINAL)
  Q_PROPERTY(bool lastSeconds READ lastSeconds NOTIFY secondChanged FINAL)  // the last 5 s of work
  Q_PROPERTY(double fraction READ fraction NOTIFY ticked FINAL)  // elapsed part of the segment, 0 to 1
  Q_PROPERTY(QString clockText READ clockText NOTIFY secondChanged FINAL)  // local time, "18:18"
  Q_PROPERTY(QString endText READ endText NOTIFY secondChanged FINAL)      // when the timeline ends, "19:10"
  Q_PROPERTY(
      // class clock faster than 4, or a moment shown for a picture: animations end at once
      bool calm READ calm NOTIFY phaseChanged FINAL)

 public:
  // No default argument: a type that QML can construct by itself would get a second instance there.
  explicit ClassTime(QObject* parent);
  static ClassTime* create(QQmlEngine*, QJSEngine*);

  [[nodiscard]] wire::Moment moment() const { return moment_; }
  /// The segments of the current class: of its clock, else as its run sheet or, failing that, its file says.
  [[nodiscard]] const std::vector<wire::Segment>& segments() const { return segments_; }
  [[nodiscard]] QString phase() const;
  [[nodiscard]] bool held() const;
  [[nodiscard]] bool stopped() const;
  [[nodiscard]] bool powerCut() const;
  [[nodiscard]] bool lapBreak() const;
  [[nodiscard]] int slot() const;
  [[nodiscard]] int slotCount() const;
  [[nodiscard]] int lap() const;
  [[nodiscard]] int lapCount() const;
  [[nodiscard]] int secondsLeft() const;
  [[nodiscard]] int secondsIn() const;
  [[nodiscard]] int secondsLong() const;
  [[nodiscard]] int secondsSinceStop() const;
  [[nodiscard]] bool lastSeconds() const;
  [[nodiscard]] double fraction() const;
  [[nodiscard]] QString clockText() const;
  [[nodiscard]] QString endText() const;
  [[nodiscard]] bool calm() const;

  /// Shows a given moment instead of the present one, for pictures (--at); -1 goes back.
  void freeze_at(qint64 elapsed_ms);

 Q_SIGNALS:
  void phaseChanged();  // state, segment or class changed
  void secondChanged();
  void ticked();  // ten times a second while something moves

 private:
  void step();
  void read_hall();
  [[nodiscard]] const wire::Segment* segment() const;

  wire::Moment moment_;
  std::vector<wire::Segment> segments_;
  QString phase_ = QStringLiteral("none");
  wire::Running shown_state_ = wire::Running::not_started;
  int shown_segment_ = -1;
  int seconds_left_ = 0;
  int seconds_in_ = 0;
  int since_stop_s_ = 0;
  QString clock_text_;
  QString end_text_;
  bool shown_calm_ = false;
  qint64 frozen_ms_ = -1;
  QTimer timer_;
};

ClassTime& class_time();

}  // namespace floorwheel::screens
