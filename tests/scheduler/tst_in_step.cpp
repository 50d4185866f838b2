// SPDX-License-Identifier: GPL-3.0-or-later
// Rings on which everybody goes round in step, with waiting places where people exceed stations: as few slots
// as there can be, rules held as the auditor sees it, and taken where the model says so.
#include <QTest>
#include <algorithm>

#include "scheduler/rotation/audit.h"
#include "scheduler/rotation/in_step.h"
#include "scheduler/rotation/price.h"
#include "scheduler/rotation/solve.h"
#include "tests/support/regular.h"

using namespace floorwheel;

namespace {

Plan planned(ClassSpec c, Style style, int slots) {
  c.style = style;
  PlanOptions options;
  options.proof_effort = 0;
  return std::get<Plan>(plan(c, slots, options));
}

Rotation on_ring(std::vector<StationIndex> ring, const Sheet& sheet, int slots) {
  Rotation r;
  r.style = Style::ring;
  r.slots = slots;
  r.ring = std::move(ring);
  r.at = sheet.rows();
  return r;
}

bool fits_the_rules(const ClassSpec& c, const Rotation& r) { return audit(c, r).holds(); }

}  // namespace

class TestInStep : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  /// n stations with q places: M people need max(n, ⌈M / q⌉) slots for a lap at least, since a member works
  /// one visit a slot and a station takes q; that so many a lap are enough on one ring is what this
  /// construction shows (for a free rotation: Kőnig 1916).
  void the_fewest_slots_are_enough() {
    tiny::Draw d(tiny::first_seed());
    const int cases = tiny::cases_wanted(60);
    for (int i = 0; i < cases; ++i) {
      const int n = d.from(3, 12);
      const int q = d.from(1, 3);
      const int members = d.from(1, 3 * n * q);
      ClassSpec c = floors::regular(members, n, q, d.word() % 1000);
      c.laps = d.from(1, 2);
      const int slots = c.laps * std::max(n, (members + q - 1) / q);
      const Problem p = std::get<Problem>(make_problem(c, slots));
      std::vector<StationIndex> ring;
      for (int s = 0; s < n; ++s) ring.push_back(static_cast<StationIndex>(s));
      const Sheet sheet = in_step(p, ring);
      QCOMPARE(price(p, sheet)[Component::missed], 0);
      const Rotation r = on_ring(ring, sheet, slots);
      QVERIFY2(fits_the_rules(c, r), qPrintable(QString::fromStdString(tiny::dump(c, slots))));
      QCOMPARE(somebody_waits(p), members > n * q);
    }
  }

  /// Windows, lists, exclusions, pairs, equipment, closed slots: whatever is put down keeps the rules.
  void every_feature_keeps_the_rules() {
    const std::uint64_t first = tiny::first_seed();
    const int cases = tiny::cases_wanted(100);
    int tried = 0;
    for (int i = 0; i < cases; ++i) {
      tiny::Draw d(first + static_cast<std::uint64_t>(i));
      const int slots = d.from(1, 16);
      const ClassSpec c = tiny::make_class(d.word(), d.from(1, 8), d.from(1, 14), slots);
      const auto made = make_problem(c, slots);
      if (std::holds_alternative<Refusal>(made)) continue;
      const Problem& p = std::get<Problem>(made);
      ++tried;
      std::vector<StationIndex> ring;
      for (int s = 0; s < p.stations; ++s) ring.push_back(static_cast<StationIndex>(s));
      const Rotation r = on_ring(ring, in_step(p, ring), slots);
      QVERIFY2(fits_the_rules(c, r),
               qPrintable(QString::fromStdString(tiny::dump(c, slots) + tiny::dump(c, r))));
    }
    QVERIFY(tried > 0);
  }

  /// Twelve people on ten stations: by the model a ring, since its idle slots are within one a member of the
  /// free rotation's. Two wait at a time: 24 waits, less those after the last worked slot, 1 + 2 of two
  /// people.
  void a_ring_where_twelve_meet_ten_stations() {
    const ClassSpec c = floors::regular(12, 10, 1, 3);
    const Plan chosen = planned(c, Style::automatic, 12);
    QCOMPARE(chosen.rotation.style, Style::ring);
    QCOMPARE(chosen.cost[Component::missed], 0);
    QCOMPARE(chosen.cost[Component::back_to_back], 0);
    QCOMPARE(chosen.cost[Component::idle], 21);
    QVERIFY(fits_the_rules(c, chosen.rotation));
  }

  /// A ring is a free rotation too, so a free one is never dearer than the ring of the same class.
  void a_free_rotation_is_no_dearer_than_the_ring() {
    tiny::Draw d(tiny::first_seed());
    const int cases = tiny::cases_wanted(8);
    for (int i = 0; i < cases; ++i) {
      const int n = d.from(6, 14);
      const int q = d.from(1, 2);
      const ClassSpec c = floors::regular(d.from(n, 3 * n * q / 2), n, q, d.word() % 1000);
      const int members = static_cast<int>(c.members.size());
      const int slots = std::max(n, (members + q - 1) / q);
      const Cost ring = planned(c, Style::ring, slots).cost;
      const Cost free = planned(c, Style::free, slots).cost;
      QVERIFY2(!(ring < free),
               qPrintable(QString::fromStdString(tiny::dump(ring) + " before " + tiny::dump(free))));
    }
  }
};

QTEST_APPLESS_MAIN(TestInStep)
#include "tst_in_step.moc"
