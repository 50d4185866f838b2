// SPDX-License-Identifier: GPL-3.0-or-later
// Linear rows in words.
#include "tests/bench/peers/linear.h"

namespace floorwheel::peers {
namespace {

std::string signed_number(std::int64_t n) { return (n >= 0 ? "+" : "") + std::to_string(n); }

void opb_sum(std::string& out, const std::vector<Term>& terms, int sign) {
  for (const Term& t : terms) out += signed_number(sign * t.factor) + " x" + std::to_string(t.variable) + " ";
}

/// Ten terms a line: readers of LP files bound the length of lines.
void lp_sum(std::string& out, const std::vector<Term>& terms) {
  int on_line = 0;
  for (const Term& t : terms) {
    out += " " + signed_number(t.factor) + " x" + std::to_string(t.variable);
    if (++on_line % 10 == 0) out += "\n";
  }
}

}  // namespace

std::string opb_text(const Linear& l) {
  std::string out =
      "* #variable= " + std::to_string(l.variables) + " #constraint= " + std::to_string(l.rows.size()) + "\n";
  if (!l.objective.empty()) {
    out += "min: ";
    opb_sum(out, l.objective, 1);
    out += ";\n";
  }
  for (const LinearRow& r : l.rows) {
    const int sign = r.sense == LinearRow::Sense::at_most ? -1 : 1;
    opb_sum(out, r.terms, sign);
    out += (r.sense == LinearRow::Sense::equal ? "= " : ">= ") + std::to_string(sign * r.right) + " ;\n";
  }
  return out;
}

std::string lp_text(const Linear& l) {
  std::string out = "Minimize\n cost:";
  lp_sum(out, l.objective);
  if (l.objective.empty()) out += " 0 x1";
  out += "\nSubject To\n";
  std::size_t number = 0;
  for (const LinearRow& r : l.rows) {
    out += " r" + std::to_string(++number) + ":";
    lp_sum(out, r.terms);
    out += r.sense == LinearRow::Sense::equal      ? " = "
           : r.sense == LinearRow::Sense::at_least ? " >= "
                                                   : " <= ";
    out += std::to_string(r.right) + "\n";
  }
  out += "Bounds\n";
  for (int v = l.choices + 1; v <= l.variables; ++v) out += " x" + std::to_string(v) + " <= 1\n";
  out += "Binaries\n";
  for (int v = 1; v <= l.choices; ++v) out += " x" + std::to_string(v) + (v % 10 == 0 ? "\n" : "");
  return out + "\nEnd\n";
}

}  // namespace floorwheel::peers
