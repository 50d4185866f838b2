// SPDX-License-Identifier: GPL-3.0-or-later
// The training rules against published values: the tables of tests/reference, each row with its source and
// how it was seen. Floating point is compared within what the table prints.
#include <QTest>
#include <cmath>

#include "kiosk/files/typed_mass.h"
#include "scheduler/training/barbell.h"
#include "scheduler/training/dose.h"
#include "scheduler/training/next_load.h"
#include "scheduler/training/rack.h"
#include "scheduler/training/strength.h"
#include "tests/support/csv.h"
#include "tests/support/set_log.h"

using namespace floorwheel;
using namespace floorwheel::training;

namespace {

Mass mass(const std::string& text) {
  const auto typed = files::typed_mass(text);
  if (std::holds_alternative<files::NoMass>(typed)) qFatal("%s is no mass", text.c_str());
  return std::get<Weight>(typed).mass;
}

double kilograms(Mass m) { return static_cast<double>(m.units) / static_cast<double>(Mass::per_kg); }

const Equation& equation(const std::string& id) {
  for (const Equation& e : equations())
    if (e.id == id) return e;
  qFatal("there is no equation %s", id.c_str());
}

bool near(double a, double b, double tolerance) { return std::abs(a - b) <= tolerance; }

std::vector<csv::Record> table(const std::string& name) {
  return csv::read("tests/reference/" + name + ".csv");
}

Barbell bar_of(const csv::Record& row) {
  Barbell bar{{mass(row.at("bar_kg"))}, {mass(row.at("collar_each_kg"))}, {}};
  const bool gym = row.at("plate_set") == "gym";
  for (const char* disc : {"25", "20", "15", "10", "5", "2.5", "2", "1.5", "1.25", "1", "0.5"}) {
    const std::string d = disc;
    const bool competition = d == "2" || d == "1.5" || d == "1" || d == "0.5";
    if (gym ? competition : d == "1.25") continue;
    bar.discs.push_back({{mass(d)}, 8});
  }
  return bar;
}

}  // namespace

#define HOLDS(condition, what) QVERIFY2(condition, std::string(what).c_str())

class TestTrainingReference : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  // onerm_equations.csv: ids, years and ranges; the shown ones in its order.
  void equations_are_those_of_the_table() {
    const auto rows = table("onerm_equations");
    QCOMPARE(rows.size(), equations().size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const Equation& e = equations()[i];
      QCOMPARE(QString::fromStdString(std::string(e.id)), QString::fromStdString(rows[i].at("id")));
      QCOMPARE(e.valid_reps[0], std::stoi(rows[i].at("min_reps")));
      QCOMPARE(e.valid_reps[1], std::stoi(rows[i].at("max_reps_recommended")));
      HOLDS(e.who.find(rows[i].at("year")) != std::string_view::npos, e.id);
    }
  }

  // onerm_worked_values.csv, all 82, checks C001-C009 among them.
  void worked_values_of_the_equations() {
    const auto rows = table("onerm_worked_values");
    QCOMPARE(rows.size(), std::size_t{82});
    for (const auto& row : rows) {
      const Equation& e = equation(row.at("equation_id"));
      const int reps = std::stoi(row.at("reps"));
      const double wanted = std::stod(row.at("onerm_kg"));
      const std::string what = row.at("equation_id") + " " + row.at("load_kg") + " x " + row.at("reps");
      HOLDS(near(as_printed(e, std::stod(row.at("load_kg")), reps), wanted, 0.0000006), what);
      const auto estimate = one_rm(e, mass(row.at("load_kg")), reps);
      HOLDS(estimate.has_value() == (reps >= e.valid_reps[0] && reps <= e.valid_reps[1]), what);
      if (estimate && reps > 1) HOLDS(near(kilograms(*estimate), wanted, 0.0000006), what);
      // C012: one repetition returns the load itself.
      if (reps == 1) HOLDS(*estimate == mass(row.at("load_kg")), what);
    }
  }

  // checks.csv: C003, C010, C011, C013.
  void equations_agree_where_they_should() {
    QCOMPARE(one_rm(equation("epley"), mass("100"), 10), one_rm(equation("brzycki"), mass("100"), 10));
    for (const char* load : {"40", "82.5", "100", "45lb"})
      QCOMPARE(one_rm(equation("oconner"), mass(load), 5), one_rm(equation("brzycki"), mass(load), 5));
    for (const Equation& e : equations()) {
      for (int reps = e.valid_reps[0]; reps < e.valid_reps[1]; ++reps)
        HOLDS(*one_rm(e, mass("60"), reps) < *one_rm(e, mass("60"), reps + 1), e.id);
      for (int reps : {0, 16, 36, 37, 38, 100}) HOLDS(!one_rm(e, mass("60"), reps), e.id);
    }
  }

  // What is bound to an exercise is shown only for it, and the decimal form never.
  void estimates_leave_out_what_does_not_hold() {
    const auto ids = [](const std::vector<Estimate>& all) {
      std::string out;
      for (const Estimate& e : all) out += std::string(e.equation->id) + " ";
      return out;
    };
    QCOMPARE(ids(estimates(mass("100"), 10)),
             std::string("epley brzycki lombardi lander mayhew oconner wathan "));
    QCOMPARE(ids(estimates(mass("100"), 12, "leg-press")), std::string("mayhew wathan "));
    QCOMPARE(ids(estimates(mass("100"), 5, "leg-press")),
             std::string("epley brzycki lombardi lander mayhew oconner wathan reynolds_leg_press "));
    QCOMPARE(estimates(mass("100"), 5, "chest-press").size(), std::size_t{8});
    QCOMPARE(estimates(mass("100"), 16).size(), std::size_t{0});
  }

  // pct1rm_repetitions.csv: the chart's rows; the textbook's own rows (from memory) are not taken. C015.
  void the_chart_of_percentages() {
    int rows = 0;
    for (const auto& row : table("pct1rm_repetitions")) {
      if (row.at("table_variant") == "textbook") continue;
      ++rows;
      QCOMPARE(percent_for(std::stoi(row.at("reps"))), std::optional(std::stoi(row.at("pct1rm"))));
    }
    QCOMPARE(static_cast<std::size_t>(rows), percent_chart().size());
    for (std::size_t i = 1; i < percent_chart().size(); ++i)
      QVERIFY(percent_chart()[i].percent < percent_chart()[i - 1].percent);
    QVERIFY(!percent_for(11));
    // pct1rm_worked_values.csv, C014.
    for (const auto& row : table("pct1rm_worked_values")) {
      const int percent = *percent_for(std::stoi(row.at("reps")));
      QCOMPARE(percent, std::stoi(row.at("pct1rm")));
      HOLDS(near(100 * std::stod(row.at("load")) / percent, std::stod(row.at("estimated_onerm")), 0.000001),
            row.at("load"));
    }
  }

  // rpe_rir_scale.csv, anchors from memory; C016, C017.
  void the_effort_scale() {
    const auto rows = table("rpe_rir_scale");
    QCOMPARE(rows.size(), effort_scale().size());
    for (const auto& row : rows) {
      const int halves = static_cast<int>(2 * std::stod(row.at("rpe")));
      const auto rir = rir_of_effort(halves);
      QVERIFY(rir.has_value());
      QCOMPARE((*rir)[0], std::stoi(row.at("rir_min_reps")));
      QCOMPARE((*rir)[1], std::stoi(row.at("rir_max_reps")));
      for (int r = (*rir)[0]; r <= (*rir)[1]; ++r) {
        const auto back = effort_of_rir(r);
        QVERIFY(back && (*back)[0] <= halves && halves <= (*back)[1]);
      }
    }
    for (int effort = 7; effort <= 10; ++effort) QCOMPARE((*rir_of_effort(2 * effort))[0], 10 - effort);
    QVERIFY(!effort_of_rir(7));
    QVERIFY(!rir_of_effort(13));
  }

  // load_progression_cases.csv (2-10 % of ACSM 2009), C018-C020. That somebody could have done so many more
  // than the target is, in our rules, the target with so many in reserve.
  void steps_of_the_load() {
    const auto rows = table("load_progression_cases");
    QCOMPARE(rows.size(), std::size_t{12});
    for (const auto& row : rows) {
      const Mass load = mass(row.at("current_load_kg"));
      const Mass step = mass(row.at("equipment_step_kg"));
      const int target = std::stoi(row.at("target_reps"));
      const int done = std::stoi(row.at("reps_done"));
      build::SetLog log;
      log.visit("2026-03-02", load, {{std::min(target, done), std::max(0, done - target)}});
      NextQuestion q;
      q.reps = {1, target};
      q.sets = 1;
      q.today = day_from("2026-03-05").value();
      for (int n = -8; n <= 8; ++n)
        if (const Mass m = load + n * step; m > Mass{}) q.loads.push_back({m});
      const NextAnswer a = next_load(log.records, q);
      const std::string what = row.at("current_load_kg") + " kg, " + row.at("reps_done") + " done, step " +
                               row.at("equipment_step_kg");
      const auto allowed = csv::split(row.at("loads_on_grid_kg"), ' ');
      HOLDS((a.change == Change::up) == !allowed.empty(), what + ": " + a.reason);
      if (allowed.empty()) {
        HOLDS(a.load->mass == load, what);
        continue;
      }
      HOLDS(a.load->mass == mass(allowed.front()), what);
      HOLDS(a.load->mass >= mass(row.at("min_new_load_kg")), what);
      HOLDS(a.load->mass <= mass(row.at("max_new_load_kg")), what);
    }
  }

  // plate_loading_cases.csv, C039-C041; eight discs of each kind.
  void discs_on_the_bar() {
    const auto rows = table("plate_loading_cases");
    QCOMPARE(rows.size(), std::size_t{11});
    for (const auto& row : rows) {
      const Barbell bar = bar_of(row);
      const Mass target = mass(row.at("target_total_kg"));
      const bool loadable = row.at("loadable") == "yes";
      const std::string what = row.at("plate_set") + " " + row.at("target_total_kg");
      if (target < bar.empty()) {
        HOLDS(!loadable, what);
        continue;
      }
      const auto near = nearest_hung(bar, target);
      HOLDS(near.has_value() && (near->below.load == target) == loadable, what);
      if (!loadable) continue;
      std::string discs;
      Mass sum = bar.empty();
      for (const Weight& d : near->below.per_side) {
        discs += (discs.empty() ? "" : " ") + decimal_kg(d.mass);
        sum = sum + 2 * d.mass;
      }
      QCOMPARE(QString::fromStdString(discs), QString::fromStdString(row.at("discs_per_side_kg")));
      QCOMPARE(sum, target);
    }
  }

  // unit_conversions.csv, the masses; C042-C044.
  void pounds_and_kilograms() {
    int masses = 0;
    for (const auto& row : table("unit_conversions")) {
      const double out = std::stod(row.at("value_out"));
      if (row.at("conversion") == "lb_to_kg") {
        std::string exact = decimal_kg(mass(row.at("value_in") + "lb"));
        QCOMPARE(QString::fromStdString(exact), QString::fromStdString(row.at("value_out")));
        ++masses;
      } else if (row.at("conversion") == "kg_to_lb") {
        const Mass m = mass(row.at("value_in"));
        QVERIFY(near(static_cast<double>(m.units) / static_cast<double>(Mass::per_lb), out, 6e-11 * out));
        ++masses;
      }
    }
    QCOMPARE(masses, 12);
  }

  // dumbbell_steps.csv, common practice: each weight shows again as typed and is found in its rack.
  void dumbbells_show_as_typed() {
    std::map<std::string, std::vector<Weight>> racks;
    for (const auto& row : table("dumbbell_steps")) {
      const auto typed = std::get<Weight>(files::typed_mass(row.at("mass") + row.at("unit")));
      std::string plain = row.at("mass");
      if (plain.ends_with(".0")) plain.erase(plain.size() - 2);
      QCOMPARE(QString::fromStdString(text_of(typed)), QString::fromStdString(plain + " " + row.at("unit")));
      racks[row.at("series")].push_back(typed);
    }
    QCOMPARE(racks.size(), std::size_t{2});
    for (const auto& [series, rack] : racks)
      for (const Weight& w : rack) {
        QCOMPARE(*nearest_load(rack, w.mass).below, w);
        QCOMPARE(*nearest_load(rack, w.mass).above, w);
      }
  }

  // checks.csv, C024 and C025: the two published classifications of weekly sets.
  void published_classes_of_weekly_sets() {
    std::map<std::string, csv::Record> checks;
    for (const auto& row : table("checks")) checks[row.at("id")] = row;
    std::string low_to_high;
    for (int sets : {4, 5, 9, 10})
      low_to_high +=
          std::string(low_to_high.empty() ? "" : " ") + std::string(class_by_schoenfeld_2017(100 * sets));
    QCOMPARE(low_to_high, checks.at("C024").at("expected"));
    low_to_high.clear();
    for (int sets : {11, 12, 20, 21})
      low_to_high +=
          std::string(low_to_high.empty() ? "" : " ") + std::string(class_by_baz_valle_2022(100 * sets));
    QCOMPARE(low_to_high, checks.at("C025").at("expected"));
  }

  // iso_week_cases.csv, 43 dates; C057-C059.
  void iso_weeks() {
    const auto rows = table("iso_week_cases");
    QCOMPARE(rows.size(), std::size_t{43});
    for (const auto& row : rows) {
      const Day day = day_from(row.at("date")).value();
      const std::string week = text_of(iso_week_of(day));
      QCOMPARE(QString::fromStdString(week + "-" + std::to_string(weekday_of(day))),
               QString::fromStdString(row.at("iso_week_date")));
      QCOMPARE(QString::fromStdString(text_of(day)), QString::fromStdString(row.at("date")));
      QCOMPARE(iso_week_from(week), std::optional(iso_week_of(day)));
    }
    int long_years = 0;
    for (int year = 2001; year <= 2400; ++year)
      if (iso_week_from(std::to_string(year) + "-W53")) ++long_years;
    QCOMPARE(long_years, 71);
    for (const char* wrong : {"2026-W54", "2025-W53", "2026-W00", "2026W10", "2026-w10", ""})
      QVERIFY(!iso_week_from(wrong));
    for (const char* wrong : {"2026-02-29", "2026-13-01", "2026-3-05", "05.03.2026", ""})
      QVERIFY(!day_from(wrong));
  }
};

QTEST_APPLESS_MAIN(TestTrainingReference)
#include "tst_training_reference.moc"
