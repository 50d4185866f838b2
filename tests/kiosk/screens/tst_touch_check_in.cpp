// SPDX-License-Identifier: GPL-3.0-or-later
// Finding oneself: first letters without accents, dead letters, who is found, the alias of somebody new.
#include <QTest>

#include "kiosk/screens/touch_check_in.h"
#include "tests/kiosk/screens/touch_class.h"

using namespace floorwheel;
using namespace floorwheel::screens;
using namespace floorwheel::test;

namespace {
QStringList labels(const TouchKeys* m) {
  QStringList out;
  for (int i = 0; i < m->rowCount(); ++i) out << m->index(i).data().toString();
  return out;
}
TouchCheckIn::Facts people() {
  TouchCheckIn::Facts f;
  f.people = {{"1", "Zoë T.", false}, {"2", "Chloe D.", false}, {"3", "Carl", true}, {"4", "Zora", false}};
  return f;
}
void type(TouchCheckIn& c, const char* letters) {
  for (; *letters != 0; ++letters) c.type(QString(QLatin1Char(*letters)));
}
void draft(TouchCheckIn& c, const QString& text) {
  for (const QChar ch : text) c.typeDraft(ch);
}
}  // namespace

class TouchCheckInTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void at_rest_those_who_are_not_here_yet_stand_on_keys() {
    TouchCheckIn c;
    c.show(people());
    QCOMPARE(labels(c.arrivals()), QStringList({"Chloe D.", "Zoë T.", "Zora"}));
    QCOMPARE(labels(c.everybody()), QStringList({"Carl", "Chloe D.", "Zoë T.", "Zora"}));
    QCOMPARE(c.here(), 1);
    QCOMPARE(c.expected(), 4);
    QCOMPARE(c.liveLetters(), QString("CZ"));
  }

  void letters_find_without_accents_and_also_who_is_in() {
    TouchCheckIn c;
    c.show(people());
    type(c, "ZO");
    QCOMPARE(labels(c.arrivals()), QStringList({"Zoë T.", "Zora"}));
    QCOMPARE(c.liveLetters(), QString("ER"));
    type(c, "E");
    QCOMPARE(labels(c.arrivals()), QStringList({"Zoë T."}));
    c.back();
    c.back();
    c.back();
    type(c, "C");
    QCOMPARE(labels(c.arrivals()), QStringList({"Chloe D.", "Carl"}));  // who is in comes last
    QCOMPARE(c.arrivals()->index(1).data(TouchKeys::mark).toString(), QString("kept"));
  }

  void a_dead_letter_types_nothing() {
    TouchCheckIn c;
    c.show(people());
    type(c, "B");
    QCOMPARE(c.prefix(), QString());
  }

  void an_alias_is_typed_without_a_shift_key() {
    TouchCheckIn c;
    c.show(people());
    QCOMPARE(c.draftTrouble(), QString("empty"));
    draft(c, "  MIA B.");
    QCOMPARE(c.draft(), QString("Mia B."));
    QCOMPARE(c.draftTrouble(), QString());
  }

  void an_alias_that_is_taken_or_too_wide_for_the_wall_is_not_accepted() {
    TouchCheckIn c;
    c.show(people());
    draft(c, "ZORA");
    QCOMPARE(c.draftTrouble(), QString("taken"));
    draft(c, "MWMWMWMWMW");
    QCOMPARE(c.draftTrouble(), QString("wide"));
    c.clear();
    QCOMPARE(c.draft(), QString());
  }

  void the_facts_are_those_of_the_class_file() {
    wire::Hall hall = touch_hall();
    const auto& cls = the_class(hall);
    const qint64 at_1818 = 1'772'731'080'000;  // 2026-03-05T18:18:00+01:00
    const auto f = facts_of(cls, at_1818, 3600, [](const wire::MemberView& m) { return m.id == "m1"; });
    QCOMPARE(f.times, QStringLiteral("18:30 – 19:10"));
    QCOMPARE(f.minutes_to_start, 12);
    QCOMPARE(f.stations, 3);
    QCOMPARE(static_cast<int>(f.people.size()), 3);  // a guest has no name to find
    const auto later =
        facts_of(cls, at_1818 + 86'400'000, 3600, [](const wire::MemberView&) { return false; });
    QCOMPARE(later.minutes_to_start, -1);
  }
};

QTEST_MAIN(TouchCheckInTest)
#include "tst_touch_check_in.moc"
