// SPDX-License-Identifier: GPL-3.0-or-later
// The wall's geometry for 4 to 16 stations and 1 to 24 people, all faces and random classes: nothing
// overlaps or leaves the wall, rows keep their pitch, leaders touch no disc. The judging is written here
// from the look's words alone (its own distances, no helper of the layout), and each judge is shown a broken
// layout that it must refuse.
#include <QTest>
#include <algorithm>
#include <cmath>
#include <map>
#include <random>
#include <set>

#include "kiosk/screens/wheel_layout.h"

using namespace floorwheel::screens;

namespace {

constexpr double pi = 3.14159265358979323846;

// --- the judges: each returns what is wrong, or ""
using Complaint = QString;

double gap_between(const WheelRect& a, const WheelRect& b) {
  const double dx = std::max({a.x - (b.x + b.w), b.x - (a.x + a.w), 0.0});
  const double dy = std::max({a.y - (b.y + b.h), b.y - (a.y + a.h), 0.0});
  return std::hypot(dx, dy);
}
double rect_to_point(double x0, double y0, double x1, double y1, WheelPoint p) {
  return std::hypot(std::max({x0 - p.x, p.x - x1, 0.0}), std::max({y0 - p.y, p.y - y1, 0.0}));
}
/// Least distance of a poly-line to a point, by walking along it in steps of one.
double walk(const WheelLine& line, WheelPoint p) {
  double least = 1e9;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double length = std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
    const int steps = std::max(1, static_cast<int>(length));
    for (int k = 0; k <= steps; ++k) {
      const double t = static_cast<double>(k) / steps;
      least = std::min(least, std::hypot(line[i - 1].x + t * (line[i].x - line[i - 1].x) - p.x,
                                         line[i - 1].y + t * (line[i].y - line[i - 1].y) - p.y));
    }
  }
  return least;
}
bool walks_into(const WheelLine& line, const WheelRect& r) {
  for (std::size_t i = 1; i < line.size(); ++i)
    for (int k = 0; k <= 500; ++k) {
      const double t = k / 500.0;
      const double x = line[i - 1].x + t * (line[i].x - line[i - 1].x);
      const double y = line[i - 1].y + t * (line[i].y - line[i - 1].y);
      if (x > r.x && x < r.right() && y > r.y && y < r.bottom()) return true;
    }
  return false;
}

Complaint judge_discs(const WheelLayout& l) {
  for (const WheelDisc& d : l.discs) {
    if (std::abs(std::hypot(d.centre.x - 960, d.centre.y - 624) - 394) > 0.01) return "disc off the rail";
    if (rect_to_point(960 - 271, 624 - 213, 960 + 271, 624 + 213, d.centre) - 49 < 4)
      return "disc nearer than 4 px to the clock's ink";
    if (rect_to_point(957, 203, 963, 257, d.centre) - 49 < 4) return "disc nearer than 4 px to the gate";
    if (d.centre.y + 49 > 1080) return "disc below the wall";
  }
  for (std::size_t i = 0; i < l.discs.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (std::hypot(l.discs[i].centre.x - l.discs[j].centre.x, l.discs[i].centre.y - l.discs[j].centre.y) <
          2 * (49 + 6))
        return "discs touch";
  return {};
}

Complaint judge_boxes(const WheelLayout& l) {
  for (std::size_t i = 0; i < l.boxes.size(); ++i) {
    const WheelBox& b = l.boxes[i];
    const WheelRect& r = b.rect;
    if (r.y < 12 - 0.01 || r.bottom() > 1068 + 0.01) return "box outside its column";
    if (r.x < 14 - 0.01 || r.right() > 1906.01) return "box outside the wall";
    if (b.left ? r.right() > 490.01 : r.x < 1429.99) return "box under the wheel";
    for (std::size_t j = 0; j < i; ++j)
      if (l.boxes[j].left == b.left && gap_between(l.boxes[j].rect, r) <= 0 &&
          std::min(l.boxes[j].rect.bottom(), r.bottom()) - std::max(l.boxes[j].rect.y, r.y) > 0.01)
        return "boxes overlap";
    if (!b.bracket.empty() && (b.bracket.front().y < r.y || b.bracket.back().y > r.bottom() ||
                               b.bracket.front().y >= b.bracket.back().y))
      return "bracket leaves its box";
  }
  return {};
}

/// Capitals 71 or 44 (exercise 43); a descender is 0.205 em, an em is caps / 0.7. At twelve rows a descender
/// reaches 4 px into the next row's capitals, in which no two letters were found to touch.
Complaint judge_rows(const WheelLayout& l, WheelFace face) {
  for (bool left : {false, true}) {
    double foot_above = -1e9;
    for (const WheelBox& b : l.boxes) {
      if (b.left != left) continue;
      for (const WheelRow& r : b.rows) {
        const double caps = r.what == WheelRow::What::name ? 43 : face == WheelFace::go ? 71 : 44;
        const double top = r.baseline - caps;
        if (top < b.rect.y - 0.01) return "row above its box";
        if (r.baseline > b.rect.bottom()) return "row below its box";
        if (foot_above > top + 4.01) return "rows run into each other";
        foot_above = r.baseline + 0.205 * caps / 0.7;
      }
    }
    if (foot_above > 1080) return "row below the wall";
  }
  for (const WheelBox& b : l.boxes) {
    const double least = face == WheelFace::go ? 88 : 56;
    for (std::size_t i = 1; i < b.rows.size(); ++i)
      if (b.rows[i].baseline - b.rows[i - 1].baseline < least - 0.01) return "rows closer than their pitch";
    for (std::size_t i = 0; i < b.tags.size(); ++i) {
      const WheelRect& t = b.tags[i].rect;
      const double edge = face == WheelFace::go ? 3 : 2.5;  // half its stroke
      if (t.y - edge < b.rect.y - 0.01 || t.bottom() + edge > b.rect.bottom() + 0.01)
        return "tag leaves its box";
      for (std::size_t j = 0; j < i; ++j)
        if (b.tags[j].rect.y < t.bottom() && t.y < b.tags[j].rect.bottom()) return "tags overlap";
    }
  }
  return {};
}

Complaint judge_leaders(const WheelLayout& l, bool plate) {
  for (const WheelBox& b : l.boxes) {
    if (b.leader.size() < 2) return "box without a leader";
    for (WheelPoint p : b.leader)
      if (p.x < 500 || p.x > 1420 || p.y < 0 || p.y > 1080) return "leader leaves the middle of the wall";
    for (std::size_t i = 0; i < l.discs.size(); ++i) {
      const double d = walk(b.leader, l.discs[i].centre);
      if (static_cast<int>(i) == b.station) {
        const WheelPoint e = b.leader.back();
        const double end = std::hypot(e.x - l.discs[i].centre.x, e.y - l.discs[i].centre.y);
        if (end > 49 + 14 || end < 49) return "leader does not end at its disc";
      } else if (d < 49 + 2) {
        return "leader through another disc";
      }
    }
    if (plate && b.station >= 0 && walks_into(b.leader, {544, 966, 92, 92}))
      return "leader through the plate";
    if (b.station < 0 && walk({b.leader.back(), {590, 1012}}, b.leader.back()) > 0.1) return "no end at W";
  }
  return {};
}

Complaint judge(const WheelLayout& l, const WheelAsk& ask) {
  for (const Complaint& c :
       {judge_discs(l), judge_boxes(l), judge_rows(l, ask.face), judge_leaders(l, ask.waiting_place)})
    if (!c.isEmpty()) return c;
  if (ask.waiting_place)
    for (const WheelDisc& d : l.discs)
      if (rect_to_point(541, 963, 639, 1061, d.centre) < 49) return "disc on the W plate";
  return {};
}

std::vector<WheelStation> spread(int stations, int people) {
  std::vector<WheelStation> all(static_cast<std::size_t>(stations));
  for (int p = 0; p < people && stations > 0; ++p) ++all[static_cast<std::size_t>(p % stations)].people;
  for (WheelStation& s : all) s.joined_lines = (s.people + 1) / 2;
  return all;
}

QString what_of(const WheelAsk& a) {
  QString text = QStringLiteral("%1 stations, face %2, tag a row %3, waiting %4:")
                     .arg(a.stations.size())
                     .arg(a.face == WheelFace::go ? "go" : "near")
                     .arg(a.tag_a_row)
                     .arg(a.waiting_place ? a.waiting.people : -1);
  for (const WheelStation& s : a.stations) {
    text += QStringLiteral(" %1").arg(s.people);
    for (int lines : s.go_lines) text += QStringLiteral("'").repeated(lines - 1);
    if (s.closed) text += QStringLiteral("(closed)");
  }
  return text;
}

/// Every page of a layout is judged, and together they show every person once a page cycle.
void holds(WheelAsk ask) {
  const int pages = lay_out_wheel(ask).pages;
  std::map<int, std::set<int>> shown;
  for (ask.page = 0; ask.page < pages; ++ask.page) {
    const WheelLayout l = lay_out_wheel(ask);
    QCOMPARE(l.pages, pages);
    QVERIFY2(l.every_leader_clear, qPrintable(what_of(ask) + QStringLiteral(" page %1").arg(ask.page)));
    const Complaint c = judge(l, ask);
    QVERIFY2(c.isEmpty(), qPrintable(c + QStringLiteral(" | ") + what_of(ask)));
    for (const WheelBox& b : l.boxes)
      for (int p = 0; p < std::max(1, b.people); ++p) shown[b.station].insert(b.first_person + p);
  }
  for (std::size_t i = 0; i < ask.stations.size(); ++i) {
    const int people = ask.stations[i].closed ? 0 : ask.stations[i].people;
    QCOMPARE(static_cast<int>(shown[static_cast<int>(i)].size()), std::max(1, people));
  }
  if (ask.waiting_place) QCOMPARE(static_cast<int>(shown[-1].size()), std::max(1, ask.waiting.people));
}

void every_face(WheelAsk ask) {
  for (bool a_row : {false, true}) {
    ask.face = WheelFace::go;
    ask.tag_a_row = a_row;
    holds(ask);
    ask.face = WheelFace::near;
    ask.small_tags = a_row;
    holds(ask);
  }
}

}  // namespace

class TestWheelLayout : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  // --- numbers of the look
  void phi_is_the_nearest_clear_step() {
    for (int n = 4; n <= 16; ++n) {
      const auto clear = [n](double phi) {
        for (int i = 0; i < n; ++i) {
          const double a = (i + phi) * 2 * pi / n;
          const WheelPoint p{960 + 394 * std::sin(a), 624 - 394 * std::cos(a)};
          if (rect_to_point(960 - 271, 624 - 213, 960 + 271, 624 + 213, p) - 49 < 4) return false;
          if (rect_to_point(957, 203, 963, 257, p) - 49 < 4) return false;
        }
        return true;
      };
      const double phi = wheel_phi(n);
      QVERIFY2(clear(phi), qPrintable(QString::number(n)));
      for (int step = 0; step < std::lround(std::abs(phi - 0.5) * 100); ++step)
        for (int sign : {-1, 1}) QVERIFY2(!clear(0.5 + sign * step / 100.0), "a nearer step would do");
    }
    QCOMPARE(wheel_phi(7), 0.57);
    QCOMPARE(wheel_phi(10), 0.35);
    QCOMPARE(wheel_phi(11), 0.32);
    QCOMPARE(wheel_phi(12), 0.5);
  }

  void twelve_stations_stand_as_drawn() {
    WheelAsk ask;
    ask.stations = spread(12, 20);
    const WheelLayout l = lay_out_wheel(ask);
    QCOMPARE(l.chevrons, 3);
    QCOMPARE(l.discs[0].angle, 15.0);
    QVERIFY(std::abs(l.discs[0].centre.x - 1061.97) < 0.01);
    QVERIFY(std::abs(l.discs[0].centre.y - 243.42) < 0.01);
    QCOMPARE(l.boxes.size(), std::size_t{12});
    // right 0..5 from the top, left the rest from the bottom
    QCOMPARE(l.boxes[0].station, 0);
    QCOMPARE(l.boxes[5].station, 5);
    QCOMPARE(l.boxes[6].station, 11);
    QCOMPARE(l.boxes[11].station, 6);
    for (int i = 0; i < 12; ++i) {
      QCOMPARE(l.boxes[static_cast<std::size_t>(i)].rect.h, 176.0);  // equal boxes
      QCOMPARE(l.boxes[static_cast<std::size_t>(i)].rect.y, 12 + 176.0 * (i % 6));
      QCOMPARE(l.boxes[static_cast<std::size_t>(i)].pitch, 61.0);
    }
    QCOMPARE(l.boxes[0].bracket.front().x, 1416.0);
    QCOMPARE(l.boxes[11].bracket.front().x, 504.0);
  }

  void chevrons_in_a_gap() {
    const std::pair<int, int> wanted[] = {{4, 3}, {12, 3}, {13, 2}, {14, 2}, {16, 1}};
    for (auto [n, k] : wanted) {
      WheelAsk ask;
      ask.stations = spread(n, n);
      QCOMPARE(lay_out_wheel(ask).chevrons, k);
    }
  }

  void go_face_as_drawn() {
    WheelAsk ask;
    ask.face = WheelFace::go;
    ask.stations.resize(12);
    const int people[12] = {2, 2, 1, 2, 2, 1, 2, 2, 1, 2, 2, 1};
    for (int i = 0; i < 12; ++i) ask.stations[static_cast<std::size_t>(i)].people = people[i];
    const WheelLayout l = lay_out_wheel(ask);
    QCOMPARE(l.boxes[0].pitch, 104.0);
    QCOMPARE(l.boxes[0].tags.size(), std::size_t{1});  // one tag over both rows
    QCOMPARE(l.boxes[0].tags[0].rect.x, 1806.0);
    QCOMPARE(l.boxes[6].tags[0].rect.x, 390.0);
    QVERIFY(std::abs(l.boxes[0].tags[0].rect.y - 22.33) < 0.01);
    QVERIFY(std::abs(l.boxes[0].tags[0].rect.h - 190) < 0.01);
    ask.tag_a_row = true;
    QCOMPARE(lay_out_wheel(ask).boxes[0].tags.size(), std::size_t{2});
    // the last box of the left column begins above y 150 and goes round the headline by (14, 192)
    const WheelLine& round = l.boxes[6].leader;
    QCOMPARE(round.size(), std::size_t{4});
    QCOMPARE(round[2], (WheelPoint{518, 192}));
  }

  void twelve_rows_a_side_at_88_then_pages() {
    WheelAsk ask;
    ask.face = WheelFace::go;
    ask.stations = spread(8, 24);  // 3 each: 12 rows a side
    WheelLayout l = lay_out_wheel(ask);
    QCOMPARE(l.pages, 1);
    QCOMPARE(l.boxes[0].pitch, 88.0);
    ask.stations[0].people = 4;
    l = lay_out_wheel(ask);
    QCOMPARE(l.pages, 2);
    // a page holds whole stations
    for (int page = 0; page < 2; ++page) {
      ask.page = page;
      for (const WheelBox& b : lay_out_wheel(ask).boxes)
        QCOMPARE(b.people, ask.stations[static_cast<std::size_t>(b.station)].people);
    }
  }

  void small_tags_only_where_a_box_has_room() {
    WheelAsk ask;
    ask.small_tags = true;
    ask.stations = spread(12, 24);
    QVERIFY(lay_out_wheel(ask).boxes[0].tagged);  // 56 * 3 = 168 <= 176
    QCOMPARE(lay_out_wheel(ask).boxes[0].tags.size(), std::size_t{2});
    QCOMPARE(lay_out_wheel(ask).boxes[0].pitch, 56.0);
    ask.stations = spread(14, 28);
    QVERIFY(!lay_out_wheel(ask).boxes[0].tagged);  // 1056 / 7 = 151
    QVERIFY(lay_out_wheel(ask).boxes[0].tags.empty());
  }

  void nobody_there_is_an_exercise_alone() {
    WheelAsk ask;
    ask.stations = spread(12, 0);
    for (const WheelBox& b : lay_out_wheel(ask).boxes) {
      QCOMPARE(b.rows.size(), std::size_t{1});
      QVERIFY(b.rows[0].what == WheelRow::What::name);
    }
  }

  void waiting_place_is_the_last_of_the_left_column() {
    WheelAsk ask;
    ask.face = WheelFace::go;
    ask.tag_a_row = true;
    ask.stations = spread(12, 12);
    ask.waiting_place = true;
    ask.waiting.people = 2;
    const WheelLayout l = lay_out_wheel(ask);
    QCOMPARE(l.boxes.back().station, -1);
    QVERIFY(l.boxes.back().left);
    QCOMPARE(l.boxes.back().tags.size(), std::size_t{2});
    QCOMPARE(l.boxes.size(), std::size_t{13});
  }

  void closed_station_has_neither_people_nor_bracket() {
    WheelAsk ask;
    ask.face = WheelFace::go;
    ask.stations = spread(12, 24);
    ask.stations[3].closed = true;
    const WheelLayout l = lay_out_wheel(ask);
    QCOMPARE(l.boxes[3].people, 0);
    QVERIFY(l.boxes[3].bracket.empty());
    QVERIFY(l.boxes[3].tags.empty());
    holds(ask);
  }

  // --- what must hold for every class
  void all_sizes() {
    for (int n = 4; n <= 16; ++n)
      for (int people = 1; people <= 24; ++people) {
        WheelAsk ask;
        ask.stations = spread(n, people);
        every_face(ask);
        if (QTest::currentTestFailed()) return;
      }
  }

  void random_classes() {
    std::mt19937 chance(20261125);
    const auto below = [&](unsigned n) { return static_cast<int>(chance() % n); };
    int leaders = 0;
    for (int round = 0; round < 600; ++round) {
      WheelAsk ask;
      ask.stations.resize(static_cast<std::size_t>(4 + below(13)));
      ask.waiting_place = below(2) == 0;
      const int people = 1 + below(24);
      for (int p = 0; p < people; ++p) {
        const int at = below(static_cast<unsigned>(ask.stations.size() + 1));
        WheelStation& s = at == 0 ? (ask.waiting_place ? ask.waiting : ask.stations[0])
                                  : ask.stations[static_cast<std::size_t>(at - 1)];
        ++s.people;
        s.go_lines.push_back(below(8) == 0 ? 2 : 1);
        s.tag_lines.push_back(below(12) == 0 ? 2 : 1);
      }
      for (WheelStation& s : ask.stations) {
        s.joined_lines = s.people == 0 ? 0 : (s.people + below(2) + 1) / 2;
        s.name_lines = 1 + (below(9) == 0 ? 1 : 0);
        s.closed = below(15) == 0;
      }
      ask.waiting.joined_lines = (ask.waiting.people + 1) / 2;
      every_face(ask);
      if (QTest::currentTestFailed()) return;
      leaders += 4 * static_cast<int>(ask.stations.size());
    }
    qInfo("%d leaders of random classes judged", leaders);
    QVERIFY(leaders > 5055);
  }

  void fewer_than_four_and_more_than_sixteen_are_still_laid_out() {
    for (int n : {0, 1, 2, 3, 17, 21, 30}) {
      WheelAsk ask;
      ask.stations = spread(n, 12);
      const WheelLayout l = lay_out_wheel(ask);
      QCOMPARE(static_cast<int>(l.discs.size()), n);
      QVERIFY(judge_boxes(l).isEmpty());
    }
  }

  // --- the judges refuse what is wrong
  void judges_refuse_wrong_twins() {
    WheelAsk ask;
    ask.face = WheelFace::go;
    ask.stations = spread(12, 20);
    const WheelLayout good = lay_out_wheel(ask);
    QVERIFY(judge(good, ask).isEmpty());

    WheelLayout l = good;
    l.discs[2].centre = wheel_point(90, wheel::rail - 100);
    QCOMPARE(judge_discs(l), QStringLiteral("disc off the rail"));
    l = good;
    l.discs[0].centre = wheel_point(3, wheel::rail);
    QCOMPARE(judge_discs(l), QStringLiteral("disc nearer than 4 px to the gate"));
    l = good;
    l.discs[2].centre = wheel_point(102, wheel::rail);
    QCOMPARE(judge_discs(l), QStringLiteral("discs touch"));
    l = good;
    l.boxes[1].rect.y -= 20;
    QCOMPARE(judge_boxes(l), QStringLiteral("boxes overlap"));
    l = good;
    l.boxes[11].rect.y += 60;
    QCOMPARE(judge_boxes(l), QStringLiteral("box outside its column"));
    l = good;
    l.boxes[0].rows[0].baseline += 10;
    QCOMPARE(judge_rows(l, ask.face), QStringLiteral("rows run into each other"));
    l = good;
    l.boxes[0].rows[0].baseline += 0.1;
    QCOMPARE(judge_rows(l, ask.face), QStringLiteral("rows closer than their pitch"));
    l = good;
    for (WheelRow& r : l.boxes[1].rows) r.baseline -= 40;
    QVERIFY(!judge_rows(l, ask.face).isEmpty());
    l = good;
    l.boxes[0].tags[0].rect.y -= 30;
    QCOMPARE(judge_rows(l, ask.face), QStringLiteral("tag leaves its box"));
    l = good;
    std::swap(l.boxes[0].leader, l.boxes[3].leader);
    QCOMPARE(judge_leaders(l, false), QStringLiteral("leader does not end at its disc"));
    l = good;
    l.boxes[2].leader = {{1416, 500}, l.discs[3].centre, l.boxes[2].leader.back()};
    QCOMPARE(judge_leaders(l, false), QStringLiteral("leader through another disc"));
    l = good;
    l.boxes[11].leader = {{504, 1012}, {650, 1012}, l.boxes[11].leader.back()};
    QCOMPARE(judge_leaders(l, true), QStringLiteral("leader through the plate"));
  }
};

QTEST_APPLESS_MAIN(TestWheelLayout)
#include "tst_wheel_layout.moc"
