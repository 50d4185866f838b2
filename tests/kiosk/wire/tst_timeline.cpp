// SPDX-License-Identifier: GPL-3.0-or-later
// The class timeline against one worked by hand, to the second. The class: show 60 s, warm-up 360 s, lead-in
// 30 s, three slots of 40 s work and 20 s change, a break of 90 s after slot 2, cool-down 300 s. By hand:
// show 0-60, warm-up 60-420, lead-in 420-450, work 1 450-490, change 1 490-510, work 2 510-550, change 2
// 550-570, break 570-660, work 3 660-700, change 3 700-720, cool-down 720-1020.
#include <QtTest>

#include "kiosk/wire/timeline.h"

using namespace floorwheel;
using namespace floorwheel::wire;

namespace {

Timing timing() {
  return {.slots = 3,
          .laps = 1,
          .work_s = 40,
          .change_s = 20,
          .show_s = 60,
          .warm_up_s = 360,
          .lead_in_s = 30,
          .cool_down_s = 300,
          .breaks = {{.after_slot = 2, .seconds = 90}}};
}

constexpr std::int64_t start = 7'000'000;  // class clock at the start: not 0, as on a machine up for a while
std::int64_t at(std::int64_t second) { return start + 1000 * second; }

ClassClock started() {
  ClassClock c;
  if (!apply_start(c, timing(), start)) qFatal("the class does not start");
  return c;
}

/// "work 2 +5 -35": kind, slot where there is one, seconds elapsed in it and left of it.
QString say(const ClassClock& c, std::int64_t now) {
  const Moment m = moment_at(c, now);
  if (m.past_end) return QStringLiteral("past end");
  if (m.segment < 0) return QStringLiteral("nowhere");
  const Segment& s = c.segments[static_cast<std::size_t>(m.segment)];
  QString out = QString::fromUtf8(id_of(s.kind).data(), static_cast<int>(id_of(s.kind).size()));
  if (s.slot > 0) out += QStringLiteral(" %1").arg(s.slot);
  return out + QStringLiteral(" +%1 -%2").arg(m.in_ms / 1000).arg(m.left_ms / 1000);
}

}  // namespace

class TestTimeline : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void segments_are_those_worked_by_hand() {
    struct Row {
      SegmentKind kind;
      int slot;
      int seconds;
    };
    const std::vector<Row> by_hand{
        {SegmentKind::show, 0, 60},   {SegmentKind::warm_up, 0, 360},  {SegmentKind::lead_in, 0, 30},
        {SegmentKind::work, 1, 40},   {SegmentKind::change, 1, 20},    {SegmentKind::work, 2, 40},
        {SegmentKind::change, 2, 20}, {SegmentKind::pause, 2, 90},     {SegmentKind::work, 3, 40},
        {SegmentKind::change, 3, 20}, {SegmentKind::cool_down, 0, 300}};
    const std::vector<Segment> got = lay_out(timing());
    QCOMPARE(got.size(), by_hand.size());
    for (std::size_t i = 0; i < got.size(); ++i) {
      QCOMPARE(got[i].kind, by_hand[i].kind);
      QCOMPARE(got[i].slot, by_hand[i].slot);
      QCOMPARE(got[i].length_ms, std::int64_t{1000} * by_hand[i].seconds);
      QVERIFY(!got[i].lap_ends);
    }
  }

  void the_sum_of_segments_is_the_class_seconds_of_the_file_format() {
    ClassSpec spec;
    spec.show_s = 60;
    spec.warm_up_s = 360;
    spec.lead_in_s = 30;
    spec.cool_down_s = 300;
    spec.breaks = {{.after_slot = 2, .seconds = 90}, {.after_slot = 3, .seconds = 60}};
    for (int slots = 1; slots <= 5; ++slots) {
      std::int64_t sum = 0;
      for (const Segment& s : lay_out(timing_of(spec, slots))) sum += s.length_ms;
      QCOMPARE(sum, std::int64_t{1000} * class_seconds(spec, slots));
    }
  }

  void segments_of_no_length_are_left_out_and_a_break_after_the_last_slot_falls_away() {
    Timing t{.slots = 2, .laps = 1, .work_s = 30, .change_s = 0, .breaks = {}};
    t.breaks = {{.after_slot = 2, .seconds = 60}};
    const std::vector<Segment> got = lay_out(t);
    QCOMPARE(got.size(), std::size_t{2});
    QCOMPARE(got[0].kind, SegmentKind::work);
    QCOMPARE(got[1].kind, SegmentKind::work);
  }

  void a_break_between_two_laps_says_so() {
    // Laps of slot t by the formula 1 + floor((t - 1) L / T), T = 6, L = 2: 1 1 1 2 2 2.
    Timing t{.slots = 6, .laps = 2, .work_s = 40, .change_s = 20, .breaks = {}};
    t.breaks = {{.after_slot = 2, .seconds = 60}, {.after_slot = 3, .seconds = 60}};
    std::vector<bool> lap_ends;
    for (const Segment& s : lay_out(t))
      if (s.kind == SegmentKind::pause) lap_ends.push_back(s.lap_ends);
    QCOMPARE(lap_ends, (std::vector<bool>{false, true}));
    for (int slot = 1; slot <= 6; ++slot) QCOMPARE(lap_of(slot, 2, 6), slot <= 3 ? 1 : 2);
    // T = 7, L = 2: floor(2 (t - 1) / 7) = 0 0 0 0 1 1 1.
    for (int slot = 1; slot <= 7; ++slot) QCOMPARE(lap_of(slot, 2, 7), slot <= 4 ? 1 : 2);
  }

  void every_second_is_where_it_was_worked_by_hand_data() {
    QTest::addColumn<int>("second");
    QTest::addColumn<QString>("where");
    const std::vector<std::pair<int, const char*>> by_hand{
        {0, "show +0 -60"},         {59, "show +59 -1"},         {60, "warm-up +0 -360"},
        {419, "warm-up +359 -1"},   {420, "lead-in +0 -30"},     {449, "lead-in +29 -1"},
        {450, "work 1 +0 -40"},     {489, "work 1 +39 -1"},      {490, "change 1 +0 -20"},
        {510, "work 2 +0 -40"},     {550, "change 2 +0 -20"},    {570, "break 2 +0 -90"},
        {659, "break 2 +89 -1"},    {660, "work 3 +0 -40"},      {700, "change 3 +0 -20"},
        {720, "cool-down +0 -300"}, {1019, "cool-down +299 -1"}, {1020, "past end"},
        {100000, "past end"}};
    for (const auto& [second, where] : by_hand)
      QTest::addRow("second %d", second) << second << QString::fromLatin1(where);
  }
  void every_second_is_where_it_was_worked_by_hand() {
    QFETCH(const int, second);
    QFETCH(const QString, where);
    const ClassClock c = started();
    QCOMPARE(say(c, at(second)), where);
    QCOMPARE(moment_at(c, at(second)).total_ms, std::int64_t{1'020'000});
    QCOMPARE(moment_at(c, at(second)).elapsed_ms, std::int64_t{1000} * std::min(second, 1020));
  }

  void the_last_millisecond_of_a_segment_is_still_in_it() {
    const ClassClock c = started();
    const Moment last = moment_at(c, start + 489'999);
    QCOMPARE(last.segment, 3);
    QCOMPARE(last.in_ms, std::int64_t{39'999});
    QCOMPARE(last.left_ms, std::int64_t{1});
    QCOMPARE(moment_at(c, start + 490'000).segment, 4);
  }

  void before_the_start_it_is_nowhere_and_a_reading_before_the_anchor_does_not_run_backwards() {
    ClassClock c;
    QVERIFY(apply_sheet(c, timing(), at(0)));
    QCOMPARE(moment_at(c, at(1000)).segment, -1);
    QCOMPARE(moment_at(c, at(1000)).total_ms, std::int64_t{1'020'000});
    QVERIFY(!moment_at(c, at(1000)).past_end);
    QCOMPARE(say(started(), start - 5000), QStringLiteral("show +0 -60"));
  }

  void hold_keeps_the_second_and_resume_goes_on_at_it() {
    ClassClock c = started();
    QVERIFY(apply_hold(c, at(520)));
    QCOMPARE(say(c, at(520)), QStringLiteral("work 2 +10 -30"));
    QCOMPARE(say(c, at(9999)), QStringLiteral("work 2 +10 -30"));
    QCOMPARE(c.state, Running::held);
    QVERIFY(!apply_hold(c, at(600)));
    QVERIFY(apply_resume(c, at(700)));
    QCOMPARE(say(c, at(700)), QStringLiteral("work 2 +10 -30"));
    QCOMPARE(say(c, at(729)), QStringLiteral("work 2 +39 -1"));
    QCOMPARE(say(c, at(730)), QStringLiteral("change 2 +0 -20"));
    QVERIFY(!apply_resume(c, at(731)));
  }

  void skip_goes_to_the_end_of_the_segment_running_or_held() {
    ClassClock c = started();
    QVERIFY(apply_skip(c, at(30)));  // show ends 30 s early
    QCOMPARE(say(c, at(30)), QStringLiteral("warm-up +0 -360"));
    QVERIFY(apply_hold(c, at(40)));
    QVERIFY(apply_skip(c, at(50)));
    QCOMPARE(say(c, at(60)), QStringLiteral("lead-in +0 -30"));
    QCOMPARE(c.state, Running::held);
    QVERIFY(apply_resume(c, at(100)));
    QCOMPARE(say(c, at(130)), QStringLiteral("work 1 +0 -40"));
  }

  void skip_past_the_end_changes_nothing() {
    ClassClock c = started();
    const ClassClock before = c;
    QVERIFY(!apply_skip(c, at(1020)));
    QVERIFY(!apply_repeat(c, at(1020)));
    QVERIFY(!apply_more_time(c, at(1020), 10'000));
    QCOMPARE(c == before, true);
  }

  void repeat_goes_back_to_the_work_of_the_slot() {
    ClassClock c = started();
    QVERIFY(apply_repeat(c, at(575)));  // 5 s into the break after slot 2: slot 2's work began at 510
    QCOMPARE(say(c, at(575)), QStringLiteral("work 2 +0 -40"));
    QVERIFY(apply_repeat(c, at(575 + 45)));  // 5 s into change 2
    QCOMPARE(say(c, at(620)), QStringLiteral("work 2 +0 -40"));
    ClassClock warm = started();
    QVERIFY(apply_repeat(warm, at(100)));
    QCOMPARE(say(warm, at(100)), QStringLiteral("warm-up +0 -360"));
  }

  void more_time_lengthens_the_present_segment_alone() {
    ClassClock c = started();
    QVERIFY(apply_more_time(c, at(495), 15'000));  // change 1: 490-510 becomes 490-525
    QCOMPARE(say(c, at(495)), QStringLiteral("change 1 +5 -30"));
    QCOMPARE(say(c, at(524)), QStringLiteral("change 1 +34 -1"));
    QCOMPARE(say(c, at(525)), QStringLiteral("work 2 +0 -40"));
    QCOMPARE(moment_at(c, at(525)).total_ms, std::int64_t{1'035'000});
    QVERIFY(!apply_more_time(c, at(525), 0));
  }

  void stop_and_help_holds_and_it_is_over_leaves_the_class_held() {
    ClassClock c = started();
    QVERIFY(apply_stop(c, at(460)));
    QCOMPARE(c.state, Running::stopped);
    QCOMPARE(*c.stopped_at_ms, at(460));
    QVERIFY(!apply_resume(c, at(470)));
    QVERIFY(!apply_skip(c, at(470)));
    QVERIFY(apply_over(c, at(900)));
    QCOMPARE(c.state, Running::held);
    QVERIFY(!c.stopped_at_ms);
    QCOMPARE(say(c, at(901)), QStringLiteral("work 1 +10 -30"));
    QVERIFY(apply_resume(c, at(1000)));
    QCOMPARE(say(c, at(1030)), QStringLiteral("change 1 +0 -20"));
  }

  void stop_and_help_works_before_the_start_and_while_held() {
    ClassClock c;
    QVERIFY(apply_stop(c, at(0)));
    QVERIFY(!apply_start(c, timing(), at(1)));
    QVERIFY(apply_over(c, at(5)));
    QCOMPARE(c.state, Running::not_started);
    QVERIFY(apply_start(c, timing(), at(6)));
    QVERIFY(apply_hold(c, at(16)));
    QVERIFY(apply_stop(c, at(20)));
    QVERIFY(apply_over(c, at(30)));
    QCOMPARE(say(c, at(30)), QStringLiteral("show +10 -50"));
  }

  void after_a_power_cut_it_is_held_at_the_pulse_whatever_the_clock_says() {
    ClassClock c = started();
    QVERIFY(apply_power_cut(c, 515'000));  // the machine's clock begins at 0 again
    QCOMPARE(c.state, Running::held);
    QVERIFY(c.power_cut);
    QCOMPARE(say(c, 42), QStringLiteral("work 2 +5 -35"));
    ClassClock again = c;
    QVERIFY(apply_resume(c, 60'000));
    QVERIFY(!c.power_cut);
    QCOMPARE(say(c, 60'000 + 35'000), QStringLiteral("change 2 +0 -20"));
    QVERIFY(apply_repeat(again, 60'000));  // the instructor repeats the slot instead, then resumes
    QVERIFY(apply_resume(again, 70'000));
    QCOMPARE(say(again, 70'000), QStringLiteral("work 2 +0 -40"));
    ClassClock idle;
    QVERIFY(!apply_power_cut(idle, 10));
  }

  void the_end_comes_at_any_time_and_nothing_moves_after_it() {
    ClassClock c = started();
    QVERIFY(apply_end(c, at(455)));
    QCOMPARE(c.state, Running::over);
    QCOMPARE(moment_at(c, at(900)).elapsed_ms, std::int64_t{455'000});
    for (const bool changed :
         {apply_hold(c, at(1)), apply_resume(c, at(1)), apply_skip(c, at(1)), apply_repeat(c, at(1)),
          apply_stop(c, at(1)), apply_over(c, at(1)), apply_end(c, at(1)), apply_power_cut(c, 1),
          apply_start(c, timing(), at(1)), apply_sheet(c, timing(), at(1)), apply_more_time(c, at(1), 1000)})
      QVERIFY(!changed);
    ClassClock never;
    QVERIFY(apply_end(never, at(0)));
  }

  void a_new_sheet_with_one_more_slot_keeps_what_has_begun() {
    ClassClock c = started();
    QVERIFY(apply_more_time(c, at(455), 5'000));  // work 1 now 450-495
    Timing t = timing();
    t.slots = 4;
    QVERIFY(apply_sheet(c, t, at(460)));
    QCOMPARE(say(c, at(460)), QStringLiteral("work 1 +10 -35"));
    QCOMPARE(say(c, at(495)), QStringLiteral("change 1 +0 -20"));
    // By hand: change 1 495-515, work 2 515-555, change 2 -575, break -665, work 3 -705, change 3 -725,
    // work 4 -765, change 4 -785, cool-down -1085.
    QCOMPARE(say(c, at(725)), QStringLiteral("work 4 +0 -40"));
    QCOMPARE(say(c, at(785)), QStringLiteral("cool-down +0 -300"));
    QCOMPARE(moment_at(c, at(785)).total_ms, std::int64_t{1'085'000});
  }

  void a_new_sheet_in_the_break_while_held_or_with_fewer_slots() {
    ClassClock c = started();
    QVERIFY(apply_hold(c, at(600)));
    Timing t = timing();
    t.slots = 2;  // nothing after slot 2 but the cool-down; the break under way goes on to its end
    QVERIFY(apply_sheet(c, t, at(650)));
    QCOMPARE(say(c, at(650)), QStringLiteral("break 2 +30 -60"));
    QCOMPARE(c.state, Running::held);
    QVERIFY(apply_resume(c, at(700)));
    QCOMPARE(say(c, at(760)), QStringLiteral("cool-down +0 -300"));
  }

  void a_new_sheet_past_the_end_adds_nothing_and_stays_past_the_end() {
    ClassClock c = started();
    Timing t = timing();
    t.slots = 5;
    QVERIFY(apply_sheet(c, t, at(2000)));
    QCOMPARE(say(c, at(2001)), QStringLiteral("past end"));
  }

  void the_first_open_slot_spares_what_is_announced_data() {
    QTest::addColumn<int>("second");
    QTest::addColumn<int>("slot");
    const std::vector<std::pair<int, int>> by_hand{{0, 1},   {430, 1}, {450, 2}, {489, 2},
                                                   {490, 3}, {510, 3}, {550, 4}, {570, 4},
                                                   {660, 4}, {700, 4}, {720, 4}, {1020, 4}};
    for (const auto& [second, slot] : by_hand) QTest::addRow("second %d", second) << second << slot;
  }
  void the_first_open_slot_spares_what_is_announced() {
    QFETCH(const int, second);
    QFETCH(const int, slot);
    QCOMPARE(first_open_slot(started(), at(second)), slot);
    QCOMPARE(first_open_slot(ClassClock{}, at(second)), 1);
  }

  void words_of_segments_go_both_ways() {
    for (const Segment& s : lay_out(timing())) QCOMPARE(segment_kind_from(id_of(s.kind)), s.kind);
    QVERIFY(!segment_kind_from("pause"));
  }
};

QTEST_APPLESS_MAIN(TestTimeline)
#include "tst_timeline.moc"
