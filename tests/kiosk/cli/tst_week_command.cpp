// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel week` as a person or a script meets it. The ten weeks of config/demo/weeks are planned by the
// real program and judged from its output alone: doses, clashes, losses and changes are counted again from
// the stations it names, rules and values once more by the brute force's own pricing, and every goal is
// proven. What --out writes is planned by the real `floorwheel plan`.
#include <QDir>
#include <QJsonArray>
#include <QJsonObject>
#include <QTemporaryDir>
#include <QTest>
#include <algorithm>
#include <array>
#include <map>

#include "kiosk/files/exercise_table.h"
#include "kiosk/files/week_file.h"
#include "tests/kiosk/cli/program.h"
#include "tests/kiosk/cli/small_week.h"
#include "tests/support/week_brute_force.h"

using namespace floorwheel;

namespace {

QStringList demo_weeks() {
  QStringList paths;
  const QDir folder(source_path("config/demo/weeks"));
  for (const QString& name : folder.entryList({"*.week.toml"}, QDir::Files)) paths << folder.filePath(name);
  return paths;
}

using Counts = std::map<QString, int>;

/// Sets by group, or units by kind, of one class of the output.
Counts counted(const QJsonObject& c, const char* list, bool sets) {
  Counts counts;
  for (const auto& s : c["stations"].toArray())
    for (const auto& word : s.toObject()[list].toArray())
      counts[word.toString()] += sets ? s.toObject()["sets"].toInt() : 1;
  return counts;
}

int day_of(const QJsonObject& c) {
  const QStringList days{"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"};
  return static_cast<int>(days.indexOf(c["day"].toString()));
}

/// The five goals from nothing but the output: its stations and its targets.
struct Recount {
  std::map<QString, int> value;
  std::vector<int> loss;
  Counts total;
};

Recount recount(const QJsonObject& week) {
  Recount r;
  std::vector<Counts> sets, units;
  std::array<Counts, 7> day;
  std::vector<std::pair<int, std::size_t>> running;
  for (const auto& value : week["classes"].toArray()) {
    const QJsonObject c = value.toObject();
    running.emplace_back(day_of(c), sets.size());
    sets.push_back(counted(c, "groups", true));
    units.push_back(counted(c, "equipment", false));
    for (const auto& [group, n] : sets.back()) {
      r.total[group] += n;
      day[static_cast<std::size_t>(day_of(c))][group] += n;
    }
  }
  const auto under = [&](const Counts* missed) {
    int sum = 0;
    for (const auto& row : week["dose"].toArray()) {
      const QString group = row.toObject()["group"].toString();
      const int done = r.total[group] - (missed && missed->contains(group) ? missed->at(group) : 0);
      sum += std::max(0, row.toObject()["at_least"].toInt() - done);
    }
    return sum;
  };
  r.value["shortfall"] = under(nullptr);
  for (const auto& row : week["dose"].toArray())
    if (const QJsonValue most = row.toObject()["at_most"]; !most.isNull())
      r.value["excess"] += std::max(0, r.total[row.toObject()["group"].toString()] - most.toInt());
  for (std::size_t d = 0; d < 7; ++d)
    for (const auto& [group, n] : day[d])
      r.value["clashes"] += n >= 3 && day[(d + 1) % 7][group] >= 3 ? 1 : 0;
  for (const Counts& c : sets) r.loss.push_back(under(&c) - under(nullptr));
  r.value["loss"] = *std::ranges::max_element(r.loss);
  std::ranges::stable_sort(running, {}, [](const auto& c) { return c.first; });
  for (std::size_t i = 0; i < running.size(); ++i) {
    Counts here = units[running[i].second];
    for (const auto& [kind, n] : units[running[(i + 1) % running.size()].second]) here[kind] -= n;
    for (const auto& [kind, n] : here) r.value["change"] += std::abs(n);
  }
  return r;
}

}  // namespace

class TestWeekCommand : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() {
    QVERIFY2(QFile::exists(program_path()), qPrintable(program_path()));
    QVERIFY(folder_.isValid());
  }

  void demo_weeks_are_proven_and_count_up_data() {
    QTest::addColumn<QString>("path");
    QVERIFY(demo_weeks().size() >= 10);
    for (const QString& path : demo_weeks()) QTest::newRow(qPrintable(QFileInfo(path).fileName())) << path;
  }
  void demo_weeks_are_proven_and_count_up() {
    QFETCH(QString, path);
    const QString out = folder_.filePath(QFileInfo(path).baseName());
    const Ran ran = run_floorwheel({"week", path, "--json", "--out", out});
    QVERIFY2(ran.code == 0, ran.err.data());
    const QJsonObject week = json_of(ran);
    QCOMPARE(week["format"].toString(), QString("floorwheel-week"));
    QCOMPARE(week["version"].toInt(), 1);
    QCOMPARE(week["value"], week["bound"]);
    QCOMPARE(week["proven"].toArray(), (QJsonArray{"shortfall", "excess", "clashes", "loss", "change"}));
    QCOMPARE(week["reasons"].toArray().size(), 5);

    const Recount r = recount(week);
    for (const auto& [goal, value] : r.value) QCOMPARE(week["value"].toObject()[goal].toInt(-1), value);
    std::vector<std::vector<std::string>> stations;
    for (const auto& value : week["classes"].toArray()) {
      const QJsonObject c = value.toObject();
      QCOMPARE(c["loss"].toInt(), r.loss[stations.size()]);
      auto& ids = stations.emplace_back();
      for (const auto& s : c["stations"].toArray()) {
        ids.push_back(s.toObject()["exercise"].toString().toStdString());
        QCOMPARE(s.toObject()["sets"].toInt(), c["laps"].toInt());
      }
    }
    for (const auto& value : week["dose"].toArray()) {
      const QJsonObject row = value.toObject();
      const auto total = r.total.find(row["group"].toString());
      QCOMPARE(row["total"].toInt(), total == r.total.end() ? 0 : total->second);
      int sum = 0;
      for (const auto& sets : row["sets"].toArray()) sum += sets.toInt();
      QCOMPARE(sum, row["total"].toInt());
      const bool under = sum < row["at_least"].toInt();
      const bool over = !row["at_most"].isNull() && sum > row["at_most"].toInt();
      QCOMPARE(row["verdict"].toString(), QString(under ? "under" : over ? "over" : "reached"));
    }

    // The output's own words for groups and equipment, and the file's keep list and units.
    const auto& table = files::shipped_exercises();
    const auto read = files::read_week(path.toStdString(), table);
    const auto& spec = std::get<training::WeekSpec>(read);
    const std::string rule = week_brute_force::broken_rule(spec, table, stations);
    QVERIFY2(rule.empty(), rule.c_str());
    const auto values = week_brute_force::price(spec, table, stations);
    for (std::size_t g = 0; g < values.size(); ++g) {
      const std::string goal(training::id_of(static_cast<training::WeekGoal>(g)));
      QCOMPARE(r.value.at(QString::fromStdString(goal)), static_cast<int>(values[g]));
    }

    // The class files run as they are.
    const QStringList files = QDir(out).entryList(QDir::Files);
    QCOMPARE(files.size(), week["classes"].toArray().size());
    for (const QString& name : files) {
      const Ran planned = run_floorwheel({"plan", out + "/" + name, "--json"});
      QVERIFY2(planned.code == 0, planned.err.data());
      const QJsonObject cost = json_of(planned)["cost"].toObject();
      QCOMPARE(cost["missed"].toInt(), 0);
      QCOMPARE(cost["back_to_back"].toInt(), 0);
    }
    const QString first = QFileInfo(path).fileName().replace(".week.toml", "-1-");
    QVERIFY2(files[0].startsWith(first), qPrintable(files[0]));
  }

  void the_text_says_the_same() {
    const QString path = source_path("config/demo/weeks/hall.week.toml");
    const Ran text = run_floorwheel({"week", path});
    QCOMPARE(text.code, 0);
    const QJsonObject week = json_of(run_floorwheel({"week", path, "--json"}));
    for (const auto& reason : week["reasons"].toArray())
      QVERIFY2(text.out.contains(reason.toString().toUtf8()), qPrintable(reason.toString()));
    for (const auto& c : week["classes"].toArray())
      for (const auto& s : c.toObject()["stations"].toArray())
        QVERIFY(text.out.contains(s.toObject()["exercise"].toString().toUtf8()));
    QVERIFY(text.out.contains("not medical advice"));
  }

  void out_overwrites_nothing_and_leaves_nothing_half_written() {
    const QString path = folder_.filePath("small.week.toml");
    write_file(path, small_week("[[class]]",
                                "[[class]]\nday = \"Friday\"\nlevel = \"advanced\"\nstations = 3\nlaps = 1\n"
                                "work_s = 30\nchange_s = 15\n\n[[class]]"));
    const QString out = folder_.filePath("classes");
    QCOMPARE(run_floorwheel({"week", path, "--out", out}).code, 0);
    const QStringList names{"small-1-friday.class.toml", "small-2-tuesday.class.toml"};
    QCOMPARE(QDir(out).entryList(QDir::Files), names);
    const QByteArray second = file_text(out + "/" + names[1]);
    QVERIFY(second.contains("exercise = \"goblet-squat\""));
    // Identical files stay and are no error.
    QCOMPARE(run_floorwheel({"week", path, "--out", out}).code, 0);
    // Another text in the last one: the first, which is missing, is not written either.
    write_file(out + "/" + names[1], second + "# mine\n");
    QVERIFY(QFile::remove(out + "/" + names[0]));
    const Ran clash = run_floorwheel({"week", path, "--out", out});
    QCOMPARE(clash.code, 2);
    QVERIFY2(clash.err.contains("small-2-tuesday.class.toml: is there already with another text"),
             clash.err.data());
    QVERIFY(clash.out.isEmpty());
    QCOMPARE(QDir(out).entryList(QDir::Files), QStringList{names[1]});
    QCOMPARE(file_text(out + "/" + names[1]), second + "# mine\n");
    // No folder to write into.
    const Ran none = run_floorwheel({"week", path, "--out", folder_.filePath("no/such/folder")});
    QCOMPARE(none.code, 2);
    QVERIFY2(none.err.contains("cannot be made"), none.err.data());
  }

 private:
  QTemporaryDir folder_;
};

QTEST_APPLESS_MAIN(TestWeekCommand)
#include "tst_week_command.moc"
