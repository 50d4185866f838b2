// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/frames.h"

#include <time.h>

#include <QQuickWindow>
#include <QSaveFile>
#include <QTextStream>

#include "kiosk/screens/class_time.h"

namespace floorwheel::screens {

namespace {
qint64 cpu_now_us() {
  timespec t{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return qint64{t.tv_sec} * 1'000'000 + t.tv_nsec / 1000;
}
}  // namespace

Frames::Frames(QQuickWindow& window, QObject* parent) : QObject(parent) {
  frames_.reserve(100'000);
  since_start_.start();
  // The software loop draws on this thread; with a render thread of its own the times would need a lock, so
  // main asks for the software renderer whenever frames are measured.
  connect(&window, &QQuickWindow::afterAnimating, this,
          [this] { begun_us_ = since_start_.nsecsElapsed() / 1000; });
  connect(&window, &QQuickWindow::frameSwapped, this, [this] {
    if (begun_us_ < 0) return;
    const qint64 now_us = since_start_.nsecsElapsed() / 1000;
    const ClassTime& time = class_time();
    frames_.push_back(
        {now_us, now_us - begun_us_, cpu_now_us(), time.held() ? QStringLiteral("held") : time.phase()});
    begun_us_ = -1;
  });
}

QString Frames::write(const QString& file) const {
  QSaveFile out(file);
  if (!out.open(QIODevice::WriteOnly)) return QStringLiteral("%1: %2").arg(file, out.errorString());
  QTextStream text(&out);
  text << "at_us,work_us,cpu_us,phase\n";
  for (const Frame& f : frames_)
    text << f.at_us << ',' << f.work_us << ',' << f.cpu_us << ',' << f.phase << '\n';
  text.flush();
  return out.commit() ? QString() : QStringLiteral("%1: %2").arg(file, out.errorString());
}

}  // namespace floorwheel::screens
