// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/peers/cnf.h"

namespace floorwheel::peers {
namespace {

class Builder {
 public:
  explicit Builder(const Floor& f) : f_(f), M_(f.size.members), S_(f.size.stations), T_(f.size.slots) {
    out_.variables = choices(f);
  }

  Cnf build() {
    for (int m = 0; m < M_; ++m) {
      for (int s = 0; s < S_; ++s) {
        std::vector<int> visits;
        for (int t = 0; t < T_; ++t) visits.push_back(choice(f_, m, t, s));
        out_.clauses.push_back(visits);
        at_most(1, visits);
      }
      for (int t = 0; t < T_; ++t) {
        std::vector<int> places;
        for (int s = 0; s < S_; ++s) places.push_back(choice(f_, m, t, s));
        at_most(1, places);
      }
      for (const auto& group : f_.groups) never_twice_running(m, group);
    }
    for (int t = 0; t < T_; ++t)
      for (int s = 0; s < S_; ++s) {
        std::vector<int> people;
        for (int m = 0; m < M_; ++m) people.push_back(choice(f_, m, t, s));
        at_most(f_.size.capacity, people);
      }
    return out_;
  }

 private:
  int fresh() { return ++out_.variables; }
  void clause(std::vector<int> literals) { out_.clauses.push_back(std::move(literals)); }

  /// before[j]: more than j of the variables so far are true.
  void at_most(int most, const std::vector<int>& variables) {
    if (static_cast<int>(variables.size()) <= most) return;
    std::vector<int> before;
    for (std::size_t i = 0; i < variables.size(); ++i) {
      const int v = variables[i];
      if (static_cast<int>(before.size()) == most) clause({-v, -before.back()});
      if (i + 1 == variables.size()) return;
      std::vector<int> now;
      while (now.size() < before.size() + 1 && static_cast<int>(now.size()) < most) now.push_back(fresh());
      clause({-v, now[0]});
      for (std::size_t j = 0; j < before.size(); ++j) clause({-before[j], now[j]});
      for (std::size_t j = 1; j < now.size(); ++j) clause({-v, -before[j - 1], now[j]});
      before = now;
    }
  }

  /// One variable a slot says that m trains the group in it.
  void never_twice_running(int m, const std::vector<int>& group) {
    int before = 0;
    for (int t = 0; t < T_; ++t) {
      const int trains = fresh();
      for (int s : group) clause({-choice(f_, m, t, s), trains});
      if (before != 0) clause({-before, -trains});
      before = trains;
    }
  }

  const Floor& f_;
  const int M_, S_, T_;
  Cnf out_;
};

}  // namespace

Cnf clauses_of(const Floor& f) { return Builder(f).build(); }

std::string cnf_text(const Cnf& cnf) {
  std::string out =
      "p cnf " + std::to_string(cnf.variables) + " " + std::to_string(cnf.clauses.size()) + "\n";
  for (const auto& clause : cnf.clauses) {
    for (int literal : clause) out += std::to_string(literal) + " ";
    out += "0\n";
  }
  return out;
}

}  // namespace floorwheel::peers
