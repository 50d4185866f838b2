// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/brute_force.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <numeric>
#include <string>

namespace floorwheel::brute {
namespace {

using Row = std::vector<StationIndex>;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

/// What somebody does at a station, by the words under "Given".
struct Doing {
  bool any = false;         // there is an exercise
  bool substitute = false;  // and it is not the station's own
  std::uint32_t primary = 0;
  std::uint32_t assisting = 0;
};

bool allows(const MemberSpec& m, const Exercise& e) {
  for (const std::string& id : m.allowed_exercises)
    if (id == e.id) return true;
  for (const std::string& id : m.excluded_exercises)
    if (id == e.id) return false;
  const std::uint32_t loaded = e.primary.bits() | e.assisting.bits();
  return (loaded & m.excluded_groups.bits()) == 0 && (e.features.bits() & m.excluded_features.bits()) == 0;
}

Doing doing(const ClassSpec& c, const MemberSpec& m, const StationSpec& s) {
  std::vector<std::string> offers{s.exercise};
  offers.insert(offers.end(), s.substitutes.begin(), s.substitutes.end());
  for (std::size_t i = 0; i < offers.size(); ++i) {
    const Exercise& e = c.exercises.find(offers[i])->second;
    if (allows(m, e)) return {true, i > 0, e.primary.bits(), e.assisting.bits()};
  }
  const Exercise& own = c.exercises.find(s.exercise)->second;  // prices history
  return {false, false, own.primary.bits(), own.assisting.bits()};
}

struct PricedRow {
  Row row;
  Cost cost;  // without reload_hg, which is no single member's
};

/// The question with everything looked up, and the model's sentences about one row, two rows and all rows.
class Board {
 public:
  explicit Board(const Question& question) : q(question), c(question.spec), T(question.slots) {
    for (const MemberSpec& m : c.members) {
      doing_.emplace_back();
      required_.emplace_back();
      for (const StationSpec& s : c.stations) {
        const Doing d = doing(c, m, s);
        doing_.back().push_back(d);
        const bool named = !m.required || std::count(m.required->begin(), m.required->end(), s.id) > 0;
        required_.back().push_back(named && d.any);
      }
      old_.push_back(nullptr);
      if (q.before != nullptr)
        for (const RunSheetRow& row : q.before->rows)
          if (row.member == m.id) old_.back() = &row;
    }
  }

  int members() const { return static_cast<int>(c.members.size()); }
  int stations() const { return static_cast<int>(c.stations.size()); }

  /// Every row that member m may have, cheapest first. `order`: the ring, or empty.
  std::vector<PricedRow> rows(int m, const Row& order) const {
    std::vector<PricedRow> out;
    Row row;
    extend(m, order, row, out);
    std::stable_sort(out.begin(), out.end(),
                     [](const PricedRow& a, const PricedRow& b) { return a.cost < b.cost; });
    return out;
  }

  /// Whether one member's row keeps rules 1, 3, 4 and 6, closed slots and history.
  bool row_may_be(int m, const Row& row, const Row& order) const {
    for (int t = 1; t <= T; ++t) {
      const StationIndex s = row[u(t - 1)];
      if (t < q.at_slot) {
        if (s != past(m, t)) return false;
        continue;
      }
      if (s == nowhere) continue;
      if (!present(m, t) && q.leave != Leave::presence) return false;
      if (closed(s, t) && q.leave != Leave::closed) return false;
      if (!doing_[u(m)][u(s)].any) {
        if (q.leave != Leave::exercises) return false;
      } else if (!required_[u(m)][u(s)] && q.leave != Leave::required) {
        return false;
      }
    }
    return laps_and_ring_may_be(row, order);
  }

  bool two_may_be(int a, const Row& at_a, int b, const Row& at_b) const {
    const std::string& id_a = c.members[u(a)].id;
    const std::string& id_b = c.members[u(b)].id;
    for (const PairSpec& p : c.pairs) {
      if (!((p.a == id_a && p.b == id_b) || (p.a == id_b && p.b == id_a))) continue;
      for (int t = std::max(1, q.at_slot); t <= T; ++t) {
        const StationIndex x = at_a[u(t - 1)];
        const StationIndex y = at_b[u(t - 1)];
        if (p.rule == PairRule::apart) {
          if (x == y && x != nowhere && q.leave != Leave::apart) return false;
          continue;
        }
        if (q.leave == Leave::together || !present(a, t) || !present(b, t) || x == y) continue;
        if (x != nowhere && y != nowhere) return false;
        const Row& waiting = x == nowhere ? at_a : at_b;
        const bool also_theirs = std::count(waiting.begin(), waiting.end(), x == nowhere ? y : x) > 0;
        if (also_theirs && q.leave != Leave::waiting) return false;
      }
    }
    return true;
  }

  /// Rule 2 for the rows of the first members; more of them only make it harder.
  bool room_for(const std::vector<const Row*>& rows) const {
    for (int t = std::max(1, q.at_slot); t <= T; ++t) {
      std::vector<int> here(c.stations.size(), 0);
      for (const Row* row : rows)
        if ((*row)[u(t - 1)] != nowhere) ++here[u((*row)[u(t - 1)])];
      for (int s = 0; s < stations(); ++s)
        if (here[u(s)] > c.stations[u(s)].capacity && q.leave != Leave::capacity) return false;
      for (const EquipmentSpec& kind : c.equipment) {
        int used = 0;
        for (int s = 0; s < stations(); ++s) {
          const auto& takes = c.stations[u(s)].equipment;
          if (std::count(takes.begin(), takes.end(), kind.id) > 0) used += here[u(s)];
        }
        if (used > kind.units && q.leave != Leave::equipment) return false;
      }
    }
    return true;
  }

  Cost row_cost(int m, const Row& row) const {
    const MemberSpec& who = c.members[u(m)];
    const std::int64_t recovery = c.recovery_s[u(static_cast<int>(who.level))];
    std::int64_t wanted = 0;
    for (int s = 0; s < stations(); ++s) wanted += required_[u(m)][u(s)] ? c.laps : 0;
    std::int64_t visits = 0;
    std::int64_t here = 0;
    int last = 0;
    for (int t = 1; t <= T; ++t) {
      if (present(m, t)) ++here;
      if (row[u(t - 1)] == nowhere) continue;
      last = t;
      if (required_[u(m)][u(row[u(t - 1)])]) ++visits;
    }

    Cost cost;
    const std::int64_t missed = wanted - visits;
    const std::int64_t forced = wanted > here ? wanted - here : 0;
    cost[Component::missed] = missed;
    cost[Component::uneven] = (missed - forced) * (missed - forced);
    StationIndex walked_from = nowhere;
    for (int t = 1; t <= T; ++t) {
      const StationIndex s = row[u(t - 1)];
      if (s == nowhere) {
        if (present(m, t) && t < last) ++cost[Component::idle];
        continue;
      }
      if (walked_from != nowhere) cost[Component::walk_cm] += centimetres(walked_from, s);
      walked_from = s;
      const Doing& now = doing_[u(m)][u(s)];
      std::int64_t gap = c.change_s;
      for (int later = t + 1; later <= T; ++later) {
        for (const BreakSpec& b : c.breaks)
          if (b.after_slot == later - 1) gap += b.seconds;
        if (row[u(later - 1)] != nowhere) {
          const Doing& then = doing_[u(m)][u(row[u(later - 1)])];
          const bool shared = (now.primary & then.primary) != 0;
          const bool crossed = (now.primary & then.assisting) != 0 || (now.assisting & then.primary) != 0;
          if (later == t + 1 && shared) ++cost[Component::back_to_back];
          if (later == t + 1 && !shared && crossed) ++cost[Component::assist_overlap];
          if (later > t + 1 && shared && gap < recovery) ++cost[Component::short_rest];
        }
        gap += c.work_s + c.change_s;
      }
    }
    cost[Component::moved] = moved(m, row);
    return cost;
  }

  std::int64_t reload(const std::vector<const Row*>& rows) const {
    std::int64_t sum = 0;
    for (int s = 0; s < stations(); ++s)
      for (int t = 1; t < T; ++t) {
        const std::vector<std::int64_t> a = loads(rows, s, t);
        const std::vector<std::int64_t> b = loads(rows, s, t + 1);
        for (std::size_t i = 0; i < a.size() && i < b.size(); ++i)
          sum += a[i] > b[i] ? a[i] - b[i] : b[i] - a[i];
      }
    return sum;
  }

  /// The cyclic orders to look at: one, or each of all stations once.
  std::vector<Row> orders() const {
    if (q.style != Style::ring) return {Row{}};
    if (!q.order.empty()) return {q.order};
    Row order(c.stations.size());
    std::iota(order.begin(), order.end(), 0);
    std::vector<Row> out;
    do out.push_back(order);
    while (std::next_permutation(order.begin() + 1, order.end()));
    return out;
  }

 private:
  void extend(int m, const Row& order, Row& row, std::vector<PricedRow>& out) const {
    if (row.size() == u(T)) {
      if (row_may_be(m, row, order)) out.push_back({row, row_cost(m, row)});
      return;
    }
    const int t = static_cast<int>(row.size()) + 1;
    for (StationIndex s = nowhere; s < stations(); ++s) {
      if (t < q.at_slot && s != past(m, t)) continue;
      row.push_back(s);
      extend(m, order, row, out);
      row.pop_back();
    }
  }

  bool present(int m, int t) const {
    const SlotRange& p = c.members[u(m)].present;
    return t >= p.first && t <= p.last;
  }

  bool closed(StationIndex s, int t) const {
    for (const SlotRange& r : c.stations[u(s)].closed)
      if (t >= r.first && t <= r.last) return true;
    return false;
  }

  std::string old_entry(int m, int t) const {
    const RunSheetRow* row = old_[u(m)];
    return row != nullptr && u(t) <= row->stations.size() ? row->stations[u(t - 1)] : std::string();
  }

  StationIndex by_id(const std::string& id) const {
    for (int s = 0; s < stations(); ++s)
      if (c.stations[u(s)].id == id) return s;
    return nowhere;
  }

  /// What history says: the old entry, and nothing where the member was not present.
  StationIndex past(int m, int t) const { return present(m, t) ? by_id(old_entry(m, t)) : nowhere; }

  std::int64_t moved(int m, const Row& row) const {
    if (q.before == nullptr || old_[u(m)] == nullptr) return 0;
    for (int t = 1; t <= T; ++t)
      if (!old_entry(m, t).empty() && !present(m, t)) return 0;  // just came or left
    std::int64_t count = 0;
    for (int t = std::max(1, q.at_slot); t <= T; ++t)
      if (by_id(old_entry(m, t)) != row[u(t - 1)]) ++count;
    return count;
  }

  bool laps_and_ring_may_be(const Row& row, const Row& order) const {
    const int n = stations();
    int lap = 1;
    std::uint32_t seen = 0;
    StationIndex from = nowhere;
    int steps_in_lap = 0;
    int steps = 0;
    for (int t = 1; t <= T; ++t) {
      const StationIndex s = row[u(t - 1)];
      if (s == nowhere) continue;
      const bool again = (seen >> s & 1U) != 0;
      if (again) {
        ++lap;
        seen = 0;
      }
      seen |= 1U << s;
      if (from != nowhere && !order.empty()) {
        int step = 1;
        std::size_t i = u(static_cast<int>(std::find(order.begin(), order.end(), from) - order.begin()));
        while (order[(i + u(step)) % order.size()] != s) ++step;
        steps += step;
        steps_in_lap = again ? 0 : steps_in_lap + step;
      }
      from = s;
      if (t < q.at_slot) continue;
      if (lap > c.laps && q.leave != Leave::laps) return false;
      if (!order.empty() && q.leave != Leave::ring && (steps_in_lap >= n || steps >= c.laps * n))
        return false;
    }
    return true;
  }

  std::int64_t centimetres(StationIndex a, StationIndex b) const {
    const std::int64_t dx = c.stations[u(a)].x_cm - c.stations[u(b)].x_cm;
    const std::int64_t dy = c.stations[u(a)].y_cm - c.stations[u(b)].y_cm;
    return std::llround(std::sqrt(static_cast<double>(dx * dx + dy * dy)));
  }

  std::vector<std::int64_t> loads(const std::vector<const Row*>& rows, StationIndex s, int t) const {
    std::vector<std::int64_t> out;
    for (std::size_t m = 0; m < rows.size(); ++m) {
      if ((*rows[m])[u(t - 1)] != s || doing_[m][u(s)].substitute) continue;
      const auto planned = c.members[m].loads_hg.find(c.stations[u(s)].id);
      if (planned != c.members[m].loads_hg.end()) out.push_back(planned->second);
    }
    std::sort(out.rbegin(), out.rend());
    return out;
  }

  const Question& q;
  const ClassSpec& c;
  const int T;
  std::vector<std::vector<Doing>> doing_;
  std::vector<std::vector<bool>> required_;
  std::vector<const RunSheetRow*> old_;
};

void add(Cost& sum, const Cost& part) {
  for (std::size_t i = 0; i < sum.value.size(); ++i) sum.value[i] += part.value[i];
}

/// Goes through all rotations with one order of the ring. `hopeless(sum, next member)` may leave a branch;
/// `take(rows, cost)` sees whole rotations.
template <class Hopeless, class Take>
class Walk {
 public:
  Walk(const Board& board, const std::vector<std::vector<PricedRow>>& rows, Hopeless hopeless, Take take)
      : board_(board), rows_(rows), hopeless_(hopeless), take_(take) {
    next(0, Cost{});
  }

 private:
  void next(int m, const Cost& sum) {
    if (m == board_.members()) {
      Cost whole = sum;
      whole[Component::reload_hg] = board_.reload(chosen_);
      take_(chosen_, whole);
      return;
    }
    for (const PricedRow& candidate : rows_[u(m)]) {
      Cost with = sum;
      add(with, candidate.cost);
      if (hopeless_(with, m + 1)) return;  // the rows after this one cost no less
      chosen_.push_back(&candidate.row);
      if (fits(m)) next(m + 1, with);
      chosen_.pop_back();
    }
  }

  bool fits(int m) const {
    for (int other = 0; other < m; ++other)
      if (!board_.two_may_be(other, *chosen_[u(other)], m, *chosen_[u(m)])) return false;
    return board_.room_for(chosen_);
  }

  const Board& board_;
  const std::vector<std::vector<PricedRow>>& rows_;
  Hopeless hopeless_;
  Take take_;
  std::vector<const Row*> chosen_;
};

std::vector<std::vector<PricedRow>> all_rows(const Board& board, const Row& order) {
  std::vector<std::vector<PricedRow>> out;
  for (int m = 0; m < board.members(); ++m) out.push_back(board.rows(m, order));
  return out;
}

std::vector<const Row*> pointers(const Rotation& r) {
  std::vector<const Row*> out;
  for (const Row& row : r.at) out.push_back(&row);
  return out;
}

}  // namespace

Best best(const Question& q) {
  const Board board(q);
  std::optional<Best> found;
  for (const Row& order : board.orders()) {
    const auto rows = all_rows(board, order);
    std::vector<Cost> rest(rows.size() + 1);  // the least that the members from m on can cost
    for (std::size_t m = rows.size(); m-- > 0;) {
      rest[m] = rest[m + 1];
      if (!rows[m].empty()) add(rest[m], rows[m].front().cost);
    }
    const auto hopeless = [&](Cost sum, int m) {
      add(sum, rest[u(m)]);
      return found && sum >= found->cost;
    };
    const auto take = [&](const std::vector<const Row*>& chosen, const Cost& cost) {
      if (found && cost >= found->cost) return;
      found.emplace();
      found->cost = cost;
      found->rotation.slots = q.slots;
      found->rotation.style = q.style;
      found->rotation.ring = order;
      for (const Row* row : chosen) found->rotation.at.push_back(*row);
    };
    Walk(board, rows, hopeless, take);
  }
  return found.value();
}

std::array<std::int64_t, component_count> least_after(const Question& q, const Cost& shown) {
  const Board board(q);
  std::array<std::int64_t, component_count> least;
  least.fill(none);
  for (const Row& order : board.orders()) {
    const auto rows = all_rows(board, order);
    const auto take = [&](const std::vector<const Row*>&, const Cost& cost) {
      for (std::size_t i = 0; i < least.size(); ++i) {
        least[i] = std::min(least[i], cost.value[i]);
        if (cost.value[i] != shown.value[i]) break;
      }
    };
    Walk(
        board, rows, [](const Cost&, int) { return false; }, take);
  }
  return least;
}

double combinations(const Question& q) {
  const Board board(q);
  double sum = 0;
  for (const Row& order : board.orders()) {
    double product = 1;
    for (int m = 0; m < board.members(); ++m) product *= static_cast<double>(board.rows(m, order).size());
    sum += product;
  }
  return sum;
}

bool keeps_rules(const Question& q, const Rotation& r) {
  const Board board(q);
  const auto rows = pointers(r);
  for (int m = 0; m < board.members(); ++m) {
    if (!board.row_may_be(m, *rows[u(m)], q.style == Style::ring ? q.order : Row{})) return false;
    for (int other = 0; other < m; ++other)
      if (!board.two_may_be(other, *rows[u(other)], m, *rows[u(m)])) return false;
  }
  return board.room_for(rows);
}

Cost price(const Question& q, const Rotation& r) {
  const Board board(q);
  Cost sum;
  for (int m = 0; m < board.members(); ++m) add(sum, board.row_cost(m, r.at[u(m)]));
  sum[Component::reload_hg] = board.reload(pointers(r));
  return sum;
}

std::set<int> refusals(const ClassSpec& c, int slots, bool in_repair) {
  std::set<int> out;
  const int n = static_cast<int>(c.members.size());
  std::vector<std::set<std::string>> required(u(n));
  for (int m = 0; m < n; ++m) {
    const MemberSpec& who = c.members[u(m)];
    for (const StationSpec& s : c.stations) {
      const bool has = doing(c, who, s).any;
      const bool named = who.required && std::count(who.required->begin(), who.required->end(), s.id) > 0;
      if (named && !has && !in_repair) out.insert(3);
      if (has && (named || !who.required)) required[u(m)].insert(s.id);
    }
    if (required[u(m)].empty()) out.insert(3);
  }

  // Who is held together over a chain: the least label spreads along pairs.
  std::vector<int> held(u(n));
  std::iota(held.begin(), held.end(), 0);
  const auto index = [&](const std::string& id) {
    int m = 0;
    while (c.members[u(m)].id != id) ++m;
    return m;
  };
  for (int round = 0; round < n; ++round)
    for (const PairSpec& p : c.pairs)
      if (p.rule == PairRule::together)
        held[u(index(p.a))] = held[u(index(p.b))] = std::min(held[u(index(p.a))], held[u(index(p.b))]);

  for (const PairSpec& p : c.pairs)
    if (p.rule == PairRule::apart && held[u(index(p.a))] == held[u(index(p.b))]) out.insert(5);

  for (int label = 0; label < n; ++label)
    for (int t = 1; t <= slots; ++t) {
      std::vector<int> together;
      for (int m = 0; m < n; ++m) {
        const SlotRange& p = c.members[u(m)].present;
        if (held[u(m)] == label && t >= p.first && t <= p.last) together.push_back(m);
      }
      if (together.size() < 2) continue;
      const int size = static_cast<int>(together.size());
      bool room = false;
      for (const StationSpec& s : c.stations) {
        bool good = s.capacity >= size;
        for (int m : together) good = good && required[u(m)].contains(s.id);
        for (const std::string& kind : s.equipment)
          for (const EquipmentSpec& e : c.equipment)
            if (e.id == kind && e.units < size) good = false;
        room = room || good;
      }
      if (!room) out.insert(5);
    }
  return out;
}

}  // namespace floorwheel::brute
