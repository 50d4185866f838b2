// SPDX-License-Identifier: GPL-3.0-or-later
// Rotations as JSON: the example of the file format byte for byte, there and back, and every misfit with its
// JSON Pointer.
#include <QTest>
#include <random>

#include "kiosk/files/class_file.h"
#include "kiosk/files/exercise_table.h"
#include "kiosk/files/rotation_file.h"
#include "tests/kiosk/files/example.h"

using namespace floorwheel;
using files::FileError;
using files::RotationFile;

namespace {

ClassSpec example_class() {
  return std::get<ClassSpec>(
      files::parse_class(example::class_file, "x.class.toml", files::shipped_exercises()));
}

Cost cost_of(std::initializer_list<std::pair<Component, int>> values) {
  Cost cost;
  for (auto [c, n] : values) cost[c] = n;
  return cost;
}

/// The example of the file format.
Plan example_plan() {
  Plan p;
  p.rotation = {3, Style::ring, {0, 1}, {{0, 1, nowhere}, {1, 0, nowhere}, {0, nowhere, 1}}};
  p.cost = cost_of({{Component::idle, 1}, {Component::walk_cm, 900}});
  p.bound = p.cost;
  p.proven = 8;
  p.reasons = {"A ring: everybody moves one on, and no free rotation does better.",
               "Idle 1: \"B\" has one place."};
  return p;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const auto at = text.find(from);
  if (at == std::string::npos) qFatal("not in the example: %s", from.c_str());
  return text.replace(at, from.size(), to);
}

/// What reading the text and holding it against the example class complains of, or "".
std::string error_of(const std::string& json) {
  const auto file = files::parse_rotation(json, "r.json");
  if (const auto* error = std::get_if<FileError>(&file)) return files::text_of(*error);
  const auto rotation = files::rotation_for(example_class(), std::get<RotationFile>(file), "r.json");
  const auto* error = std::get_if<FileError>(&rotation);
  return error ? files::text_of(*error) : "";
}

}  // namespace

class TestRotationFile : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void the_example_is_written_to_the_letter() {
    QCOMPARE(QString::fromStdString(files::to_json(example_class(), example_plan())),
             QString::fromStdString(example::rotation_file));
  }

  void what_is_written_is_read() {
    const auto file = std::get<RotationFile>(files::parse_rotation(example::rotation_file, "r.json"));
    QCOMPARE(file.class_name, std::string("Thursday evening ring"));
    QCOMPARE(file.slots, 3);
    QCOMPARE(file.work_s, 40);
    QCOMPARE(file.change_s, 20);
    QCOMPARE(file.at_slot, 0);
    QVERIFY(!file.has_moved);
    QVERIFY(file.cost == example_plan().cost);
    QVERIFY(std::get<Rotation>(files::rotation_for(example_class(), file, "r.json")) ==
            example_plan().rotation);
    QVERIFY(files::header_breaches(example_class(), file).empty());
  }

  void a_repair_adds_at_slot_and_moved() {
    Plan p = example_plan();
    p.at_slot = 2;
    p.cost[Component::moved] = 4;
    p.proven = 4;
    p.rotation.style = Style::free;
    p.rotation.ring.clear();
    const std::string json = files::to_json(example_class(), p, 12);
    QVERIFY(json.find("\"change_s\": 20, \"at_slot\": 2,") != std::string::npos);
    QVERIFY(json.find("\"back_to_back\": 0, \"moved\": 4, \"short_rest\"") != std::string::npos);
    QVERIFY(json.find("[\"missed\", \"uneven\", \"back_to_back\", \"moved\"]") != std::string::npos);
    QVERIFY(json.find("\"ring\"") == std::string::npos);
    QVERIFY(json.find("\"seed\": 1, \"elapsed_ms\": 12 }") != std::string::npos);
    const auto file = std::get<RotationFile>(files::parse_rotation(json, "r.json"));
    QCOMPARE(file.at_slot, 2);
    QVERIFY(file.has_moved && file.cost == p.cost);
  }

  // Random rotations: written and read, nothing is lost, and written again it is the same text.
  void any_rotation_goes_there_and_back() {
    const unsigned seed = qEnvironmentVariableIsSet("FLOORWHEEL_SEED")
                              ? qEnvironmentVariable("FLOORWHEEL_SEED").toUInt()
                              : std::random_device{}();
    qInfo("FLOORWHEEL_SEED=%u", seed);
    std::mt19937_64 random(seed);
    ClassSpec c = example_class();
    for (int round = 0; round < 200; ++round) {
      c.name = round % 2 == 0 ? "Quote \" and \\ and / and \xC3\xB8" : "Tab-free";
      Plan p;
      p.rotation.slots = 1 + static_cast<int>(random() % 9);
      p.rotation.style = random() % 2 == 0 ? Style::ring : Style::free;
      if (p.rotation.style == Style::ring) p.rotation.ring = {1, 0};
      for (std::size_t m = 0; m < c.members.size(); ++m) {
        p.rotation.at.emplace_back();
        for (int t = 0; t < p.rotation.slots; ++t)
          p.rotation.at.back().push_back(static_cast<int>(random() % 3) - 1);
      }
      p.at_slot = static_cast<int>(random() % static_cast<unsigned>(p.rotation.slots + 1));
      for (Component k : components)
        if (k != Component::moved || p.at_slot > 0) p.cost[k] = static_cast<std::int64_t>(random() >> 2);
      const std::string json = files::to_json(c, p);
      const auto file = files::parse_rotation(json, "r.json");
      if (const auto* error = std::get_if<FileError>(&file)) QFAIL(files::text_of(*error).c_str());
      const auto& read = std::get<RotationFile>(file);
      Plan again = p;
      again.rotation = std::get<Rotation>(files::rotation_for(c, read, "r.json"));
      again.cost = read.cost;
      again.at_slot = read.at_slot;
      QVERIFY(again.rotation == p.rotation && again.cost == p.cost);
      QCOMPARE(files::to_json(c, again), json);
      QCOMPARE(read.class_name, c.name);
    }
  }

  void what_does_not_fit_is_named_by_its_pointer() {
    const auto with = [](const std::string& from, const std::string& to) {
      return QString::fromStdString(error_of(replaced(example::rotation_file, from, to)));
    };
    QCOMPARE(
        with("[\"B\", \"A\", null]", "[\"B\", \"A\"]"),
        QString("r.json:/members/1/stations: has 2 entries; write one for each of the 3 slots, null where "
                "the member does not work"));
    QCOMPARE(with("[\"B\", \"A\", null]", "[\"B\", \"C\", null]"),
             QString("r.json:/members/1/stations/1: the class has no station C; did you mean A?"));
    QCOMPARE(with("\"id\": \"m02\"", "\"id\": \"m20\""),
             QString("r.json:/members/1/id: the class has no member m20; did you mean m02?"));
    QCOMPARE(with("\"id\": \"m02\"", "\"id\": \"m01\""),
             QString("r.json:/members/1/id: m01 has two rows; give each member one"));
    QCOMPARE(with(",\n               { \"id\": \"G1\", \"stations\": [\"A\", null, \"B\"] }", ""),
             QString("r.json:/members: there is no row for G1; add one, with null in every slot in which the "
                     "member does not work"));
    QCOMPARE(with("[\"A\", \"B\"],", "[\"A\", \"Z\"],"),
             QString("r.json:/ring/1: the class has no station Z; did you mean A?"));
    QCOMPARE(with("\"style\": \"ring\", \"ring\": [\"A\", \"B\"]", "\"style\": \"auto\""),
             QString("r.json:/style: is \"auto\"; a rotation is \"ring\" or \"free\""));
    QCOMPARE(with("\"style\": \"ring\"", "\"style\": \"free\""),
             QString("r.json:/ring: stands in a free rotation; leave it out, or say \"style\": \"ring\""));
    QCOMPARE(with("\"ring\", \"ring\": [\"A\", \"B\"],", "\"ring\","),
             QString("r.json: has no ring; add \"ring\""));
  }

  void a_header_that_is_none_of_ours() {
    const auto with = [](const std::string& from, const std::string& to) {
      return QString::fromStdString(error_of(replaced(example::rotation_file, from, to)));
    };
    QCOMPARE(with("\"version\": 1", "\"version\": 2"),
             QString("r.json:/version: another version of the format; this program reads version 1"));
    QCOMPARE(with("floorwheel-rotation", "floorwheel-slots"),
             QString("r.json:/format: this is the table of what each number of slots buys; give the rotation "
                     "itself, its \"chosen\", or plan with --slots"));
    QCOMPARE(with("\"work_s\"", "\"wrok_s\""),
             QString("r.json:/wrok_s: there is no such key; did you mean work_s?"));
    QCOMPARE(with("\"seed\"", "\"sead\""), QString("r.json:/sead: there is no such key; did you mean seed?"));
    QCOMPARE(with("\"seed\": 1", "\"a/b~\": 1"),
             QString("r.json:/a~1b~0: there is no such key; did you mean ring?"));
    QCOMPARE(with("\"walk_cm\": 900", "\"walk_cm\": 9.5"),
             QString("r.json:/cost/walk_cm: is 9.5E0; write a whole number from 0 up"));
    QCOMPARE(with("\"slots\": 3", "\"slots\": 0"),
             QString("r.json:/slots: is 0; write a whole number from 1 to 1000"));
    QVERIFY(with("\"seed\": 1 }", "\"seed\": 1").startsWith("r.json:13:1: this is no JSON: "));
    QVERIFY(with("\"slots\": 3", "\"slots\": 03").startsWith("r.json:2:"));
    QVERIFY(
        QString::fromStdString(error_of("[class]\nname = 1\n")).startsWith("r.json:1:2: this is no JSON"));
    QCOMPARE(QString::fromStdString(error_of("[]")), QString("r.json: is no object; write { }"));
  }

  void a_header_that_differs_from_the_class_is_a_breach_of_no_rule() {
    auto file = std::get<RotationFile>(files::parse_rotation(example::rotation_file, "r.json"));
    file.class_name = "Another";
    file.work_s = 45;
    file.change_s = 15;
    const auto breaches = files::header_breaches(example_class(), file);
    QCOMPARE(breaches.size(), 3U);
    for (const Breach& b : breaches) QCOMPARE(b.rule, 0);
    QCOMPARE(breaches[1].text, std::string("The rotation's work_s is 45, the class file's is 40."));
  }

  void an_audit_says_null_where_moved_is_not_known() {
    Audit a;
    a.breaches.push_back({2, "m01", "A", 3, "A is closed in slot 3."});
    a.breaches.push_back({0, "", "", 0, "Header."});
    const std::string json = files::to_json(a, false, true);
    QVERIFY(
        json.starts_with("{ \"holds\": false, \"true_cost\": false,\n  \"cost\": { \"missed\": 0, "
                         "\"uneven\": 0, \"back_to_back\": 0, \"moved\": null, \"short_rest\": 0"));
    QVERIFY(json.find("{ \"rule\": 2, \"member\": \"m01\", \"station\": \"A\", \"slot\": 3, \"text\": \"A is "
                      "closed in slot 3.\" }") != std::string::npos);
    QVERIFY(json.find("\"member\": null, \"station\": null, \"slot\": null") != std::string::npos);
    QVERIFY(files::to_json(Audit{}, true, false).find("moved") == std::string::npos);
  }

  void a_refusal_is_written_to_the_letter() {
    QCOMPARE(
        files::to_json(Refusal{2, {}, {"A"}, {}, "A is full."}),
        std::string("{ \"format\": \"floorwheel-refusal\", \"version\": 1, \"rule\": 2, \"members\": [], "
                    "\"stations\": [\"A\"], \"slots\": [],\n  \"reason\": \"A is full.\" }\n"));
  }

  void no_mutation_brings_the_reader_down() {
    const unsigned seed = qEnvironmentVariableIsSet("FLOORWHEEL_SEED")
                              ? qEnvironmentVariable("FLOORWHEEL_SEED").toUInt()
                              : std::random_device{}();
    qInfo("FLOORWHEEL_SEED=%u", seed);
    std::mt19937 random(seed);
    int refused = 0;
    const int rounds = qEnvironmentVariableIsSet("FLOORWHEEL_LONG") ? 200'000 : 2000;
    for (int round = 0; round < rounds; ++round) {
      std::string json = example::rotation_file;
      for (std::size_t n = 1 + random() % 3; n > 0; --n) {
        const std::size_t at = random() % json.size();
        if (random() % 2 == 0)
          json.erase(at, 1 + random() % 8);
        else
          json.replace(at, 1, std::string(1, "0-9[]{}\":.,nulA\\eE "[random() % 19]));
      }
      refused += error_of(json).empty() ? 0 : 1;
    }
    QVERIFY(refused > rounds / 2);
  }
};

QTEST_APPLESS_MAIN(TestRotationFile)
#include "tst_rotation_file.moc"
