// SPDX-License-Identifier: GPL-3.0-or-later
// CSV against RFC 4180 by vectors worked by hand from its section 2 (the rule's number stands beside each),
// and the exercise table with its mistakes.
#include <QTest>
#include <fstream>
#include <sstream>

#include "kiosk/files/csv.h"
#include "kiosk/files/exercise_table.h"
#include "kiosk/files/text_file.h"

using namespace floorwheel;
using files::FileError;

namespace {

using Table = std::vector<std::vector<std::string>>;

Table table_of(const std::string& csv) {
  auto result = files::parse_csv(csv, "x.csv");
  if (const auto* error = std::get_if<FileError>(&result)) qFatal("%s", files::text_of(*error).c_str());
  Table table;
  for (const auto& row : std::get<std::vector<files::CsvRow>>(result)) {
    table.emplace_back();
    for (const auto& field : row.fields) table.back().push_back(field.text);
  }
  return table;
}

template <class T>
std::string error_of(const files::OrFileError<T>& result) {
  const auto* error = std::get_if<FileError>(&result);
  return error ? files::text_of(*error) : "";
}

const std::string header = "id,name,primary,assisting,features,kind,loads_kg,reps,rir,hold,substitutes\n";

std::string table_error(const std::string& lines) {
  return error_of(files::parse_exercises(header + lines, "x.csv"));
}

}  // namespace

class TestCsv : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void reads_rfc_4180() {
    // 1 and 2: lines end in CRLF, the last may lack it. LF alone is read as well.
    QCOMPARE(table_of("aaa,bbb\r\nzzz,yyy"), (Table{{"aaa", "bbb"}, {"zzz", "yyy"}}));
    QCOMPARE(table_of("a,b\nc,d\n"), (Table{{"a", "b"}, {"c", "d"}}));
    // 4: spaces are part of a field.
    QCOMPARE(table_of(" a , b\r\n"), (Table{{" a ", " b"}}));
    QCOMPARE(table_of("a,,\r\n"), (Table{{"a", "", ""}}));
    // 5: fields may stand in quotes.
    QCOMPARE(table_of("\"aaa\",\"\",ccc\r\n"), (Table{{"aaa", "", "ccc"}}));
    // 6: line breaks, quotes and commas stand in quotes.
    QCOMPARE(table_of("\"aaa\",\"b\r\nbb\",\"c,c\"\r\nzzz,yyy,xxx"),
             (Table{{"aaa", "b\r\nbb", "c,c"}, {"zzz", "yyy", "xxx"}}));
    // 7: a quote inside is doubled.
    QCOMPARE(table_of("\"aaa\",\"b\"\"bb\",\"\"\"\"\r\n"), (Table{{"aaa", "b\"bb", "\""}}));
  }

  void refuses_what_rfc_4180_does_not_have() {
    QCOMPARE(error_of(files::parse_csv("a,b\nc,d\"e\n", "x.csv")),
             std::string("x.csv:2:4: a quote stands where none can; put the whole field in quotes and double "
                         "each quote inside it (RFC 4180)"));
    QCOMPARE(error_of(files::parse_csv("a,b\nc,\"d\ne", "x.csv")),
             std::string("x.csv:2:3: a quoted field does not end; close it with a quote"));
  }

  void writes_what_it_reads() {
    QCOMPARE(files::csv_line({"aaa", "b\"bb", "c,c", "", "d\r\nd", " e"}),
             std::string("aaa,\"b\"\"bb\",\"c,c\",,\"d\r\nd\", e\r\n"));
    QCOMPARE(files::csv_line({"", "a"}), std::string(",a\r\n"));
    const Table odd{{"", "x"}, {"a;b", "\"\"", "\n"}, {"æ, ø", " ", "=1+1"}};
    std::string text;
    for (const auto& row : odd) text += files::csv_line(row);
    QCOMPARE(table_of(text), odd);
  }

  void places_are_line_and_character() {
    const auto result = files::parse_csv("\"ø\",b\r\n\r\n\"x\ny\",\"d\"\r\n", "x.csv");
    const auto& rows = std::get<std::vector<files::CsvRow>>(result);
    QCOMPARE(rows[0].fields[1].column, 5);
    QCOMPARE(rows[1].line, 3);
    QCOMPARE(rows[1].fields[1].line, 4);
    QCOMPARE(rows[1].fields[1].column, 4);
  }

  void the_shipped_table_is_the_file_in_config() {
    const QByteArray path = qgetenv("FLOORWHEEL_SOURCE") + "/config/exercises.csv";
    const auto text = files::read_text(path.toStdString(), "CSV");
    const auto parsed = files::parse_exercises(std::get<std::string>(text), path.toStdString());
    QCOMPARE(QString::fromStdString(error_of(parsed)), QString());
    QVERIFY(std::get<ExerciseTable>(parsed) == files::shipped_exercises());
    // A data line a member: lines of the file less its header.
    const std::string& csv = std::get<std::string>(text);
    QCOMPARE(static_cast<std::ptrdiff_t>(files::shipped_exercises().size()),
             std::count(csv.begin(), csv.end(), '\n') - 1);
  }

  void every_column_arrives() {
    const auto parsed = files::parse_exercises(
        "note,substitutes,hold,rir,reps,loads_kg,kind,features,assisting,primary,name,id\n"
        "x,b,true,0;2,20;40,2.25;1,isolation,floor;jump,abs,chest;lats,\"A, name\",a\n"
        "x,,,,,,compound,,,neck,B,b\n",
        "x.csv");
    QCOMPARE(QString::fromStdString(error_of(parsed)), QString());
    const Exercise& a = std::get<ExerciseTable>(parsed).at("a");
    QCOMPARE(a.name, std::string("A, name"));
    QVERIFY(a.primary == (GroupSet{Group::chest, Group::lats}));
    QVERIFY(a.assisting == GroupSet{Group::abs});
    QVERIFY(a.features == (FeatureSet{Feature::floor, Feature::jump}));
    QVERIFY(a.kind == ExerciseKind::isolation);
    QCOMPARE(a.loads_hg, (std::vector<int>{10, 23}));
    QCOMPARE(a.reps, (std::array<int, 2>{20, 40}));
    QCOMPARE(a.rir, (std::array<int, 2>{0, 2}));
    QVERIFY(a.hold);
    QCOMPARE(a.substitutes, std::vector<std::string>{"b"});
    const Exercise& b = std::get<ExerciseTable>(parsed).at("b");
    QCOMPARE(b.reps, (std::array<int, 2>{8, 12}));
    QVERIFY(!b.hold && b.loads_hg.empty());
  }

  void mistakes_in_the_table_are_named() {
    QCOMPARE(table_error("a,A,chset,,,compound,,,,,\n"),
             std::string("x.csv:2:5: primary: \"chset\" is not known; did you mean chest?"));
    QCOMPARE(
        table_error("a,A,chest,,,compound,1;x,,,,\n"),
        std::string("x.csv:2:22: loads_kg: \"x\" is no load; write kilograms from 0 to 1000, such as 12.5"));
    QCOMPARE(table_error("a,A,chest,,,compound,,12;8,,,\n"),
             std::string("x.csv:2:23: reps: \"12;8\" is no range; write 8;12"));
    QCOMPARE(table_error("a,A,chest,,,compound,,,,maybe,\n"),
             std::string("x.csv:2:25: hold: \"maybe\" is neither; write true or false"));
    QCOMPARE(table_error("a,A,chest,,,compound,,,,,b\n"),
             std::string("x.csv:2:26: substitutes: there is no exercise b; did you mean a?"));
    QCOMPARE(table_error("a,A,chest,,,compound,,,,,\na,A,chest,,,compound,,,,,\n"),
             std::string("x.csv:3:1: id: a stands there twice; leave one of them out"));
    QCOMPARE(table_error("a,A,chest\n"), std::string("x.csv:2:1: the line has 3 fields; write 11, as many as "
                                                     "the first line"));
    QCOMPARE(table_error(""),
             std::string("x.csv:1:1: the table has no exercises; write one a line after the column names"));
    QVERIFY(
        error_of(files::parse_exercises("id,name\n", "x.csv"))
            .starts_with("x.csv:1:1: the table has no column primary; the first line names at least id,"));
  }
};

QTEST_APPLESS_MAIN(TestCsv)
#include "tst_csv.moc"
