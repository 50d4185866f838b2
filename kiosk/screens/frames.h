// SPDX-License-Identifier: GPL-3.0-or-later
// What drawing costs (--frames FILE): for each frame the time from afterAnimating to frameSwapped, the CPU
// time of the process so far and the phase of the class, kept in memory and written as CSV at the end.
#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QString>
#include <vector>

class QQuickWindow;

namespace floorwheel::screens {

class Frames : public QObject {
  Q_OBJECT
 public:
  Frames(QQuickWindow&, QObject* parent);
  /// Columns at_us, work_us, cpu_us, phase. Returns what is wrong, or "".
  [[nodiscard]] QString write(const QString& file) const;

 private:
  struct Frame {
    qint64 at_us;
    qint64 work_us;
    qint64 cpu_us;
    QString phase;
  };
  std::vector<Frame> frames_;
  QElapsedTimer since_start_;
  qint64 begun_us_ = -1;
};

}  // namespace floorwheel::screens
