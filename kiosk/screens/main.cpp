// SPDX-License-Identifier: GPL-3.0-or-later
// floorwheel-screen: one screen of the floor. Reads the command line, opens the outbox, starts the link to
// the hub and shows Main.qml; then plays hands and takes pictures as asked. Leaves cleanly on SIGINT and
// SIGTERM.
#include <signal.h>
#include <sys/signalfd.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QDir>
#include <QGuiApplication>
#include <QLocale>
#include <QQmlApplicationEngine>
#include <QQuickWindow>
#include <QSocketNotifier>
#include <QStyleHints>
#include <QTranslator>
#include <cstdio>
#include <string_view>

#include "kiosk/screens/class_time.h"
#include "kiosk/screens/frames.h"
#include "kiosk/screens/hands.h"
#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/options.h"
#include "kiosk/screens/this_screen.h"
#include "kiosk/screens/wall_view.h"

namespace {

using namespace floorwheel::screens;

void say(const QString& text) { std::fprintf(stderr, "%s\n", qPrintable(text)); }

bool has_display() {
  return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY") ||
         qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
}

// Signals become an event of the loop, so that everything is closed in order. Before any thread starts.
int signals_as_file() {
  sigset_t set;
  sigemptyset(&set);
  sigaddset(&set, SIGINT);
  sigaddset(&set, SIGTERM);
  sigprocmask(SIG_BLOCK, &set, nullptr);
  return signalfd(-1, &set, SFD_CLOEXEC | SFD_NONBLOCK);
}

// A kiosk started from a service or a script has no session folder; Qt would complain and make this same one.
void have_runtime_folder() {
  if (qEnvironmentVariableIsSet("XDG_RUNTIME_DIR")) return;
  const QByteArray folder =
      QFile::encodeName(QDir::tempPath()) + "/floorwheel-run-" + QByteArray::number(getuid());
  mkdir(folder.constData(), 0700);
  qputenv("XDG_RUNTIME_DIR", folder);
}

QStringList raw_arguments(int argc, char** argv) {
  QStringList list;
  for (int i = 0; i < argc; ++i) list.append(QString::fromLocal8Bit(argv[i]));
  return list;
}

void use_language(QGuiApplication& app, const QString& lang) {
  if (lang.isEmpty()) return;
  QLocale::setDefault(QLocale(lang));
  if (lang == QLatin1String("en") || lang.startsWith(QLatin1String("en_"))) return;
  auto* translator = new QTranslator(&app);
  if (translator->load(QStringLiteral(":/i18n/floorwheel_") + lang))
    QCoreApplication::installTranslator(translator);
  else
    say(QStringLiteral("floorwheel-screen: no texts in language '%1' yet; English is shown").arg(lang));
}

}  // namespace

int main(int argc, char** argv) {
  const auto read = options_from(raw_arguments(argc, argv));
  if (const auto* leave = std::get_if<Leave>(&read)) {
    std::fprintf(leave->code == 0 ? stdout : stderr, "%s\n", qPrintable(leave->text));
    return leave->code;
  }
  const Options& options = std::get<Options>(read);
  const int signal_fd = signals_as_file();

  have_runtime_folder();
  if (!has_display()) qputenv("QT_QPA_PLATFORM", "offscreen");
  const bool headless = qgetenv("QT_QPA_PLATFORM").startsWith("offscreen");
  if (headless || !options.frames.isEmpty()) QQuickWindow::setGraphicsApi(QSGRendererInterface::Software);
  QGuiApplication app(argc, argv);
  QGuiApplication::setApplicationName(QStringLiteral("floorwheel-screen"));
  // Two quick taps are two taps, even where one key took the other's place in between.
  QGuiApplication::styleHints()->setMouseDoubleClickInterval(0);
  QSocketNotifier signalled(signal_fd, QSocketNotifier::Read);
  QObject::connect(&signalled, &QSocketNotifier::activated, &app, &QGuiApplication::quit);
  use_language(app, options.lang);

  this_screen().set(options.role, options.mm);
  for (const QString& family : this_screen().find_typefaces())
    say(QStringLiteral(
            "floorwheel-screen: typeface '%1' is missing, another stands in; install fonts-paratype")
            .arg(family));
  if (!options.site.isEmpty()) {
    QString trouble;
    wall_site() = read_site(options.site, &trouble);
    if (!trouble.isEmpty()) {
      say(trouble);
      return 2;
    }
  }
  const QString outbox_trouble = hub_link().keep_outbox_in(options.state);
  if (!outbox_trouble.isEmpty()) {
    say(outbox_trouble);
    return 2;
  }

  QQmlApplicationEngine engine;
  engine.addImportPath(QStringLiteral(":/qt/qml"));
  engine.load(QUrl(QStringLiteral("qrc:/qt/qml/Floorwheel/Main.qml")));
  auto* window =
      engine.rootObjects().isEmpty() ? nullptr : qobject_cast<QQuickWindow*>(engine.rootObjects().first());
  if (window == nullptr) {
    say(QStringLiteral("floorwheel-screen: cannot show its window; see the lines above"));
    return 2;
  }
  if (!options.size.isEmpty() || headless) {
    window->resize(options.size.isEmpty() ? this_screen().design_size() : options.size);
    window->show();
  } else {
    window->showFullScreen();
  }

  Frames* frames = options.frames.isEmpty() ? nullptr : new Frames(*window, &app);
  Shots shots(*window, options.shots, options.live, &app);
  bool hands_busy = !options.hands.isEmpty();
  const auto leave_when_done = [&] {
    if (!options.stay && !hands_busy && !shots.busy()) QGuiApplication::quit();
  };
  const auto leave_failed = [](const QString& text) {
    say(QStringLiteral("floorwheel-screen: ") + text);
    QGuiApplication::exit(1);
  };
  QObject::connect(&shots, &Shots::finished, &app, leave_when_done);
  QObject::connect(&shots, &Shots::failed, &app, leave_failed);
  Hands hands(*window, options.patience_s, nullptr);
  QObject::connect(&hands, &Hands::finished, &app, [&] {
    hands_busy = false;
    leave_when_done();
  });
  QObject::connect(&hands, &Hands::failed, &app, leave_failed);
  if (hands_busy) {
    const QString trouble = hands.read(options.hands);
    if (!trouble.isEmpty()) {
      say(trouble);
      return 2;
    }
  }
  shots.start();
  hub_link().start(options.hub, options.role);

  int code = QGuiApplication::exec();
  if (frames != nullptr) {
    const QString trouble = frames->write(options.frames);
    if (!trouble.isEmpty()) {
      say(trouble);
      code = 2;
    }
  }
  return code;
}
