// SPDX-License-Identifier: GPL-3.0-or-later
// Which of the first four visits: every count of check-ins, before and at a visit; and that each visit has
// its own sentences. The sentences themselves are ours (common practice, no source).
#include <QTest>
#include <set>

#include "scheduler/training/first_visits.h"

using namespace floorwheel::training;

class TestFirstVisits : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void the_visit_at_hand_or_the_next() {
    for (int visits = -1; visits <= 10; ++visits)
      for (const bool here : {false, true}) {
        const auto v = first_visit(visits, here);
        const int number = visits + (here ? 0 : 1);
        QCOMPARE(v.has_value(), number >= 1 && number <= 4);
        if (v) QCOMPARE(v->number, number);
      }
  }

  void each_visit_has_three_sentences_of_its_own() {
    std::set<std::string_view> all;
    for (int visits = 0; visits < first_visits; ++visits) {
      const FirstVisit visit = *first_visit(visits, false);
      for (const std::string_view s : visit.look_at) {
        QVERIFY(s.size() > 20 && s.size() < 90);  // a line of the instructor's screen
        QCOMPARE(s.back(), '.');
        all.insert(s);
      }
      QVERIFY(visit.look_at[0].size() < 50);  // large, on a key of half its width
    }
    QCOMPARE(all.size(), std::size_t{12});
  }

  void pain_is_asked_about_at_the_first_and_the_fourth_is_a_talk() {
    QVERIFY(first_visit(0, false)->look_at[2].find("pain") != std::string_view::npos);
    QVERIFY(first_visit(4, true)->look_at[0].starts_with("Talk"));
  }
};

QTEST_GUILESS_MAIN(TestFirstVisits)
#include "tst_first_visits.moc"
