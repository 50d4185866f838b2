// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/peers/answers.h"

#include <cstdlib>
#include <sstream>

namespace floorwheel::peers {
namespace {

class Chosen {
 public:
  explicit Chosen(const Floor& f) : floor_(f), taken_(static_cast<std::size_t>(choices(f)) + 1) {}
  /// A literal: -v says that v is not taken. Variables that follow from the choices are passed over.
  void set(long literal) {
    const auto v = static_cast<std::size_t>(std::labs(literal));
    if (v == 0 || v >= taken_.size()) return;
    taken_[v] = literal > 0;
    seen_ = true;
  }
  [[nodiscard]] std::optional<Rotation> rotation() const {
    return seen_ ? rotation_of(floor_, taken_) : std::nullopt;
  }

 private:
  const Floor& floor_;
  std::vector<bool> taken_;
  bool seen_ = false;
};

bool starts(const std::string& line, const char* with) { return line.rfind(with, 0) == 0; }

/// Lines "v ..." hold the literals. A later answer tells every literal again.
Answer read_value_lines(const Floor& f, const std::string& printed, bool with_x) {
  Answer out;
  Chosen chosen(f);
  std::istringstream in(printed);
  for (std::string line; std::getline(in, line);) {
    if (starts(line, "s OPTIMUM")) out.optimal = true;
    if (starts(line, "s UNSAT")) out.impossible = true;
    if (!starts(line, "v ")) continue;
    std::istringstream words(line.substr(2));
    for (std::string word; words >> word;) {
      if (with_x) {
        const std::size_t x = word.find('x');
        if (x == std::string::npos) continue;
        word.erase(x, 1);
      }
      chosen.set(std::strtol(word.c_str(), nullptr, 10));
    }
  }
  out.rotation = chosen.rotation();
  return out;
}

}  // namespace

Answer read_pseudo_boolean(const Floor& f, const std::string& printed) {
  return read_value_lines(f, printed, true);
}

Answer read_dimacs(const Floor& f, const std::string& printed) { return read_value_lines(f, printed, false); }

Answer read_flatzinc(const Floor& f, const std::string& printed) {
  Answer out;
  out.optimal = printed.find("==========") != std::string::npos;
  out.impossible = printed.find("=====UNSATISFIABLE=====") != std::string::npos;
  // An answer is whole once the line of dashes after it has come.
  const std::size_t end = printed.rfind("----------");
  const std::size_t begin = end == std::string::npos ? end : printed.rfind("at = array2d(", end);
  if (begin == std::string::npos) return out;
  const std::size_t list = printed.find('[', begin);
  if (list == std::string::npos || list > end) return out;
  std::istringstream numbers(printed.substr(list + 1, end - list));
  Chosen chosen(f);
  for (int m = 0; m < f.size.members; ++m)
    for (int t = 0; t < f.size.slots; ++t) {
      int station = 0;
      char comma = 0;
      if (!(numbers >> station >> comma) || station < 0 || station > f.size.stations) return out;
      if (station > 0) chosen.set(choice(f, m, t, station - 1));
    }
  out.rotation = chosen.rotation();
  return out;
}

Answer read_cbc(const Floor& f, const std::string& solution_file) {
  Answer out;
  std::istringstream in(solution_file);
  std::string line;
  std::getline(in, line);
  out.optimal = starts(line, "Optimal");
  out.impossible = starts(line, "Infeasible") || starts(line, "Integer infeasible");
  // Without a whole-numbered answer CBC writes the relaxation's.
  if (out.impossible || line.find("no integer solution") != std::string::npos) return out;
  Chosen chosen(f);
  while (std::getline(in, line)) {
    std::istringstream words(line);
    std::string number, name, value;
    if (!(words >> number >> name >> value) || name.empty() || name[0] != 'x') continue;
    if (std::strtod(value.c_str(), nullptr) > 0.5) chosen.set(std::strtol(name.c_str() + 1, nullptr, 10));
  }
  out.rotation = chosen.rotation();
  return out;
}

}  // namespace floorwheel::peers
