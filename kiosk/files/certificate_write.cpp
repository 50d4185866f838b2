// SPDX-License-Identifier: GPL-3.0-or-later
// The writing half of the certificate format: a claim a line, then its proof.
#include "kiosk/files/certificate_file.h"
#include "kiosk/files/json_text.h"

namespace floorwheel::files {
namespace {

std::string number(std::int64_t n) { return std::to_string(n); }

std::string costs(const Cost& cost, bool zeros) {
  std::string out;
  for (Component c : components) {
    if (c == Component::moved || (!zeros && cost[c] == 0)) continue;
    if (!out.empty()) out += ", ";
    out += in_quotes(id_of(c)) + ": " + number(cost[c]);
  }
  return "{ " + out + " }";
}

class Writer {
 public:
  explicit Writer(const ClassSpec& c) : c_(c) {}

  std::string claim(const Claim& claim) const {
    return "{ \"component\": " + in_quotes(id_of(claim.component)) + ", \"bound\": " + number(claim.bound) +
           ",\n      \"proof\": " + proof(claim.proof) + " }";
  }

 private:
  std::string proof(const Proof& p) const {
    std::string out = "{ \"type\": " + in_quotes(id_of(p.type));
    if (p.type == ProofType::hall) {
      out += ",\n        \"parts\": ";
      out += list(
          p.hall, [&](const HallPart& part) { return hall(part); }, ",\n          ");
    }
    if (p.type == ProofType::member || p.type == ProofType::lagrange || p.type == ProofType::packing ||
        p.type == ProofType::ring)
      out += prices(p.prices);
    if (p.type == ProofType::search) out += ", \"steps\": " + number(p.steps);
    return out + " }";
  }

  std::string hall(const HallPart& part) const {
    const auto member = [&](int m) { return in_quotes(c_.members[static_cast<std::size_t>(m)].id); };
    const auto pair = [&](const HallPart::Together& two) {
      return "{ \"station\": " + in_quotes(id("station", two.station)) +
             ", \"members\": " + list(two.members, member) + " }";
    };
    return "{ \"level\": " + number(part.level) + ", \"members\": " + list(part.members, member) +
           ",\n            \"places\": " + list(part.places, [&](auto& in) { return cells("station", in); }) +
           ",\n            \"units\": " + list(part.units, [&](auto& in) { return cells("equipment", in); }) +
           (part.together.empty() ? "" : ",\n            \"together\": " + list(part.together, pair)) + " }";
  }

  std::string cells(std::string_view key, const HallPart::In& in) const {
    return "{ " + in_quotes(key) + ": " + in_quotes(id(key, in.what)) +
           ", \"slots\": " + list(in.slots, number) + " }";
  }

  std::string prices(const PriceList& p) const {
    std::string out = ", \"scale\": " + number(p.scale) + ", \"weights\": " + costs(p.weights, false);
    if (!p.places.empty()) out += ",\n        \"places\": " + table("station", p.places);
    if (!p.units.empty()) out += ",\n        \"units\": " + table("equipment", p.units);
    if (!p.memory.empty()) {
      std::vector<std::string> rows;
      for (std::size_t s = 0; s < p.memory.size(); ++s)
        rows.push_back("{ \"station\": " + in_quotes(c_.stations[s].id) + ", \"remembers\": " +
                       list(p.memory[s], [&](int r) { return in_quotes(id("station", r)); }) + " }");
      out +=
          ",\n        \"memory\": " + list(
                                          rows, [](const std::string& row) { return row; }, ",\n          ");
    }
    return out;
  }

  std::string table(std::string_view key, const std::vector<std::vector<std::int64_t>>& rows) const {
    std::vector<std::string> lines;
    for (std::size_t i = 0; i < rows.size(); ++i)
      lines.push_back("{ " + in_quotes(key) + ": " + in_quotes(id(key, static_cast<int>(i))) +
                      ", \"prices\": " + list(rows[i], number) + " }");
    return list(
        lines, [](const std::string& line) { return line; }, ",\n          ");
  }

  [[nodiscard]] const std::string& id(std::string_view key, int i) const {
    const auto at = static_cast<std::size_t>(i);
    return key == "station" ? c_.stations[at].id : c_.equipment[at].id;
  }

  const ClassSpec& c_;
};

std::string hex(std::uint64_t word) {
  std::string out;
  for (int shift = 60; shift >= 0; shift -= 4) out += "0123456789abcdef"[word >> shift & 15U];
  return out;
}

}  // namespace

std::string to_json(const ClassSpec& c, const Certificate& all) {
  const Writer writer(c);
  std::string out = "{ \"format\": \"floorwheel-certificate\", \"version\": 1,\n  \"class_hash\": ";
  out += in_quotes(hex(all.class_hash)) + ", \"slots\": " + number(all.slots);
  out += ", \"style\": " + in_quotes(id_of(all.style)) + ",\n  \"cost\": " + costs(all.cost, true);
  out += ",\n  \"claims\": ";
  out += list(
      all.claims, [&](const Claim& claim) { return writer.claim(claim); }, ",\n    ");
  return out + " }\n";
}

}  // namespace floorwheel::files
