// SPDX-License-Identifier: GPL-3.0-or-later
// A person's hands, played from a script (--hands FILE or - for standard input, live):
//   tap NAME     waits for the one visible, enabled control with this accessible name; presses and lets go in
//                its middle, as touch events that reach the window from below like the touch panel's
//   type TEXT    key presses to whatever has the focus; \n is Enter, \t Tab, \b Backspace, \e Escape
//   await NAME   waits until a visible item has this accessible name or text
//   shot FILE    a picture of what is drawn now, with its text twin
//   # comment
// One line on standard output for each step done ("done tap Ana P."). A step that does not come about within
// the patience fails, naming what is visible.
#pragma once

#include <QObject>
#include <QPointF>
#include <QPointingDevice>
#include <QStringList>
#include <QTimer>
#include <memory>

class QQuickWindow;
class QSocketNotifier;

namespace floorwheel::screens {

class Hands : public QObject {
  Q_OBJECT
 public:
  Hands(QQuickWindow&, int patience_s, QObject* parent);
  /// Reads `file` ("-": standard input as it comes). Returns what is wrong, or "".
  QString read(const QString& file);

 Q_SIGNALS:
  void finished();
  void failed(const QString& text);

 private:
  void read_pipe();
  void take_lines(const QByteArray& bytes);
  void next();
  void look();
  void press(const QString& name, QPointF at);
  void touch(Qt::TouchPointState, QPointF at);
  void type(const QString& text);
  void done();
  void fail(const QString& what);
  [[nodiscard]] QString visible_names() const;

  QQuickWindow& window_;
  std::unique_ptr<QPointingDevice> panel_;
  QSocketNotifier* pipe_ = nullptr;
  QByteArray half_line_;
  QStringList steps_;
  QString step_, word_, rest_;  // the step under way, its first word and the rest
  bool ended_ = false;          // no more lines will come
  QTimer patience_;
  QString last_tapped_;
  qint64 last_tap_ms_ = 0;
};

}  // namespace floorwheel::screens
