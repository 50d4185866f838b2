// SPDX-License-Identifier: GPL-3.0-or-later
// Every text of the wall in every state: large enough for the distance it serves, inside the wall, on nothing
// else; every colour pair it uses has contrast; every shipped word and every alias of 1 to 40 characters
// fits. The real screen is loaded, so what is judged is what is drawn. Sources: 22 arcmin preferred (ISO
// 9241-303 range 20 to 22) times 1.4 for an acuity of 0.5 (DIN 1450's way of allowing for it); distances 10,
// 5 and 3 m; contrast by WCAG 2.1, 1.4.3 and 1.4.6.
#include <QFontInfo>
#include <QFontMetricsF>
#include <QQmlComponent>
#include <QQmlEngine>
#include <QQuickItem>
#include <QQuickWindow>
#include <QTest>
#include <cmath>
#include <random>

#include "kiosk/screens/this_screen.h"
#include "kiosk/screens/wall_view.h"
#include "tests/support/wall_classes.h"

using namespace floorwheel;
using namespace floorwheel::screens;
using support::moment_in;
using support::wall_class;
using support::WallClass;
using wire::Running;
using wire::SegmentKind;

namespace {

constexpr double least_arcmin = 22 * 1.4;

double arcmin(double cap_px, double mm_per_px, double distance_m) {
  return 2 * std::atan(cap_px * mm_per_px / 2 / (distance_m * 1000)) * 180 / 3.14159265358979 * 60;
}

/// How far a text has to be read, by its key; 0: unknown, which fails.
double distance_of(const QString& key, bool go_face) {
  if (key == "headline" || key == "unit" || key == "letter" || key == "start" || key == "time") return 10;
  if (key == "clock") return 10;
  if (key.startsWith("alias:")) return go_face ? 5 : 3;
  if (key.startsWith("shown:") || key.startsWith("class:")) return 5;
  for (const char* near : {"name:", "corner:", "dot:", "plan", "note", "here", "waits", "last:"})
    if (key.startsWith(QLatin1String(near))) return 3;
  return 0;
}

double channel(double c) { return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); }
double luminance(const QColor& c) {
  return 0.2126 * channel(c.redF()) + 0.7152 * channel(c.greenF()) + 0.0722 * channel(c.blueF());
}
double contrast(const QColor& a, const QColor& b) {
  const double la = luminance(a);
  const double lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

/// The ink of a text: its capitals and what hangs below (nothing under figures, one capital and "min"),
/// accents left out.
QRectF ink(const WallTextItem& t) {
  const double em = wall_pixel_size(t.cap);
  const double cap = t.cap == wall_cap::clock ? t.cap : 0.70 * em;
  const bool hangs = t.key != "clock" && t.key != "letter" && t.key != "unit";
  const double bearing = t.key == "clock" ? 10 : 0;  // least empty space beside a figure
  return {t.x + bearing, t.base - cap, t.width - 2 * bearing, cap + (hangs ? 0.205 * em : 0)};
}

struct Shown {
  QString name;
  WallFace face;
};

WallFace face_in(const wire::ClassView& c, SegmentKind kind, int slot, double in_s,
                 Running state = Running::running) {
  const auto segments = wire::lay_out(c.sheet.timing);
  wire::Moment m = moment_in(segments, kind, slot, in_s);
  m.state = state;
  return wall_face(&c, segments, m, 134);
}

/// Every state of one class, running and held.
std::vector<Shown> states_of(const WallClass& w, const QString& name) {
  wire::ClassView c = wall_class(w);
  std::vector<Shown> all;
  const auto add = [&](const char* what, const WallFace& f) {
    all.push_back({name + QStringLiteral(", ") + QLatin1String(what), f});
  };
  const struct {
    const char* what;
    SegmentKind kind;
    int slot;
    double in_s;
  } moments[] = {{"show", SegmentKind::show, 0, 250},      {"warm-up", SegmentKind::warm_up, 0, 100},
                 {"lead-in", SegmentKind::lead_in, 0, 6},  {"work", SegmentKind::work, 3, 10},
                 {"5 s left", SegmentKind::work, 3, 35.5}, {"1 s left", SegmentKind::work, 3, 39.5},
                 {"change", SegmentKind::change, 3, 4},    {"cool-down", SegmentKind::cool_down, 0, 100}};
  for (const auto& m : moments) {
    add(m.what, face_in(c, m.kind, m.slot, m.in_s));
    add("held", face_in(c, m.kind, m.slot, m.in_s, Running::held));
  }
  if (w.break_after > 0) add("break", face_in(c, SegmentKind::pause, w.break_after, 4));
  add("ready", wall_face(&c, {}, {}, 0));
  wire::ClassView before = c;
  before.sheet = {};
  add("gather", wall_face(&before, {}, {}, 0));
  add("nobody", wall_face(nullptr, {}, {}, 0));
  return all;
}

}  // namespace

class TestWallLegibility : public QObject {
  Q_OBJECT
  WallText measure_{QString()};
  WallSite site_ = plain_site();

  WallItems items(const WallFace& f, const QString& note = QStringLiteral("On its own"), int page = 0) const {
    return wall_items(f, measure_, site_, note, QStringLiteral("18:12"), page);
  }
  static std::vector<WallTextItem> texts_of(const WallItems& i) {
    std::vector<WallTextItem> all = i.texts;
    all.insert(all.end(), i.middle.begin(), i.middle.end());
    all.push_back(i.headline);
    return all;
  }
  /// "" or what stands outside or on something else.
  static QString judge(const WallItems& i, bool held) {
    const auto texts = texts_of(i);
    QList<QPair<QString, QRectF>> areas;
    for (const WallTextItem& t : texts) {
      QRectF r = ink(t);
      if (t.key == "headline" && held) r = QRectF(r.x() - 56, 4, r.width() + 112, 176);
      if (!QRectF(0, 0, 1920, 1080).contains(r)) return t.label + QStringLiteral(" leaves the wall");
      areas.append({t.label, r});
    }
    for (const WallTagItem& t : i.tags) {
      const QRectF r(t.right - t.width - t.stroke / 2, t.y - t.stroke / 2, t.width + t.stroke,
                     t.height + t.stroke);
      if (!QRectF(0, 0, 1920, 1080).contains(r)) return t.letter + QStringLiteral(" tag leaves the wall");
      areas.append({QStringLiteral("tag ") + t.key, r});
    }
    for (qsizetype a = 0; a < areas.size(); ++a)
      for (qsizetype b = 0; b < a; ++b) {
        const QRectF both = areas[a].second.intersected(areas[b].second);
        // At twelve rows a descender reaches 4 px into the next row's capitals; between small tags 6 px.
        const bool small = areas[a].first.endsWith(QStringLiteral(":near"));
        if (both.width() > 0.5 && both.height() > (small ? 6 : 4.1))
          return QStringLiteral("%1 on %2").arg(areas[a].first, areas[b].first);
      }
    for (const WallTextItem& t : i.middle) {
      const QRectF r = ink(t);
      for (const WallDiscItem& d : i.discs) {
        const double dx = std::max({r.left() - d.centre.x, d.centre.x - r.right(), 0.0});
        const double dy = std::max({r.top() - d.centre.y, d.centre.y - r.bottom(), 0.0});
        if (std::hypot(dx, dy) < 49) return t.label + QStringLiteral(" on disc ") + d.letter;
      }
    }
    return {};
  }

 private Q_SLOTS:
  void initTestCase() {
    this_screen().set(wire::Role::wall);
    QVERIFY2(this_screen().find_typefaces().isEmpty(), "install fonts-paratype");
    measure_ = WallText(this_screen().narrowFamily());
    QFont font(this_screen().narrowFamily());
    font.setBold(true);
    QCOMPARE(QFontInfo(font).family(), QStringLiteral("PT Sans Narrow"));
    QVERIFY(QFontInfo(font).bold());
  }

  void capitals_are_as_high_as_said() {
    QFont font(this_screen().narrowFamily());
    font.setBold(true);
    font.setPixelSize(1000);
    QVERIFY(std::abs(QFontMetricsF(font).capHeight() - 700) <= 2);
    QVERIFY(std::abs(QFontMetricsF(font).tightBoundingRect(QStringLiteral("7")).height() - 700) <= 16);
    for (const char* figure : {"0", "1", "4", "7"})  // tabular
      QCOMPARE(QFontMetricsF(font).horizontalAdvance(figure), QFontMetricsF(font).horizontalAdvance("8"));
  }

  void every_text_is_large_enough_for_its_distance_data() {
    QTest::addColumn<double>("inches");
    QTest::newRow("55 inch") << 55.0;
    QTest::newRow("75 inch") << 75.0;
  }
  void every_text_is_large_enough_for_its_distance() {
    QFETCH(double, inches);
    // The far tier reaches 10 m times inches / 55, and so do the others.
    const double mm_per_px = 0.634 * inches / 55;
    const double reach = inches / 55;
    std::map<double, double> least;
    double clock = 1e9;
    for (const Shown& s : states_of({}, "class"))
      for (const WallTextItem& t : texts_of(items(s.face))) {
        const double distance =
            distance_of(t.key, shows_go_face(s.face) || s.face.state == WallState::gather);
        QVERIFY2(distance > 0, qPrintable(t.key + QStringLiteral(" has no tier")));
        const double cap = t.cap == wall_cap::clock ? t.cap : 0.70 * wall_pixel_size(t.cap);
        const double angle = arcmin(cap, mm_per_px, distance * reach);
        QVERIFY2(angle >= least_arcmin, qPrintable(QStringLiteral("%1: %2'").arg(t.label).arg(angle)));
        if (t.key == "clock" && t.cap == wall_cap::clock) clock = std::min(clock, angle);
        auto& l = least.try_emplace(distance, 1e9).first->second;
        l = std::min(l, angle);
      }
    QVERIFY(clock >= 90);
    for (auto [distance, angle] : least) qInfo("%.0f m: least %.1f arcmin", distance * reach, angle);
    qInfo("clock: %.1f arcmin", clock);
  }

  void tags_and_discs_are_large_enough() {
    for (const Shown& s : states_of({}, "class"))
      for (const WallTagItem& t : items(s.face).tags) {
        const bool small = s.face.state == WallState::work || s.face.state == WallState::last;
        const double angle = arcmin(0.70 * wall_pixel_size(t.cap), 0.634, small ? 3 : 5);
        QVERIFY2(angle >= least_arcmin, qPrintable(s.name + t.letter));
      }
    QVERIFY(arcmin(0.70 * 101, 0.634, 5) >= least_arcmin);  // letters in discs and on the W plate
  }

  void a_smaller_cut_would_be_found() {
    QVERIFY(arcmin(42, 0.634, 3) < least_arcmin);
    QVERIFY(arcmin(70, 0.634, 5) < least_arcmin);
    QVERIFY(arcmin(141, 0.634, 10) < least_arcmin);
  }

  void nothing_leaves_the_wall_or_lies_on_another_text() {
    std::vector<std::pair<QString, WallClass>> classes{{"12 x 20", {}}};
    WallClass w;
    w.ring = false;
    classes.emplace_back("12 x 20 free", w);
    w.stations = 16;
    w.people = 24;
    w.slots = 16;
    w.break_after = 8;
    classes.emplace_back("16 x 24 free", w);
    w.ring = true;
    classes.emplace_back("16 x 24", w);
    w.stations = 6;
    w.people = 21;
    classes.emplace_back("6 x 21", w);
    w.stations = 12;
    w.people = 8;
    classes.emplace_back("12 x 8", w);
    w.waiting = 2;
    w.people = 12;
    classes.emplace_back("12 and two wait", w);
    w = {};
    w.people = 60;
    classes.emplace_back("12 x 60", w);
    int faces = 0;
    for (const auto& [name, c] : classes)
      for (const Shown& s : states_of(c, name)) {
        const int pages = items(s.face).pages;
        for (int page = 0; page < pages; ++page, ++faces) {
          const QString wrong = judge(items(s.face, QStringLiteral("On its own"), page), s.face.held);
          QVERIFY2(wrong.isEmpty(), qPrintable(s.name + QStringLiteral(": ") + wrong));
        }
      }
    qInfo("%d faces judged", faces);
  }

  void aliases_of_1_to_40_characters_fit() {
    std::mt19937 chance(40);
    const QString letters = QStringLiteral("abcdefghijklmnopqrstuvwxyzäéñWMmÅ");
    for (int length : {1, 2, 3, 4, 5, 6, 8, 10, 13, 17, 21, 26, 31, 36, 40})
      for (bool ring : {true, false}) {
        WallClass w;
        w.ring = ring;
        for (int i = 0; i < 20; ++i) {
          QString alias;
          for (int k = 0; k < length; ++k) {
            const bool space =
                k > 0 && k + 1 < length && alias.back() != QLatin1Char(' ') && chance() % 9 == 0;
            alias += space ? QLatin1Char(' ') : letters[static_cast<qsizetype>(chance()) % letters.size()];
          }
          w.aliases.push_back(alias.toStdString());
        }
        for (const Shown& s : states_of(w, QStringLiteral("%1 characters").arg(length))) {
          const int pages = items(s.face).pages;
          for (int page = 0; page < pages; ++page) {
            const WallItems made = items(s.face, {}, page);
            for (const WallTextItem& t : made.texts)
              if (t.key.startsWith("alias:") && t.cap == wall_cap::go)
                QVERIFY2(t.width <= 370.01, qPrintable(t.label));
            const QString wrong = judge(made, s.face.held);
            QVERIFY2(wrong.isEmpty(), qPrintable(s.name + QStringLiteral(": ") + wrong));
          }
        }
      }
  }

  void an_alias_too_wide_breaks_or_keeps_its_first_letters() {
    const auto go = [&](const char* alias) {
      return measure_.lines(QString::fromUtf8(alias), wall_cap::go, true, wall_fit::alias_go,
                            wall_fit::shortened, 2);
    };
    QCOMPARE(go("Kwame O."), QStringList({"Kwame O."}));
    QCOMPARE(go("Ana-Sofía Gutiérrez"), QStringList({"Ana-Sofía", "Gutiérrez"}));
    const QStringList one = go("Konstantinopolitanerin");
    QCOMPARE(one.size(), 1);
    QVERIFY(one[0].endsWith(QLatin1Char('.')));
    QVERIFY(QStringLiteral("Konstantinopolitanerin").startsWith(one[0].chopped(1)));
    QVERIFY(measure_.width(one[0], wall_cap::go) <= wall_fit::shortened);
    QVERIFY(measure_.width(one[0].chopped(1) + QStringLiteral("no."), wall_cap::go) >
            wall_fit::shortened - 60);
  }

  void a_broken_alias_costs_no_page_unless_people_would_be_mixed_up() {
    WallClass w;
    w.stations = 8;
    w.people = 24;  // twelve rows a side
    w.slots = 16;
    w.break_after = 0;
    w.aliases = {"Bartholomea D.", "Bo E.", "Cy F."};
    WallItems made = items(face_in(wall_class(w), SegmentKind::change, 1, 4), {});
    QCOMPARE(made.pages, 1);
    w.aliases = {"Bartholomea D.", "Bo E.", "Bartholomea F."};
    made = items(face_in(wall_class(w), SegmentKind::change, 1, 4), {});
    QCOMPARE(made.pages, 2);
  }

  void headlines_of_three_languages_fit() {
    const struct {
      const char* word;
      double px;
    } fits[] = {{"Arbeit", 442},    {"Eins weiter", 795}, {"Dein Platz", 740}, {"Erster Platz", 831},
                {"Aufwärmen", 823}, {"Ausklang", 661},    {"Schau her", 704},  {"Gehalten", 650},
                {"Trabajo", 549},   {"Avanza uno", 832},  {"Tu sitio", 540},   {"Primer sitio", 836},
                {"Calentar", 606},  {"Calma", 444},       {"Mira", 324},       {"Parado", 504}};
    for (const auto& f : fits) {
      const double width = measure_.width(QString::fromUtf8(f.word), wall_cap::word);
      // The widths were taken without kerning (Tr, Wo), which only makes them smaller.
      QVERIFY2(width <= f.px + 4 && width >= f.px - 20,
               qPrintable(QStringLiteral("%1: %2").arg(f.word).arg(width)));
      QVERIFY(width <= wall_fit::headline);
    }
    for (const char* wide : {"Rundenpause", "Vuelta a la calma"})
      QVERIFY(measure_.width(QString::fromUtf8(wide), wall_cap::word) > wall_fit::headline);
    for (const Shown& s : states_of({}, "en"))
      QVERIFY2(items(s.face).headline.width <= wall_fit::headline, qPrintable(s.name));
  }

  void corners_give_way_to_a_wide_word() {
    // 'Held' in German is 650 wide; with its plate it reaches the corners, which then stay away.
    WallFace f = face_in(wall_class({}), SegmentKind::work, 3, 10, Running::held);
    QVERIFY(judge(items(f), true).isEmpty());
    QCOMPARE(corner_room(measure_.width(QStringLiteral("Held"), wall_cap::word) + 112, 150), true);
    QCOMPARE(corner_room(measure_.width(QStringLiteral("Gehalten"), wall_cap::word) + 112, 150), false);
  }

  void wcag_vectors() {
    const struct {
      const char* a;
      const char* b;
      double ratio;
    } known[] = {{"#000", "#FFF", 21.00},    {"#777777", "#FFF", 4.478}, {"#767676", "#FFF", 4.542},
                 {"#595959", "#FFF", 7.005}, {"#949494", "#FFF", 3.033}, {"#F00", "#FFF", 3.998},
                 {"#00F", "#000", 2.444}};
    for (const auto& k : known) QVERIFY(std::abs(contrast(QColor(k.a), QColor(k.b)) - k.ratio) < 0.005);
  }

  void every_pair_on_the_wall_has_contrast() {
    QQmlEngine engine;
    engine.addImportPath(QStringLiteral(":/qt/qml"));
    QQmlComponent c(&engine);
    c.setData("import QtQuick\nimport Floorwheel\nQtObject { property var theme: Theme }", QUrl());
    QScopedPointer<QObject> holder(c.create());
    QVERIFY2(holder, qPrintable(c.errorString()));
    auto* theme = holder->property("theme").value<QObject*>();
    QVERIFY(theme);
    const auto colour = [&](const char* name) {
      const QColor found = theme->property(name).value<QColor>();
      if (!found.isValid()) qFatal("no colour %s", name);
      return found;
    };
    const struct {
      const char* ink;
      const char* ground;
      double least;
    } pairs[] = {{"paper", "ink", 7}, {"mute", "ink", 7},   {"paper", "face", 7},  {"mute", "face", 7},
                 {"ink", "paper", 7}, {"ink", "go", 7},     {"go", "ink", 7},      {"ink", "heldColour", 7},
                 {"line", "ink", 3},  {"active", "ink", 3}, {"active", "face", 3}, {"heldColour", "face", 3},
                 {"go", "bed", 3},    {"go", "face", 3},    {"alarm", "ink", 3},   {"line", "face", 3},
                 {"card", "aid", 3}};
    for (const auto& p : pairs) {
      const double ratio = contrast(colour(p.ink), colour(p.ground));
      QVERIFY2(ratio >= p.least, qPrintable(QStringLiteral("%1 on %2: %3").arg(p.ink, p.ground).arg(ratio)));
    }
  }

  /// What was measured is what is drawn: family, size, place and width of every text item.
  void the_screen_draws_what_was_measured() {
    QQmlEngine engine;
    engine.addImportPath(QStringLiteral(":/qt/qml"));
    QQuickWindow window;
    window.resize(1920, 1080);
    QQmlComponent component(&engine, QUrl(QStringLiteral("qrc:/qt/qml/Floorwheel/wall/WallScreen.qml")));
    QScopedPointer<QObject> made(component.create());
    auto* screen = qobject_cast<QQuickItem*>(made.data());
    QVERIFY2(screen, qPrintable(component.errorString()));
    screen->setParentItem(window.contentItem());
    screen->setSize(QSizeF(1920, 1080));
    auto* view = screen->property("view").value<WallView*>();
    QVERIFY(view);
    for (const Shown& s : states_of({}, "class")) {
      view->show(s.face, {}, QStringLiteral("18:12"));
      QMultiHash<QString, QQuickItem*> drawn;
      std::function<void(QQuickItem*)> walk = [&](QQuickItem* item) {
        if (item->property("label").isValid()) drawn.insert(item->property("label").toString(), item);
        for (QQuickItem* child : item->childItems()) walk(child);
      };
      walk(screen);
      std::vector<WallTextItem> texts = view->items().texts;
      texts.insert(texts.end(), view->items().middle.begin(), view->items().middle.end());
      QCOMPARE(drawn.size(), static_cast<qsizetype>(texts.size()));
      for (const WallTextItem& t : texts) {
        bool found = false;
        for (QQuickItem* item : drawn.values(t.label)) {
          const QFont font = item->property("font").value<QFont>();
          if (font.pixelSize() != wall_pixel_size(t.cap) || item->property("px").toDouble() != t.x) continue;
          found = true;
          QCOMPARE(QFontInfo(font).family(), QStringLiteral("PT Sans Narrow"));
          const double spacing = t.spacing;  // Text counts it after the last letter too
          QVERIFY2(std::abs(item->implicitWidth() - spacing - t.width) < 2.5, qPrintable(t.label));
        }
        QVERIFY2(found, qPrintable(s.name + QStringLiteral(": ") + t.label));
      }
    }
  }
};

QTEST_MAIN(TestWallLegibility)
#include "tst_wall_legibility.moc"
