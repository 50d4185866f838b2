// SPDX-License-Identifier: GPL-3.0-or-later
// What the wall says in every state, from a class and a moment alone: headline, face, tags, rail, discs, who
// stands where and which letter stands beside whom.
#include <QTest>

#include "kiosk/screens/wall_face.h"
#include "kiosk/screens/wall_items.h"
#include "tests/support/wall_classes.h"

using namespace floorwheel;
using namespace floorwheel::screens;
using support::moment_in;
using support::wall_class;
using support::WallClass;
using wire::Running;
using wire::SegmentKind;

namespace {

WallFace face_in(const wire::ClassView& c, SegmentKind kind, int slot, double in_s,
                 Running state = Running::running) {
  const auto segments = wire::lay_out(c.sheet.timing);
  wire::Moment m = moment_in(segments, kind, slot, in_s);
  m.state = state;
  return wall_face(&c, segments, m, 0);
}

const WallStation& station(const WallFace& f, const QString& letter) {
  for (const WallStation& s : f.stations)
    if (s.letter == letter) return s;
  qFatal("no such station");
}

/// "Robin K.>B" for each person of a station, by '|'.
QString people(const std::vector<WallPerson>& all) {
  QStringList list;
  for (const WallPerson& p : all) list.append(p.alias + QLatin1Char('>') + p.next);
  return list.join(QLatin1Char('|'));
}

}  // namespace

class TestWallFace : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void every_state_has_its_word_face_tags_and_rail_data() {
    QTest::addColumn<int>("kind");
    QTest::addColumn<int>("slot");
    QTest::addColumn<double>("in_s");
    QTest::addColumn<bool>("ring");
    QTest::addColumn<QString>("word");
    QTest::addColumn<bool>("go");
    QTest::addColumn<int>("tags");
    QTest::addColumn<int>("rail");
    QTest::addColumn<int>("tone");
    QTest::addColumn<bool>("filled");
    const auto row = [](const char* name, SegmentKind kind, int slot, double in_s, bool ring,
                        const char* word, bool go, WallTags tags, WallRail rail, WallTone tone, bool filled) {
      QTest::newRow(name) << static_cast<int>(kind) << slot << in_s << ring << QString::fromUtf8(word) << go
                          << static_cast<int>(tags) << static_cast<int>(rail) << static_cast<int>(tone)
                          << filled;
    };
    using K = SegmentKind;
    row("show", K::show, 0, 10, true, "Watch", false, WallTags::none, WallRail::beads, WallTone::active,
        true);
    row("warm-up", K::warm_up, 0, 10, true, "Warm-up", false, WallTags::none, WallRail::beads,
        WallTone::active, false);
    row("lead-in", K::lead_in, 0, 10, true, "First place", true, WallTags::filled, WallRail::sleepers,
        WallTone::go, true);
    row("work, ring", K::work, 4, 10, true, "Work", false, WallTags::none, WallRail::sleepers,
        WallTone::active, true);
    row("work, free", K::work, 4, 10, false, "Work", false, WallTags::outlined, WallRail::sleepers,
        WallTone::active, true);
    row("last five seconds", K::work, 4, 35.001, true, "Work", true, WallTags::outlined, WallRail::sleepers,
        WallTone::active, true);
    row("a moment before", K::work, 4, 34.9, true, "Work", false, WallTags::none, WallRail::sleepers,
        WallTone::active, true);
    row("changeover, ring", K::change, 4, 5, true, "Move one on", true, WallTags::filled, WallRail::chevrons,
        WallTone::go, true);
    row("changeover, free", K::change, 4, 5, false, "Next place", true, WallTags::filled, WallRail::sleepers,
        WallTone::go, true);
    row("lap break", K::pause, 12, 5, true, "Lap break", true, WallTags::outlined, WallRail::beads,
        WallTone::active, false);
    row("last changeover", K::change, 24, 5, true, "Cool-down", false, WallTags::none, WallRail::beads,
        WallTone::active, false);
    row("cool-down", K::cool_down, 0, 5, true, "Cool-down", false, WallTags::none, WallRail::beads,
        WallTone::active, false);
  }
  void every_state_has_its_word_face_tags_and_rail() {
    QFETCH(int, kind);
    QFETCH(int, slot);
    QFETCH(double, in_s);
    QFETCH(bool, ring);
    WallClass w;
    w.ring = ring;
    const WallFace f = face_in(wall_class(w), static_cast<SegmentKind>(kind), slot, in_s);
    QTEST(headline_of(f), "word");
    QTEST(shows_go_face(f), "go");
    QTEST(static_cast<int>(tags_of(f)), "tags");
    QTEST(static_cast<int>(rail_of(f)), "rail");
    QTEST(static_cast<int>(tone_of(f)), "tone");
    QTEST(is_filled(f, 0), "filled");
  }

  void ring_changeover_names_the_next_station() {
    const WallFace f = face_in(wall_class({}), SegmentKind::change, 1, 5);
    QCOMPARE(people(station(f, "A").people), QStringLiteral("Robin K.>B|Ana P.>B"));
    QCOMPARE(people(station(f, "M").people),
             QStringLiteral("Zoë T.>A").replace("Zoë T.", f.stations[11].people[0].alias));
    QVERIFY(f.ring);
    QVERIFY(!f.free_tags);
  }

  void discs_stand_in_the_order_of_the_ring() {
    wire::ClassView c = wall_class({});
    std::swap(c.sheet.ring[3], c.sheet.ring[7]);
    const WallFace f = face_in(c, SegmentKind::work, 1, 5);
    QCOMPARE(f.stations[3].letter, c.stations[7].letter.c_str());
    QCOMPARE(f.stations[7].letter, c.stations[3].letter.c_str());
    QVERIFY(!f.ring);  // this rotation no longer moves one on along that ring
  }

  void waiting_place_makes_next_place() {
    WallClass w;
    w.people = 10;
    w.waiting = 2;
    const WallFace f = face_in(wall_class(w), SegmentKind::change, 2, 5);
    QVERIFY(f.waiting_place);
    QCOMPARE(headline_of(f), QStringLiteral("Next place"));
    QVERIFY(f.free_tags);
    QCOMPARE(f.waiting.size(), std::size_t{1});
    QCOMPARE(f.waiting[0].next, QStringLiteral("A"));  // who waited goes to the first station
  }

  void lead_in_and_break_say_where_the_slot_will_be() {
    const wire::ClassView c = wall_class({});
    QCOMPARE(people(station(face_in(c, SegmentKind::lead_in, 0, 5), "A").people),
             QStringLiteral("Robin K.>A|Ana P.>A"));
    const WallFace f = face_in(c, SegmentKind::pause, 12, 5);
    QCOMPARE(people(station(f, "A").people),
             QStringLiteral("Robin K.>A|Ana P.>A"));  // slot 13 of 12 stations
    QVERIFY(f.lap_ends);
    WallClass w;
    w.break_after = 5;
    QCOMPARE(headline_of(face_in(wall_class(w), SegmentKind::pause, 5, 5)), QStringLiteral("Break"));
  }

  void show_names_the_stations_in_turn() {
    const wire::ClassView c = wall_class({});  // 360 s for 12 stations
    QCOMPARE(face_in(c, SegmentKind::show, 0, 0).shown, 0);
    QCOMPARE(face_in(c, SegmentKind::show, 0, 29.9).shown, 0);
    QCOMPARE(face_in(c, SegmentKind::show, 0, 105).shown, 3);
    QCOMPARE(face_in(c, SegmentKind::show, 0, 359.9).shown, 11);
    const WallFace f = face_in(c, SegmentKind::show, 0, 105);
    QVERIFY(is_filled(f, 3));
    QVERIFY(!is_filled(f, 2));
    QCOMPARE(f.then, WallState::warm_up);
  }

  void held_keeps_the_face_it_stopped_in() {
    const wire::ClassView c = wall_class({});
    const WallFace work = face_in(c, SegmentKind::work, 4, 10, Running::held);
    QCOMPARE(headline_of(work), QStringLiteral("Held"));
    QCOMPARE(work.state, WallState::work);
    QCOMPARE(tone_of(work), WallTone::held);
    QVERIFY(shows_go_face(face_in(c, SegmentKind::change, 4, 10, Running::held)));
    QVERIFY(!work.power_cut);
  }

  void power_cut_is_held_and_says_so() {
    wire::ClassView c = wall_class({});
    c.clock.power_cut = true;
    QVERIFY(face_in(c, SegmentKind::work, 4, 10, Running::held).power_cut);
    QVERIFY(!face_in(c, SegmentKind::work, 4, 10).power_cut);
  }

  void stopped_shows_no_class() {
    const WallFace f = face_in(wall_class({}), SegmentKind::work, 4, 10, Running::stopped);
    QCOMPARE(f.state, WallState::stopped);
    QCOMPARE(headline_of(f), QStringLiteral("Stop and help"));
    QVERIFY(f.stations.empty());
  }

  void closed_station_is_empty_and_stepped_over() {
    wire::ClassView c = wall_class({});
    c.stations[1].closed.push_back({1, SlotRange::to_the_end});
    for (std::size_t m = 0; m < c.sheet.rows.size(); ++m) {
      // whoever would be at B is at C
      for (std::string& s : c.sheet.rows[m].stations)
        if (s == c.stations[1].id) s = c.stations[2].id;
    }
    const WallFace f = face_in(c, SegmentKind::change, 1, 5);
    QVERIFY(station(f, "B").closed);
    QVERIFY(!is_filled(f, 1));
    QCOMPARE(station(f, "A").people[0].next, QStringLiteral("C"));
  }

  void closure_from_a_later_slot_is_not_yet_shown() {
    wire::ClassView c = wall_class({});
    c.stations[1].closed.push_back({6, SlotRange::to_the_end});
    QVERIFY(!station(face_in(c, SegmentKind::work, 5, 5), "B").closed);
    QVERIFY(station(face_in(c, SegmentKind::work, 6, 5), "B").closed);
  }

  void latecomer_waits_at_w_until_the_changeover() {
    wire::ClassView c = wall_class({});
    c.members.back().present.first = 6;
    for (int t = 0; t < 5; ++t) c.sheet.rows.back().stations[static_cast<std::size_t>(t)].clear();
    QVERIFY(!face_in(c, SegmentKind::work, 3, 5).waiting_place);
    const WallFace f = face_in(c, SegmentKind::change, 5, 5);
    QVERIFY(f.waiting_place);
    QCOMPARE(f.waiting.size(), std::size_t{1});
    QVERIFY(!f.waiting[0].next.isEmpty());
  }

  void leaver_is_gone() {
    wire::ClassView c = wall_class({});
    c.members[0].present.last = 4;
    for (std::size_t t = 4; t < 24; ++t) c.sheet.rows[0].stations[t].clear();
    const WallFace last = face_in(c, SegmentKind::change, 4, 5);
    QVERIFY(!last.waiting_place);
    QCOMPARE(people(station(last, "D").people), QStringLiteral("Robin K.>|Ana P.>E"));
    for (const WallStation& s : face_in(c, SegmentKind::work, 5, 5).stations)
      for (const WallPerson& p : s.people) QVERIFY(p.alias != QStringLiteral("Robin K."));
  }

  void before_a_run_sheet_who_is_in() {
    wire::ClassView c = wall_class({});
    c.sheet = {};
    c.members[1].here = false;
    const WallFace f = wall_face(&c, {}, {}, 0);
    QCOMPARE(f.state, WallState::gather);
    QCOMPARE(f.here.size(), std::size_t{19});
    QCOMPARE(f.start, QStringLiteral("18:30"));
    QCOMPARE(f.class_name, QStringLiteral("Thursday evening ring"));
  }

  void published_shows_first_places_not_yet() {
    const wire::ClassView c = wall_class({});
    const WallFace f = wall_face(&c, wire::lay_out(c.sheet.timing), {}, 0);
    QCOMPARE(f.state, WallState::ready);
    QCOMPARE(tags_of(f), WallTags::outlined);
    QVERIFY(!is_filled(f, 0));
    QCOMPARE(people(station(f, "A").people), QStringLiteral("Robin K.>A|Ana P.>A"));
  }

  void no_class_and_past_the_end() {
    QCOMPARE(wall_face(nullptr, {}, {}, 0).state, WallState::nobody);
    const wire::ClassView c = wall_class({});
    wire::Moment m;
    m.state = Running::running;
    m.past_end = true;
    QCOMPARE(wall_face(&c, wire::lay_out(c.sheet.timing), m, 0).state, WallState::past_end);
    m.state = Running::over;
    QCOMPARE(wall_face(&c, wire::lay_out(c.sheet.timing), m, 0).state, WallState::nobody);
  }

  void hand_goes_round_once_a_segment() {
    const wire::ClassView c = wall_class({});
    QCOMPARE(face_in(c, SegmentKind::work, 1, 0).hand, 0.0);
    QCOMPARE(face_in(c, SegmentKind::work, 1, 10).hand, 90.0);
    QCOMPARE(face_in(c, SegmentKind::change, 1, 5).hand, 90.0);
  }
};

QTEST_GUILESS_MAIN(TestWallFace)
#include "tst_wall_face.moc"
