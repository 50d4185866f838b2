// SPDX-License-Identifier: GPL-3.0-or-later
// The fold of journal rows into the hall: by kind, in order, once; and that a screen knows only what its
// audience's words gave it.
#include <QtTest>

#include "kiosk/wire/hall.h"
#include "kiosk/wire/kinds.h"

using namespace floorwheel;
using namespace floorwheel::wire;

namespace {

const std::string stations = R"([{"id":"A","letter":"A","exercise":"squat","capacity":2,"x_cm":100,"y_cm":250,
  "offers_hg":[80,120],"reps":12,"rir":2,"hold":false,"closed_now":false,"closed":[[3,3],[7]]},
  {"id":"B","letter":"B","exercise":"row","capacity":1,"x_cm":400,"y_cm":250,"offers_hg":[],"reps":10,"rir":2,
  "hold":false,"closed_now":false,"closed":[]}])";
const std::string sheet =
    R"({"version":1,"at_slot":0,"style":"ring","ring":["A","B"],"timing":{"slots":2,"laps":1,"work_s":40,
  "change_s":20,"show_s":0,"warm_up_s":0,"lead_in_s":10,"cool_down_s":0,"breaks":[]},
  "rows":[{"member":"m1","stations":["A","B"]},{"member":"G1","stations":["B",null]}],"stations":)" +
    stations + "}";
const std::string teacher_words = R"({"exercise_names":{"squat":"Goblet squat","row":"Seated row"},
  "loads_hg":{"m1":{"A":160}},"exercises":{"m1":{"A":"box-squat"}},"cost":{"missed":1,"idle":1},
  "bound":{"missed":1},"proven":["missed","uneven"],"reasons":["B has one place."],"change":"First sheet."})";

class Journal {
 public:
  Row add(std::string kind, std::string body, std::string words = "{}") {
    ++seq_;
    return {.seq = seq_,
            .at_ms = 1000 * seq_,
            .civil_ms = 1'000'000 + seq_,
            .kind = std::move(kind),
            .body = std::move(body),
            .words = std::move(words)};
  }

 private:
  std::int64_t seq_ = 0;
};

Hall hall_with_class(Journal& j) {
  Hall h;
  fold(h,
       j.add("class.add",
             R"({"class":"c","start":"2026-03-05T18:30:00+01:00","length_s":3600,"timing":{"slots":2,"laps":1,
      "work_s":40,"change_s":20},"members":[{"member":"m1","level":"advanced"},{"member":"m2","level":"novice"}],
      "guests":["G1"],"stations":)" +
                 stations + "}",
             R"({"name":"Evening","aliases":{"m1":"Robin K.","m2":"Sam L."},
      "exercise_names":{"squat":"Goblet squat"}})"));
  fold(h, j.add("class.open", R"({"class":"c"})"));
  return h;
}

}  // namespace

class TestHall : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void a_class_added_and_opened_is_the_current_one() {
    Journal j;
    const Hall h = hall_with_class(j);
    const ClassView* c = current_class(h);
    QVERIFY(c);
    QCOMPARE(c->name, std::string("Evening"));
    QCOMPARE(c->length_s, 3600);
    QVERIFY(c->open);
    QCOMPARE(c->members.size(), std::size_t{3});
    QCOMPARE(find_member(*c, "m1")->shown_as, std::string("Robin K."));
    QCOMPARE(find_member(*c, "m1")->level, Level::advanced);
    QVERIFY(find_member(*c, "m1")->expected);
    QVERIFY(!find_member(*c, "m1")->here);
    QVERIFY(find_member(*c, "G1")->guest);
    const StationView* a = find_station(*c, "A");
    QCOMPARE(a->exercise_name, std::string("Goblet squat"));
    QCOMPARE(find_station(*c, "B")->exercise_name, std::string("row"));  // no name was given: the id
    QCOMPARE(a->x_cm, 100);
    QCOMPARE(a->offers_hg, (std::vector<int>{80, 120}));
    QCOMPARE(a->closed, (std::vector<SlotRange>{{.first = 3, .last = 3}, {.first = 7}}));
    QVERIFY(!find_station(*c, "Z"));
    QVERIFY(!find_member(*c, "m9"));
  }

  void a_row_folds_once_and_an_unknown_kind_moves_the_number_only() {
    Journal j;
    Hall h = hall_with_class(j);
    const Row in = j.add("check_in", R"({"class":"c","member":"m1","level":"advanced","expected":true})");
    fold(h, in);
    const Hall once = h;
    fold(h, in);
    QVERIFY(h == once);
    fold(h, j.add("some.later.kind", R"({"class":"c"})"));
    QCOMPARE(h.reached, in.seq + 1);
    Hall moved = once;
    moved.reached = h.reached;
    QVERIFY(h == moved);
  }

  void people_come_go_back_and_are_counted() {
    Journal j;
    Hall h = hall_with_class(j);
    const ClassView& c = h.classes["c"];
    fold(h, j.add("check_in", R"({"class":"c","member":"m1","level":"advanced","expected":true})"));
    QVERIFY(find_member(c, "m1")->here);
    QCOMPARE(find_member(c, "m1")->here_at_ms, std::int64_t{1'000'003});
    fold(h, j.add("check_in", R"({"class":"c","member":"m7","level":"intermediate","expected":false})",
                  R"({"shown_as":"Kim W."})"));
    QCOMPARE(find_member(c, "m7")->shown_as, std::string("Kim W."));
    QVERIFY(!find_member(c, "m7")->expected);
    fold(h, j.add("check_in.undo", R"({"class":"c","member":"m7"})"));
    QVERIFY(!find_member(c, "m7"));
    fold(h, j.add("check_in.undo", R"({"class":"c","member":"m1"})"));
    QVERIFY(find_member(c, "m1"));
    QVERIFY(!find_member(c, "m1")->here);
    fold(h, j.add("heads.count", R"({"class":"c","here":["m2"],"guests":["G1","G2"]})"));
    QVERIFY(c.heads_counted);
    QVERIFY(find_member(c, "m2")->here);
    QVERIFY(!find_member(c, "m1")->here);
    QVERIFY(find_member(c, "G2")->guest && find_member(c, "G2")->here);
    fold(h, j.add("heads.count", R"({"class":"c","here":["m1"],"guests":[]})"));
    QVERIFY(!find_member(c, "G1") && !find_member(c, "G2"));
    QVERIFY(find_member(c, "m1")->here && !find_member(c, "m2")->here);
  }

  void answers_of_today_are_known_only_where_the_row_arrives() {
    Journal j;
    Hall h = hall_with_class(j);
    fold(h,
         j.add("answer.today", R"({"class":"c","member":"m1"})", R"({"answer":"hurts","spot":"shoulders"})"));
    QCOMPARE(find_member(h.classes["c"], "m1")->today->spot, std::string("shoulders"));
    QVERIFY(!find_member(h.classes["c"], "m2")->today);
  }

  void a_sheet_is_published_started_and_walked_through() {
    Journal j;
    Hall h = hall_with_class(j);
    const ClassView& c = h.classes["c"];
    fold(h, j.add("class.publish", R"({"class":"c","sheet":)" + sheet + "}", teacher_words));
    QCOMPARE(c.sheet.version, 1);
    QCOMPARE(c.sheet.style, Style::ring);
    QCOMPARE(c.sheet.cost[Component::missed], std::int64_t{1});
    QCOMPARE(c.sheet.proven, 2);
    QCOMPARE(c.last_change, std::string("First sheet."));
    QCOMPARE(station_of(c, "m1", 2), std::string("B"));
    QCOMPARE(station_of(c, "G1", 2), std::string());
    QCOMPARE(station_of(c, "m1", 3), std::string());
    QCOMPARE(find_member(c, "m1")->loads_hg.at("A"), 160);
    QCOMPARE(find_member(c, "m1")->exercises.at("A"), std::string("box-squat"));
    const Row start = j.add("class.start", R"({"class":"c","version":1})");
    fold(h, start);
    QCOMPARE(c.clock.state, Running::running);
    QCOMPARE(moment_at(c.clock, start.at_ms + 12'000).segment, 1);  // lead-in 10 s, then work 1
    fold(h, j.add("class.hold", R"({"class":"c"})"));
    QCOMPARE(c.clock.state, Running::held);
    fold(h, j.add("class.resume", R"({"class":"c"})"));
    const Row skip = j.add("class.skip", R"({"class":"c","segment":0})");
    fold(h, skip);
    QCOMPARE(moment_at(c.clock, skip.at_ms).segment, 1);
    fold(h, j.add("class.skip", R"({"class":"c","segment":0})"));  // the second tap on the same one
    QCOMPARE(moment_at(c.clock, skip.at_ms).segment, 1);
    fold(h, j.add("class.more_time", R"({"class":"c","s":30})"));
    QCOMPARE(c.clock.segments[1].length_ms, std::int64_t{70'000});
    fold(h, j.add("class.repeat", R"({"class":"c"})"));
    fold(h, j.add("class.stop", R"({"class":"c"})"));
    QCOMPARE(c.clock.state, Running::stopped);
    fold(h, j.add("class.over", R"({"class":"c"})"));
    QCOMPARE(c.clock.state, Running::held);
    fold(h, j.add("class.hold", R"({"class":"c","power_cut":true,"elapsed_ms":11000})"));
    QVERIFY(c.clock.power_cut);
    QCOMPARE(moment_at(c.clock, 0).elapsed_ms, std::int64_t{11'000});
    fold(h, j.add("class.end", R"({"class":"c"})"));
    QCOMPARE(c.clock.state, Running::over);
    QVERIFY(!current_class(h));
    QVERIFY(!c.open);
  }

  void a_wall_that_gets_no_words_for_it_knows_no_cost_reason_load_or_substitute() {
    Journal j;
    Hall h = hall_with_class(j);
    fold(h, j.add("class.publish", R"({"class":"c","sheet":)" + sheet + "}",
                  R"({"exercise_names":{"squat":"Goblet squat"}})"));
    const ClassView& c = h.classes["c"];
    QVERIFY(c.sheet.reasons.empty());
    QVERIFY(c.sheet.cost == Cost{});
    QVERIFY(c.last_change.empty());
    QVERIFY(find_member(c, "m1")->loads_hg.empty());
    QVERIFY(find_member(c, "m1")->exercises.empty());
    QCOMPARE(station_of(c, "m1", 1), std::string("A"));
  }

  void late_and_leave_keep_their_windows_and_stations_close_and_open() {
    Journal j;
    Hall h = hall_with_class(j);
    const ClassView& c = h.classes["c"];
    fold(h, j.add("class.publish", R"({"class":"c","sheet":)" + sheet + "}"));
    fold(h, j.add("class.late",
                  R"({"class":"c","member":"G2","guest":true,"level":"novice","present":[2],"sheet":)" +
                      sheet + "}",
                  R"({"shown_as":"G2"})"));
    QCOMPARE(find_member(c, "G2")->present, (SlotRange{.first = 2}));
    QVERIFY(find_member(c, "G2")->guest && find_member(c, "G2")->here);
    fold(h, j.add("class.leave", R"({"class":"c","member":"m1","present":[1,1],"sheet":)" + sheet + "}"));
    QCOMPARE(find_member(c, "m1")->present, (SlotRange{.first = 1, .last = 1}));
    fold(h, j.add("station.close", R"({"class":"c","station":"B","from_slot":2})"));
    QVERIFY(find_station(c, "B")->closed_now);
    QCOMPARE(find_station(c, "B")->closed, (std::vector<SlotRange>{{.first = 2}}));
    fold(h, j.add("station.open", R"({"class":"c","station":"B","from_slot":4})"));
    QVERIFY(!find_station(c, "B")->closed_now);
    QCOMPARE(find_station(c, "B")->closed, (std::vector<SlotRange>{{.first = 2, .last = 3}}));
    fold(h, j.add("station.close", R"({"class":"c","station":"B","from_slot":4,"to_slot":5})"));
    QVERIFY(!find_station(c, "B")->closed_now);
  }

  void the_floor_as_laid_out_replaces_the_stations() {
    Journal j;
    Hall h = hall_with_class(j);
    for (const char* kind : {"station.set", "station.swap", "station.add", "floor.as_in_file"}) {
      fold(h, j.add(kind, R"({"class":"c","station":"A","stations":[{"id":"A","exercise":"hinge"}]})",
                    R"({"exercise_names":{"hinge":"Hip hinge"}})"));
      QCOMPARE(h.classes["c"].stations.size(), std::size_t{1});
      QCOMPARE(h.classes["c"].stations[0].exercise_name, std::string("Hip hinge"));
      h.classes["c"].stations.clear();
    }
  }

  void a_correction_takes_the_place_of_the_record() {
    Journal j;
    Hall h = hall_with_class(j);
    fold(
        h,
        j.add(
            "record.add",
            R"({"record":"r1","class":"c","member":"m1","station":"A","exercise":"squat","slot":1,"done":true,
                  "load_hg":160,"reps":12,"rir":2})"));
    const ClassView& c = h.classes["c"];
    QCOMPARE(*c.records.at({"m1", 1}).load_hg, 160);
    fold(h,
         j.add("record.correct",
               R"({"record":"r2","corrects":"r1","class":"c","member":"m1","station":"A","exercise":"squat",
                  "slot":1,"done":true,"reps":10})"));
    QCOMPARE(c.records.size(), std::size_t{1});
    QCOMPARE(c.records.at({"m1", 1}).id, std::string("r2"));
    QCOMPARE(c.records.at({"m1", 1}).reps, 10);
    QVERIFY(!c.records.at({"m1", 1}).load_hg);
  }

  void rows_of_nonsense_break_nothing() {
    Hall h;
    Journal j;
    for (const CommandKind& k : command_kinds())
      for (const char* body : {"", "{", "[]", "{}", R"({"class":"c"})", R"({"class":7})",
                               R"({"class":"c","sheet":[],"stations":{},"member":3,"here":"x","s":-1})"})
        fold(h, j.add(std::string(k.kind), body, body));
    QCOMPARE(h.classes.size(), std::size_t{1});
  }

  void every_command_and_question_is_found_by_its_kind() {
    for (const CommandKind& k : command_kinds()) QCOMPARE(find_command(k.kind), &k);
    for (const QuestionKind& k : question_kinds()) QCOMPARE(find_question(k.kind), &k);
    QVERIFY(!find_command("classes"));
  }

  void roles_go_both_ways() {
    for (const Role r : {Role::wall, Role::touch, Role::instructor, Role::desk, Role::tool})
      QCOMPARE(role_from(id_of(r)), r);
    QVERIFY(!role_from("WALL"));
  }
};

QTEST_APPLESS_MAIN(TestHall)
#include "tst_hall.moc"
