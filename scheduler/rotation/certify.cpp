// SPDX-License-Identifier: GPL-3.0-or-later
// For each component the proof objects that may show its bound, the simplest first.
#include "scheduler/rotation/certify.h"

#include <algorithm>

#include "scheduler/rotation/bounds.h"
#include "scheduler/rotation/hall_cut.h"

namespace floorwheel {
namespace {

/// While a plan is made the check may do what takes a tenth of a second or two: lists up to 15 stations,
/// rings up to 19; `audit` may do more.
constexpr CheckLimits quick{.table = 150'000'000, .search = 20'000};

class Certifier {
 public:
  Certifier(const ClassSpec& spec, const Problem& p, Found& found, const std::vector<Priced>& priced)
      : spec_(spec), p_(p), found_(found), priced_(priced) {
    all_.class_hash = class_hash(spec);
    all_.slots = p.slots;
    all_.style = found.style;
    all_.cost = found.cost;
  }

  Certificate make() {
    const std::vector<Component> order = ranking(p_);
    for (std::size_t i = 0; i < order.size(); ++i) {
      Claim claim{order[i], found_.bound[order[i]], {}};
      if (!proves(claim)) {  // a defect of the planner, which then claims nothing
        claim = {order[i], 0, {}};
        found_.bound[order[i]] = 0;
        if (found_.cost[order[i]] > 0) found_.proven = std::min(found_.proven, static_cast<int>(i));
      }
      all_.claims.push_back(std::move(claim));
    }
    return std::move(all_);
  }

 private:
  bool proves(Claim& claim) const {
    if (claim.bound <= 0) return true;
    for (Proof& proof : candidates(claim.component)) {
      claim.proof = std::move(proof);
      const Verdict verdict = check_claim(spec_, all_, claim, quick).verdict;
      if (verdict == Verdict::holds) return true;
      // Too large to be checked here, not to be looked at whole: `audit` may take the time.
      if (verdict == Verdict::not_rechecked &&
          (claim.proof.type == ProofType::lagrange || claim.proof.type == ProofType::ring))
        return true;
    }
    claim.proof = {ProofType::search, {}, {}, found_.searched};
    return check_claim(spec_, all_, claim, quick).verdict != Verdict::fails;
  }

  std::vector<Proof> candidates(Component c) const {
    std::vector<Proof> out;
    if (c == Component::missed || c == Component::uneven)
      out.push_back({ProofType::hall, hall_parts(p_, c == Component::uneven), {}, 0});
    if (c == Component::back_to_back) {
      out.push_back({ProofType::majority, {}, {}, 0});
      out.push_back({ProofType::member, {}, after_missed(c), 0});
    }
    if (c == Component::back_to_back && found_.style == Style::ring) {
      Proof proof{ProofType::ring, {}, {}, 0};
      proof.prices.weights[c] = 1;
      out.push_back(proof);
    }
    for (const Priced& priced : priced_)
      if (priced.component == c) out.push_back({priced.type, {}, priced.prices, 0});
    return out;
  }

  /// No member gains by missing a visit: no row has so much of another component.
  PriceList after_missed(Component c) const {
    PriceList prices;
    prices.weights[Component::missed] = p_.slots + 1;
    prices.weights[c] = 1;
    return prices;
  }

  const ClassSpec& spec_;
  const Problem& p_;
  Found& found_;
  const std::vector<Priced>& priced_;
  Certificate all_;
};

}  // namespace

Certificate certify(const ClassSpec& spec, const Problem& p, Found& found,
                    const std::vector<Priced>& priced) {
  return Certifier(spec, p, found, priced).make();
}

}  // namespace floorwheel
