// SPDX-License-Identifier: GPL-3.0-or-later
// What general solvers are asked in the figures is our problem: the OPB, LP and CNF texts are read back by a
// small evaluator of the test (peer_texts.h) and hold for exactly those choices that the auditor accepts with
// nothing missed and no back-to-back, at the cost it states; on tiny floors for every choice there is. The
// MiniZinc model is a text of its own: its data are read back here, the model is run in the long run, where
// the solvers are installed, and every solver's optimum is then compared with all there is.
#include <QTemporaryDir>
#include <QTest>

#include "scheduler/rotation/audit.h"
#include "scheduler/rotation/solve.h"
#include "tests/bench/peers/solvers.h"
#include "tests/scheduler/peer_cases.h"
#include "tests/support/builders.h"
#include "tests/support/tiny_cases.h"

using namespace floorwheel;
using namespace floorwheel::peers;
using namespace floorwheel::peer_cases;

namespace {

/// The numbers of one array of a MiniZinc text.
std::vector<int> array_of(const std::string& text, const std::string& name) {
  std::vector<int> out;
  const std::size_t at = text.find(" of int: " + name + " = array2d(");
  if (at == std::string::npos) return out;
  const std::size_t begin = text.find('[', at);
  std::istringstream in(text.substr(begin + 1, text.find(']', begin) - begin - 1));
  char comma = 0;
  for (int n = 0; in >> n >> comma;) out.push_back(n);
  return out;
}

bool says(const std::string& text, const std::string& name, std::int64_t value) {
  return text.find("int: " + name + " = " + std::to_string(value) + ";\n") != std::string::npos;
}

}  // namespace

class TestPeerExport : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void every_choice_is_judged_as_the_auditor_judges_it() {
    const auto classes = static_cast<std::uint64_t>(tiny::cases_wanted(3));
    const std::uint64_t first = tiny::first_seed();
    qInfo("seeds %llu to %llu", static_cast<unsigned long long>(first),
          static_cast<unsigned long long>(first + classes - 1));
    int accepted = 0;
    for (std::uint64_t seed = first; seed < first + classes; ++seed)
      for (const Size& z : tiny_sizes) {
        const ClassSpec c = tiny_floor(seed, z);
        const Floor f = floor_of(c, z.slots);
        const std::string fault = first_disagreement(c, f, f, &accepted);
        QVERIFY2(fault.empty(), ("seed " + std::to_string(seed) + ", " + name_of(z) + ": " + fault).c_str());
      }
    qInfo("%d rotations accepted by all", accepted);
    QVERIFY(accepted > 0);
  }

  // The comparison notices an exporter that was told something else than the auditor.
  void broken_twins_are_noticed() {
    ClassSpec c;
    build::station(c, "A", {Group::chest}, 0, 0, {Group::abs});
    build::station(c, "B", {Group::abs}, 300, 0, {Group::biceps});
    for (const char* id : {"m1", "m2"}) build::member(c, id, Level::novice);
    const Floor f = floor_of(c, 3);
    QCOMPARE(first_disagreement(c, f, f), std::string());
    Floor twin = f;
    twin.size.capacity = 2;
    QVERIFY(!first_disagreement(c, f, twin).empty());
    twin = f;
    twin.clash[0][1] = twin.clash[1][0] = true;
    twin.groups = {{0, 1}};
    QVERIFY(!first_disagreement(c, f, twin).empty());
    twin = f;
    ++twin.walk[0][1];
    QVERIFY(!first_disagreement(c, f, twin).empty());
    twin = f;
    twin.assist[0][1] = false;
    QVERIFY(!first_disagreement(c, f, twin).empty());

    c.exercises["do-B"].primary = {Group::chest};
    const Floor clashing = floor_of(c, 3);
    QCOMPARE(first_disagreement(c, clashing, clashing), std::string());
    twin = clashing;
    twin.groups.clear();
    QVERIFY(!first_disagreement(c, clashing, twin).empty());

    // And a text that lacks its last row or has one too many.
    const std::string opb = opb_text(rules_of(f));
    const std::string fewer = opb.substr(0, opb.rfind('\n', opb.size() - 2) + 1);
    QVERIFY_EXCEPTION_THROWN(peer_texts::parse_opb(fewer), std::invalid_argument);
    QVERIFY_EXCEPTION_THROWN(peer_texts::parse_cnf(cnf_text(clauses_of(f)) + "1 0\n"), std::invalid_argument);
  }

  // The planner's answers on floors of the figures hold in every format, and a twin with one entry changed
  // exactly when the auditor still accepts it.
  void answers_of_the_planner_hold_and_their_twins_do_not() {
    int refused = 0;
    int kept = 0;
    for (const Size& z : {Size{4, 5, 6, 1}, Size{8, 8, 8, 1}, Size{12, 6, 7, 2}}) {
      ClassSpec c = regular_class(z, 3, Layout::in_a_row);
      c.style = Style::free;
      const Plan best = std::get<Plan>(plan(c, z.slots, {.effort = 2000}));
      const Floor f = floor_of(c, z.slots);
      QCOMPARE(f.walk_unit_cm, 100);
      QVERIFY(audited(c, f, choices_of(f, best.rotation)).has_value());
      const auto exports = all_exports(f);
      tiny::Draw d(7);
      for (int twin = 0; twin < 20; ++twin) {
        Rotation r = best.rotation;
        auto& row = r.at[ix(d.below(z.members))];
        if (twin % 3 == 1) std::swap(row[ix(d.below(z.slots))], row[ix(d.below(z.slots))]);
        if (twin % 3 == 2) row[ix(d.below(z.slots))] = d.from(nowhere, z.stations - 1);
        const std::vector<bool> chosen = choices_of(f, r);
        const auto truth = audited(c, f, chosen);
        (truth ? kept : refused) += 1;
        for (const Exported& e : exports) QCOMPARE(disagreement(e, chosen, truth), std::string());
      }
    }
    QVERIFY(refused > 10 && kept >= 21);
  }

  void a_regular_class_has_a_ring_without_bad_joints_and_no_other_cost() {
    for (std::uint64_t seed = 1; seed <= 5; ++seed)
      for (const Size& z : {Size{12, 9, 10, 2}, Size{12, 10, 12, 1}, Size{40, 20, 20, 2}}) {
        const ClassSpec c = regular_class(z, seed);
        QCOMPARE(regular_class(z, seed), c);
        const Cost cost = std::get<Plan>(first_rotation(c, z.slots)).cost;
        for (Component k :
             {Component::missed, Component::back_to_back, Component::short_rest, Component::reload_hg})
          QCOMPARE(cost[k], 0);
      }
    ClassSpec other = regular_class({3, 3, 3, 1}, 1);
    other.members[1].present.first = 2;
    QVERIFY_EXCEPTION_THROWN(floor_of(other, 3), std::invalid_argument);
  }

  void weights_keep_the_order_of_the_components() {
    const Floor f = floor_of(regular_class({8, 8, 10, 1}, 2, Layout::in_a_row), 10);
    const auto of = [&](std::int64_t idle, std::int64_t assist, std::int64_t walk_m) {
      return weighed(f, build::cost({{Component::idle, idle},
                                     {Component::assist_overlap, assist},
                                     {Component::walk_cm, 100 * walk_m}}));
    };
    const std::int64_t legs = 8 * 7;
    QVERIFY(of(0, legs, legs * 7) < of(1, 0, 0));
    QVERIFY(of(3, 0, legs * 7) < of(3, 1, 0));
    QVERIFY(of(3, 1, 5) < of(3, 1, 6));
  }

  // Each pair of stations walked by one member alone, and what the auditor says of it.
  void minizinc_data_are_the_auditors() {
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
      const Size z{3, 4, 5, 2};
      const ClassSpec c = tiny_floor(seed, z);
      const Floor f = floor_of(c, z.slots);
      const std::string text = minizinc_text(f, Goal::cheapest);
      QVERIFY(says(text, "members", 3) && says(text, "stations", 4));
      QVERIFY(says(text, "slots", 5) && says(text, "capacity", 2));
      QVERIFY(says(text, "idle_weight", weights_of(f).idle));
      QVERIFY(says(text, "assist_weight", weights_of(f).assist));
      const auto fine = array_of(text, "fine");
      const auto overlap = array_of(text, "overlap");
      const auto walk = array_of(text, "walk");
      QCOMPARE(fine.size(), std::size_t{25});
      QCOMPARE(overlap.size(), std::size_t{25});
      QCOMPARE(walk.size(), std::size_t{25});
      for (int a = 0; a < 4; ++a)
        for (int b = 0; b < 4; ++b) {
          if (a == b) continue;
          Rotation r;
          r.slots = 5;
          r.at.assign(3, std::vector<StationIndex>(5, nowhere));
          r.at[0][1] = a;
          r.at[0][2] = b;
          const Cost cost = audit(c, r).cost;
          const std::size_t at = ix(5 * (a + 1) + b + 1);
          QCOMPARE(fine[at], cost[Component::back_to_back] == 0 ? 1 : 0);
          QCOMPARE(overlap[at], static_cast<int>(cost[Component::assist_overlap]));
          QCOMPARE(walk[at] * f.walk_unit_cm, static_cast<int>(cost[Component::walk_cm]));
        }
      for (std::size_t i = 0; i < 5; ++i) {  // 0: not worked
        QCOMPARE(fine[i] + fine[5 * i], 2);
        QCOMPARE(overlap[i] + overlap[5 * i] + walk[i] + walk[5 * i], 0);
      }
    }
  }

  void answers_are_read_back() {
    const ClassSpec c = tiny_floor(1, {2, 2, 2, 1});
    const Floor f = floor_of(c, 2);
    Rotation r;
    r.slots = 2;
    r.at = {{0, 1}, {1, 0}};  // choices 1 and 4, 6 and 7
    const std::string opb = "c x1\no 9\ns OPTIMUM FOUND\nv x1 -x2 -x3 x4\nv -x5 x6 x7 -x8 x9\n";
    QCOMPARE(read_pseudo_boolean(f, opb).rotation, std::optional(r));
    QVERIFY(read_pseudo_boolean(f, opb).optimal);
    QCOMPARE(read_dimacs(f, "s SATISFIABLE\nv 1 -2 -3 4 -5 6\nv 7 -8 9 0\n").rotation, std::optional(r));
    const std::string flat =
        "at = array2d(1..2, 1..2, [1, 1, 1, 1]);\n----------\n"
        "at = array2d(1..2, 1..2, [1, 2, 2, 1]);\n----------\n";
    QCOMPARE(read_flatzinc(f, flat).rotation, std::optional(r));
    QVERIFY(!read_flatzinc(f, flat).optimal);
    QVERIFY(read_flatzinc(f, flat + "==========\n").optimal);
    QCOMPARE(read_flatzinc(f, flat + "at = array2d(1..2, 1..2, [2,").rotation, std::optional(r));
    const std::string cbc =
        "Optimal - objective value 3.00000000\n  0 x1  1  0\n  3 x4  0.9999999 0\n"
        "  5 x6  1  0\n  6 x7  1  0\n  7 x8  1e-07 0\n";
    QCOMPARE(read_cbc(f, cbc).rotation, std::optional(r));
    QVERIFY(read_cbc(f, cbc).optimal);
    QVERIFY(!read_cbc(f, "Stopped on time (no integer solution - continuous used)\n 0 x1 1 0\n").rotation);
    for (const std::string nothing :
         {"", "s UNSATISFIABLE\n", "=====UNSATISFIABLE=====\n", "Infeasible - 0\n"}) {
      QVERIFY(!read_pseudo_boolean(f, nothing).rotation && !read_dimacs(f, nothing).rotation);
      QVERIFY(!read_flatzinc(f, nothing).rotation && !read_cbc(f, nothing).rotation);
    }
    QVERIFY(read_dimacs(f, "s UNSATISFIABLE\n").impossible);
    QVERIFY(!read_dimacs(f, "v 1 2 0\n").rotation);  // two stations at once
  }

  // The solvers themselves, where they are: what exists, and what is cheapest.
  void solvers_find_what_there_is() {
    if (!qEnvironmentVariableIsSet("FLOORWHEEL_LONG")) QSKIP("the long run asks the solvers");
    QTemporaryDir folder;
    QVERIFY(folder.isValid());
    int asked = 0;
    for (std::uint64_t seed = 1; seed <= 6; ++seed)
      for (const Size& z : tiny_sizes) {
        const ClassSpec c = tiny_floor(seed, z);
        const Floor f = floor_of(c, z.slots);
        const std::optional<std::int64_t> truth = least(c, f);
        for (Goal goal : {Goal::any, Goal::cheapest})
          for (Peer peer : peers_for(goal)) {
            if (!is_installed(peer) || peer == Peer::gecode_lns) continue;
            const Asked it = ask(peer, f, goal, 20, folder.path().toStdString());
            const std::string text =
                std::string(name_of(peer)) + ", seed " + std::to_string(seed) + ", " + name_of(z);
            QVERIFY2(it.answer.rotation.has_value() == truth.has_value(), text.c_str());
            ++asked;
            if (!truth) continue;
            const auto cost = audited(c, f, choices_of(f, *it.answer.rotation));
            QVERIFY2(cost.has_value(), text.c_str());
            if (goal == Goal::cheapest) {
              QVERIFY2(it.answer.optimal, text.c_str());
              QVERIFY2(*cost == *truth, text.c_str());
            }
          }
      }
    qInfo("%d questions asked", asked);
    QVERIFY2(asked > 0, "no solver is installed: the long run installs config/packages-long.txt");
  }
};

QTEST_APPLESS_MAIN(TestPeerExport)
#include "tst_peer_export.moc"
