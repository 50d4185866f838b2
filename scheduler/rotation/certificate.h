// SPDX-License-Identifier: GPL-3.0-or-later
// A certificate: what is claimed of a rotation's cost, with an object for each claim from which anybody can
// recompute it. A claim says: every rotation of this class with so many slots, of this style, whose earlier
// components equal `cost`, has at least `bound` in this component. The check is in exact integers and shares
// no code with the planner; it starts from the class alone. Slots count from 1 in hall parts, as in files.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "scheduler/class_spec.h"
#include "scheduler/rotation/rotation.h"

namespace floorwheel {

/// How a claim is proven; the words of files are beside it.
enum class ProofType : std::uint8_t {
  nothing,   // "nothing": no component is ever below 0
  hall,      // "hall": more visits are wanted than there is room for
  majority,  // "majority": more than half of a list shares a group
  member,    // "member": the cheapest row of each member alone
  lagrange,  // "lagrange": the same with a price on each place and unit
  packing,   // "packing": prices, and every choice of rows that costs too little looked at
  ring,      // "ring": the cheapest order of the stations, everybody alike
  search,    // "search": every rotation was looked at
};
std::string_view id_of(ProofType);

/// Members A, places P and units U. With u(m) the visits m misses beyond what m's own window forces, the sum
/// over A of max(0, u - level) is at least what A wants beyond `level`, less the room of P and U, less what
/// rule 5 leaves to pairs at stations too small for both, less what A can do elsewhere.
struct HallPart {
  struct In {
    int what = 0;            // station or kind of equipment
    std::vector<int> slots;  // from 1
    friend bool operator==(const In&, const In&) = default;
  };
  struct Together {  // two members held together, at a station
    int station = 0;
    std::vector<int> members;
    friend bool operator==(const Together&, const Together&) = default;
  };
  int level = 0;
  std::vector<int> members;
  std::vector<In> places;
  std::vector<In> units;
  std::vector<Together> together = {};
  friend bool operator==(const HallPart&, const HallPart&) = default;
};

/// Every rotation costs, weighed, at least the sum of the members' cheapest rows under these prices, less
/// what all places and units are worth. The claim's own component weighs `scale`, later ones nothing.
struct PriceList {
  std::int64_t scale = 1;
  Cost weights;                                   // of the components, none below 0
  std::vector<std::vector<std::int64_t>> places;  // [station][slot - 1], none below 0; empty: all 0
  std::vector<std::vector<std::int64_t>> units;   // [kind of equipment][slot - 1], likewise
  /// [station] stations remembered: a row may come back, within a lap, to one that was not remembered since.
  /// Empty: all are remembered.
  std::vector<std::vector<int>> memory;
  friend bool operator==(const PriceList&, const PriceList&) = default;
};

struct Proof {
  ProofType type = ProofType::nothing;
  std::vector<HallPart> hall;
  PriceList prices;        // member, lagrange, packing, ring
  std::int64_t steps = 0;  // search: how many the planner took
  friend bool operator==(const Proof&, const Proof&) = default;
};

struct Claim {
  Component component = Component::missed;
  std::int64_t bound = 0;
  Proof proof;
  friend bool operator==(const Claim&, const Claim&) = default;
};

struct Certificate {
  std::uint64_t class_hash = 0;
  int slots = 0;
  Style style = Style::free;
  Cost cost;
  std::vector<Claim> claims;
  friend bool operator==(const Certificate&, const Certificate&) = default;
};

/// 64-bit FNV-1a (Fowler, Noll and Vo; from memory) over a text of everything in the class that rules and
/// cost depend on: certificate_hash.cpp lays it out. Names, aliases and times of the day are not in it.
std::uint64_t class_hash(const ClassSpec&);

enum class Verdict : std::uint8_t { holds, not_rechecked, fails };

struct ClaimVerdict {
  Verdict verdict = Verdict::fails;
  std::string text;        // one clause without capital and full stop: what was found
  std::int64_t least = 0;  // what the proof shows, whatever is claimed
};

struct CertificateVerdict {
  std::string mismatch;              // not empty: of another class or number of slots; nothing was checked
  std::vector<ClaimVerdict> claims;  // one for each claim of the certificate
  [[nodiscard]] bool holds() const;  // nothing fails
};

/// How much the check may do: entries of tables, rows tried, rows looked at while packing (in thousands of
/// places they take).
struct CheckLimits {
  std::int64_t table = 400'000'000;
  std::int64_t search = 20'000'000;
  std::int64_t packing = 20'000'000;
};

CertificateVerdict check_certificate(const ClassSpec&, int slots, const Certificate&,
                                     const CheckLimits& = {});

/// The check of one claim of a certificate whose hash and slots are those of the class.
ClaimVerdict check_claim(const ClassSpec&, const Certificate&, const Claim&, const CheckLimits& = {});

}  // namespace floorwheel
