// SPDX-License-Identifier: GPL-3.0-or-later
// Reads OPB, LP and CNF texts back and decides them for given choices, apart from the exporters. All become
// linear rows (a clause: the sum of its literals is 1 at least). The variables that follow from the choices
// are found by propagation, the rest is 0; whoever gets 'undecided' has a text that means more than that.
#pragma once

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace floorwheel::peer_texts {

struct Row {
  std::vector<std::pair<std::int64_t, std::size_t>> terms;
  std::int64_t low = 0;  // the sum is that at least
};

struct Text {
  std::size_t variables = 0;
  std::vector<std::pair<std::int64_t, std::size_t>> objective;
  std::vector<Row> rows;

  void add(const Row& sum, const std::string& sense, std::int64_t right) {
    if (sense != "<=") rows.push_back({sum.terms, right});
    if (sense == ">=") return;
    if (sense != "<=" && sense != "=") throw std::invalid_argument("sense " + sense);
    Row other{sum.terms, -right};
    for (auto& term : other.terms) term.first = -term.first;
    rows.push_back(other);
  }
  std::size_t variable(const std::string& word) {
    if (word.size() < 2 || word[0] != 'x') throw std::invalid_argument("variable " + word);
    const std::size_t v = std::stoul(word.substr(1));
    variables = std::max(variables, v);
    return v;
  }
};

/// Sums "+1 x1 -2 x2 >= 3" from words; `end` ends the objective, which has no sense.
inline Text parse_sums(const std::vector<std::string>& words, const std::string& end) {
  Text out;
  Row row;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string& w = words[i];
    if (w == end) {
      if (!row.terms.empty()) out.objective = row.terms;
      row = {};
    } else if (w == ">=" || w == "<=" || w == "=") {
      out.add(row, w, std::stoll(words.at(++i)));
      row = {};
    } else {
      const std::int64_t factor = std::stoll(w);
      row.terms.emplace_back(factor, out.variable(words.at(++i)));
    }
  }
  if (!row.terms.empty()) throw std::invalid_argument("a sum without an end");
  return out;
}

inline Text parse_opb(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> words;
  std::size_t stated = 0, rows = 0, found = 0;
  std::string comment;
  std::getline(in, comment);
  if (std::sscanf(comment.c_str(), "* #variable= %zu #constraint= %zu", &stated, &rows) != 2)
    throw std::invalid_argument(comment);
  for (std::string w; in >> w;) {
    if (w == "min:") continue;
    found += w == ">=" || w == "=" ? 1 : 0;
    words.push_back(w);
  }
  // ';' also ends each row, with nothing before it then.
  Text out = parse_sums(words, ";");
  if (out.variables > stated || rows != found) throw std::invalid_argument("header: " + comment);
  out.variables = stated;
  return out;
}

inline Text parse_lp(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> words;
  std::map<std::string, std::string> where{
      {"Minimize", "sums"}, {"Bounds", "bounds"}, {"Binaries", "binary"}};
  std::string part;
  std::vector<bool> bounded;
  const auto note = [&](const std::string& w) {
    const std::size_t v = std::stoul(w.substr(1));
    if (bounded.size() <= v) bounded.resize(v + 1);
    bounded[v] = true;
  };
  for (std::string w; in >> w;) {
    if (where.contains(w)) {
      part = where[w];
    } else if (w == "Subject") {
      in >> w;
      words.emplace_back("end");
    } else if (w == "End" || w.back() == ':') {
      continue;
    } else if (part == "sums") {
      words.push_back(w);
    } else {
      note(w);
      if (part == "bounds" && (!(in >> w) || w != "<=" || !(in >> w) || w != "1"))
        throw std::invalid_argument("bound " + w);
    }
  }
  Text out = parse_sums(words, "end");
  bounded.resize(out.variables + 1);
  if (std::count(bounded.begin(), bounded.end(), true) != static_cast<std::ptrdiff_t>(out.variables))
    throw std::invalid_argument("a variable without bound");
  return out;
}

inline Text parse_cnf(const std::string& text) {
  std::istringstream in(text);
  std::string p, cnf;
  std::size_t clauses = 0;
  Text out;
  in >> p >> cnf >> out.variables >> clauses;
  Row row{{}, 1};
  for (long literal = 0; in >> literal;) {
    if (literal == 0) {
      out.rows.push_back(row);
      row = {{}, 1};
      continue;
    }
    const auto v = static_cast<std::size_t>(std::labs(literal));
    if (v > out.variables) throw std::invalid_argument("variable beyond the header");
    row.terms.emplace_back(literal > 0 ? 1 : -1, v);
    if (literal < 0) --row.low;  // a negated literal is 1 - v
  }
  if (p != "p" || cnf != "cnf" || clauses != out.rows.size()) throw std::invalid_argument("header");
  return out;
}

enum class Verdict { holds, broken, undecided };

/// `values[v]` for the first variables is given, 0 or 1; the others are filled in.
inline Verdict decide(const Text& text, std::vector<int>& values) {
  constexpr int open = -1;
  values.resize(text.variables + 1, open);
  for (bool again = true; again;) {
    again = false;
    for (const Row& row : text.rows) {
      std::int64_t most = 0;
      for (const auto& [factor, v] : row.terms)
        most += values[v] == open ? std::max<std::int64_t>(factor, 0) : factor * values[v];
      if (most < row.low) return Verdict::broken;
      for (const auto& [factor, v] : row.terms)
        if (values[v] == open && most - std::llabs(factor) < row.low) {
          values[v] = factor > 0 ? 1 : 0;
          again = true;
        }
    }
  }
  for (std::size_t v = 1; v < values.size(); ++v)
    if (values[v] == open) values[v] = 0;
  for (const Row& row : text.rows) {
    std::int64_t sum = 0;
    for (const auto& [factor, v] : row.terms) sum += factor * values[v];
    if (sum < row.low) return Verdict::undecided;
  }
  return Verdict::holds;
}

inline std::int64_t objective(const Text& text, const std::vector<int>& values) {
  std::int64_t sum = 0;
  for (const auto& [factor, v] : text.objective) sum += factor * values[v];
  return sum;
}

}  // namespace floorwheel::peer_texts
