// SPDX-License-Identifier: GPL-3.0-or-later
// What a change of the floor would buy. Source of what is expected: Kőnig 1916 (the longest list or the
// fullest station's share says how many slots are needed), and the change made by hand and planned by itself.
#include <QTest>

#include "scheduler/rotation/changed_class.h"
#include "tests/support/floors.h"

using namespace floorwheel;
using Kind = Change::Kind;

namespace {

/// Small classes need no more.
WhatIfOptions little() {
  WhatIfOptions options;
  options.plan.effort = 400;
  return options;
}

WhatIf looked_at(const ClassSpec& c) { return std::get<WhatIf>(what_if(c, little())); }

const WhatIfRow& row(const WhatIf& w, Kind kind, const std::string& id = {}) {
  for (const WhatIfRow& r : w.rows)
    if (r.change.kind == kind && r.change.id == id) return r;
  throw std::invalid_argument("no such row");
}

/// Four alternating stations with one place each, and so many members.
ClassSpec four_stations(int members) {
  ClassSpec c;
  c.name = "four";
  for (int s = 0; s < 4; ++s)
    build::station(c, std::string(1, static_cast<char>('A' + s)),
                   {s % 2 == 0 ? Group::chest : Group::quadriceps}, 100 * s, 0);
  for (int m = 0; m < members; ++m) build::member(c, "m" + std::to_string(m));
  return c;
}

}  // namespace

class TestWhatIf : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void one_place_more_at_the_fullest_station_saves_a_slot() {
    // Five people, four stations, one place each but two at B, C and D: A takes five slots, with two places
    // three, and then the longest list says four.
    ClassSpec c = four_stations(5);
    for (int s = 1; s < 4; ++s) c.stations[static_cast<std::size_t>(s)].capacity = 2;
    const WhatIf w = looked_at(c);
    QCOMPARE(w.rows.front().slots, 5);
    QCOMPARE(row(w, Kind::one_more_place, "A").slots, 4);
    QCOMPARE(row(w, Kind::one_more_place, "B").slots, 5);
    // Without A one chest station stands between two for the legs: a fourth slot keeps those apart.
    QCOMPARE(row(w, Kind::left_out, "A").slots, 4);
    QCOMPARE(row(w, Kind::left_out, "A").cost[Component::back_to_back], 0);
    QVERIFY(what_it_buys(w.rows.front(), row(w, Kind::one_more_place, "A")).starts_with("1 slot fewer"));
    QCOMPARE(w.rows.size(), std::size_t{1 + 4 + 4});
  }

  void ways_out_when_people_exceed_places() {
    // Eight people on four places: eight slots, and each waits four of them.
    ClassSpec c = four_stations(8);
    c.length_s = 6 * 60;
    c.slots = 4;
    c.exercises["free-squat"] = build::exercise("free-squat", {Group::glutes});
    c.exercises["chest-two"] = build::exercise("chest-two", {Group::chest});
    const WhatIf w = looked_at(c);
    QCOMPARE(w.people, 8);
    QCOMPARE(w.places, 4);
    QCOMPARE(w.rows.front().cost[Component::missed], 16);

    const WhatIfRow& longer = row(w, Kind::more_slots);
    QCOMPARE(longer.slots, 8);
    QCOMPARE(longer.cost[Component::missed], 0);
    QCOMPARE(longer.class_s, 8 * 60);
    QVERIFY(!longer.fits);
    QCOMPARE(longer.waits_least, 4);
    QCOMPARE(longer.waits_most, 4);

    // The added station shares no group with the others; five places in four slots take 20 of 40 visits.
    const WhatIfRow& station = row(w, Kind::one_more_station, "free-squat");
    QCOMPARE(station.slots, 4);
    QCOMPARE(station.cost[Component::missed], 20);

    const WhatIfRow& shared = row(w, Kind::two_to_a_place);
    QCOMPARE(shared.cost[Component::missed], 0);
    QCOMPARE(shared.slots, 4);

    const WhatIfRow& waves = row(w, Kind::two_waves);
    QCOMPARE(waves.slots, 8);
    QCOMPARE(waves.class_s, 8 * 60);
    QCOMPARE(waves.cost[Component::missed], 0);
    QVERIFY(!waves.fits);
  }

  void a_place_is_shared_only_where_equipment_is_there_twice() {
    ClassSpec c = four_stations(1);
    c.equipment = {{"kettlebell", 3}, {"bench", 1}};
    c.stations[0].equipment = {"kettlebell"};
    c.exercises["do-B"].equipment = {"bench"};
    c.exercises["do-C"].equipment = {"leg-press-machine"};
    QVERIFY(can_share(c, c.stations[0]));
    QVERIFY(!can_share(c, c.stations[1]));
    QVERIFY(!can_share(c, c.stations[2]));
    QVERIFY(can_share(c, c.stations[3]));
    c.stations[0].capacity = 2;
    QVERIFY(!can_share(c, c.stations[0]));
  }

  void waves_keep_those_together_who_belong_together() {
    ClassSpec c = four_stations(7);
    c.pairs = {
        {"m0", "m5", PairRule::together}, {"m5", "m6", PairRule::together}, {"m1", "m2", PairRule::apart}};
    const auto [first, second] = waves_of(c);
    QCOMPARE(first.members.size() + second.members.size(), std::size_t{7});
    QVERIFY(first.members.size() == 3 || first.members.size() == 4);
    QCOMPARE(first.pairs.size() + second.pairs.size(), std::size_t{3});
  }

  void every_row_is_what_planning_the_changed_class_gives() {
    ClassSpec c = floors::hall(3, 12, 5, 5);
    c.slots = 5;
    int judged = 0;
    for (const WhatIfRow& r : looked_at(c).rows) {
      if (r.change.kind == Kind::two_waves || r.change.kind == Kind::more_slots) continue;
      ++judged;
      const auto by_hand = plan(changed(c, r.change), 5, little().plan);
      if (const auto* refusal = std::get_if<Refusal>(&by_hand)) {
        QVERIFY(r.refused);
        QCOMPARE(r.refused->reason, refusal->reason);
        continue;
      }
      QVERIFY(std::get<Plan>(by_hand).cost == r.cost);
      QVERIFY(std::get<Plan>(by_hand).bound == r.bound);
    }
    QVERIFY(judged >= 12);
  }

  void a_station_that_a_list_names_leaves_the_list() {
    ClassSpec c = four_stations(2);
    c.slots = 4;
    c.members[0].required = {"A"};
    const WhatIf w = looked_at(c);
    const WhatIfRow& without = row(w, Kind::left_out, "A");
    QVERIFY(without.refused);
    QCOMPARE(without.refused->rule, 3);
    QVERIFY(!row(w, Kind::left_out, "B").refused);
  }

  void stopping_keeps_the_rows_that_are_done() {
    const ClassSpec c = four_stations(3);
    WhatIfOptions options = little();
    int started = 0;
    options.next = [&](const Change&, int, int) { ++started; };
    options.plan.stop = [&] { return started >= 3; };
    const WhatIf w = std::get<WhatIf>(what_if(c, options));
    QCOMPARE(w.rows.size(), std::size_t{3});
    QCOMPARE(w.left, 6);
  }
};

QTEST_APPLESS_MAIN(TestWhatIf)
#include "tst_what_if.moc"
