// SPDX-License-Identifier: GPL-3.0-or-later
// Tiny floors in every format of general solvers, and choices judged by text and auditor side by side.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scheduler/rotation/audit.h"
#include "tests/bench/peers/cnf.h"
#include "tests/bench/peers/linear.h"
#include "tests/scheduler/peer_texts.h"
#include "tests/support/builders.h"
#include "tests/support/tiny_cases.h"

namespace floorwheel::peer_cases {

using namespace floorwheel::peers;
using peer_texts::Text;
using peer_texts::Verdict;

inline std::size_t ix(int i) { return static_cast<std::size_t>(i); }

inline ClassSpec tiny_floor(std::uint64_t seed, const Size& z) {
  tiny::Draw d(seed);
  ClassSpec c;
  for (int s = 0; s < z.stations; ++s) {
    const int group = d.below(3);
    build::station(c, "S" + std::to_string(s), {static_cast<Group>(group)}, 100 * d.below(5),
                   100 * d.below(2), {static_cast<Group>((group + d.from(1, 2)) % 3)})
        .capacity = z.capacity;
  }
  for (int m = 0; m < z.members; ++m) build::member(c, "m" + std::to_string(m), Level::novice);
  return c;
}

/// Twelve choices at most, so that all 4096 can be looked at.
inline const std::vector<Size> tiny_sizes{{2, 2, 2, 1}, {2, 2, 3, 1}, {3, 2, 2, 2}, {1, 3, 4, 1},
                                          {1, 3, 3, 1}, {2, 2, 3, 2}, {3, 1, 3, 1}, {1, 2, 6, 1}};

/// A text and whether it has a cost.
struct Exported {
  std::string name;
  Text text;
  bool costs = false;
};
inline std::vector<Exported> all_exports(const Floor& f) {
  return {{"opb", peer_texts::parse_opb(opb_text(rules_of(f)))},
          {"opb with cost", peer_texts::parse_opb(opb_text(cost_by_implications(f))), true},
          {"lp", peer_texts::parse_lp(lp_text(rules_of(f)))},
          {"lp with cost", peer_texts::parse_lp(lp_text(cost_by_flows(f))), true},
          {"cnf", peer_texts::parse_cnf(cnf_text(clauses_of(f)))}};
}

/// The weighed cost of the choices where the auditor accepts them with nothing missed and no back-to-back.
inline std::optional<std::int64_t> audited(const ClassSpec& c, const Floor& f,
                                           const std::vector<bool>& chosen) {
  const std::optional<Rotation> r = rotation_of(f, chosen);
  if (!r) return std::nullopt;
  const Audit a = audit(c, *r);
  if (!a.holds() || a.cost[Component::missed] != 0 || a.cost[Component::back_to_back] != 0)
    return std::nullopt;
  return weighed(f, a.cost);
}

inline std::vector<bool> bits(unsigned word, int count) {
  std::vector<bool> out(ix(count) + 1);
  for (int i = 0; i < count; ++i) out[ix(i) + 1] = (word >> static_cast<unsigned>(i) & 1U) != 0;
  return out;
}

inline std::vector<bool> choices_of(const Floor& f, const Rotation& r) {
  std::vector<bool> out(ix(choices(f)) + 1);
  for (int m = 0; m < f.size.members; ++m)
    for (int t = 0; t < r.slots; ++t)
      if (r.at[ix(m)][ix(t)] != nowhere) out[ix(choice(f, m, t, r.at[ix(m)][ix(t)]))] = true;
  return out;
}

/// "" where text and auditor agree about these choices.
inline std::string disagreement(const Exported& e, const std::vector<bool>& chosen,
                                const std::optional<std::int64_t>& truth) {
  std::vector<int> values(chosen.begin(), chosen.end());
  const Verdict verdict = peer_texts::decide(e.text, values);
  if (verdict == Verdict::undecided) return e.name + " leaves open what follows";
  if ((verdict == Verdict::holds) != truth.has_value())
    return e.name + (truth ? " refuses what the auditor accepts" : " accepts what the auditor does not");
  if (truth && e.costs && peer_texts::objective(e.text, values) != *truth)
    return e.name + " states another cost";
  return {};
}

/// All choices of a tiny floor against exports of `told`, which is `f` or a broken twin of it.
inline std::string first_disagreement(const ClassSpec& c, const Floor& f, const Floor& told,
                                      int* accepted = nullptr) {
  const auto exports = all_exports(told);
  for (unsigned word = 0; word < 1U << static_cast<unsigned>(choices(f)); ++word) {
    const std::vector<bool> chosen = bits(word, choices(f));
    const auto truth = audited(c, f, chosen);
    if (truth && accepted != nullptr) ++*accepted;
    for (const Exported& e : exports)
      if (const std::string fault = disagreement(e, chosen, truth); !fault.empty()) return fault;
  }
  return {};
}

/// The least weighed cost of all rotations that hold; nothing if none does.
inline std::optional<std::int64_t> least(const ClassSpec& c, const Floor& f) {
  std::optional<std::int64_t> out;
  for (unsigned word = 0; word < 1U << static_cast<unsigned>(choices(f)); ++word)
    if (const auto cost = audited(c, f, bits(word, choices(f))); cost && (!out || *cost < *out)) out = cost;
  return out;
}

}  // namespace floorwheel::peer_cases
