// SPDX-License-Identifier: GPL-3.0-or-later
// The table a person reads, to the letter, for a plan made by hand.
#include <QTest>
#include <clocale>

#include "kiosk/cli/plan_text.h"
#include "kiosk/cli/text.h"
#include "kiosk/files/class_file.h"
#include "kiosk/files/exercise_table.h"
#include "tests/kiosk/cli/program.h"
#include "tests/kiosk/files/example.h"

using namespace floorwheel;

class TestPlanText : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() { std::setlocale(LC_CTYPE, "C.UTF-8"); }

  // Robin comes for two slots and does box squats at A for goblet squats; A and bench share a group.
  void the_table_is_read_at_a_glance() {
    auto parsed = files::parse_class(
        "[class]\nname = \"Small\"\nlaps = 1\nwork_s = 40\nchange_s = 20\nlength_min = 5\n"
        "[[station]]\nid = \"A\"\nexercise = \"goblet-squat\"\nsubstitutes = [\"box-squat\"]\ncapacity = "
        "2\nat = "
        "[0, 0]\n[[station]]\nid = \"leg\"\nexercise = \"leg-press\"\ncapacity = 1\nat = [3, 4]\n"
        "[[member]]\nid = \"m01\"\nshown_as = \"R\xC3\xB8"
        "bin\"\nlevel = \"novice\"\npresent = [1, 2]\n"
        "excluded_features = [\"deep-knee\"]\n"
        "[[member]]\nid = \"m02\"\nshown_as = \"Sam\"\nlevel = \"novice\"\n",
        "x", files::shipped_exercises());
    const ClassSpec c = std::get<ClassSpec>(parsed);
    Plan p;
    p.rotation = {3, Style::ring, {0, 1}, {{0, 1, nowhere}, {nowhere, 0, 1}}};
    p.cost[Component::back_to_back] = 2;
    p.cost[Component::idle] = 1;
    p.cost[Component::walk_cm] = 1000;
    p.bound[Component::idle] = 1;
    p.proven = 3;
    p.reasons = {"By hand."};
    const QByteArray golden = file_text(source_path("tests/kiosk/cli/plan_text.golden"));
    QCOMPARE(QString::fromStdString(cli::plan_text(c, p)), QString::fromUtf8(golden));
  }

  void numbers_and_times_in_words() {
    QCOMPARE(cli::clock_text(754), std::string("12:34"));
    QCOMPARE(cli::clock_text(3754), std::string("1:02:34"));
    QCOMPARE(cli::clock_text(5), std::string("0:05"));
    QCOMPARE(cli::decimal_text(1250, 2), std::string("12.50"));
    QCOMPARE(cli::decimal_text(7, 2), std::string("0.07"));
    QCOMPARE(cli::listed({"A", "B", "C"}), std::string("A, B and C"));
    QCOMPARE(cli::width_of("R\xC3\xB8"
                           "bin"),
             5U);                                 // U+00F8 is two bytes, one column
    QCOMPARE(cli::width_of("\xE6\x9D\xB1"), 2U);  // U+6771 is wide
    QCOMPARE(cli::width_of("e\xCC\x81"), 1U);     // U+0301 combines
    QCOMPARE(cli::width_of("\xFF"), 1U);          // no UTF-8
    QCOMPARE(cli::columns({{"a", "b"}, {"ccc", ""}}), std::string("a    b\nccc\n"));
  }
};

QTEST_APPLESS_MAIN(TestPlanText)
#include "tst_plan_text.moc"
