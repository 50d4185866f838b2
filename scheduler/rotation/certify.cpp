// SPDX-License-Identifier: GPL-3.0-or-later
// For each component the proof objects that may show its bound, the simplest first.
#include "scheduler/rotation/certify.h"

#include <algorithm>

#include "scheduler/rotation/bounds.h"
#include "scheduler/rotation/hall_cut.h"

namespace floorwheel {
namespace {

class Certifier {
 public:
  Certifier(const ClassSpec& spec, const Problem& p, Found& found, const std::vector<Priced>& priced,
            const CheckLimits& limits)
      : spec_(spec), p_(p), found_(found), priced_(priced), limits_(limits) {
    all_.class_hash = class_hash(spec);
    all_.slots = p.slots;
    all_.style = found.style;
    all_.cost = found.cost;
  }

  Certificate make() {
    found_.proven = 0;
    bool leading = true;
    for (Component c : ranking(p_)) {
      Claim claim = accepted(c, found_.bound[c]);
      found_.bound[c] = claim.bound;
      leading = leading && claim.bound == found_.cost[c];
      if (leading) ++found_.proven;
      all_.claims.push_back(std::move(claim));
    }
    return std::move(all_);
  }

 private:
  /// The claim with this bound, or with as much of it as the check accepts.
  Claim accepted(Component c, std::int64_t bound) const {
    Claim best{c, 0, {}};
    if (bound <= 0) return best;
    for (Proof& proof : candidates(c)) {
      if (best.bound >= bound) return best;
      Claim claim{c, bound, std::move(proof)};
      const ClaimVerdict verdict = check_claim(spec_, all_, claim, limits_);
      if (verdict.verdict != Verdict::holds) claim.bound = std::min(bound, verdict.least);
      if (claim.bound > best.bound) best = std::move(claim);
    }
    if (best.bound >= bound) return best;
    Claim claim{c, bound, {ProofType::search, {}, {}, found_.searched}};
    return check_claim(spec_, all_, claim, limits_).verdict == Verdict::holds ? claim : best;
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
  const CheckLimits limits_;
  Certificate all_;
};

}  // namespace

Certificate certify(const ClassSpec& spec, const Problem& p, Answer& answer,
                    const std::vector<Priced>& priced, const CheckLimits& limits) {
  Certificate out = Certifier(spec, p, answer.found, priced, limits).make();
  answer.ring_is_best = answer.ring_is_best && answer.found.proven >= 3;
  return out;
}

}  // namespace floorwheel
