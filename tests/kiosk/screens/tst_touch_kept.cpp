// SPDX-License-Identifier: GPL-3.0-or-later
// What the touch screen tells of a check-in and of a set, and how an undo gives back what was before.
#include <QJsonArray>
#include <QSignalSpy>
#include <QTest>

#include "kiosk/screens/touch_kept.h"
#include "tests/kiosk/screens/touch_class.h"

using namespace floorwheel;
using namespace floorwheel::screens;
using namespace floorwheel::test;

namespace {
struct Told {
  QString kind;
  QJsonObject body;
};
struct Line {
  std::vector<Told> told;
  TouchKept kept{[this](const QString& kind, const QJsonObject& body) {
    told.push_back({kind, body});
    return QStringLiteral("id%1").arg(told.size());
  }};
};
wire::SetRecord squat(int load_hg = 160) {
  wire::SetRecord r;
  r.member = "m1";
  r.station = "A";
  r.exercise = "goblet-squat";
  r.slot = 1;
  r.load_hg = load_hg;
  r.reps = 12;
  r.rir = 2;
  return r;
}
}  // namespace

class TouchKeptTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void a_record_says_all_the_hub_needs() {
    const wire::Hall hall = touch_hall();
    Line l;
    l.kept.keep(the_class(hall), squat(), "Ana P.");
    QCOMPARE(l.told.at(0).kind, QString("record.add"));
    const QJsonObject want{{"class", "11111111-1111-4111-8111-111111111111"},
                           {"member", "m1"},
                           {"station", "A"},
                           {"slot", 1},
                           {"exercise", "goblet-squat"},
                           {"done", true},
                           {"load_hg", 160},
                           {"reps", 12},
                           {"rir", 2}};
    QCOMPARE(l.told.at(0).body, want);
    QCOMPARE(l.kept.what(), QString("record"));
    QCOMPARE(l.kept.alias(), QString("Ana P."));
  }

  void it_counts_at_once_and_until_the_hall_has_it() {
    wire::Hall hall = touch_hall();
    Line l;
    l.kept.keep(the_class(hall), squat(), "Ana P.");
    QVERIFY(l.kept.record_of(the_class(hall), "m1", 1) != nullptr);
    l.kept.on_hall(99);  // rows of others
    QVERIFY(l.kept.record_of(the_class(hall), "m1", 1) != nullptr);
    l.kept.on_receipt("id1", 100);
    l.kept.on_hall(99);
    QVERIFY(l.kept.record_of(the_class(hall), "m1", 1) != nullptr);
    l.kept.on_hall(100);
    QVERIFY(l.kept.record_of(the_class(hall), "m1", 1) == nullptr);  // the hall's word counts now
    auto in_hall = squat();
    in_hall.id = "id1";
    the_class(hall).records[{"m1", 1}] = in_hall;
    QCOMPARE(l.kept.record_of(the_class(hall), "m1", 1)->id, std::string("id1"));
  }

  void a_second_record_of_a_set_corrects_the_first() {
    const wire::Hall hall = touch_hall();
    Line l;
    l.kept.keep(the_class(hall), squat(), "Ana P.");
    l.kept.keep(the_class(hall), squat(200), "Ana P.");
    QCOMPARE(l.told.at(1).kind, QString("record.correct"));
    QCOMPARE(l.told.at(1).body,
             (QJsonObject{{"record", "id1"}, {"done", true}, {"load_hg", 200}, {"reps", 12}, {"rir", 2}}));
    l.kept.undo();  // what counted before the correction counts again
    QCOMPARE(l.told.at(2).kind, QString("record.correct"));
    QCOMPARE(l.told.at(2).body,
             (QJsonObject{{"record", "id2"}, {"done", true}, {"load_hg", 160}, {"reps", 12}, {"rir", 2}}));
    QCOMPARE(l.kept.record_of(the_class(hall), "m1", 1)->load_hg, 160);
  }

  void undo_of_a_first_record_leaves_a_set_not_done() {
    const wire::Hall hall = touch_hall();
    Line l;
    l.kept.keep(the_class(hall), squat(), "Ana P.");
    QVERIFY(l.kept.undoable());
    l.kept.undo();
    QCOMPARE(l.told.at(1).body, (QJsonObject{{"record", "id1"}, {"done", false}}));
    QVERIFY(!l.kept.record_of(the_class(hall), "m1", 1)->done);
    QVERIFY(!l.kept.undoable());
    l.kept.undo();
    QCOMPARE(l.told.size(), 2);
  }

  void a_check_in_is_taken_back() {
    const wire::Hall hall = touch_hall();
    const auto& c = the_class(hall);
    Line l;
    l.kept.check_in(c.id, "m1", "Ana P.");
    QVERIFY(l.kept.here(c, c.members[0]));
    l.kept.not_me();
    QCOMPARE(l.told.at(1).kind, QString("check_in.undo"));
    QVERIFY(!l.kept.here(c, c.members[0]));
  }

  void not_me_takes_no_record_back() {
    const wire::Hall hall = touch_hall();
    Line l;
    l.kept.keep(the_class(hall), squat(), "Ana P.");
    l.kept.not_me();
    QCOMPARE(l.told.size(), 1);
  }

  void a_refusal_is_said_and_nothing_counts() {
    const wire::Hall hall = touch_hall();
    Line l;
    l.kept.keep(the_class(hall), squat(), "Ana P.");
    l.kept.on_refused("other", "no", "");
    QCOMPARE(l.kept.what(), QString("record"));
    l.kept.on_refused("id1", "slot 1 has no such station", "Record the station of the run sheet.");
    QCOMPARE(l.kept.what(), QString("refused"));
    QCOMPARE(l.kept.trouble(), QString("slot 1 has no such station. Record the station of the run sheet."));
    QVERIFY(l.kept.record_of(the_class(hall), "m1", 1) == nullptr);
    QVERIFY(!l.kept.undoable());
  }

  void the_line_goes_by_itself_and_its_undo_with_it() {
    const wire::Hall hall = touch_hall();
    Line l;
    QCOMPARE(l.kept.lineMs(), 8000);
    l.kept.setLineMs(1);
    QSignalSpy changed(&l.kept, &TouchKept::changed);
    l.kept.keep(the_class(hall), squat(), "Ana P.");
    QTRY_COMPARE(l.kept.what(), QString());
    QVERIFY(!l.kept.undoable());
    QVERIFY(l.kept.record_of(the_class(hall), "m1", 1) != nullptr);  // the record stays
  }
};

QTEST_GUILESS_MAIN(TouchKeptTest)
#include "tst_touch_kept.moc"
