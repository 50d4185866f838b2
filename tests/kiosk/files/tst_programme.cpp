// SPDX-License-Identifier: GPL-3.0-or-later
// Programmes read and checked. tests/kiosk/files/programmes/ holds programmes of our own; the last lines of
// each say what the rules find, worked out by hand: severity, rule, subject (exercise, else group, else day)
// and line.
#include <QDir>
#include <QTest>
#include <fstream>
#include <iterator>
#include <set>
#include <sstream>

#include "kiosk/files/exercise_table.h"
#include "kiosk/files/programme_file.h"
#include "scheduler/training/check.h"

using namespace floorwheel;

namespace {

std::string text_at(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::string folder() {
  return qEnvironmentVariable("FLOORWHEEL_SOURCE").toStdString() + "/tests/kiosk/files/programmes/";
}

std::string subject(const Finding& f) {
  if (!f.exercise.empty()) return f.exercise;
  return f.group ? std::string(id_of(*f.group)) : f.day;
}

std::string line_of(const Finding& f) {
  return std::string(id_of(f.severity)) + " " + std::string(f.rule) + " " + subject(f) + " line " +
         std::to_string(f.line);
}

std::multiset<std::string> expected_in(const std::string& toml) {
  std::multiset<std::string> lines;
  std::istringstream in(toml);
  for (std::string line; std::getline(in, line);)
    if (line.starts_with("# finds: ") && line != "# finds: nothing") lines.insert(line.substr(9));
  return lines;
}

Programme programme_of(const std::string& toml) {
  auto read = files::parse_programme(toml, "p.programme.toml", files::shipped_exercises());
  if (const auto* error = std::get_if<files::FileError>(&read)) qFatal("%s", files::text_of(*error).c_str());
  return std::get<Programme>(std::move(read));
}

/// The good programme of the tests of bad input, with one text in place of another.
std::string with(const std::string& from, const std::string& to) {
  std::string toml =
      "[programme]\nname = \"P\"\nlevel = \"novice\"\nweeks = 8\n\n[[day]]\nname = \"Monday\"\n"
      "[[day.exercise]]\nexercise = \"front-squat\"\nworking_sets = 3\nreps = [6, 10]\nrir = [1, 3]\n"
      "rest_s = 120\ntempo_s = { eccentric = 2.0, concentric = 1.0 }\n";
  const auto place = toml.find(from);
  if (place == std::string::npos) qFatal("no %s in the programme", from.c_str());
  return toml.replace(place, from.size(), to);
}

}  // namespace

class TestProgramme : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void findings_are_those_worked_out_by_hand_data() {
    QTest::addColumn<QString>("file");
    const QStringList names =
        QDir(QString::fromStdString(folder())).entryList({"*.programme.toml"}, QDir::Files);
    QVERIFY(names.size() >= 20);
    for (const QString& name : names) QTest::newRow(qPrintable(name)) << name;
  }
  void findings_are_those_worked_out_by_hand() {
    QFETCH(QString, file);
    const std::string toml = text_at(folder() + file.toStdString());
    QVERIFY(toml.find("# finds: ") != std::string::npos);
    std::multiset<std::string> found;
    const auto findings = check_programme(programme_of(toml), files::shipped_exercises());
    for (const Finding& f : findings) {
      found.insert(line_of(f));
      QVERIFY2(!f.found.empty() && !f.wanted.empty() && !f.source.empty() && !f.mend.empty(),
               line_of(f).c_str());
    }
    const auto expected = expected_in(toml);
    for (const std::string& line : expected) QVERIFY2(found.contains(line), ("not found: " + line).c_str());
    for (const std::string& line : found)
      QVERIFY2(expected.contains(line), ("found as well: " + line).c_str());
    QCOMPARE(found.size(), expected.size());
  }

  void every_rule_is_found_somewhere() {
    std::set<std::string> met;
    for (const QString& name : QDir(QString::fromStdString(folder())).entryList({"*.programme.toml"}))
      for (const std::string& line : expected_in(text_at(folder() + name.toStdString())))
        met.insert(line.substr(line.find(' ') + 1, line.find(' ', line.find(' ') + 1) - line.find(' ') - 1));
    const std::set<std::string> rules{
        "group-untrained",     "dose-low",         "dose-high",    "frequency-low",      "reps-outside",
        "failure-on-compound", "far-from-failure", "rest-short",   "circuit-neighbours", "recovery-days",
        "warm-up-missing",     "tempo-outside",    "day-too-long", "unknown-exercise"};
    QVERIFY(met == rules);
  }

  void order_of_days_changes_no_finding_but_its_line() {
    for (const QString& name : QDir(QString::fromStdString(folder())).entryList({"*.programme.toml"})) {
      Programme p = programme_of(text_at(folder() + name.toStdString()));
      const auto count = [&] { return check_programme(p, files::shipped_exercises()).size(); };
      const std::size_t before = count();
      std::set<std::string> names;
      for (const PlannedDay& d : p.days) names.insert(d.name);
      if (names.size() != p.days.size()) continue;  // the order within one day of the week does matter
      std::reverse(p.days.begin(), p.days.end());
      QCOMPARE(count(), before);
    }
  }

  void practice_is_not_counted_in_the_dose() {
    Programme p = programme_of(with("rest_s = 120", "rest_s = 120\npractice = true"));
    QCOMPARE(weekly_sets(p, files::shipped_exercises()), (std::array<int, group_count>{}));
    p.days[0].exercises[0].practice = false;
    QCOMPARE(weekly_sets(p, files::shipped_exercises())[static_cast<std::size_t>(Group::quadriceps)], 3);
  }

  // 2 rounds of two exercises: 2 x 10 x 3 s + 2 x 20 s held + 60 s each + the last one's rest once a round.
  void a_circuit_rests_once_a_round() {
    PlannedDay day;
    day.exercises = {{.exercise = "squat",
                      .working_sets = 2,
                      .reps = {6, 10},
                      .rest_s = 500,
                      .tempo_ms = {},
                      .circuit = "c"},
                     {.exercise = "plank",
                      .working_sets = 2,
                      .reps = {10, 20},
                      .rest_s = 30,
                      .tempo_ms = {},
                      .circuit = "c"}};
    QCOMPARE(day_seconds(day, files::shipped_exercises()), 60 + 40 + 120 + 60);
  }

  void bad_input_names_the_entry_data() {
    QTest::addColumn<QString>("from");
    QTest::addColumn<QString>("to");
    QTest::addColumn<QString>("says");
    const auto row = [](const char* name, const char* from, const char* to, const char* says) {
      QTest::newRow(name) << from << to << says;
    };
    row("no sets", "sets = 3", "sets = 0",
        "p.programme.toml:10:16: working_sets of front-squat is 0; write a number from 1");
    row("negative", "sets = 3", "sets = -3", "working_sets of front-squat is -3");
    row("absurd", "[6, 10]", "[6, 101]", "reps of front-squat is 101; write a number from 1 to 100");
    row("no range", "[6, 10]", "[10, 6]", "reps of front-squat ends below its beginning");
    row("nan", "120", "nan", "rest_s of front-squat is no whole number");
    row("tempo nan", "2.0", "nan", "eccentric of tempo_s of front-squat is nan");
    row("decimal comma", "2.0", "2,5", ":14:");
    row("negative rest", "120", "-1", "rest_s of front-squat is -1");
    row("unknown group", "weeks = 8", "weeks = 8\nleave_out = [\"calfs\"]", "did you mean calves?");
    row("unknown key", "rest_s", "rests_s", "has no key rests_s; did you mean rest_s?");
    row("unknown level", "novice", "beginner", "there is no level beginner");
    row("no weeks", "weeks = 8", "weeks = 0", "weeks of [programme] is 0");
    row("no name", "name = \"P\"\n", "", "[programme] has no name");
    row("spelling", "front-squat", "Front squat", "p.programme.toml:9:");
    row("two tables", "[[day.exercise]]", "[[exercise]]", "a programme file has no key exercise");
  }
  void bad_input_names_the_entry() {
    QFETCH(QString, from);
    QFETCH(QString, to);
    QFETCH(QString, says);
    const auto read = files::parse_programme(with(from.toStdString(), to.toStdString()), "p.programme.toml",
                                             files::shipped_exercises());
    const auto* error = std::get_if<files::FileError>(&read);
    QVERIFY(error);
    const QString text = QString::fromStdString(files::text_of(*error));
    QVERIFY2(text.contains(says), qPrintable(text));
    QVERIFY2(text.contains("; ") && text.startsWith("p.programme.toml:"), qPrintable(text));
  }

  void a_programme_without_days_or_a_day_without_exercises_is_refused() {
    for (const char* toml :
         {"", "[programme]\nname = \"P\"\nlevel = \"novice\"\nweeks = 8\n",
          "[programme]\nname = \"P\"\nlevel = \"novice\"\nweeks = 8\n[[day]]\nname = \"Monday\"\n"}) {
      const auto read = files::parse_programme(toml, "p.programme.toml", files::shipped_exercises());
      QVERIFY(std::holds_alternative<files::FileError>(read));
    }
  }
};

QTEST_APPLESS_MAIN(TestProgramme)
#include "tst_programme.moc"
