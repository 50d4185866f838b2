// SPDX-License-Identifier: GPL-3.0-or-later
// What 'My week' says of rows as the hub answers them: every rule has its sentence, short enough for two
// lines, and a trend its line.
#include <QJsonArray>
#include <QSet>
#include <QtTest>

#include "kiosk/screens/touch_week_words.h"

using namespace floorwheel;
using Words = floorwheel::screens::TouchWeekWords;

namespace {

QJsonObject row(const char* rule, const char* change, bool ask = false) {
  return {{"rule", rule},  {"change", change}, {"ask_instructor", ask},    {"load_kg", 27.5},
          {"hold", false}, {"sets", 3},        {"reps", QJsonArray{8, 12}}};
}

}  // namespace

class TestTouchWeekWords : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() { QLocale::setDefault(QLocale::c()); }

  void every_group_has_its_own_word() {
    QSet<QString> words;
    for (int g = 0; g < group_count; ++g) words.insert(Words::group(static_cast<Group>(g)));
    QCOMPARE(words.size(), static_cast<qsizetype>(group_count));
    QVERIFY(!words.contains(QString()));
  }

  void sets_are_said_with_their_band() {
    QCOMPARE(Words::sets(0, 0), QString("none yet"));
    QCOMPARE(Words::sets(1, 1), QString("one set, under 3"));
    QCOMPARE(Words::sets(9, 2), QString("9 sets, 3 to 9"));
    QCOMPARE(Words::sets(10, 3), QString("10 sets, 10 to 15"));
    QCOMPARE(Words::sets(16, 4), QString("16 sets, over 15"));
  }

  void loads_are_said_whole_or_with_one_decimal() {
    QJsonObject next = row("in-range", "same");
    QCOMPARE(Words::load(next), QString("27.5 kg × 8–12, 3 sets"));
    next["load_kg"] = 60;
    next["sets"] = 1;
    QCOMPARE(Words::load(next), QString("60 kg × 8–12, one set"));
    next["load_kg"] = 0;
    QCOMPARE(Words::load(next), QString("own body × 8–12, one set"));
    next["hold"] = true;
    next["reps"] = QJsonArray{30, 30};
    QCOMPARE(Words::load(next), QString("own body × 30 s, one set"));
    next["load_kg"] = QJsonValue::Null;
    QVERIFY(Words::load(next).startsWith("ask for a load"));
  }

  // As the training rules name them; two lines of the page hold about 90 letters.
  void every_rule_has_its_sentence() {
    QSet<QString> said;
    int cases = 0;
    for (const char* rule :
         {"pain", "return", "below-range", "top-of-range", "big-step", "more-reps", "stall", "in-range"})
      for (const char* change : {"up", "same", "down"}) {
        const QString reason = Words::reason(row(rule, change));
        QVERIFY2(reason.endsWith('.') && reason.size() <= 90, qPrintable(reason));
        said.insert(reason);
        ++cases;
      }
    QCOMPARE(cases, 24);
    QCOMPARE(said.size(), qsizetype{10});  // two of them differ with the load
    QVERIFY(Words::reason(row("return", "down")).startsWith("Lighter"));
    QVERIFY(!Words::reason(row("return", "same")).contains("Lighter"));
    for (const char* rule : {"pain", "big-step", "stall"})
      QVERIFY(Words::reason(row(rule, "same")).contains("ask the instructor"));
    QVERIFY(Words::reason(row("in-range", "same", true)).contains("ask the instructor"));
  }

  void a_decision_is_said_before_the_rule_but_pain_before_it() {
    QJsonObject next = row("top-of-range", "same");
    next["override"] = QJsonObject{{"decided_by", "The instructor"}, {"decided_on", "2026-03-02"}};
    QCOMPARE(Words::reason(next), QString("Decided by the instructor on 2 March."));
    next["rule"] = "pain";
    QVERIFY(Words::reason(next).startsWith("It hurt"));
  }

  void a_trend_is_a_line_in_its_box() {
    const auto point = [](const char* day, double kg) {
      return QJsonObject{{"day", day}, {"one_rm_kg", kg}};
    };
    QJsonObject trend{
        {"points", QJsonArray{point("2026-03-02", 60), point("2026-03-09", 66.04), point("2026-03-30", 64)}},
        {"per_week_kg", 1.02}};
    QCOMPARE(Words::trend(trend), QString("60 to 64 kg, +1 a week"));
    const QList<QPointF> line = Words::line(trend);
    QCOMPARE(line.size(), qsizetype{3});
    QCOMPARE(line[0], QPointF(0, 1));
    QCOMPARE(line[1], QPointF(0.25, 0));
    QCOMPARE(line[2].x(), 1.0);
    trend["per_week_kg"] = -0.5;
    QVERIFY(Words::trend(trend).endsWith("kg, -0.5 a week") ||
            Words::trend(trend).endsWith("kg, −0.5 a week"));
    trend["points"] = QJsonArray{point("2026-03-02", 60), point("2026-03-09", 60)};
    QCOMPARE(Words::line(trend), (QList<QPointF>{{0, 0.5}, {1, 0.5}}));
    trend["points"] = QJsonArray{point("2026-03-02", 60)};
    QVERIFY(Words::line(trend).isEmpty());
  }
};

QTEST_GUILESS_MAIN(TestTouchWeekWords)
#include "tst_touch_week_words.moc"
