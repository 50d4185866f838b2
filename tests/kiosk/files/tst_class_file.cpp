// SPDX-License-Identifier: GPL-3.0-or-later
// The class file: every key of the complete example arrives, every mistake is named with its place and what
// would be right, and no change of bytes brings the reader down.
#include <QTest>
#include <random>

#include "kiosk/files/class_file.h"
#include "kiosk/files/exercise_table.h"
#include "tests/kiosk/files/example.h"

using namespace floorwheel;
using files::FileError;

namespace {

ClassSpec read(const std::string& toml) {
  auto result = files::parse_class(toml, "x.class.toml", files::shipped_exercises());
  if (const auto* error = std::get_if<FileError>(&result)) qFatal("%s", files::text_of(*error).c_str());
  return std::get<ClassSpec>(result);
}

std::string error_of(const std::string& toml) {
  auto result = files::parse_class(toml, "x.class.toml", files::shipped_exercises());
  const auto* error = std::get_if<FileError>(&result);
  return error ? files::text_of(*error) : "";
}

}  // namespace

class TestClassFile : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void every_key_of_the_example_arrives() {
    const ClassSpec c = read(example::class_file);
    QCOMPARE(c.name, std::string("Thursday evening ring"));
    QCOMPARE(*c.start, std::string("2026-03-05T18:30:00+01:00"));
    QCOMPARE(*c.length_s, 3600);
    QCOMPARE(c.laps, 1);
    QCOMPARE(c.work_s, 40);
    QCOMPARE(c.change_s, 20);
    QCOMPARE(*c.slots, 3);
    QVERIFY(c.style == Style::automatic);
    QCOMPARE(c.show_s, 60);
    QCOMPARE(c.warm_up_s, 360);
    QCOMPARE(c.lead_in_s, 30);
    QCOMPARE(c.cool_down_s, 300);
    QCOMPARE(c.recovery_s, (std::array<int, 3>{60, 90, 120}));
    QVERIFY(c.breaks == (std::vector<BreakSpec>{{2, 90}}));
    QVERIFY(c.equipment == (std::vector<EquipmentSpec>{{"kettlebell", 6}}));

    QCOMPARE(c.stations.size(), 2U);
    const StationSpec& a = c.stations[0];
    QCOMPARE(a.id, std::string("A"));
    QCOMPARE(a.exercise, std::string("goblet-squat"));
    QCOMPARE(a.substitutes, (std::vector<std::string>{"box-squat"}));
    QCOMPARE(a.capacity, 2);
    QCOMPARE(a.equipment, (std::vector<std::string>{"kettlebell"}));
    QCOMPARE(a.x_cm, 100);
    QCOMPARE(a.y_cm, 250);
    QCOMPARE(a.offers_hg, (std::vector<int>{80, 120, 160}));
    QCOMPARE(*a.reps, 12);
    QCOMPARE(*a.rir, 2);
    QVERIFY(a.closed == (std::vector<SlotRange>{{3, 3}}));
    QVERIFY(c.stations[1].substitutes.empty());
    QVERIFY(!c.stations[1].reps);

    QCOMPARE(c.members.size(), 3U);
    const MemberSpec& m = c.members[0];
    QCOMPARE(m.id, std::string("m01"));
    QCOMPARE(m.shown_as, std::string("Robin K."));
    QVERIFY(m.level == Level::novice);
    QVERIFY(m.present == (SlotRange{1, 3}));
    QVERIFY(m.excluded_groups == GroupSet{Group::shoulders});
    QVERIFY(m.excluded_features == FeatureSet{Feature::overhead});
    QVERIFY(m.excluded_exercises.empty());
    QCOMPARE(m.allowed_exercises, (std::vector<std::string>{"seated-row"}));
    QCOMPARE(*m.required, (std::vector<std::string>{"A", "B"}));
    QCOMPARE(m.loads_hg.at("A"), 160);
    QVERIFY(!c.members[1].required);
    QVERIFY(c.members[1].present == SlotRange{});
    QCOMPARE(c.members[2].id, std::string("G1"));
    QVERIFY(c.members[2].guest && c.members[2].level == Level::novice);
    QVERIFY(c.pairs == (std::vector<PairSpec>{{"m01", "m02", PairRule::apart}}));

    const Exercise& e = c.exercises.at("goblet-squat");
    QVERIFY(e.assisting == (GroupSet{Group::lower_back, Group::abs}));  // the file's, not the table's
    QVERIFY(e.loads_hg.empty());
    QCOMPARE(c.exercises.size(), files::shipped_exercises().size());
  }

  void what_is_left_out_keeps_its_default() {
    const ClassSpec c = read(example::smallest);
    QVERIFY(!c.start && !c.length_s && !c.slots);
    QVERIFY(c.style == Style::automatic);
    QCOMPARE(c.lead_in_s, 20);  // change_s
    QCOMPARE(c.show_s + c.warm_up_s + c.cool_down_s, 0);
    QCOMPARE(c.recovery_s, (std::array<int, 3>{60, 90, 120}));
    QCOMPARE(read(example::with("{ novice = 60, intermediate = 90, advanced = 120 }", "{ novice = 75 }"))
                 .recovery_s,
             (std::array<int, 3>{75, 90, 120}));
  }

  // TOML 1.0: a blank may stand for the T, and t and z may be small; RFC 3339, 5.6.
  void start_is_rfc_3339() {
    QCOMPARE(*read(example::with("2026-03-05T18:30:00+01:00", "2026-03-05 18:30:00z")).start,
             std::string("2026-03-05T18:30:00Z"));
  }

  void open_ranges_go_to_the_end() {
    QVERIFY(read(example::with("present = [1, 3]", "present = [2]")).members[0].present ==
            (SlotRange{2, SlotRange::to_the_end}));
    QVERIFY(read(example::with("closed = [[3, 3]]", "closed = [[1, 1], [3]]")).stations[0].closed ==
            (std::vector<SlotRange>{{1, 1}, {3, SlotRange::to_the_end}}));
  }

  void numbers_are_rounded_as_written_data() {
    QTest::addColumn<QString>("metres");
    QTest::addColumn<int>("cm");
    // The double nearest to 1.005 is 1.00499999999999989...; the decimal as written is a half and goes up.
    QTest::newRow("half") << "1.005" << 101;
    QTest::newRow("below_half") << "1.00499999999999999999999" << 100;
    QTest::newRow("0.285") << "0.285" << 29;
    QTest::newRow("negative_half") << "-1.005" << -100;
    QTest::newRow("negative_more") << "-1.0050001" << -101;
    QTest::newRow("exponent") << "1_0.05e-1" << 101;
    QTest::newRow("whole") << "7" << 700;
    QTest::newRow("hex") << "0x10" << 1600;
    QTest::newRow("tiny") << "4.9e-300" << 0;
    QTest::newRow("minus_zero") << "-0.0" << 0;
  }
  void numbers_are_rounded_as_written() {
    QFETCH(QString, metres);
    QFETCH(int, cm);
    QCOMPARE(
        read(example::with("at = [1.0, 2.5]", "at = [" + metres.toStdString() + ", 0]")).stations[0].x_cm,
        cm);
  }

  void loads_are_rounded_to_a_hectogram_and_sorted() {
    const ClassSpec c = read(example::with("[8, 12, 16]", "[12.25, 8, 12.249, 12.3, 1.05]"));
    QCOMPARE(c.stations[0].offers_hg, (std::vector<int>{11, 80, 122, 123}));
    QCOMPARE(read(example::with("A = 16.0", "A = 0.0, B = 2.25")).members[0].loads_hg.at("B"), 23);
  }

  void ten_thousand_members_are_read() {
    std::string toml = example::class_file;
    for (int i = 0; i < 10'000; ++i)
      toml += "[[member]]\nid = \"x" + std::to_string(i) + "\"\nshown_as = \"X\"\nlevel = \"novice\"\n";
    QCOMPARE(read(toml).members.size(), 10'003U);
  }

  void mistakes_are_named_with_their_place_data();
  void mistakes_are_named_with_their_place() {
    QFETCH(QString, from);
    QFETCH(QString, to);
    QFETCH(QString, error);
    const std::string toml = example::with(from.toStdString(), to.toStdString());
    QVERIFY2(!toml.empty(), "the example does not have the text to replace");
    QCOMPARE(QString::fromStdString(error_of(toml)), "x.class.toml:" + error);
  }

  void whole_files_that_are_none() {
    QCOMPARE(error_of(""),
             std::string("x.class.toml:1:1: the file has no [class]; begin with [class] and its name, "
                         "work_s and change_s"));
    QVERIFY(error_of("{ \"format\": \"floorwheel-rotation\" }").find("looks like JSON") != std::string::npos);
    std::string nobody = example::smallest;
    nobody.erase(nobody.find("[[member]]"));
    QVERIFY(error_of(nobody).find("nobody is in the class; add a [[member]], or guests = 1") !=
            std::string::npos);
    QVERIFY(error_of(nobody.replace(nobody.find("laps"), 0, "guests = 1\n")).empty());
    std::string no_stations = example::smallest;
    no_stations.erase(no_stations.find("[[station]]"),
                      no_stations.find("[[member]]") - no_stations.find("[[station]]"));
    QVERIFY(error_of(no_stations).find("the class has no stations; add a [[station]]") != std::string::npos);
  }

  void a_file_that_is_not_there_is_named() {
    const auto result = files::read_class("/nowhere/x.class.toml", files::shipped_exercises());
    QCOMPARE(files::text_of(std::get<FileError>(result)),
             std::string("/nowhere/x.class.toml: cannot be opened (No such file or directory); give the path "
                         "of a class file (*.class.toml)"));
    QVERIFY(std::holds_alternative<FileError>(files::read_class("/", files::shipped_exercises())));
  }

  // Bytes changed, left out, doubled and swapped at random: an answer or an error with its place, never a
  // crash. FLOORWHEEL_SEED repeats a run.
  void no_mutation_brings_the_reader_down() {
    const unsigned seed = qEnvironmentVariableIsSet("FLOORWHEEL_SEED")
                              ? qEnvironmentVariable("FLOORWHEEL_SEED").toUInt()
                              : std::random_device{}();
    qInfo("FLOORWHEEL_SEED=%u", seed);
    std::mt19937 random(seed);
    const auto below = [&](std::size_t n) { return random() % n; };
    int read_all_the_same = 0, refused = 0;
    const int rounds = qEnvironmentVariableIsSet("FLOORWHEEL_LONG") ? 200'000 : 2000;
    for (int round = 0; round < rounds; ++round) {
      std::string toml = example::class_file;
      for (std::size_t n = 1 + below(4); n > 0; --n) {
        const std::size_t at = below(toml.size()), length = 1 + below(12);
        switch (below(4)) {
          case 0:
            toml[at] = static_cast<char>(below(256));
            break;
          case 1:
            toml.erase(at, length);
            break;
          case 2:
            toml.insert(at, toml.substr(below(toml.size()), length));
            break;
          default:
            toml.replace(at, 1, std::string(1, "0-9[]{}\"=.,\n#_'\\eE+"[below(19)]));
            break;
        }
      }
      const auto result = files::parse_class(toml, "x", files::shipped_exercises());
      if (const auto* error = std::get_if<FileError>(&result)) {
        ++refused;
        QVERIFY(error->line > 0 && error->column > 0);
        QVERIFY(!error->what.empty() && !error->right.empty());
      } else {
        ++read_all_the_same;
      }
    }
    QVERIFY(read_all_the_same > 0 && refused > 0);
  }
};

void TestClassFile::mistakes_are_named_with_their_place_data() {
  QTest::addColumn<QString>("from");
  QTest::addColumn<QString>("to");
  QTest::addColumn<QString>("error");
  const auto row = [](const char* name, const char* from, const char* to, const char* error) {
    QTest::newRow(name) << from << to << error;
  };
  row("typing_error", "laps = 1", "laps = = 1",
      "5:8: this is no TOML: value: could not determine value type; a text stands in \"quotes\", a list in [ "
      "]");
  row("open_quote", "\"m02\"\nshown_as", "\"m02\nshown_as",
      "56:10: this is no TOML: string: unescaped control characters other than TAB (U+0009) are explicitly "
      "prohibited; close the text with a quote on the same "
      "line");
  row("unknown_key", "work_s", "wrok_s", "6:1: [class] has no key wrok_s; did you mean work_s?");
  row("unknown_table", "[[equipment]]", "[[equipmant]]",
      "21:3: a class file has no key equipmant; did you mean equipment?");
  row("unknown_station_key", "capacity = 2", "capasity = 2",
      "29:1: a [[station]] has no key capasity; did you mean capacity?");
  row("unknown_exercise", "\"seated-row\"\ncapacity", "\"seated-rwo\"\ncapacity",
      "39:12: exercise of station B: there is no exercise seated-rwo; did you mean seated-row?");
  row("unknown_station", "required = [\"A\", \"B\"]", "required = [\"A\", \"b\"]",
      "52:18: required of member m01: there is no station b; did you mean A?");
  row("unknown_member", "[\"m01\", \"m02\"]", "[\"m01\", \"m20\"]",
      "61:19: members of a [[pair]]: there is no member m20; did you mean m02?");
  row("unknown_group", "excluded_groups = [\"shoulders\"]", "excluded_groups = [\"shoulder\"]",
      "48:20: excluded_groups of member m01: there is no muscle group shoulder; did you mean shoulders?");
  row("unknown_feature", "[\"overhead\"]", "[\"over-head\"]",
      "49:22: excluded_features of member m01: there is no feature over-head; did you mean overhead?");
  row("unknown_level", "\"novice\"", "\"beginner\"",
      "46:9: level of member m01: there is no level beginner; did you mean novice?");
  row("unknown_style", "\"auto\"", "\"automatic\"",
      "9:9: style of [class]: there is no style automatic; did you mean auto?");
  row("unknown_equipment", "[\"kettlebell\"]", "[\"ketlebell\"]",
      "30:14: equipment of station A: there is no equipment ketlebell; did you mean kettlebell?");
  row("load_of_unknown_station", "A = 16.0", "C = 16.0",
      "53:14: loads_kg of member m01 has no key C; did you mean A?");
  row("station_without_exercise", "exercise = \"seated-row\"\ncapacity", "capacity",
      "37:1: station B has no exercise; write exercise = \"goblet-squat\", an id of the exercise table");
  row("capacity_0", "capacity = 2", "capacity = 0",
      "29:12: capacity of station A is 0; write a number from 1 to 100000");
  row("present_9_3", "present = [1, 3]", "present = [9, 3]",
      "47:11: present of member m01 ends before it begins; write [3, 9] if this was meant; the first slot "
      "stands first");
  row("closed_backwards", "closed = [[3, 3]]", "closed = [[3, 2]]",
      "35:11: closed of station A ends before it begins; write [2, 3] if this was meant; the first slot "
      "stands "
      "first");
  row("closed_flat", "closed = [[3, 3]]", "closed = [3, 3]",
      "35:11: closed of station A is no range of slots; write [first, last], or [first] for: to the end");
  row("slot_0", "present = [1, 3]", "present = [0, 3]",
      "47:12: present of member m01 is 0; write a number from 1 to 1000");
  row("two_breaks", "[[equipment]]", "[[break]]\nafter_slot = 2\ns = 5\n[[equipment]]",
      "22:14: there are two breaks after slot 2; write one; the first stands in line 18");
  row("guest_in_pair", "[\"m01\", \"m02\"]", "[\"m01\", \"G1\"]",
      "61:19: a guest can stand in no pair: G1; pair members who have an id of their own");
  row("pair_of_one", "[\"m01\", \"m02\"]", "[\"m01\", \"m01\"]",
      "61:11: members of a [[pair]] names m01 twice; write members = [\"m01\", \"m02\"]");
  row("pair_of_three", "[\"m01\", \"m02\"]", "[\"m01\", \"m02\", \"m01\"]",
      "61:11: members of a [[pair]] names 3, not two; write members = [\"m01\", \"m02\"]");
  row("letter_W", "id = \"A\"", "id = \"W\"",
      "26:6: the station id W cannot be a letter on the wall; take another capital: I and O look like "
      "figures, "
      "Q like O, and W is the waiting place");
  row("id_with_capitals", "id = \"m02\"", "id = \"Sam_L\"",
      "56:6: the id \"Sam_L\" is not spelled as ids are; write lower case letters and figures, words joined "
      "by "
      "'-': sam_l");
  row("id_twice", "id = \"m02\"", "id = \"m01\"",
      "56:6: the member id m01 is taken; give one of them another; the first stands in line 44");
  row("start_without_offset", "18:30:00+01:00", "18:30:00",
      "3:9: start of [class] has no offset from UTC; write start = 2026-03-05T18:30:00+01:00, with its "
      "offset "
      "and without quotes");
  row("start_in_quotes", "2026-03-05T18:30:00+01:00", "\"2026-03-05T18:30:00+01:00\"",
      "3:9: start of [class] is no date with a time; write start = 2026-03-05T18:30:00+01:00, with its "
      "offset "
      "and without quotes");
  row("start_on_no_day", "2026-03-05T", "2026-02-30T",
      "3:19: this is no TOML: date: expected day between 1 and 28 (inclusive), saw 30; write "
      "2026-03-05T18:30:00+01:00");
  row("nan", "at = [1.0, 2.5]", "at = [nan, 2.5]",
      "31:7: at of station A is nan; write a number from -1000 to 1000");
  row("inf", "A = 16.0", "A = inf",
      "53:18: A of loads_kg of member m01 is inf; write a number from 0 to 1000");
  row("negative_load", "A = 16.0", "A = -0.01",
      "53:18: A of loads_kg of member m01 is -0.01; write a number from 0 to 1000");
  row("absurd_load", "A = 16.0", "A = 1e30",
      "53:18: A of loads_kg of member m01 is 1e30; write a number from 0 to 1000");
  row("absurd_whole", "at = [1.0, 2.5]", "at = [9223372036854775807, 2.5]",
      "31:7: at of station A is 9223372036854775807; write a number from -1000 to 1000");
  row("part_of_a_second", "work_s = 40", "work_s = 40.5",
      "6:10: work_s of [class] is no whole number; write work_s = 40, whole seconds");
  row("no_work", "work_s = 40", "work_s = 0", "6:10: work_s of [class] is 0; write a number from 1 to 36000");
  row("no_work_s", "work_s = 40\n", "", "1:1: [class] has no work_s; write work_s = 40, whole seconds");
  row("empty_alias", "\"Sam L.\"", "\" \"",
      "57:12: shown_as of member m02: the text is empty; write what people shall read");
  row("alias_on_two_lines", "\"Sam L.\"", "\"Sam\\nL.\"",
      "57:12: shown_as of member m02: the text has a control character; write visible characters on one "
      "line");
  row("required_twice", "required = [\"A\", \"B\"]", "required = [\"A\", \"A\"]",
      "52:18: required of member m01 names A twice; name it once");
  row("station_as_table", "[[equipment]]\nid = \"kettlebell\"\nunits = 6\n", "[equipment]\nunits = 6\n",
      "21:1: equipment is no list of tables; write [[equipment]], once for each");
  row("exercise_without_group", "primary = [\"quadriceps\", \"glutes\"]", "primary = []",
      "67:11: primary of exercise goblet-squat names no muscle group; write primary = [\"quadriceps\", "
      "\"glutes\"]");
}

QTEST_APPLESS_MAIN(TestClassFile)
#include "tst_class_file.moc"
