// SPDX-License-Identifier: GPL-3.0-or-later
// What the check of a certificate asks of a class, looked up once. For the check only: the planner has its
// own, so that the two cannot be wrong together. Slots count from 0 here, stations and members as in the
// class.
#pragma once

#include <optional>
#include <vector>

#include "scheduler/rotation/certificate.h"

namespace floorwheel::certify {

__extension__ using Wide = __int128;  // sums that 64 bits might not hold

constexpr std::size_t at(int i) { return static_cast<std::size_t>(i); }

struct Person {
  int first = 0, last = -1;  // slots present; last < first: none
  int recovery_s = 0;
  std::vector<int> list;                          // required stations
  std::vector<std::uint32_t> primary, assisting;  // [station]
  std::vector<int> load_hg;                       // [station], -1: none

  [[nodiscard]] int slots() const { return last < first ? 0 : last - first + 1; }
  [[nodiscard]] bool there(int t) const { return first <= t && t <= last; }
  /// Alike in all that a row's own cost and rules depend on.
  [[nodiscard]] bool like(const Person&) const;
};

class Facts {
 public:
  Facts(const ClassSpec&, int slots);

  const ClassSpec& spec;
  const int slots, stations, kinds;
  std::vector<Person> people;
  std::vector<std::vector<int>> takes;  // [station] kinds of equipment
  std::vector<std::vector<int>> walk;   // [station][station] centimetres

  /// Places for members at s in slot t, units of its equipment counted; 0 while closed.
  [[nodiscard]] int places(int s, int t) const { return places_[at(s)][at(t)]; }
  [[nodiscard]] std::int64_t wanted(const Person& p) const {
    return std::int64_t{spec.laps} * static_cast<std::int64_t>(p.list.size());
  }
  /// Missed visits that the member's own window forces.
  [[nodiscard]] std::int64_t forced(const Person& p) const {
    return wanted(p) > p.slots() ? wanted(p) - p.slots() : 0;
  }
  [[nodiscard]] std::int64_t forced() const;
  /// Whether work in u and in t > u is too near for somebody who recovers so long.
  [[nodiscard]] bool too_near(int recovery_s, int u, int t) const;
  /// Worked in one slot and the next.
  [[nodiscard]] static bool back_to_back(const Person& p, int a, int b) {
    return (p.primary[at(a)] & p.primary[at(b)]) != 0;
  }
  [[nodiscard]] static bool assists(const Person& p, int a, int b) {
    return !back_to_back(p, a, b) &&
           ((p.primary[at(a)] & p.assisting[at(b)]) | (p.assisting[at(a)] & p.primary[at(b)])) != 0;
  }

 private:
  std::vector<std::vector<int>> places_;
};

/// The components in the order that counts, without `moved`.
std::vector<Component> order();

/// The least of what is weighed, over all rows that one member can have alone; nothing: the table would be
/// too large. `forced_only`: rows that miss more than their window forces may be left out. `entries` is used
/// up. Precondition: prices_hold().
std::optional<std::int64_t> cheapest_row(const Facts&, const Person&, const PriceList&, bool forced_only,
                                         std::int64_t& entries);

/// What is wrong with a price list as such, in words; empty: nothing.
std::string prices_hold(const Facts&, Component, const PriceList&);

ClaimVerdict check_hall(const Facts&, const Certificate&, const Claim&);
ClaimVerdict check_majority(const Facts&, const Certificate&, const Claim&);
ClaimVerdict check_rows(const Facts&, const Certificate&, const Claim&, std::int64_t table);
ClaimVerdict check_packing(const Facts&, const Certificate&, const Claim&, const CheckLimits&);
ClaimVerdict check_ring(const Facts&, const Certificate&, const Claim&, std::int64_t table);
ClaimVerdict check_search(const Facts&, const Certificate&, const Claim&, std::int64_t steps);

/// Holds where `least` reaches the claim's bound.
ClaimVerdict reached(const Claim&, std::int64_t least);

/// What is weighed beyond the earlier components as they are given, in units of the claim: rounded up.
std::int64_t beyond_given(const Certificate&, const Claim&, Wide weighed);

}  // namespace floorwheel::certify
