// SPDX-License-Identifier: GPL-3.0-or-later
// The check of a certificate: whose it is, then claim by claim.
#include "scheduler/rotation/certificate_facts.h"

#include <algorithm>
#include <array>

namespace floorwheel {

std::string_view id_of(ProofType type) {
  static constexpr std::array<std::string_view, 8> ids = {"nothing",  "hall",    "majority", "member",
                                                          "lagrange", "packing", "ring",     "search"};
  return ids[static_cast<std::size_t>(type)];
}

bool CertificateVerdict::holds() const {
  return mismatch.empty() && std::none_of(claims.begin(), claims.end(),
                                          [](const ClaimVerdict& v) { return v.verdict == Verdict::fails; });
}

namespace {

using namespace certify;

ClaimVerdict judge(const Facts& f, const Certificate& all, const Claim& claim, const CheckLimits& limits) {
  if (claim.component == Component::moved) return {Verdict::fails, "moved is counted in repairs only"};
  if (claim.bound <= 0) return {Verdict::holds, "no component is below 0"};
  switch (claim.proof.type) {
    case ProofType::nothing:
      return {Verdict::fails, "nothing proves more than 0"};
    case ProofType::hall:
      return check_hall(f, all, claim);
    case ProofType::majority:
      return check_majority(f, all, claim);
    case ProofType::member:
    case ProofType::lagrange:
      return check_rows(f, all, claim, limits.table);
    case ProofType::packing:
      return check_packing(f, all, claim, limits);
    case ProofType::ring:
      return check_ring(f, all, claim, limits.table);
    case ProofType::search:
      return check_search(f, all, claim, limits.search);
  }
  return {Verdict::fails, "there is no such proof"};
}

}  // namespace

CertificateVerdict check_certificate(const ClassSpec& spec, int slots, const Certificate& all,
                                     const CheckLimits& limits) {
  CertificateVerdict out;
  if (all.class_hash != class_hash(spec))
    out.mismatch = "the certificate is of another class: its hash differs";
  else if (all.slots != slots)
    out.mismatch =
        "the certificate is of " + std::to_string(all.slots) + " slots, not of " + std::to_string(slots);
  else if (all.style != Style::ring && all.style != Style::free)
    out.mismatch = "the certificate is of no style";
  if (!out.mismatch.empty()) return out;
  const Facts facts(spec, slots);
  for (const Claim& claim : all.claims) out.claims.push_back(judge(facts, all, claim, limits));
  return out;
}

ClaimVerdict check_claim(const ClassSpec& spec, const Certificate& all, const Claim& claim,
                         const CheckLimits& limits) {
  return judge(Facts(spec, all.slots), all, claim, limits);
}

}  // namespace floorwheel
