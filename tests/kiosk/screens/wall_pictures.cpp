// SPDX-License-Identifier: GPL-3.0-or-later
// Draws every state of the wall to PNG files, without a hub: to look at them and to lay them beside the
// target. Usage: wall_pictures FOLDER [SUBSTRING [FILE]]
// FILE: a WallScreen.qml of the source tree, to try changes without building.
#include <QGuiApplication>
#include <QQmlComponent>
#include <QQmlEngine>
#include <QQuickItem>
#include <QQuickWindow>
#include <cstdio>

#include "kiosk/screens/picture.h"
#include "kiosk/screens/this_screen.h"
#include "kiosk/screens/wall_view.h"
#include "tests/support/wall_classes.h"

using namespace floorwheel;
using namespace floorwheel::screens;
using support::moment_in;
using support::WallClass;
using wire::SegmentKind;

int main(int argc, char** argv) {
  QQuickWindow::setGraphicsApi(QSGRendererInterface::Software);
  QGuiApplication app(argc, argv);
  if (argc < 2) {
    std::fprintf(stderr, "usage: wall_pictures FOLDER [SUBSTRING]\n");
    return 2;
  }
  this_screen().set(wire::Role::wall);
  this_screen().find_typefaces();
  WallSite site;
  site.emergency = {{"First-aid kit", "Front desk"},
                    {"Defibrillator", "By the lift"},
                    {"Call", "112"},
                    {"Way out", "Door B, yard"}};
  site.first_aid = 0;
  site.keep = "Keep the way clear. Listen to the instructor.";
  site.last_words = {{"Loads back", "where they were"},
                     {"Station wiped", "cloth at the post"},
                     {"A set not kept?", "touch screen, all day"},
                     {"Next class", "Thursday 18:30"}};

  QQmlEngine engine;
  engine.addImportPath(QStringLiteral(":/qt/qml"));
  QQuickWindow window;
  window.resize(1920, 1080);
  window.setColor(QColor(0x0B, 0x14, 0x20));
  const QUrl source = argc > 3 ? QUrl::fromLocalFile(QString::fromLocal8Bit(argv[3]))
                               : QUrl(QStringLiteral("qrc:/qt/qml/Floorwheel/wall/WallScreen.qml"));
  QQmlComponent component(&engine, source);
  auto* screen = qobject_cast<QQuickItem*>(component.create());
  if (screen == nullptr) {
    std::fprintf(stderr, "%s\n", qPrintable(component.errorString()));
    return 1;
  }
  screen->setParentItem(window.contentItem());
  screen->setSize(QSizeF(1920, 1080));
  auto* view = screen->property("view").value<WallView*>();
  view->set_site(site);
  window.show();

  int failed = 0;
  const auto shot = [&](const QString& name, const WallFace& face, const QString& note = {}) {
    if (argc > 2 && !name.contains(QString::fromLocal8Bit(argv[2]))) return;
    view->show(face, note, QStringLiteral("18:12"));
    QCoreApplication::processEvents();
    QEventLoop loop;
    QTimer::singleShot(460, &loop, &QEventLoop::quit);  // the face has turned
    loop.exec();
    const QString trouble = save_picture(window, QStringLiteral("%1/wall-%2.png").arg(argv[1], name));
    if (!trouble.isEmpty()) {
      std::fprintf(stderr, "%s\n", qPrintable(trouble));
      ++failed;
    }
  };
  const auto face_at = [](const wire::ClassView& c, SegmentKind kind, int slot, double in_s,
                          wire::Running state = wire::Running::running, int since = 0) {
    const auto segments = wire::lay_out(c.sheet.timing);
    wire::Moment m = moment_in(segments, kind, slot, in_s);
    m.state = state;
    return wall_face(&c, segments, m, since);
  };

  WallClass w;
  w.at_first = {2, 2, 1, 2, 2, 1, 2, 2, 1, 2, 2, 1};
  const wire::ClassView ring = support::wall_class(w);
  shot("01", face_at(ring, SegmentKind::work, 1, 13));
  shot("01c", face_at(ring, SegmentKind::work, 1, 37.02));
  shot("02", face_at(ring, SegmentKind::change, 1, 7));
  shot("04", face_at(ring, SegmentKind::warm_up, 0, 118));
  shot("04b", face_at(ring, SegmentKind::pause, 12, 32));
  shot("04c", face_at(ring, SegmentKind::cool_down, 0, 107));
  shot("04d", face_at(ring, SegmentKind::show, 0, 105));
  shot("04e", face_at(ring, SegmentKind::lead_in, 0, 6.6));
  shot("05", face_at(ring, SegmentKind::work, 1, 13, wire::Running::held));
  shot("05b-held-change", face_at(ring, SegmentKind::change, 1, 7, wire::Running::held), "On its own");
  shot("06", face_at(ring, SegmentKind::work, 1, 13, wire::Running::stopped, 134));
  w.ring = false;
  const wire::ClassView free = support::wall_class(w);
  shot("01b", face_at(free, SegmentKind::work, 1, 18));
  shot("03", face_at(free, SegmentKind::change, 1, 7));
  w.ring = true;
  w.at_first = std::vector<int>(12, 1);
  w.waiting = 2;
  const wire::ClassView waits = support::wall_class(w);
  shot("03b", face_at(waits, SegmentKind::change, 2, 7));
  shot("03c", face_at(waits, SegmentKind::work, 2, 9));

  WallClass many;
  many.stations = 16;
  many.people = 24;
  many.at_first = {2, 1, 2, 1, 2, 1, 2, 1, 2, 1, 2, 1, 2, 1, 2, 1};
  many.slots = 16;
  many.laps = 1;
  many.break_after = 0;
  shot("13", face_at(support::wall_class(many), SegmentKind::change, 1, 11.1));
  shot("13-work", face_at(support::wall_class(many), SegmentKind::work, 1, 11.1));
  many.ring = false;
  shot("13-free", face_at(support::wall_class(many), SegmentKind::work, 1, 11.1));
  WallClass six;
  six.stations = 6;
  six.people = 21;
  six.at_first = {4, 3, 4, 3, 4, 3};
  six.slots = 12;
  shot("14", face_at(support::wall_class(six), SegmentKind::work, 1, 13));
  shot("14-move", face_at(support::wall_class(six), SegmentKind::change, 1, 7));
  WallClass few;
  few.people = 8;
  few.at_first = {1, 1, 0, 1, 1, 0, 1, 1, 0, 1, 1, 0};
  few.slots = 12;
  few.laps = 1;
  few.break_after = 0;
  wire::ClassView eight = support::wall_class(few);
  shot("15", face_at(eight, SegmentKind::work, 1, 13));
  shot("15b", face_at(eight, SegmentKind::change, 1, 7));
  eight.stations[2].closed.push_back({1, SlotRange::to_the_end});
  eight.stations[9].closed.push_back({1, SlotRange::to_the_end});
  for (RunSheetRow& row : eight.sheet.rows)
    for (std::string& s : row.stations)
      if (s == "station-2" || s == "station-9") s = "station-5";
  shot("closed", face_at(eight, SegmentKind::work, 1, 13));
  shot("closed-move", face_at(eight, SegmentKind::change, 1, 7));

  wire::ClassView before = ring;
  before.sheet = {};
  shot("gather", wall_face(&before, {}, {}, 0));
  shot("ready", wall_face(&ring, {}, {}, 0));
  shot("nobody", wall_face(nullptr, {}, {}, 0));
  wire::Moment past;
  past.state = wire::Running::running;
  past.past_end = true;
  shot("past-end", wall_face(&ring, wire::lay_out(ring.sheet.timing), past, 0));
  WallClass crowd;
  crowd.stations = 8;
  crowd.people = 30;
  crowd.slots = 16;
  shot("pages", face_at(support::wall_class(crowd), SegmentKind::change, 1, 7));
  shot("10-min", [&] {
    WallClass l;
    l.warm_up_s = 900;
    return face_at(support::wall_class(l), SegmentKind::warm_up, 0, 118);
  }());
  WallClass wide;
  wide.aliases = {"Maximiliane-Charlotte Z.",
                  "Bartholomäus",
                  "Ana-Sofía Gutiérrez",
                  "W",
                  "Wilhelmina M.",
                  "Konstantinopolitanerin",
                  "Jo"};
  shot("long-aliases", face_at(support::wall_class(wide), SegmentKind::change, 1, 7));
  shot("long-aliases-work", face_at(support::wall_class(wide), SegmentKind::work, 1, 7));
  return failed == 0 ? 0 : 1;
}
