// SPDX-License-Identifier: GPL-3.0-or-later
// Visits without progress: examples by hand, the definition tried stretch by stretch, and the rule `stall` of
// the next load, which never fires under three.
#include <QTest>
#include <random>

#include "scheduler/training/next_load.h"
#include "scheduler/training/standstill.h"
#include "tests/support/set_log.h"

using namespace floorwheel::training;
using floorwheel::build::floor_kg;
using floorwheel::build::SetLog;

namespace {

Visit visit(int kg, int reps) {
  return {.day = {}, .load = Mass::kilograms(kg), .at_load = {}, .total_reps = reps};
}

/// Every stretch that ends at the last visit, looked at from scratch.
int by_definition(const std::vector<Visit>& all) {
  int most = 0;
  for (std::size_t first = 0; first + 1 < all.size(); ++first) {
    bool still = true;
    for (std::size_t v = first + 1; v < all.size(); ++v)
      still = still && all[v].load == all[first].load && all[v].total_reps <= all[first].total_reps;
    if (still) most = std::max(most, static_cast<int>(all.size() - 1 - first));
  }
  return most;
}

std::mt19937 chance() {
  const QByteArray given = qgetenv("FLOORWHEEL_SEED");
  const unsigned seed = given.isEmpty() ? std::random_device{}() : given.toUInt();
  qInfo("seed %u", seed);
  return std::mt19937(seed);
}
const int cases = qEnvironmentVariableIsSet("FLOORWHEEL_LONG") ? 200'000 : 2'000;

}  // namespace

class TestStandstill : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void by_hand() {
    QCOMPARE(visits_without_progress({}), 0);
    const std::vector<Visit> one{visit(16, 30)};
    QCOMPARE(visits_without_progress(one), 0);
    const std::vector<Visit> better{visit(16, 30), visit(16, 31)};
    QCOMPARE(visits_without_progress(better), 0);
    const std::vector<Visit> heavier{visit(16, 30), visit(20, 20)};
    QCOMPARE(visits_without_progress(heavier), 0);
    const std::vector<Visit> still{visit(12, 40), visit(16, 30), visit(16, 30), visit(16, 28), visit(16, 29)};
    QCOMPARE(visits_without_progress(still), 3);
    // Better than the visit before, but no better than an earlier one.
    const std::vector<Visit> fell{visit(16, 30), visit(16, 24), visit(16, 26)};
    QCOMPARE(visits_without_progress(fell), 2);
  }

  void the_definition_tried_on_every_stretch() {
    auto rng = chance();
    for (int i = 0; i < cases; ++i) {
      std::vector<Visit> all(std::uniform_int_distribution<std::size_t>(0, 8)(rng));
      for (Visit& v : all)
        v = visit(std::uniform_int_distribution(1, 2)(rng), std::uniform_int_distribution(1, 4)(rng));
      QCOMPARE(visits_without_progress(all), by_definition(all));
    }
  }

  void the_rule_stall_never_fires_under_three() {
    auto rng = chance();
    int stalls = 0;
    for (int i = 0; i < cases; ++i) {
      SetLog log;
      for (const char* day : {"2026-03-02", "2026-03-04", "2026-03-06", "2026-03-09", "2026-03-11"})
        log.add(day, Mass::kilograms(std::uniform_int_distribution(0, 4)(rng) == 0 ? 12 : 16),
                {std::uniform_int_distribution(8, 10)(rng), 0});
      NextQuestion q;
      q.reps = {6, 12};
      q.sets = 1;
      q.loads = floor_kg({8, 12, 16, 20});
      q.today = *day_from("2026-03-12");
      if (next_load(log.records, q).rule != NextRule::stall) continue;
      ++stalls;
      QVERIFY(visits_without_progress(visits_of(log.records, q.today).worked) >= 3);
    }
    QVERIFY2(stalls > cases / 50, "too few stalls: the run proves nothing");
  }
};

QTEST_GUILESS_MAIN(TestStandstill)
#include "tst_standstill.moc"
