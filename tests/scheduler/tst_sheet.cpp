// SPDX-License-Identifier: GPL-3.0-or-later
// Who is where, kept in step with the entries; a draft's cost with a change against pricing all of it again.
#include <QTest>

#include "scheduler/rotation/draft.h"
#include "tests/support/floors.h"

using namespace floorwheel;

class TestSheet : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  /// Up to 140 members, so that more than one word of bits is in use.
  void who_is_at_a_station_is_who_has_its_entry() {
    tiny::Draw d(tiny::first_seed());
    const int cases = tiny::cases_wanted(20);
    for (int i = 0; i < cases; ++i) {
      const int members = d.from(1, 140);
      const int slots = d.from(1, 6);
      const Problem p = std::get<Problem>(make_problem(floors::plain(members, d.from(1, 5), 3, 1), slots));
      Sheet sheet(p);
      for (int k = 0; k < 4 * members; ++k)
        sheet.put(d.below(members), d.below(slots), d.from(nowhere, p.stations - 1));
      sheet.clear(d.below(members));
      for (int s = 0; s < p.stations; ++s)
        for (int t = 0; t < slots; ++t) {
          std::vector<int> told;
          sheet.each_at(s, t, [&](int m) { told.push_back(m); });
          std::vector<int> there;
          for (int m = 0; m < members; ++m)
            if (sheet.at(m, t) == s) there.push_back(m);
          QCOMPARE(told, there);
          QCOMPARE(sheet.room(s, t), 3 - static_cast<int>(there.size()));
        }
    }
  }

  void a_change_costs_what_the_whole_does() {
    tiny::Draw d(tiny::first_seed());
    const int cases = tiny::cases_wanted(10);
    int with_loads = 0;
    for (int i = 0; i < cases; ++i) {
      const int slots = 9;
      const auto made = make_problem(floors::hall(d.word(), 8, 6, slots), slots);
      if (!std::holds_alternative<Problem>(made)) continue;
      const Problem& p = std::get<Problem>(made);
      with_loads += p.has_loads ? 1 : 0;
      Draft draft(p, Sheet(p).rows());
      for (int change = 0; change < 60; ++change) {
        for (int k = d.from(1, 4); k > 0; --k)
          draft.set(d.below(p.members), d.from(p.from, slots - 1), d.from(nowhere, p.stations - 1));
        const Cost before = draft.cost();
        Cost rows = draft.weigh_rows();
        const Cost whole = price(p, draft.sheet());
        QCOMPARE(rows[Component::reload_hg], before[Component::reload_hg]);
        rows[Component::reload_hg] = whole[Component::reload_hg];
        QVERIFY(rows == whole);
        if (d.one_in(4)) {  // turned down for its rows alone
          draft.take_back();
        } else {
          QVERIFY(draft.weigh_reloads() == whole);
          if (d.one_in(3))
            draft.take_back();
          else
            draft.keep();
        }
        QVERIFY(draft.cost() == price(p, draft.sheet()));
      }
    }
    QVERIFY(with_loads > 0);
  }
};

QTEST_APPLESS_MAIN(TestSheet)
#include "tst_sheet.moc"
