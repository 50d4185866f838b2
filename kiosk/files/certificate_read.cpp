// SPDX-License-Identifier: GPL-3.0-or-later
// The reading half of the certificate format.
#include <map>
#include <set>

#include "kiosk/files/certificate_file.h"
#include "kiosk/files/json_reader.h"
#include "kiosk/files/nearest.h"

namespace floorwheel::files {
namespace {

constexpr std::int64_t slots_most = 1000;

class Reader {
 public:
  explicit Reader(const ClassSpec& c) : c_(c) {
    for (const StationSpec& s : c.stations) stations_.push_back(s.id);
    for (const EquipmentSpec& e : c.equipment) kinds_.push_back(e.id);
    for (const MemberSpec& m : c.members) members_.push_back(m.id);
  }

  Certificate read(const JsonNode& root) const {
    const JsonNode format = root["format"];
    if (format.text() != "floorwheel-certificate")
      format.fail("is \"" + format.text() + "\"", "a certificate says \"floorwheel-certificate\"");
    const JsonNode version = root["version"];
    if (version.whole(0, INT64_MAX) != 1)
      version.fail("another version of the format", "this program reads version 1");
    root.only({"format", "version", "class_hash", "slots", "style", "cost", "claims"});
    Certificate out;
    out.class_hash = hash(root["class_hash"]);
    out.slots = static_cast<int>(root["slots"].whole(1, slots_most));
    const std::string style = root["style"].text();
    if (style != "ring" && style != "free")
      root["style"].fail("is \"" + style + "\"", "a rotation is \"ring\" or \"free\"");
    out.style = *style_from(style);
    out.cost = costs(root["cost"], true);
    const JsonNode claims = root["claims"];
    const std::size_t count = claims.size();
    if (out.class_hash != class_hash(c_)) return out;
    std::set<Component> seen;
    for (std::size_t i = 0; i < count; ++i) {
      Claim claim = read_claim(claims[i]);
      if (!seen.insert(claim.component).second)
        claims[i]["component"].fail("is claimed twice", "claim each component once");
      out.claims.push_back(std::move(claim));
    }
    return out;
  }

 private:
  static std::uint64_t hash(const JsonNode& node) {
    const std::string text = node.text();
    std::uint64_t word = 0;
    if (text.size() != 16) node.fail("is \"" + text + "\"", "write 16 of 0-9 and a-f");
    for (const char digit : text) {
      const std::size_t value = std::string_view("0123456789abcdef").find(digit);
      if (value == std::string_view::npos) node.fail("is \"" + text + "\"", "write 16 of 0-9 and a-f");
      word = word << 4 | value;
    }
    return word;
  }

  static Component component(const JsonNode& node) {
    std::vector<std::string> known;
    for (Component c : components) {
      if (c == Component::moved) continue;
      if (node.text() == id_of(c)) return c;
      known.emplace_back(id_of(c));
    }
    node.fail("is \"" + node.text() + "\"", did_you_mean(node.text(), known));
  }

  /// Components that need not be there count 0.
  static Cost costs(const JsonNode& node, bool all) {
    node.only(
        {"missed", "uneven", "back_to_back", "short_rest", "idle", "assist_overlap", "walk_cm", "reload_hg"});
    Cost cost;
    for (Component c : components)
      if (c != Component::moved && (all || node.has(id_of(c)))) cost[c] = node[id_of(c)].whole(0, INT64_MAX);
    return cost;
  }

  [[nodiscard]] Claim read_claim(const JsonNode& node) const {
    node.only({"component", "bound", "proof"});
    Claim claim;
    claim.component = component(node["component"]);
    claim.bound = node["bound"].whole(0, INT64_MAX);
    const JsonNode proof = node["proof"];
    const std::string type = proof["type"].text();
    std::vector<std::string> known;
    bool is_known = false;
    for (int i = 0; i <= static_cast<int>(ProofType::search); ++i) {
      known.emplace_back(id_of(static_cast<ProofType>(i)));
      if (known.back() != type) continue;
      claim.proof.type = static_cast<ProofType>(i);
      is_known = true;
    }
    if (!is_known) proof["type"].fail("is \"" + type + "\"", did_you_mean(type, known));
    switch (claim.proof.type) {
      case ProofType::nothing:
      case ProofType::majority:
        proof.only({"type"});
        break;
      case ProofType::hall:
        proof.only({"type", "parts"});
        for (std::size_t i = 0; i < proof["parts"].size(); ++i)
          claim.proof.hall.push_back(part(proof["parts"][i]));
        break;
      case ProofType::member:
      case ProofType::lagrange:
      case ProofType::packing:
      case ProofType::ring:
        claim.proof.prices = prices(proof);
        break;
      case ProofType::search:
        proof.only({"type", "steps"});
        claim.proof.steps = proof["steps"].whole(0, INT64_MAX);
        break;
    }
    return claim;
  }

  [[nodiscard]] HallPart part(const JsonNode& node) const {
    node.only({"level", "members", "places", "units", "together"});
    HallPart out;
    out.level = static_cast<int>(node["level"].whole(0, slots_most));
    out.members = members(node["members"]);
    if (node.has("together"))
      for (std::size_t i = 0; i < node["together"].size(); ++i) {
        const JsonNode pair = node["together"][i];
        pair.only({"station", "members"});
        out.together.push_back({index(pair["station"], stations_), members(pair["members"])});
      }
    out.places = cells(node["places"], "station", stations_);
    out.units = cells(node["units"], "equipment", kinds_);
    return out;
  }

  [[nodiscard]] std::vector<int> members(const JsonNode& node) const {
    std::vector<int> out;
    for (std::size_t i = 0; i < node.size(); ++i) out.push_back(index(node[i], members_));
    return out;
  }

  static std::vector<HallPart::In> cells(const JsonNode& node, std::string_view key,
                                         const std::vector<std::string>& ids) {
    std::vector<HallPart::In> out;
    for (std::size_t i = 0; i < node.size(); ++i) {
      node[i].only({key, "slots"});
      HallPart::In in{index(node[i][key], ids), {}};
      const JsonNode slots = node[i]["slots"];
      for (std::size_t t = 0; t < slots.size(); ++t)
        in.slots.push_back(static_cast<int>(slots[t].whole(1, slots_most)));
      out.push_back(std::move(in));
    }
    return out;
  }

  [[nodiscard]] PriceList prices(const JsonNode& node) const {
    node.only({"type", "scale", "weights", "places", "units", "memory"});
    PriceList out;
    out.scale = node["scale"].whole(1, INT64_MAX);
    out.weights = costs(node["weights"], false);
    if (node.has("places")) out.places = table(node["places"], "station", stations_);
    if (node.has("units")) out.units = table(node["units"], "equipment", kinds_);
    if (node.has("memory")) {
      const JsonNode memory = node["memory"];
      out.memory.resize(memory.size());
      for (std::size_t i = 0; i < memory.size(); ++i) {
        memory[i].only({"station", "remembers"});
        in_order(memory[i]["station"], stations_, i);
        const JsonNode remembers = memory[i]["remembers"];
        for (std::size_t r = 0; r < remembers.size(); ++r)
          out.memory[i].push_back(index(remembers[r], stations_));
      }
    }
    return out;
  }

  static std::vector<std::vector<std::int64_t>> table(const JsonNode& node, std::string_view key,
                                                      const std::vector<std::string>& ids) {
    std::vector<std::vector<std::int64_t>> out(node.size());
    for (std::size_t i = 0; i < node.size(); ++i) {
      node[i].only({key, "prices"});
      in_order(node[i][key], ids, i);
      const JsonNode row = node[i]["prices"];
      for (std::size_t t = 0; t < row.size(); ++t) out[i].push_back(row[t].whole(0, INT64_MAX));
    }
    return out;
  }

  static void in_order(const JsonNode& node, const std::vector<std::string>& ids, std::size_t i) {
    if (i >= ids.size() || node.text() != ids[i])
      node.fail("is \"" + node.text() + "\"",
                i < ids.size() ? "the class's next is " + ids[i] : "leave it out");
  }

  static int index(const JsonNode& node, const std::vector<std::string>& ids) {
    const std::string id = node.text();
    for (std::size_t i = 0; i < ids.size(); ++i)
      if (ids[i] == id) return static_cast<int>(i);
    node.fail("the class has no " + id, did_you_mean(id, ids));
  }

  const ClassSpec& c_;
  std::vector<std::string> stations_, kinds_, members_;
};

}  // namespace

OrFileError<Certificate> parse_certificate(std::string_view json, const std::string& file,
                                           const ClassSpec& c) {
  try {
    const boost::json::value value = parse_json(json, file);
    return Reader(c).read(JsonNode(value, file));
  } catch (const JsonStop& stop) {
    FileError error = stop.error;
    if (error.line > 0) error.right = "give what `floorwheel plan CLASS --slots T --certificate FILE` writes";
    return error;
  }
}

}  // namespace floorwheel::files
