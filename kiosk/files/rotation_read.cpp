// SPDX-License-Identifier: GPL-3.0-or-later
// The reading half of the rotation format, and how a rotation as read fits a class.
#include <algorithm>
#include <map>
#include <set>

#include "kiosk/files/json_reader.h"
#include "kiosk/files/nearest.h"
#include "kiosk/files/rotation_file.h"

namespace floorwheel::files {
namespace {

constexpr int most_slots = 1000;

void check_header(const JsonNode& root) {
  const std::string format = root["format"].text();
  if (format == "floorwheel-slots")
    root["format"].fail("this is the table of what each number of slots buys",
                        "give the rotation itself, its \"chosen\", or plan with --slots");
  if (format != "floorwheel-rotation")
    root["format"].fail("is \"" + format + "\"", "a rotation says \"floorwheel-rotation\"");
  const JsonNode version = root["version"];
  if (version.whole(0, INT64_MAX) != 1)
    version.fail("another version of the format", "this program reads version 1");
  root.only({"format", "version", "class", "slots", "work_s", "change_s", "at_slot", "style", "ring",
             "members", "cost", "bound", "proven", "reasons", "seed", "elapsed_ms"});
}

void read_style(const JsonNode& root, RotationFile& r) {
  const std::string style = root["style"].text();
  if (style != "ring" && style != "free")
    root["style"].fail("is \"" + style + "\"", "a rotation is \"ring\" or \"free\"");
  r.style = *style_from(style);
  if (r.style == Style::ring) {
    const JsonNode ring = root["ring"];
    for (std::size_t i = 0; i < ring.size(); ++i) r.ring.push_back(ring[i].text());
  } else if (root.has("ring")) {
    root["ring"].fail("stands in a free rotation", "leave it out, or say \"style\": \"ring\"");
  }
}

void read_rows(const JsonNode& members, RotationFile& r) {
  std::set<std::string> seen;
  for (std::size_t m = 0; m < members.size(); ++m) {
    members[m].only({"id", "stations"});
    RunSheetRow row;
    row.member = members[m]["id"].text();
    if (!seen.insert(row.member).second)
      members[m]["id"].fail(row.member + " has two rows", "give each member one");
    const JsonNode stations = members[m]["stations"];
    if (stations.size() != static_cast<std::size_t>(r.slots))
      stations.fail("has " + std::to_string(stations.size()) + " entries",
                    "write one for each of the " + std::to_string(r.slots) +
                        " slots, null where the member does not work");
    for (std::size_t t = 0; t < stations.size(); ++t) {
      row.stations.push_back(stations[t].is_null() ? "" : stations[t].text());
      if (!stations[t].is_null() && row.stations.back().empty())
        stations[t].fail("is empty", "write a station's id, or null");
    }
    r.rows.push_back(std::move(row));
  }
}

void read_cost(const JsonNode& cost, RotationFile& r) {
  cost.only({"missed", "uneven", "back_to_back", "moved", "short_rest", "idle", "assist_overlap", "walk_cm",
             "reload_hg"});
  r.has_moved = cost.has("moved");
  if (r.has_moved && r.at_slot == 0)
    cost["moved"].fail("only a repair counts moved entries", "leave it out, or say \"at_slot\"");
  for (Component c : components)
    if (c != Component::moved || r.has_moved) r.cost[c] = cost[id_of(c)].whole(0, INT64_MAX);
}

void read_proven(const JsonNode& proven, RotationFile& r) {
  for (std::size_t i = 0; i < proven.size(); ++i) {
    const std::string id = proven[i].text();
    const auto known =
        std::find_if(components.begin(), components.end(), [&](Component c) { return id == id_of(c); });
    if (known == components.end()) proven[i].fail("there is no component " + id, "name one of `cost`");
    r.proven.push_back(*known);
  }
}

RotationFile read_rotation(const JsonNode& root) {
  check_header(root);
  RotationFile r;
  r.class_name = root["class"].text();
  r.slots = static_cast<int>(root["slots"].whole(1, most_slots));
  r.work_s = static_cast<int>(root["work_s"].whole(0, 1'000'000));
  r.change_s = static_cast<int>(root["change_s"].whole(0, 1'000'000));
  if (root.has("at_slot")) r.at_slot = static_cast<int>(root["at_slot"].whole(1, r.slots + 1));
  read_style(root, r);
  read_rows(root["members"], r);
  read_cost(root["cost"], r);
  if (root.has("proven")) read_proven(root["proven"], r);
  return r;
}

/// The ids of a class with their indices, and the place of an error in the rotation.
class Fit {
 public:
  Fit(const ClassSpec& c, const std::string& file) : file_(file) {
    for (std::size_t s = 0; s < c.stations.size(); ++s) {
      stations_.emplace(c.stations[s].id, static_cast<int>(s));
      station_ids_.push_back(c.stations[s].id);
    }
    for (std::size_t m = 0; m < c.members.size(); ++m) {
      members_.emplace(c.members[m].id, m);
      member_ids_.push_back(c.members[m].id);
    }
  }

  [[nodiscard]] StationIndex station(const std::string& id, const std::string& pointer) const {
    const auto it = stations_.find(id);
    if (it == stations_.end())
      fail(pointer, "the class has no station " + id, did_you_mean(id, station_ids_));
    return it->second;
  }
  [[nodiscard]] std::size_t member(const std::string& id, const std::string& pointer) const {
    const auto it = members_.find(id);
    if (it == members_.end()) fail(pointer, "the class has no member " + id, did_you_mean(id, member_ids_));
    return it->second;
  }
  [[noreturn]] void fail(const std::string& pointer, const std::string& what,
                         const std::string& right) const {
    throw JsonStop{{file_, 0, 0, pointer, what, right}};
  }

 private:
  const std::string& file_;
  std::map<std::string, StationIndex, std::less<>> stations_;
  std::map<std::string, std::size_t, std::less<>> members_;
  std::vector<std::string> station_ids_;
  std::vector<std::string> member_ids_;
};

std::string place_of(std::size_t row, std::size_t slot) {
  return "/members/" + std::to_string(row) + "/stations/" + std::to_string(slot);
}

/// Every station of rows and ring is one of the class.
void check_stations(const Fit& fit, const RotationFile& r) {
  for (std::size_t i = 0; i < r.ring.size(); ++i)
    static_cast<void>(fit.station(r.ring[i], "/ring/" + std::to_string(i)));
  for (std::size_t m = 0; m < r.rows.size(); ++m)
    for (std::size_t t = 0; t < r.rows[m].stations.size(); ++t)
      if (!r.rows[m].stations[t].empty())
        static_cast<void>(fit.station(r.rows[m].stations[t], place_of(m, t)));
}

Rotation fitted(const ClassSpec& c, const RotationFile& r, const std::string& file) {
  const Fit fit(c, file);
  check_stations(fit, r);
  Rotation out;
  out.slots = r.slots;
  out.style = r.style;
  for (const std::string& id : r.ring) out.ring.push_back(fit.station(id, "/ring"));
  out.at.resize(c.members.size());
  std::vector<bool> given(c.members.size(), false);
  for (std::size_t row = 0; row < r.rows.size(); ++row) {
    const std::size_t m = fit.member(r.rows[row].member, "/members/" + std::to_string(row) + "/id");
    given[m] = true;
    for (const std::string& id : r.rows[row].stations)
      out.at[m].push_back(id.empty() ? nowhere : fit.station(id, "/members"));
  }
  for (std::size_t m = 0; m < given.size(); ++m)
    if (!given[m])
      fit.fail("/members", "there is no row for " + c.members[m].id,
               "add one, with null in every slot in which the member does not work");
  return out;
}

}  // namespace

OrFileError<RotationFile> parse_rotation(std::string_view json, const std::string& file) {
  try {
    const boost::json::value value = parse_json(json, file);
    return read_rotation(JsonNode(value, file));
  } catch (const JsonStop& stop) {
    return stop.error;
  }
}

OrFileError<Rotation> rotation_for(const ClassSpec& c, const RotationFile& r, const std::string& file) {
  try {
    return fitted(c, r, file);
  } catch (const JsonStop& stop) {
    return stop.error;
  }
}

OrFileError<EarlierSheet> earlier_sheet_for(const ClassSpec& c, const RotationFile& r,
                                            const std::string& file) {
  try {
    check_stations(Fit(c, file), r);
    return EarlierSheet{r.slots, r.style, r.ring, r.rows, r.at_slot};
  } catch (const JsonStop& stop) {
    return stop.error;
  }
}

std::vector<Breach> header_breaches(const ClassSpec& c, const RotationFile& r) {
  std::vector<Breach> breaches;
  const auto differ = [&](std::string_view key, const std::string& rotation, const std::string& spec) {
    if (rotation == spec) return;
    breaches.push_back(
        {0, "", "", 0,
         "The rotation's " + std::string(key) + " is " + rotation + ", the class file's is " + spec + "."});
  };
  differ("class", '"' + r.class_name + '"', '"' + c.name + '"');
  differ("work_s", std::to_string(r.work_s), std::to_string(c.work_s));
  differ("change_s", std::to_string(r.change_s), std::to_string(c.change_s));
  return breaches;
}

bool states_true_cost(const RotationFile& r, const Audit& a) {
  for (Component c : components) {
    if (c == Component::moved && !(a.moved_known && r.has_moved)) continue;
    if (r.cost[c] != a.cost[c]) return false;
  }
  return true;
}

}  // namespace floorwheel::files
