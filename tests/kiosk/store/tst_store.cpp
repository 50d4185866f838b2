// SPDX-License-Identifier: GPL-3.0-or-later
// The store itself: its settings, that erasing words leaves every number, that transactions are whole, that
// reports count by local days and ISO weeks.
#include <QtTest>

#include "kiosk/store/classes.h"
#include "kiosk/store/journal.h"
#include "kiosk/store/local_day.h"
#include "kiosk/store/people.h"
#include "kiosk/store/records.h"
#include "kiosk/store/reports.h"
#include "kiosk/store/schema.h"
#include "kiosk/store/spec_json.h"
#include "kiosk/store/store.h"

using namespace floorwheel;
using namespace floorwheel::store;
using wire::Role;

namespace {

constexpr wire::Audience everybody{Role::wall, Role::touch, Role::instructor, Role::desk, Role::tool};
constexpr wire::Audience teacher{Role::instructor, Role::tool};

ClassSpec a_class() {
  ClassSpec c;
  c.name = "Noon ring";
  c.start = "2026-03-05T12:00:00+01:00";
  c.length_s = 3600;
  c.laps = 2;
  c.slots = 6;
  c.style = Style::ring;
  c.show_s = 10;
  c.recovery_s = {50, 80, 110};
  c.breaks = {{.after_slot = 3, .seconds = 60}};
  c.equipment = {{.id = "kettlebell", .units = 4}};
  c.exercises["row"] = {.id = "row",
                        .name = "Row",
                        .primary = {Group::upper_back, Group::lats},
                        .assisting = {Group::biceps},
                        .features = {Feature::heavy_hinge},
                        .kind = ExerciseKind::isolation,
                        .loads_hg = {100, 150},
                        .reps = {6, 9},
                        .rir = {0, 4},
                        .hold = true,
                        .substitutes = {"band-row"},
                        .equipment = {"bench"},
                        .per_side = true,
                        .how = "Pull to the ribs.",
                        .caution = "Back straight."};
  c.stations = {{.id = "A",
                 .exercise = "row",
                 .substitutes = {"band-row"},
                 .capacity = 3,
                 .equipment = {"kettlebell"},
                 .x_cm = -120,
                 .y_cm = 340,
                 .closed = {{.first = 2, .last = 2}, {.first = 5}},
                 .offers_hg = {120},
                 .reps = 7,
                 .rir = 1}};
  MemberSpec m;
  m.id = "m01";
  m.shown_as = "Wren A.";
  m.level = Level::advanced;
  m.present = {.first = 2, .last = 5};
  m.excluded_groups = {Group::neck, Group::abs};
  m.excluded_features = {Feature::jump};
  m.excluded_exercises = {"x"};
  m.allowed_exercises = {"row"};
  m.required = {"A"};
  m.loads_hg = {{"A", 150}};
  c.members = {m};
  m = {};
  m.id = "m02";
  m.shown_as = "Teal B.";
  c.members.push_back(m);
  add_guests(c, 1);
  c.pairs = {{.a = "m01", .b = "m02", .rule = PairRule::apart}};
  return c;
}

}  // namespace

class TestStore : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void init() {
    folder_ = std::make_unique<QTemporaryDir>();
    reopen();
  }

  void it_is_set_to_lose_nothing() {
    QCOMPARE(one("PRAGMA journal_mode"), std::string("wal"));
    QCOMPARE(one("PRAGMA synchronous"), std::string("2"));  // FULL
    QCOMPARE(one("PRAGMA foreign_keys"), std::string("1"));
    QCOMPARE(one("PRAGMA user_version"), std::to_string(schema_version()));
    QCOMPARE(one("PRAGMA application_id"), std::to_string(application_id));
    QCOMPARE(one("SELECT count(*) FROM pragma_table_list WHERE schema = 'main' AND type = 'table'"
                 " AND name NOT LIKE 'sqlite_%' AND NOT strict"),
             std::string("0"));
  }

  void the_hub_keeps_its_id_and_its_rows_when_opened_again() {
    const Uuid id = store_->hub_id();
    QVERIFY(id != Uuid{});
    add_row("class.hold", {});
    reopen();
    QVERIFY(store_->hub_id() == id);
    QCOMPARE(last_seq(db()), std::int64_t{1});
  }

  void a_class_comes_back_as_it_was_kept() {
    const Uuid id = make_uuid();
    const ClassSpec c = a_class();
    add_class(db(), id, c);
    reopen();
    const auto back = find_class(db(), id);
    QVERIFY(back);
    QVERIFY(*back == c);
    QVERIFY(!find_class(db(), make_uuid()));
  }

  void rows_are_seen_by_their_audience_and_numbers_by_all() {
    add_row("first", {});
    add_row("second", {{.audience = teacher, .member = "m01", .json = R"({"a":{"x":1}})"},
                       {.audience = everybody, .member = {}, .json = R"({"a":{"y":2},"b":3})"}});
    add_row("third", {}, teacher);
    const Stretch wall = rows_after(db(), Role::wall, 0, 100, 1000);
    QCOMPARE(wall.rows.size(), std::size_t{2});
    QCOMPARE(wall.reached, std::int64_t{3});
    QCOMPARE(wall.rows[1].words, std::string(R"({"a":{"y":2},"b":3})"));
    const Stretch all = rows_after(db(), Role::instructor, 1, 100, 1000);
    QCOMPARE(all.rows.size(), std::size_t{2});
    QCOMPARE(all.rows[0].words, std::string(R"({"a":{"x":1,"y":2},"b":3})"));
    const Stretch one_row = rows_after(db(), Role::instructor, 0, 1, 1000);
    QCOMPARE(one_row.rows.size(), std::size_t{1});
    QCOMPARE(one_row.reached, std::int64_t{1});
  }

  void erasing_words_leaves_every_number() {
    const Uuid c = make_uuid();
    const ClassSpec spec = a_class();
    for (const MemberSpec& m : spec.members)
      if (!m.guest) store::add_member(db(), m, 1);
    add_class(db(), c, spec);
    mark_opened(db(), c, {.ms = 1'772'731'800'000, .utc_offset_s = 3600});
    const std::int64_t seq =
        add_row("check_in",
                {{.audience = everybody, .member = "m01", .json = R"({"shown_as":"Wren A."})"},
                 {.audience = teacher, .member = "*", .json = R"({"reasons":["Wren A. waits once."]})"},
                 {.audience = everybody, .member = {}, .json = R"({"exercise_names":{"row":"Row"}})"}},
                everybody, c);
    keep_check_in(db(), c, "m01", seq, {.ms = 1'772'731'800'000, .utc_offset_s = 3600});
    const Uuid record = make_uuid();
    add_record(db(),
               {.id = record,
                .class_id = c,
                .set = {.id = text_of(record),
                        .member = "m01",
                        .station = "A",
                        .exercise = "row",
                        .slot = 1,
                        .load_hg = 150,
                        .reps = 7,
                        .rir = 2},
                .corrects = {}},
               seq, {.ms = 1'772'731'900'000, .utc_offset_s = 3600});
    mark_ended(db(), c, 1'772'735'400'000);
    const auto attendance_before = attendance(db());
    const std::string counts = numbers();

    erase_words_of(db(), "m01");

    QCOMPARE(numbers(), counts);
    const auto attendance_after = attendance(db());
    QCOMPARE(attendance_after.size(), std::size_t{1});
    QCOMPARE(attendance_after[0].here, attendance_before[0].here);
    QCOMPARE(attendance_after[0].expected, 3);
    QCOMPARE(frequency(db())[0].visits, 1);
    QCOMPARE(frequency(db())[0].shown_as, std::string("m01"));
    QCOMPARE(rows_after(db(), Role::tool, 0, 10, 1000).rows[0].words,
             std::string(R"({"exercise_names":{"row":"Row"}})"));
    const auto back = find_class(db(), c);
    QCOMPARE(back->members[0].shown_as, std::string("m01"));
    QVERIFY(back->members[0].excluded_groups.empty());
    QVERIFY(back->pairs.empty());
    QCOMPARE(back->members[1].shown_as, std::string("Teal B."));
    // Not a byte of the alias is left in the file.
    db().execute("PRAGMA wal_checkpoint(TRUNCATE); VACUUM; PRAGMA wal_checkpoint(TRUNCATE);");
    QFile file(QString::fromStdString(store_->path()));
    QVERIFY(file.open(QIODevice::ReadOnly));
    const QByteArray all = file.readAll();
    QVERIFY(all.contains("Teal B."));
    QVERIFY(!all.contains("Wren A."));
  }

  void visits_fall_into_the_local_day_and_its_iso_week() {
    // 2027-01-03T23:30:00Z is Monday 2027-01-04 one hour east: ISO week 2027-W01; in UTC it is Sunday,
    // 2026-W53.
    constexpr std::int64_t at = 1'799'019'000'000;
    for (const auto& [offset, week, day] :
         {std::tuple(0, "2026-W53", "2027-01-03"), std::tuple(3600, "2027-W01", "2027-01-04")}) {
      const Uuid c = make_uuid();
      add_class(db(), c, a_class());
      mark_opened(db(), c, {.ms = at, .utc_offset_s = offset});
      const std::int64_t seq = add_row("check_in", {}, everybody, c);
      keep_check_in(db(), c, "m02", seq, {.ms = at, .utc_offset_s = offset});
      keep_check_in(db(), c, "G1", seq, {.ms = at, .utc_offset_s = offset});
      QVERIFY(attendance(db(), {.from = day, .to = day}).empty());  // not ended yet: counts nowhere
      mark_ended(db(), c, at + 1);
      const auto rows = frequency(db(), {.from = day, .to = day});
      QCOMPARE(rows.size(), std::size_t{1});  // a guest is nobody's visit
      QCOMPARE(rows[0].iso_week, std::string(week));
      const auto classes = attendance(db(), {.from = day, .to = day});
      QCOMPARE(classes.size(), std::size_t{1});
      QCOMPARE(classes[0].date, std::string(day));
      QCOMPARE(classes[0].here, 2);
    }
  }

  void what_is_not_committed_is_not_there() {
    {
      Transaction t(db());
      add_row("lost", {});
      {
        Savepoint part(db());
        add_row("lost too", {});
      }
      QCOMPARE(last_seq(db()), std::int64_t{1});
    }
    QCOMPARE(last_seq(db()), std::int64_t{0});
  }

  void a_receipt_is_kept_with_its_digest() {
    const Uuid id = make_uuid();
    QVERIFY(!find_receipt(db(), id));
    keep_receipt(db(), id, {.digest = digest_of("check_in", "{}"), .seq = 3, .body = "{}"});
    QCOMPARE(find_receipt(db(), id)->digest, digest_of("check_in", "{}"));
    QVERIFY(digest_of("check_in", "{}") != digest_of("check_in", "{ }"));
    QVERIFY_EXCEPTION_THROWN(keep_receipt(db(), id, {}), SqlError);
  }

  void a_report_reads_beside_a_running_hub_and_changes_nothing() {
    const std::string path = (folder_->path() + "/data").toStdString();
    auto second = Store::open(path);
    QVERIFY(std::holds_alternative<StoreError>(second));
    auto reader = Store::open_to_read(path);
    QVERIFY(std::holds_alternative<std::unique_ptr<Store>>(reader));
    auto& reading = *std::get<std::unique_ptr<Store>>(reader);
    QVERIFY(attendance(reading.database()).empty());
    QVERIFY_EXCEPTION_THROWN(reading.database().execute("DELETE FROM hub"), SqlError);
    QVERIFY(std::holds_alternative<StoreError>(Store::open_to_read(path + "/none")));
  }

  void uuids_go_both_ways() {
    const Uuid id = make_uuid();
    QVERIFY(uuid_from(text_of(id)) == id);
    QCOMPARE(text_of(*uuid_from("{6BA7B810-9DAD-11D1-80B4-00C04FD430C8}")),
             std::string("6ba7b810-9dad-11d1-80b4-00c04fd430c8"));  // RFC 4122, appendix C
    for (const char* bad : {"", "6ba7b810", "6ba7b810-9dad-11d1-80b4-00c04fd430cg",
                            "6ba7b8109dad-11d1-80b4-00c04fd430c8-", "6ba7b810-9dad-11d1-80b4-00c04fd430c8x"})
      QVERIFY(!uuid_from(bad));
    QVERIFY(make_uuid() != make_uuid());
  }

  // Outside check: tests/reference/iso_week_cases.csv, see the README there.
  void iso_weeks_are_those_of_the_standard() {
    QFile file(qEnvironmentVariable("FLOORWHEEL_SOURCE") + "/tests/reference/iso_week_cases.csv");
    QVERIFY(file.open(QIODevice::ReadOnly));
    file.readLine();
    int cases = 0;
    while (!file.atEnd()) {
      const QList<QByteArray> cells = file.readLine().split(',');
      const QList<QByteArray> date = cells[0].split('-');
      const std::int64_t day = days_from(date[0].toInt(), date[1].toInt(), date[2].toInt());
      for (const std::int64_t ms_of_day : {std::int64_t{0}, std::int64_t{86'399'999}}) {
        const LocalDay got = local_day(day * 86'400'000 + ms_of_day - 7'200'000, 7200);
        QCOMPARE(QByteArray::fromStdString(got.date), cells[0]);
        QCOMPARE(QByteArray::fromStdString(got.iso_week) + "-" + QByteArray::number(got.weekday), cells[1]);
      }
      ++cases;
    }
    QCOMPARE(cases, 43);
  }

 private:
  Database& db() { return store_->database(); }
  void reopen() {
    store_.reset();
    auto opened = Store::open((folder_->path() + "/data").toStdString());
    if (const auto* e = std::get_if<StoreError>(&opened)) qFatal("%s", e->what.c_str());
    store_ = std::get<std::unique_ptr<Store>>(std::move(opened));
  }
  std::string one(const std::string& query) {
    Statement s = db().statement(query);
    return s.step() ? s.text(0) : std::string("nothing");
  }
  /// Every number of rows, records and check-ins, as text.
  std::string numbers() {
    return one("SELECT group_concat(seq || kind || body) FROM journal") +
           one("SELECT group_concat(member || slot || load_hg || reps || iso_week) FROM set_record") +
           one("SELECT group_concat(member || iso_week) FROM check_in") +
           one("SELECT count(*) FROM journal_words");
  }
  std::int64_t add_row(const std::string& kind, std::vector<WordPart> words, wire::Audience a = everybody,
                       std::optional<Uuid> c = {}) {
    return append(db(), {.command = make_uuid(),
                         .at_ms = 1,
                         .civil_ms = 2,
                         .kind = kind,
                         .audience = a,
                         .class_id = c,
                         .body = "{}",
                         .words = std::move(words)});
  }
  std::unique_ptr<QTemporaryDir> folder_;
  std::unique_ptr<Store> store_;
};

QTEST_GUILESS_MAIN(TestStore)
#include "tst_store.moc"
