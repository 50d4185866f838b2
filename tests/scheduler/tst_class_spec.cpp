// SPDX-License-Identifier: GPL-3.0-or-later
// Class seconds, guests' ids and wall letters against the formulas of the file format.
#include <QTest>

#include "scheduler/class_spec.h"

using namespace floorwheel;

class TestClassSpec : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void ids_go_both_ways() {
    for (int g = 0; g < group_count; ++g)
      QCOMPARE(group_from(id_of(static_cast<Group>(g))), static_cast<Group>(g));
    for (int f = 0; f < feature_count; ++f)
      QCOMPARE(feature_from(id_of(static_cast<Feature>(f))), static_cast<Feature>(f));
    QVERIFY(!group_from("heart"));
  }

  // show 60 + warm-up 360 + lead-in 30 + 3 (40 + 20) + break 90 + cool-down 300
  void class_seconds_add_up() {
    ClassSpec c;
    c.show_s = 60;
    c.warm_up_s = 360;
    c.lead_in_s = 30;
    c.cool_down_s = 300;
    c.breaks = {{2, 90}, {3, 500}};
    QCOMPARE(class_seconds(c, 3), 60 + 360 + 30 + 180 + 90 + 300);
    QCOMPARE(class_seconds(c, 2), 60 + 360 + 30 + 120 + 300);
  }

  void guests_skip_ids_that_are_taken() {
    ClassSpec c;
    c.members.resize(1);
    c.members[0].id = "G1";
    add_guests(c, 2);
    QCOMPARE(c.members[1].id, std::string("G2"));
    QCOMPARE(c.members[2].id, std::string("G3"));
    QVERIFY(c.members[2].guest);
  }

  void letters_keep_capitals_and_fill_in_file_order() {
    ClassSpec c;
    for (const char* id : {"row", "A", "bench"}) {
      c.stations.emplace_back();
      c.stations.back().id = id;
    }
    QCOMPARE(wall_letters(c), (std::vector<std::string>{"B", "A", "C"}));
    c.stations.assign(32, {});
    const auto letters = wall_letters(c);
    QCOMPARE(letters[21], std::string("Z"));
    QCOMPARE(letters[22], std::string("2"));
    QCOMPARE(letters[29], std::string("9"));
    QCOMPARE(letters[30], std::string("AA"));
    QCOMPARE(letters[31], std::string("AB"));
    for (const auto& letter : letters) QVERIFY(letter.find_first_of("IOQW") == std::string::npos);
  }
};

QTEST_APPLESS_MAIN(TestClassSpec)
#include "tst_class_spec.moc"
