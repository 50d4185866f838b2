// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/hands.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QtGui/qtestsupport_gui.h>
#include <QEventPoint>
#include <QFile>
#include <QQuickWindow>
#include <QSet>
#include <QSocketNotifier>
#include <QTextStream>

#include "kiosk/screens/item_names.h"
#include "kiosk/screens/link_clock.h"
#include "kiosk/screens/picture.h"
#include "kiosk/screens/shots.h"

// Exported by QtGui for its own test library: events enter where the platform's do.
Q_GUI_EXPORT void qt_handleTouchEvent(QWindow* w, const QPointingDevice* device,
                                      const QList<QEventPoint>& points, Qt::KeyboardModifiers mods);
Q_GUI_EXPORT void qt_handleKeyEvent(QWindow* w, QEvent::Type t, int k, Qt::KeyboardModifiers mods,
                                    const QString& text, bool autorep, ushort count);

namespace floorwheel::screens {

namespace {
// A key ignores a second tap within 250 ms; a person's finger is slower.
constexpr int same_key_again_ms = 260;

QString unescaped(QString text) {
  return text.replace(QLatin1String("\\n"), QLatin1String("\n"))
      .replace(QLatin1String("\\t"), QLatin1String("\t"))
      .replace(QLatin1String("\\b"), QLatin1String("\b"))
      .replace(QLatin1String("\\e"), QLatin1String("\x1b"));
}

int key_of(QChar c) {
  switch (c.unicode()) {
    case '\n':
      return Qt::Key_Return;
    case '\t':
      return Qt::Key_Tab;
    case '\b':
      return Qt::Key_Backspace;
    case 0x1b:
      return Qt::Key_Escape;
    default:
      return c.toUpper().unicode();
  }
}
}  // namespace

Hands::Hands(QQuickWindow& window, int patience_s, QObject* parent)
    : QObject(parent), window_(window), panel_(QTest::createTouchDevice()) {
  patience_.setSingleShot(true);
  patience_.setInterval(patience_s * 1000);
  connect(&patience_, &QTimer::timeout, this,
          [this] { fail(QStringLiteral("not within %1 s").arg(patience_.interval() / 1000)); });
  // Whatever becomes visible is drawn; so each frame is the moment to look again.
  connect(
      &window_, &QQuickWindow::frameSwapped, this, [this] { look(); }, Qt::QueuedConnection);
}

QString Hands::read(const QString& file) {
  if (file == QLatin1String("-")) {
    struct stat info {};
    if (::fstat(STDIN_FILENO, &info) == 0 && !S_ISREG(info.st_mode)) {
      ::fcntl(STDIN_FILENO, F_SETFL, ::fcntl(STDIN_FILENO, F_GETFL) | O_NONBLOCK);
      pipe_ = new QSocketNotifier(STDIN_FILENO, QSocketNotifier::Read, this);
      connect(pipe_, &QSocketNotifier::activated, this, &Hands::read_pipe);
      return {};
    }
  }
  QFile script;
  const bool opened = file == QLatin1String("-")
                          ? script.open(stdin, QIODevice::ReadOnly)
                          : (script.setFileName(file), script.open(QIODevice::ReadOnly));
  if (!opened) return QStringLiteral("%1: %2; give a script for --hands").arg(file, script.errorString());
  const QByteArray all = script.readAll();
  int line = 0;
  for (const QByteArray& text : all.split('\n')) {
    ++line;
    const QByteArray word = text.trimmed().split(' ').first();
    if (!word.isEmpty() && !word.startsWith('#') &&
        !QByteArrayList{"tap", "type", "await", "shot"}.contains(word))
      return QStringLiteral("%1:%2:1: unknown step '%3'; tap, type, await and shot are known")
          .arg(file, QString::number(line), QString::fromUtf8(word));
  }
  ended_ = true;
  take_lines(all + '\n');
  return {};
}

void Hands::read_pipe() {
  char bytes[4096];
  const ssize_t n = ::read(STDIN_FILENO, bytes, sizeof bytes);
  if (n < 0) return;
  if (n == 0) {
    pipe_->setEnabled(false);
    ended_ = true;
    take_lines(half_line_.isEmpty() ? QByteArray() : QByteArray("\n"));
    return;
  }
  take_lines(QByteArray(bytes, n));
}

void Hands::take_lines(const QByteArray& bytes) {
  half_line_ += bytes;
  for (qsizetype end = half_line_.indexOf('\n'); end >= 0; end = half_line_.indexOf('\n')) {
    const QString line = QString::fromUtf8(half_line_.first(end)).trimmed();
    half_line_.remove(0, end + 1);
    if (!line.isEmpty() && !line.startsWith(QLatin1Char('#'))) steps_.append(line);
  }
  // Later: the window may not be shown yet.
  if (step_.isEmpty()) QMetaObject::invokeMethod(this, &Hands::next, Qt::QueuedConnection);
}

void Hands::next() {
  if (!step_.isEmpty()) return;
  if (steps_.isEmpty()) {
    if (std::exchange(ended_, false)) Q_EMIT finished();
    return;
  }
  step_ = steps_.takeFirst();
  word_ = step_.section(QLatin1Char(' '), 0, 0);
  rest_ = step_.section(QLatin1Char(' '), 1);
  patience_.start();
  if (word_ == QLatin1String("type")) {
    type(unescaped(rest_));
    after_drawn(window_, this, [this] { done(); });
  } else if (word_ == QLatin1String("shot")) {
    after_drawn(window_, this, [this] {
      const QString trouble = save_picture(window_, rest_);
      if (trouble.isEmpty())
        done();
      else
        fail(trouble);
    });
  } else if (word_ == QLatin1String("tap") || word_ == QLatin1String("await")) {
    window_.update();
    look();
  } else {
    fail(QStringLiteral("unknown step; tap, type, await and shot are known"));
  }
}

void Hands::look() {
  if (step_.isEmpty() || rest_.isEmpty()) return;
  if (word_ == QLatin1String("await")) {
    for (const ShownItem& i : shown_items(window_))
      if (i.name == rest_) return done();
  } else if (word_ == QLatin1String("tap")) {
    QList<ShownItem> found;
    for (const ShownItem& i : shown_items(window_))
      if (i.acts && i.enabled && i.name == rest_) found.append(i);
    if (found.isEmpty()) return;
    if (found.size() > 1) return fail(QStringLiteral("%1 controls have this name").arg(found.size()));
    press(rest_, found.first().rect.center());
  }
}

void Hands::press(const QString& name, QPointF at) {
  rest_.clear();  // found; frames need not look any more
  const qint64 early_ms = name == last_tapped_ ? same_key_again_ms - (mono_now_ms() - last_tap_ms_) : 0;
  QTimer::singleShot(static_cast<int>(std::max<qint64>(0, early_ms)), this, [this, name, at] {
    touch(Qt::TouchPointPressed, at);
    after_drawn(window_, this, [this, name, at] {
      touch(Qt::TouchPointReleased, at);
      last_tapped_ = name;
      last_tap_ms_ = mono_now_ms();
      after_drawn(window_, this, [this] { done(); });
    });
  });
}

void Hands::touch(Qt::TouchPointState state, QPointF at) {
  const QEventPoint::State point_state =
      state == Qt::TouchPointPressed ? QEventPoint::State::Pressed : QEventPoint::State::Released;
  const QEventPoint point(1, point_state, at, window_.mapToGlobal(at));
  qt_handleTouchEvent(&window_, panel_.get(), {point}, Qt::NoModifier);
}

void Hands::type(const QString& text) {
  for (const QChar c : text) {
    const QString shown = c.isPrint() ? QString(c) : QString();
    const Qt::KeyboardModifiers mods = c.isUpper() ? Qt::ShiftModifier : Qt::NoModifier;
    qt_handleKeyEvent(&window_, QEvent::KeyPress, key_of(c), mods, shown, false, 1);
    qt_handleKeyEvent(&window_, QEvent::KeyRelease, key_of(c), mods, shown, false, 1);
  }
}

void Hands::done() {
  patience_.stop();
  QTextStream(stdout) << "done " << step_ << Qt::endl;
  step_.clear();
  QMetaObject::invokeMethod(this, &Hands::next, Qt::QueuedConnection);
}

void Hands::fail(const QString& what) {
  patience_.stop();
  const QString text = QStringLiteral("'%1': %2. Visible: %3").arg(step_, what, visible_names());
  step_.clear();
  steps_.clear();
  Q_EMIT failed(text);
}

QString Hands::visible_names() const {
  QStringList names;
  for (const ShownItem& i : shown_items(window_))
    names.append(i.acts
                     ? (i.enabled ? QStringLiteral("[%1]").arg(i.name) : QStringLiteral("(%1)").arg(i.name))
                     : i.name);
  return names.join(QStringLiteral(" | "));
}

}  // namespace floorwheel::screens
