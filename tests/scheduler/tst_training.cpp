// SPDX-License-Identifier: GPL-3.0-or-later
// The training rules by examples worked out by hand: every rule of the next load with its edges, dose, loads
// of the floor and slot fit. tst_training_reference has the published values, tst_training_properties what
// must hold of any input.
#include <QTest>

#include "scheduler/training/barbell.h"
#include "scheduler/training/dose.h"
#include "scheduler/training/next_load.h"
#include "scheduler/training/override.h"
#include "scheduler/training/rack.h"
#include "scheduler/training/slot_fit.h"
#include "scheduler/training/strength.h"
#include "tests/support/set_log.h"

using namespace floorwheel;
using namespace floorwheel::training;
using build::floor_kg;
using build::SetLog;

namespace {

constexpr Mass kg(double k) { return Mass::grams(static_cast<std::int64_t>(k * 1000 + 0.5)); }

NextQuestion asking(std::vector<Weight> loads, const char* today, int sets = 3) {
  NextQuestion q;
  q.reps = {6, 10};
  q.sets = sets;
  q.loads = std::move(loads);
  q.today = day_from(today).value();
  q.substitutes = {"box-squat"};
  return q;
}

/// "top-of-range up 8.5 [6, 10]", with " ask" where the instructor is to be asked.
std::string brief(const NextAnswer& a) {
  return std::string(id_of(a.rule)) + " " + std::string(id_of(a.change)) + " " +
         (a.load ? decimal_kg(a.load->mass) : "null") + " [" + std::to_string(a.reps[0]) + ", " +
         std::to_string(a.reps[1]) + "]" + (a.ask_instructor ? " ask" : "");
}

std::string next(const SetLog& log, const NextQuestion& q) { return brief(next_load(log.records, q)); }

ExerciseTable table_of(std::initializer_list<Exercise> exercises) {
  ExerciseTable table;
  for (const Exercise& e : exercises) table.emplace(e.id, e);
  return table;
}

}  // namespace

#define SAYS(actual, expected) QCOMPARE(QString::fromStdString(actual), QString(expected))

class TestTraining : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void nothing_yet_is_the_lightest_load() {
    SetLog log;
    log.add("2026-03-02", kg(4), {10, 3}, SetKind::warm_up);
    log.add("2026-03-02", kg(4), {10, 3}, SetKind::practice);
    const NextAnswer a = next_load(log.records, asking(floor_kg({4, 6, 8}), "2026-03-05"));
    SAYS(brief(a), "first first 4 [6, 10] ask");
    QVERIFY(a.reason.find("slower tempo") != std::string::npos);
    QVERIFY(a.reason.find("three or more in reserve") != std::string::npos);
  }

  void three_sets_at_the_top_with_one_left_go_up_by_ten_percent_at_most() {
    SetLog log;
    log.visit("2026-03-02", kg(50), {{10, 1}, {11, 2}, {10, 1}, {4, 0}});  // a further set does not matter
    SAYS(next(log, asking(floor_kg({40, 50, 55}), "2026-03-05")), "top-of-range up 55 [6, 10]");
    SAYS(next(log, asking(floor_kg({40, 50, 55.001}), "2026-03-05")), "more-reps same 50 [6, 11]");
    SAYS(next(log, asking(floor_kg({40, 50, 55}), "2026-03-05", 4)), "in-range same 50 [6, 10]");
    log.records[0].rir = 0;
    SAYS(next(log, asking(floor_kg({40, 50, 55}), "2026-03-05")), "in-range same 50 [6, 10]");
  }

  void a_reserve_not_recorded_takes_two_visits_at_one_load() {
    SetLog log;
    log.visit("2026-03-02", kg(50), {{10, {}}, {10, 1}, {10, {}}});
    const NextQuestion q = asking(floor_kg({50, 52.5}), "2026-03-06");
    SAYS(next(log, q), "in-range same 50 [6, 10]");
    log.visit("2026-03-05", kg(50), {{10, 3}, {10, 1}, {10, {}}});
    SAYS(next(log, q), "top-of-range up 52.5 [6, 10]");
    SetLog other;
    other.visit("2026-03-02", kg(47.5), {{10, {}}, {10, {}}, {10, {}}});
    other.visit("2026-03-05", kg(50), {{10, {}}, {10, {}}, {10, {}}});
    SAYS(next(other, q), "in-range same 50 [6, 10]");
    // One recorded reserve under the limit leaves too few.
    log.records[3].rir = 0;
    SAYS(next(log, q), "in-range same 50 [6, 10]");
  }

  void only_the_heaviest_working_load_of_a_visit_counts() {
    SetLog log;
    log.visit("2026-03-02", kg(40), {{10, 3}, {10, 3}, {10, 3}});
    log.visit("2026-03-02", kg(50), {{8, 2}});
    log.add("2026-03-02", kg(80), {10, 3}, SetKind::warm_up);
    SAYS(next(log, asking(floor_kg({40, 42.5, 50, 52.5}), "2026-03-05")), "in-range same 50 [6, 10]");
  }

  void a_big_step_is_earned_by_five_more_and_two_left() {
    SetLog log;
    log.visit("2026-03-02", kg(8), {{15, 2}, {15, 2}, {15, 2}});
    SAYS(next(log, asking(floor_kg({6, 8, 12, 16}), "2026-03-05")), "big-step up 12 [6, 10] ask");
    log.records[1].rir = 1;
    SAYS(next(log, asking(floor_kg({6, 8, 12, 16}), "2026-03-05")), "more-reps same 8 [6, 15]");
    log.records[1] = {.member = "m01",
                      .exercise = "goblet-squat",
                      .day = log.records[0].day,
                      .load = kg(8),
                      .reps = 11,
                      .rir = 2};
    SAYS(next(log, asking(floor_kg({6, 8, 12, 16}), "2026-03-05")), "more-reps same 8 [6, 12]");
  }

  void without_a_heavier_load_the_range_grows() {
    SetLog log;
    log.visit("2026-03-02", {}, {{10, 1}, {12, 2}, {11, 1}});
    SAYS(next(log, asking(floor_kg({0}), "2026-03-05")), "more-reps same 0 [6, 11]");
    // The N best sets count: the fewest of the best two are 11.
    SAYS(next(log, asking(floor_kg({0}), "2026-03-05", 2)), "more-reps same 0 [6, 12]");
  }

  void under_the_range_twice_goes_down() {
    SetLog log;
    log.visit("2026-03-02", kg(50), {{5, 0}, {9, 1}});
    const NextQuestion q = asking(floor_kg({40, 45, 47.5, 50}), "2026-03-06");
    SAYS(next(log, q), "in-range same 50 [6, 10]");
    log.visit("2026-03-05", kg(50), {{5, 0}, {6, 0}, {6, 0}});
    SAYS(next(log, q), "below-range down 45 [6, 10]");
    SAYS(next(log, asking(floor_kg({47.5, 50}), "2026-03-06")), "below-range down 47.5 [6, 10]");
    SAYS(next(log, asking(floor_kg({50, 60}), "2026-03-06")), "below-range same 50 [6, 10]");
    // Of two sets at one instant the one with more repetitions is the first.
    log.records[3].instant_us = log.records[2].instant_us;
    SAYS(next(log, q), "in-range same 50 [6, 10]");
  }

  void three_weeks_away_begin_lighter() {
    SetLog log;
    log.visit("2026-03-02", kg(50), {{10, 2}, {10, 2}, {10, 2}});
    const auto at = [&](const char* today) {
      return next(log, asking(floor_kg({35, 40, 45, 50, 52.5}), today));
    };
    SAYS(at("2026-03-22"), "top-of-range up 52.5 [6, 10]");
    SAYS(at("2026-03-23"), "return down 45 [6, 10]");
    SAYS(at("2026-04-26"), "return down 45 [6, 10]");
    SAYS(at("2026-04-27"), "return down 40 [6, 10]");
    // A date of warm-up sets alone is no visit here.
    log.add("2026-03-20", kg(20), {10, 3}, SetKind::warm_up);
    SAYS(at("2026-03-23"), "return down 45 [6, 10]");
  }

  void pain_never_goes_up() {
    SetLog log;
    log.visit("2026-03-02", kg(50), {{10, 2}, {10, 2}, {10, 2}});
    const NextQuestion q = asking(floor_kg({45, 50, 52.5}), "2026-03-05");
    log.add("2026-03-03", kg(20), {10, {}}, SetKind::warm_up).pain = true;
    const NextAnswer a = next_load(log.records, q);
    SAYS(brief(a), "pain same 50 [6, 10] ask");
    SAYS(a.substitute, "box-squat");
    QVERIFY(a.reason.find("stop on pain") != std::string::npos);
    SAYS(next(log, asking(floor_kg({45, 50, 52.5}), "2026-03-24")), "pain down 45 [6, 10] ask");
    // Over once a later date has none; what is done after `today` is not known.
    log.add("2026-03-04", kg(20), {10, {}}, SetKind::warm_up);
    SAYS(next(log, q), "top-of-range up 52.5 [6, 10]");
    SAYS(next(log, asking(floor_kg({45, 50, 52.5}), "2026-03-03")), "pain same 50 [6, 10] ask");
  }

  void four_visits_without_progress_are_a_stall() {
    SetLog log;
    for (const char* date : {"2026-03-02", "2026-03-05", "2026-03-09", "2026-03-12"})
      log.visit(date, kg(50), {{8, 0}, {8, 0}, {7, 0}});
    const NextQuestion q = asking(floor_kg({50, 52.5}), "2026-03-13");
    const NextAnswer a = next_load(log.records, q);
    SAYS(brief(a), "stall same 50 [6, 10]");
    QVERIFY(a.reason.find("one more set a week") != std::string::npos);
    QVERIFY(a.reason.find("next level") != std::string::npos);
    log.records[4].reps = 9;  // once more in the second visit
    SAYS(next(log, q), "in-range same 50 [6, 10]");
  }

  void what_the_floor_no_longer_has_is_stood_for() {
    SetLog log;
    log.visit("2026-03-02", kg(50), {{8, 2}});
    SAYS(next(log, asking(floor_kg({40, 48, 60}), "2026-03-05")), "in-range same 48 [6, 10]");
    SAYS(next(log, asking(floor_kg({60, 70}), "2026-03-05")), "in-range same null [6, 10] ask");
    log.records[0].pain = true;
    SAYS(next(log, asking(floor_kg({60, 70}), "2026-03-05")), "pain same null [6, 10] ask");
  }

  void learnt_slowness_wants_a_rise_earned_twice() {
    SetLog log;
    log.visit("2026-03-02", kg(50), {{10, 2}, {10, 2}, {10, 2}});
    NextQuestion q = asking(floor_kg({50, 52.5}), "2026-03-06");
    q.slow_to_rise = true;
    SAYS(next(log, q), "in-range same 50 [6, 10]");
    log.visit("2026-03-05", kg(50), {{10, 2}, {10, 2}, {10, 2}});
    SAYS(next(log, q), "top-of-range up 52.5 [6, 10]");
  }

  void an_override_stands_until_the_exercise_is_done_next() {
    SetLog log;
    log.visit("2026-03-02", kg(50), {{10, 2}, {10, 2}, {10, 2}});
    const NextQuestion q = asking(floor_kg({40, 45, 50, 52.5}), "2026-03-06");
    const Override held{"m01",    "goblet-squat", day_from("2026-03-03").value(), "Kim", kg(45),
                        kg(52.5), Change::up};
    const Decided d = next_load(log.records, q, std::vector{held});
    SAYS(brief(d.answer), "top-of-range down 45 [6, 10]");
    QVERIFY(d.by.has_value());
    SAYS(d.answer.reason, "Kim decided 45 kg on 2026-03-03 instead of 52.5 kg.");
    Override odd = held;
    odd.load = kg(47);
    SAYS(brief(next_load(log.records, q, std::vector{odd}).answer), "top-of-range down 45 [6, 10]");
    log.visit("2026-03-05", kg(45), {{10, 2}, {10, 2}, {10, 2}});
    QVERIFY(!next_load(log.records, q, std::vector{held}).by.has_value());
    // Decided on the day of a visit: for that visit if it was lifted then, else for the next.
    Override same_day = held;
    same_day.day = day_from("2026-03-05").value();
    QVERIFY(!next_load(log.records, q, std::vector{same_day}).by.has_value());
    same_day.load = kg(40);
    QVERIFY(next_load(log.records, q, std::vector{same_day}).by.has_value());
  }

  void where_the_instant_is_known_a_visit_that_began_before_is_not_the_next() {
    SetLog log;
    log.visit("2026-03-02", kg(50), {{10, 2}, {10, 2}, {10, 2}});  // a set every three minutes from midnight
    const NextQuestion q = asking(floor_kg({40, 45, 50, 52.5}), "2026-03-06");
    Override stay{"m01", "goblet-squat", day_from("2026-03-02").value(), "Kim", kg(50), kg(52.5), Change::up};
    QVERIFY(!next_load(log.records, q, std::vector{stay}).by.has_value());  // as if lifted then
    stay.instant_us = log.records.front().instant_us + 1;                   // decided between two sets
    const Decided d = next_load(log.records, q, std::vector{stay});
    SAYS(brief(d.answer), "top-of-range same 50 [6, 10]");
    SAYS(brief(d.suggested), "top-of-range up 52.5 [6, 10]");
    stay.instant_us = log.records.front().instant_us - 1;
    QVERIFY(!next_load(log.records, q, std::vector{stay}).by.has_value());
    stay.instant_us = log.records.back().instant_us;
    stay.reps = {5, 8};
    stay.sets = 2;
    const NextAnswer a = next_load(log.records, q, std::vector{stay}).answer;
    SAYS(brief(a), "top-of-range same 50 [5, 8]");
    QCOMPARE(a.sets, 2);
  }

  void a_changed_mind_is_one_decision() {
    SetLog log;
    log.visit("2026-03-02", kg(50), {{10, 2}, {10, 2}, {10, 2}});
    const NextQuestion q = asking(floor_kg({45, 47.5, 50, 52.5}), "2026-03-06");
    const auto rise = [](const char* date, double load) {
      return Override{"m01", "goblet-squat", day_from(date).value(), "Kim", kg(load), kg(52.5), Change::up};
    };
    const std::vector twice{rise("2026-03-03", 45), rise("2026-03-04", 47.5)};
    QCOMPARE(next_load(log.records, q, twice).by->load, kg(47.5));
    SAYS(brief(next_load(log.records, q, twice).suggested), "top-of-range up 52.5 [6, 10]");
    // With a visit between them they are two, and the rules are slow: the last visit alone does not earn it.
    log.visit("2026-03-04", kg(45), {{10, 2}, {10, 2}, {10, 2}});
    log.visit("2026-03-05", kg(50), {{10, 2}, {10, 2}, {10, 2}});
    const std::vector apart{rise("2026-03-03", 45), rise("2026-03-04", 47.5)};
    SAYS(brief(next_load(log.records, q, apart).suggested), "in-range same 50 [6, 10]");
    SAYS(brief(next_load(log.records, q, std::vector{apart.back()}).suggested),
         "top-of-range up 52.5 [6, 10]");
  }

  void two_rises_decided_lower_make_the_rules_slow() {
    const auto rise = [](const char* date, double load) {
      return Override{"m01", "goblet-squat", day_from(date).value(), "Kim", kg(load), kg(52.5), Change::up};
    };
    QVERIFY(!slow_to_rise(std::vector{rise("2026-02-03", 50)}));
    const std::vector twice{rise("2026-02-03", 50), rise("2026-02-10", 50)};
    QVERIFY(slow_to_rise(twice));
    QVERIFY(
        !slow_to_rise(std::vector{rise("2026-02-03", 50), rise("2026-02-10", 50), rise("2026-02-17", 52.5)}));
    SetLog log;
    log.visit("2026-03-02", kg(50), {{10, 2}, {10, 2}, {10, 2}});
    const NextQuestion q = asking(floor_kg({50, 52.5}), "2026-03-06");
    SAYS(brief(next_load(log.records, q, twice).answer), "in-range same 50 [6, 10]");
    log.visit("2026-03-05", kg(50), {{10, 2}, {10, 2}, {10, 2}});
    SAYS(brief(next_load(log.records, q, twice).answer), "top-of-range up 52.5 [6, 10]");
  }

  void a_reason_is_one_sentence() {
    SetLog log;
    log.visit("2026-03-02", kg(50), {{10, 2}, {10, 2}, {10, 2}});
    SAYS(next_load(log.records, asking(floor_kg({50, 52.5}), "2026-03-05")).reason,
         "All 3 sets reached 10 repetitions or more with at least 1 in reserve, and 52.5 kg is at most 10 % "
         "more "
         "than 50 kg; begin at 6 repetitions.");
  }

  void a_set_counts_for_each_primary_group_once() {
    Exercise press{.id = "bench-press",
                   .name = "",
                   .primary = {Group::chest, Group::triceps},
                   .assisting = {Group::shoulders},
                   .features = {},
                   .loads_hg = {},
                   .substitutes = {}};
    Exercise raise{.id = "lateral-raise",
                   .name = "",
                   .primary = {Group::shoulders},
                   .assisting = {},
                   .features = {},
                   .loads_hg = {},
                   .substitutes = {}};
    const ExerciseTable table = table_of({press, raise});
    SetLog log("bench-press");
    log.visit("2026-03-02", kg(40), {{10, 1}, {10, 1}});
    log.visit("2026-03-08", kg(40), {{10, 1}});  // Sunday of the same week
    log.visit("2026-03-09", kg(40), {{10, 1}});  // Monday of the next
    log.add("2026-03-02", kg(40), {10, 1}, SetKind::warm_up);
    log.add("2026-03-02", kg(40), {10, 1}, SetKind::practice);
    const auto rows = dose(log.records, table, {.week = IsoWeek{2026, 10}, .assisting_percent = 50});
    QCOMPARE(rows.size(), std::size_t{3});
    SAYS(text_of(rows[0].week), "2026-W10");
    QCOMPARE(rows[0].group, Group::chest);
    QCOMPARE(rows[0].primary_sets, 3);
    QCOMPARE(rows[0].days, 2);
    QCOMPARE(rows[1].group, Group::shoulders);
    QCOMPARE(rows[1].primary_sets, 0);
    QCOMPARE(rows[1].assisting_sets, 3);
    QCOMPARE(rows[1].days, 0);
    QCOMPARE(rows[1].counted, 150);  // C028 with the groups changed over: half a set for each indirect one
    QCOMPARE(rows[2].group, Group::triceps);
    QCOMPARE(dose(log.records, table).size(), std::size_t{6});
    QCOMPARE(dose(log.records, table, {.member = "m02"}).size(), std::size_t{0});
  }

  void bands_begin_at_their_lower_end() {
    const auto bands = [](Centisets s) { return std::string(id_of(band_of(s))); };
    SAYS(bands(299), "under_3");
    SAYS(bands(300), "3_to_9");
    SAYS(bands(999), "3_to_9");
    SAYS(bands(1000), "10_to_15");
    SAYS(bands(1500), "10_to_15");
    SAYS(bands(1600), "over_15");
  }

  void one_disc_of_an_odd_number_stays_off() {
    const Barbell bar{{kg(20)}, {kg(2.5)}, {{{kg(20)}, 3}, {{kg(5)}, 1}}};
    const auto near = nearest_hung(bar, kg(200));
    QVERIFY(near.has_value());
    SAYS(decimal_kg(near->below.load), "65");
    QCOMPARE(near->below.per_side.size(), std::size_t{1});
    QVERIFY(!near->above.has_value());
    QCOMPARE(nearest_hung(bar, kg(25))->below.per_side.size(), std::size_t{0});
  }

  void pounds_are_exact() {
    const Barbell bar{
        {Mass::pounds(45), MassUnit::lb}, {}, {{{Mass{Mass::per_lb * 5 / 2}, MassUnit::lb}, 2}}};
    const auto near = nearest_hung(bar, Mass::pounds(50));
    SAYS(decimal_kg(near->below.load), "22.6796185");
    QCOMPARE(near->below.load, Mass::pounds(50));
    SAYS(text_of(near->below.per_side.front()), "2.5 lb");
    SAYS(text_of(loads_of(bar)->back()), "50 lb");
    SAYS(shown(Mass::pounds(45)), "20.41 kg");
  }

  void changes_between_users_are_fewest() {
    // 20 and 10 on each side after 20 and 5: the 5 off, the 10 on, on both sides; 60 and 60: nothing.
    const Barbell bar{{kg(20)}, {}, {{{kg(20)}, 4}, {{kg(10)}, 4}, {{kg(5)}, 2}}};
    const std::vector<Mass> users{kg(70), kg(80), kg(80)};
    QCOMPARE(fewest_changes(bar, users)->changes, 4);
    // 60 kg as 10 and 10 lets 80 follow with 10 more: 2 changes, where 20 first would need 6.
    const Barbell few{{kg(20)}, {}, {{{kg(20)}, 2}, {{kg(10)}, 6}}};
    const std::vector<Mass> rising{kg(60), kg(80)};
    const auto sequence = fewest_changes(few, rising);
    QCOMPARE(sequence->changes, 2);
    QCOMPARE(sequence->users[1].load, kg(80));
    QVERIFY(!fewest_changes(few, std::vector<Mass>{kg(61)}).has_value());
  }

  void a_stack_with_add_ons_has_every_sum_once() {
    const Stack stack{{kg(5)}, 3, {{kg(1.25)}, {kg(2.5)}}};
    std::string all;
    for (const Weight& w : loads_of(stack)) all += decimal_kg(w.mass) + " ";
    SAYS(all, "5 6.25 7.5 8.75 10 11.25 12.5 13.75 15 16.25 17.5 18.75 ");
    const auto near = nearest_load(loads_of(stack), kg(9));
    QCOMPARE(near.below->mass, kg(8.75));
    QCOMPARE(near.above->mass, kg(10));
    QVERIFY(!nearest_load(loads_of(stack), kg(4)).below.has_value());
  }

  void a_trend_is_the_median_slope() {
    SetLog log;
    log.visit("2026-03-02", kg(100), {{1, 0}});
    log.visit("2026-03-09", kg(102), {{1, 0}});
    log.visit("2026-03-16", kg(120), {{1, 0}});  // one odd day does not turn it
    log.visit("2026-03-23", kg(106), {{1, 0}});
    const Trend trend = trend_of(visits_of(log.records, day_from("2026-04-01").value()), equations().front());
    QCOMPARE(trend.points.size(), std::size_t{4});
    // Slopes a week: 2, 10, 2, 18, 2, -14; their median is 2.
    QCOMPARE(*trend.per_week, kg(2));
  }

  void a_work_interval_holds_whole_repetitions() {
    QCOMPARE(reps_held(40, {}), 13);
    QVERIFY(fits({8, 13}, 40, {}));
    QVERIFY(!fits({8, 14}, 40, {}));
    QCOMPARE(reps_held(40, {.eccentric_ds = 20, .concentric_ds = 10, .pause_ds = 10}), 10);
    QVERIFY(fits({20, 40}, 40, {}, true));
    QVERIFY(!fits({20, 41}, 40, {}, true));
    QCOMPARE(density_percent({40, 20}), 67);
    QCOMPARE(between_laps_s({40, 20}, 3), 140);
    QCOMPARE(between_laps_s({40, 20}, 3, 60), 200);
  }
};

QTEST_APPLESS_MAIN(TestTraining)
#include "tst_training.moc"
