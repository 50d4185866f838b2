// SPDX-License-Identifier: GPL-3.0-or-later
// Sets of a week and of a member against a second opinion that reads every record and follows every
// correction by hand; and a store of the first schema, whose answers stay when it is brought up to date.
// The seed is printed; FLOORWHEEL_SEED repeats it.
#include <QtTest>
#include <algorithm>
#include <map>
#include <random>

#include "kiosk/store/classes.h"
#include "kiosk/store/journal.h"
#include "kiosk/store/people.h"
#include "kiosk/store/records.h"
#include "kiosk/store/schema.h"
#include "kiosk/store/store.h"
#include "kiosk/store/training_sets.h"

using namespace floorwheel;
using namespace floorwheel::store;
using training::IsoWeek;

namespace {

constexpr std::int64_t day_ms = 86'400'000;
constexpr std::int64_t first_monday_ms = 20'514 * day_ms;  // 2026-03-02

/// What identifies a set in a comparison.
std::string shown(const std::string& member, const std::string& day, std::int64_t instant_ms, int reps) {
  return member + " " + day + " " + std::to_string(instant_ms) + " " + std::to_string(reps);
}
std::vector<std::string> shown(const std::vector<training::SetRecord>& sets) {
  std::vector<std::string> out;
  for (const auto& r : sets) out.push_back(shown(r.member, text_of(r.day), r.instant_us / 1000, r.reps));
  std::ranges::sort(out);
  return out;
}

}  // namespace

class TestTrainingSets : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void init() {
    folder_ = std::make_unique<QTemporaryDir>();
    open();
  }

  void weeks_and_members_are_as_read_by_hand() {
    const std::uint64_t seed = qEnvironmentVariableIsSet("FLOORWHEEL_SEED")
                                   ? qEnvironmentVariable("FLOORWHEEL_SEED").toULongLong()
                                   : std::random_device{}();
    qInfo("FLOORWHEEL_SEED=%llu", static_cast<unsigned long long>(seed));
    std::mt19937_64 random(seed);
    fill(random, 400);
    const auto all = by_hand();
    QVERIFY(all.size() > 100);
    int found = 0;
    for (int week = 9; week <= 18; ++week) {
      const IsoWeek w{2026, week};
      QCOMPARE(shown(sets_of_week(db(), w)), those(all, text_of(w), ""));
      for (const char* member : {"m1", "m2", "m3"}) {
        const auto expected = those(all, text_of(w), member);
        found += static_cast<int>(expected.size());
        QCOMPARE(shown(sets_of_week(db(), w, member)), expected);
      }
    }
    QCOMPARE(found, static_cast<int>(all.size()));
    for (const char* member : {"m1", "m2", "m3"})
      QCOMPARE(shown(sets_of_member(db(), member)), those(all, "", member));
  }

  void a_store_of_the_first_schema_answers_the_same_when_brought_up_to_date() {
    std::mt19937_64 random(7);
    fill(random, 60);
    const auto before = shown(sets_of_week(db(), {2026, 11}));
    QVERIFY(!before.empty());
    // Back to what the first program left: without the tables and indexes of later steps.
    db().execute(
        "DROP INDEX set_record_by_week; DROP INDEX set_record_by_corrected; DROP INDEX check_in_by_member; "
        "DROP TABLE load_decision; DROP TABLE own_page;"
        "PRAGMA user_version = 1;");
    open();
    Statement version = db().statement("PRAGMA user_version");
    QVERIFY(version.step());
    QCOMPARE(version.integer(0), std::int64_t{schema_version()});
    QCOMPARE(shown(sets_of_week(db(), {2026, 11})), before);
    Statement table = db().statement("SELECT count(*) FROM load_decision");
    QVERIFY(table.step());
  }

 private:
  struct Hand {
    std::string member, day, week;
    std::int64_t instant_ms = 0;
    int reps = 0;
    bool done = true;
  };

  Database& db() { return store_->database(); }
  void open() {
    store_.reset();
    auto opened = Store::open((folder_->path() + "/data").toStdString());
    if (const auto* e = std::get_if<StoreError>(&opened)) qFatal("%s", e->what.c_str());
    store_ = std::get<std::unique_ptr<Store>>(std::move(opened));
  }

  /// Records of about five weeks in order of time, a third of them corrections of an earlier one.
  void fill(std::mt19937_64& random, int records) {
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<std::uint64_t>(n)); };
    const Uuid class_id = make_uuid();
    Transaction t(db());
    add_class(db(), class_id, {});
    std::vector<KeptRecord> latest;
    std::int64_t at = first_monday_ms;
    for (int i = 0; i < records; ++i) {
      at += below(2 * 35 * 86'400 / records) * std::int64_t{1000};
      KeptRecord r;
      if (!latest.empty() && below(3) == 0) {
        KeptRecord& earlier = latest[static_cast<std::size_t>(below(static_cast<int>(latest.size())))];
        r = earlier;
        r.corrects = earlier.id;
        r.id = make_uuid();
        r.set.done = below(4) != 0;
        r.set.reps = 1 + below(20);
        earlier = r;
      } else {
        r.id = make_uuid();
        r.class_id = class_id;
        r.set.member = "m" + std::to_string(1 + below(3));
        r.set.station = "A";
        r.set.exercise = "bench-press";
        r.set.slot = 1;
        r.set.done = below(8) != 0;
        r.set.reps = 1 + below(20);
        latest.push_back(r);
      }
      r.set.id = text_of(r.id);
      JournalRow row;
      row.kind = "record.add";
      row.body = "{}";
      add_record(db(), r, append(db(), row), {at, (below(27) - 12) * 3600});
    }
    t.commit();
  }

  /// Every record read, each chain of corrections followed from its first.
  std::vector<Hand> by_hand() {
    std::map<Uuid, Hand> rows;
    std::map<Uuid, Uuid> corrected_by;
    std::vector<Uuid> first;
    Statement s = db().statement(
        "SELECT id, corrects, member, local_day, iso_week, civil_ms, reps, done FROM set_record");
    while (s.step()) {
      const Uuid id = s.uuid(0);
      rows[id] = {s.text(2),        s.text(3), s.text(4), s.integer(5), static_cast<int>(s.integer(6)),
                  s.integer(7) != 0};
      if (s.is_null(1))
        first.push_back(id);
      else
        corrected_by[s.uuid(1)] = id;
    }
    std::vector<Hand> out;
    for (const Uuid& id : first) {
      Hand h = rows[id];
      Uuid last = id;
      while (corrected_by.contains(last)) last = corrected_by[last];
      h.reps = rows[last].reps;
      h.done = rows[last].done;
      if (h.done) out.push_back(h);
    }
    return out;
  }
  static std::vector<std::string> those(const std::vector<Hand>& all, const std::string& week,
                                        const std::string& member) {
    std::vector<std::string> out;
    for (const Hand& h : all)
      if ((week.empty() || h.week == week) && (member.empty() || h.member == member))
        out.push_back(shown(h.member, h.day, h.instant_ms, h.reps));
    std::ranges::sort(out);
    return out;
  }

  std::unique_ptr<QTemporaryDir> folder_;
  std::unique_ptr<Store> store_;
};

QTEST_GUILESS_MAIN(TestTrainingSets)
#include "tst_training_sets.moc"
