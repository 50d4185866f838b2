// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/certificate.h"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <stdexcept>

#include "kiosk/cli/class_input.h"
#include "kiosk/cli/text.h"
#include "kiosk/files/certificate_file.h"
#include "kiosk/files/json_text.h"
#include "kiosk/files/new_files.h"
#include "kiosk/files/text_file.h"

namespace floorwheel::cli {
namespace {

std::vector<Component> counted_in_plans() {
  std::vector<Component> out(components.begin(), components.end());
  std::erase(out, Component::moved);
  return out;
}

std::string_view word_of(Verdict v) {
  static constexpr std::array<std::string_view, 3> words = {"holds", "not_rechecked", "fails"};
  return words[static_cast<std::size_t>(v)];
}

std::string names(const std::vector<Component>& order, int from, int to) {
  std::vector<std::string> ids;
  for (int i = from; i < to; ++i) ids.emplace_back(id_of(order[static_cast<std::size_t>(i)]));
  return ids.empty() ? "nothing" : listed(ids);
}

}  // namespace

void write_certificate(const std::string& path, const ClassSpec& c, const Certificate& certificate) {
  const std::string text = files::to_json(c, certificate);
  const std::string beside = path + ".part" + std::to_string(::getpid());
  const bool whole = files::write_whole(beside, text);
  if (whole && std::rename(beside.c_str(), path.c_str()) == 0) return;
  const std::string why = std::strerror(errno);
  if (whole) std::remove(beside.c_str());
  throw std::runtime_error(path + " cannot be written (" + why + ")");
}

CertificateAudit audit_certificate(const std::string& path, const ClassSpec& c, const files::RotationFile& r,
                                   const Cost& cost) {
  CertificateAudit out;
  out.certificate = value_or_throw(
      files::parse_certificate(value_or_throw(files::read_text(path, "certificate (JSON)")), path, c));
  const Certificate& all = out.certificate;
  out.verdict = check_certificate(c, r.slots, all);
  if (!out.verdict.mismatch.empty()) return out;
  if (all.style != r.style)
    out.wrong.push_back("The certificate is of a " + std::string(id_of(all.style)) +
                        " rotation, this one is " + std::string(id_of(r.style)) + ".");
  const std::vector<Component> order = counted_in_plans();
  for (Component component : order)
    if (all.cost[component] != cost[component])
      out.wrong.push_back("The certificate is of a rotation with " + std::string(id_of(component)) + " " +
                          std::to_string(all.cost[component]) + ", this one has " +
                          std::to_string(cost[component]) + ".");
  bool rechecked = true;
  for (Component component : order) {
    const auto claim = std::find_if(all.claims.begin(), all.claims.end(),
                                    [&](const Claim& one) { return one.component == component; });
    std::int64_t bound = 0;  // of what nothing is claimed, this is
    Verdict verdict = Verdict::holds;
    if (claim != all.claims.end()) {
      bound = claim->bound;
      verdict = out.verdict.claims[static_cast<std::size_t>(claim - all.claims.begin())].verdict;
    }
    if (bound > cost[component])
      out.wrong.push_back("The certificate claims " + std::string(id_of(component)) + " to be at least " +
                          std::to_string(bound) + ", but this rotation has " +
                          std::to_string(cost[component]) + ".");
    if (verdict == Verdict::fails || bound < cost[component]) break;
    rechecked = rechecked && verdict == Verdict::holds;
    ++out.supported;
    if (rechecked) ++out.proven;
  }
  for (Component component : r.proven)
    if (std::find(order.begin(), order.begin() + out.supported, component) == order.begin() + out.supported)
      out.wrong.push_back("The rotation calls " + std::string(id_of(component)) +
                          " proven, the certificate does not show it.");
  return out;
}

std::string text_of(const CertificateAudit& a) {
  if (!a.verdict.mismatch.empty()) return "\nThe certificate does not hold: " + a.verdict.mismatch + ".\n";
  std::vector<std::vector<std::string>> rows{{"certificate", "at least", "by", "check"}};
  for (std::size_t i = 0; i < a.certificate.claims.size(); ++i) {
    const Claim& claim = a.certificate.claims[i];
    const ClaimVerdict& v = a.verdict.claims[i];
    std::string by(id_of(claim.proof.type));
    if (claim.proof.type == ProofType::search) by += ", " + counted(claim.proof.steps, "step", "steps");
    const std::string_view said = v.verdict == Verdict::holds   ? "holds: "
                                  : v.verdict == Verdict::fails ? "does not hold: "
                                                                : "not rechecked: ";
    rows.push_back(
        {std::string(id_of(claim.component)), std::to_string(claim.bound), by, std::string(said) + v.text});
  }
  std::string out = "\n" + columns(rows) + "\n";
  for (const std::string& sentence : a.wrong) out += sentence + "\n";
  if (!a.holds()) return out + "The certificate does not hold.\n";
  const auto order = counted_in_plans();
  out += "The certificate holds. Proven: " + names(order, 0, a.proven) + ".";
  if (a.supported > a.proven) out += " Not rechecked: " + names(order, a.proven, a.supported) + ".";
  return out + "\n";
}

std::string json_of(const CertificateAudit& a) {
  std::string out = "{ \"holds\": ";
  out += a.holds() ? "true" : "false";
  out += ", \"mismatch\": " + (a.verdict.mismatch.empty() ? "null" : files::in_quotes(a.verdict.mismatch));
  const auto order = counted_in_plans();
  const auto list = [&](int from, int to) {
    std::string ids;
    for (int i = from; i < to; ++i)
      ids += (i > from ? ", " : "") + files::in_quotes(id_of(order[static_cast<std::size_t>(i)]));
    return "[" + ids + "]";
  };
  out += ",\n    \"proven\": " + list(0, a.proven) + ", \"not_rechecked\": " + list(a.proven, a.supported);
  out += ",\n    \"claims\": [";
  for (std::size_t i = 0; i < a.verdict.claims.size(); ++i) {
    const Claim& claim = a.certificate.claims[i];
    out += (i > 0 ? ",\n      " : "\n      ") + std::string("{ \"component\": ") +
           files::in_quotes(id_of(claim.component));
    out += ", \"bound\": " + std::to_string(claim.bound) +
           ", \"by\": " + files::in_quotes(id_of(claim.proof.type));
    out += ", \"verdict\": " + files::in_quotes(word_of(a.verdict.claims[i].verdict)) +
           ", \"text\": " + files::in_quotes(a.verdict.claims[i].text) + " }";
  }
  out += "],\n    \"wrong\": [";
  for (std::size_t i = 0; i < a.wrong.size(); ++i) out += (i > 0 ? ", " : "") + files::in_quotes(a.wrong[i]);
  return out + "] }";
}

}  // namespace floorwheel::cli
