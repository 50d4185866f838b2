// SPDX-License-Identifier: GPL-3.0-or-later
// The instructor's sentences and the plait's question, from values made by hand.
#include <QJsonObject>
#include <QtTest>

#include "kiosk/screens/instructor_plait.h"
#include "kiosk/screens/instructor_words.h"

using namespace floorwheel;
using namespace floorwheel::screens;

namespace {

Cost cost(std::int64_t missed, std::int64_t back_to_back, std::int64_t short_rest, std::int64_t idle,
          std::int64_t moved = 0) {
  Cost c;
  c[Component::missed] = missed;
  c[Component::back_to_back] = back_to_back;
  c[Component::short_rest] = short_rest;
  c[Component::idle] = idle;
  c[Component::moved] = moved;
  return c;
}

wire::ClassView three_stations(Style style) {
  wire::ClassView c;
  for (const char* id : {"A", "B", "C"}) {
    wire::StationView s;
    s.id = id;
    s.letter = id;
    c.stations.push_back(s);
  }
  c.sheet.version = 1;
  c.sheet.style = style;
  if (style == Style::ring) c.sheet.ring = {"B", "C", "A"};
  c.sheet.timing.slots = 3;
  c.sheet.rows = {{"m1", {"A", "B", "C"}}, {"m2", {"B", "", "A"}}};
  return c;
}

}  // namespace

class TestInstructorWords : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void a_cost_of_nothing_says_what_is_good() {
    QCOMPARE(words::cost_sentences(cost(0, 0, 0, 0)),
             (QStringList{"Nobody misses a station.", "No group comes twice in a row."}));
  }
  void costs_are_counted_one_and_many() {
    QCOMPARE(words::cost_sentences(cost(1, 2, 1, 4)),
             (QStringList{"1 visit missed.", "2 groups twice in a row.", "1 short rest.", "4 idle slots."}));
  }
  void a_change_of_cost_is_held_against_now() {
    QCOMPARE(words::cost_change_sentences(cost(0, 0, 4, 0), cost(14, 0, 4, 12, 14)),
             (QStringList{"14 entries moved.", "14 visits missed, now 0.", "4 short rests, as now.",
                          "12 idle slots, now 0."}));
  }
  void what_one_more_slot_buys_names_the_first_difference() {
    const Cost chosen = cost(0, 0, 4, 4);
    QCOMPARE(words::row_gain(chosen, chosen, true, true), QStringLiteral("as above"));
    QCOMPARE(words::row_gain(cost(18, 0, 0, 0), chosen, false, true), QStringLiteral("18 visits missed"));
    QCOMPARE(words::row_gain(cost(0, 0, 2, 9), chosen, false, true), QStringLiteral("2 short rests less"));
    QCOMPARE(words::row_gain(cost(0, 1, 0, 0), chosen, false, true),
             QStringLiteral("1 group twice in a row more"));
    QCOMPARE(words::row_gain(chosen, chosen, false, true), QStringLiteral("nothing more"));
    QCOMPARE(words::row_gain(cost(0, 0, 0, 0), chosen, false, false),
             QStringLiteral("too long for the room"));
  }
  void times_are_those_of_the_hub() {
    QCOMPARE(words::clock_text(0, 3600), QStringLiteral("01:00"));
    QCOMPARE(words::start_text("2026-03-05T18:30:00+01:00"), QStringLiteral("18:30"));
    QCOMPARE(words::start_ms("2026-03-05T18:30:00+01:00"), qint64{1772731800000});
    QCOMPARE(words::start_ms(""), qint64{-1});
    QCOMPARE(words::starts_in(60000 * 12, 0), QStringLiteral("starts in 12 min"));
    QCOMPARE(words::starts_in(0, 0), QStringLiteral("starts now"));
    QCOMPARE(words::starts_in(0, 60000 * 5), QStringLiteral("was to start 5 min ago"));
    QCOMPARE(words::minutes_text(41), QStringLiteral("0:41"));
  }
  void long_lists_of_names_are_cut_and_counted() {
    QCOMPARE(words::name_list({"Ada", "Bo"}, 2), QStringLiteral("Ada, Bo"));
    QCOMPARE(words::name_list({"Ada", "Bo", "Cy", "Di"}, 2), QStringLiteral("Ada, Bo and 2 more"));
  }
  void seats_are_counted_one_and_many() {
    QCOMPARE(words::seats_text(4), QStringLiteral("4 seats left."));
    QCOMPARE(words::seats_text(1), QStringLiteral("1 seat left."));
    QCOMPARE(words::seats_text(-2), QStringLiteral("2 more than there are places."));
  }
  void a_cost_comes_from_the_files_names() {
    QCOMPARE(words::cost_from({{"missed", 3}, {"idle", 2}}), cost(3, 0, 0, 2));
  }

  void rows_of_a_ring_stand_in_its_order() {
    const PlaitAsk ask = plait_ask(three_stations(Style::ring), nullptr, "m2");
    QCOMPARE(ask.letters, (std::vector<std::string>{"B", "C", "A"}));
    QCOMPARE(ask.at[0], (std::vector<int>{2, 0, 1}));
    QCOMPARE(ask.at[1], (std::vector<int>{0, no_row, 2}));
    QCOMPARE(ask.chosen, 1);
    QVERIFY(ask.ring && !ask.waiting);
  }
  void a_free_rotation_shows_the_waiting_place() {
    const PlaitAsk ask = plait_ask(three_stations(Style::free), nullptr, "");
    QVERIFY(ask.waiting);
    QCOMPARE(ask.at[1], (std::vector<int>{1, 3, 0}));
    QCOMPARE(ask.chosen, -1);
  }
  void a_preview_is_held_against_the_sheet_as_it_is() {
    const wire::ClassView now = three_stations(Style::free);
    wire::ClassView then = now;
    then.sheet.at_slot = 2;
    then.sheet.rows = {{"m1", {"A", "C", "B"}}, {"m3", {"", "A", "C"}}};
    const PlaitAsk ask = plait_ask(then, &now, "m1");
    QCOMPARE(ask.from_slot, 2);
    QCOMPARE(ask.chosen, -1);  // what changes is sky, nothing is yellow
    QCOMPARE(ask.before[0], (std::vector<int>{0, 1, 2}));
    QVERIFY(ask.before[1].empty());  // a newcomer
    const Plait plait = lay_plait(ask);
    QCOMPARE(plait.sky.dots.size(), std::size_t{3 + 2});
  }
};

QTEST_GUILESS_MAIN(TestInstructorWords)
#include "tst_instructor_words.moc"
