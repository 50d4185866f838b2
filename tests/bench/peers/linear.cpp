// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/peers/linear.h"

#include <algorithm>

namespace floorwheel::peers {
namespace {

using Sense = LinearRow::Sense;
using Terms = std::vector<Term>;

class Builder {
 public:
  explicit Builder(const Floor& f)
      : f_(f), M_(f.size.members), S_(f.size.stations), T_(f.size.slots), w_(weights_of(f)) {
    out_.variables = out_.choices = choices(f);
  }

  Linear rules() {
    for (int m = 0; m < M_; ++m) {
      for (int s = 0; s < S_; ++s) row(over_slots(m, s), Sense::equal, 1);
      for (int t = 0; t < T_; ++t) row(over_stations(m, t), Sense::at_most, 1);
      for (int t = 0; t + 1 < T_; ++t)
        for (const auto& group : f_.groups) {
          Terms terms;
          for (int s : group) {
            terms.push_back({1, x(m, t, s)});
            terms.push_back({1, x(m, t + 1, s)});
          }
          row(terms, Sense::at_most, 1);
        }
    }
    for (int t = 0; t < T_; ++t)
      for (int s = 0; s < S_; ++s) {
        Terms terms;
        for (int m = 0; m < M_; ++m) terms.push_back({1, x(m, t, s)});
        row(terms, Sense::at_most, f_.size.capacity);
      }
    return out_;
  }

  Linear implications() {
    rules();
    for (int m = 0; m < M_; ++m) {
      idle(m);
      // last[t][s]: s is where m worked last, in slot t or before it.
      std::vector<std::vector<int>> last(ix(T_), std::vector<int>(ix(S_)));
      for (int t = 0; t < T_; ++t)
        for (int s = 0; s < S_; ++s) last[ix(t)][ix(s)] = rests() ? fresh() : x(m, t, s);
      if (rests()) remember(m, last);
      for (int a = 0; a < S_; ++a)
        for (int b = 0; b < S_; ++b)
          if (a != b) leg(m, a, b, last);
    }
    return out_;
  }

  Linear flows() {
    rules();
    for (int m = 0; m < M_; ++m) {
      idle(m);
      day(m);
    }
    return out_;
  }

 private:
  static std::size_t ix(int i) { return static_cast<std::size_t>(i); }
  [[nodiscard]] int x(int m, int t, int s) const { return choice(f_, m, t, s); }
  [[nodiscard]] bool rests() const { return T_ > S_; }
  int fresh() { return ++out_.variables; }
  void row(Terms terms, Sense sense, std::int64_t right) {
    out_.rows.push_back({std::move(terms), sense, right});
  }
  void costs(std::int64_t factor, int variable) {
    if (factor != 0) out_.objective.push_back({factor, variable});
  }
  [[nodiscard]] Terms over_slots(int m, int s) const {
    Terms terms;
    for (int t = 0; t < T_; ++t) terms.push_back({1, x(m, t, s)});
    return terms;
  }
  [[nodiscard]] Terms over_stations(int m, int t) const {
    Terms terms;
    for (int s = 0; s < S_; ++s) terms.push_back({1, x(m, t, s)});
    return terms;
  }

  /// Everybody works S slots, so idle is the number of slots beyond the S-th, up to the last worked one.
  void idle(int m) {
    int after = 0;
    for (int t = T_ - 1; t >= S_; --t) {
      const int not_done = fresh();
      costs(w_.idle, not_done);
      Terms terms = over_stations(m, t);
      for (Term& term : terms) term.factor = -1;
      terms.push_back({1, not_done});
      row(terms, Sense::at_least, 0);
      if (after != 0) row({{1, not_done}, {-1, after}}, Sense::at_least, 0);
      after = not_done;
    }
  }

  void remember(int m, const std::vector<std::vector<int>>& last) {
    for (int t = 0; t < T_; ++t)
      for (int s = 0; s < S_; ++s) {
        row({{1, last[ix(t)][ix(s)]}, {-1, x(m, t, s)}}, Sense::at_least, 0);
        if (t == 0) continue;
        Terms terms{{1, last[ix(t)][ix(s)]}, {-1, last[ix(t - 1)][ix(s)]}};
        for (int other = 0; other < S_; ++other)
          if (other != s) terms.push_back({1, x(m, t, other)});
        row(terms, Sense::at_least, 0);
      }
  }

  /// From a on to b at some time, with unworked slots between or none.
  void leg(int m, int a, int b, const std::vector<std::vector<int>>& last) {
    const int goes = fresh();
    costs(w_.walk * f_.walk[ix(a)][ix(b)], goes);
    for (int t = 0; t + 1 < T_; ++t)
      row({{1, goes}, {-1, last[ix(t)][ix(a)]}, {-1, x(m, t + 1, b)}}, Sense::at_least, -1);
    if (!f_.assist[ix(a)][ix(b)]) return;
    const int overlap = fresh();
    costs(w_.assist, overlap);
    for (int t = 0; t + 1 < T_; ++t)
      row({{1, overlap}, {-1, x(m, t, a)}, {-1, x(m, t + 1, b)}}, Sense::at_least, -1);
  }

  /// One unit flows from slot to slot: it works at a station, or waits where it worked last. Arcs carry the
  /// cost of a leg; an arc of a clash exists after waiting only.
  void day(int m) {
    std::vector<Terms> out_of(ix(S_)), into(ix(S_)), waited_out(ix(S_)), worked_out(ix(S_));
    std::vector<int> waits(ix(S_), 0);  // in slot t; 0: cannot be
    Terms starts = over_stations(m, 0);
    for (int t = 0; t + 1 < T_; ++t) {
      for (auto* list : {&out_of, &into, &waited_out, &worked_out})
        for (Terms& terms : *list) terms.clear();
      for (int a = 0; a < S_; ++a)
        for (int b = 0; b < S_; ++b) {
          if (a == b) continue;
          const std::int64_t walk = w_.walk * f_.walk[ix(a)][ix(b)];
          if (!f_.clash[ix(a)][ix(b)])
            arc(walk + (f_.assist[ix(a)][ix(b)] ? w_.assist : 0), worked_out[ix(a)], into[ix(b)]);
          if (waits[ix(a)] != 0) arc(walk, waited_out[ix(a)], into[ix(b)]);
        }
      for (int s = 0; s < S_; ++s) {
        Terms& out = out_of[ix(s)];
        out = worked_out[ix(s)];
        out.insert(out.end(), waited_out[ix(s)].begin(), waited_out[ix(s)].end());
        out.push_back({-1, x(m, t, s)});
        const int waited = waits[ix(s)];
        if (waited != 0) {
          out.push_back({-1, waited});
          Terms bounded = waited_out[ix(s)];
          bounded.push_back({-1, waited});
          row(bounded, Sense::at_most, 0);
        }
        Terms worked = worked_out[ix(s)];
        worked.push_back({-1, x(m, t, s)});
        row(worked, Sense::at_most, 0);
        if (rests()) {
          waits[ix(s)] = fresh();
          out.push_back({1, waits[ix(s)]});
          const int starts_here = fresh();
          into[ix(s)].push_back({1, starts_here});
          starts.push_back({1, starts_here});
        }
        row(out, Sense::equal, 0);
        into[ix(s)].push_back({-1, x(m, t + 1, s)});
        row(into[ix(s)], Sense::equal, 0);
      }
    }
    row(starts, Sense::equal, 1);
  }

  void arc(std::int64_t cost, Terms& from, Terms& to) {
    const int flows = fresh();
    costs(cost, flows);
    from.push_back({1, flows});
    to.push_back({1, flows});
  }

  const Floor& f_;
  const int M_, S_, T_;
  const Weights w_;
  Linear out_;
};

}  // namespace

Linear rules_of(const Floor& f) { return Builder(f).rules(); }
Linear cost_by_implications(const Floor& f) { return Builder(f).implications(); }
Linear cost_by_flows(const Floor& f) { return Builder(f).flows(); }

}  // namespace floorwheel::peers
