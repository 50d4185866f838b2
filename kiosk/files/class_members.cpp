// SPDX-License-Identifier: GPL-3.0-or-later
// [[member]], guests and [[pair]] of a class file.
#include "kiosk/files/class_parts.h"

namespace floorwheel::files {
namespace {

constexpr std::array<Key, 10> member_keys{{
    {"id", "id = \"m01\""},
    {"shown_as", "shown_as = \"Robin K.\""},
    {"level", "level = \"novice\", \"intermediate\" or \"advanced\""},
    {"present", "present = [1, 3], or [2] for: from slot 2 to the end"},
    {"excluded_groups", "excluded_groups = [\"shoulders\"]"},
    {"excluded_features", "excluded_features = [\"overhead\"]"},
    {"excluded_exercises", "excluded_exercises = [\"seated-row\"]"},
    {"allowed_exercises", "allowed_exercises = [\"seated-row\"]"},
    {"required", "required = [\"A\", \"B\"]"},
    {"loads_kg", "loads_kg = { A = 16.0 }"},
}};
constexpr std::array<Key, 2> pair_keys{{
    {"members", "members = [\"m01\", \"m02\"]"},
    {"rule", "rule = \"together\" or rule = \"apart\""},
}};

void read_loads(const ClassParts& parts, const TomlTable& table, MemberSpec& m) {
  std::vector<Key> keys;
  for (const StationSpec& s : parts.spec.stations) keys.push_back({s.id, "a load in kg, such as 16.0"});
  const TomlTable loads(parts.document, table.inner("loads_kg"), "loads_kg of " + table.name(), keys);
  for (const Key& k : keys)
    if (loads.has(k.name))
      m.loads_hg.emplace(k.name, loads.decimal(loads.need(k.name), k.name, 1, 0, most_load_kg));
}

MemberSpec read_member(ClassParts& parts, TomlTable& table) {
  static const Known levels = words_of<Level>("level", level_count);
  static const Known groups = words_of<Group>("muscle group", group_count);
  static const Known features = words_of<Feature>("feature", feature_count);
  MemberSpec m;
  m.id = table.new_id("id", IdKind::member, parts.members);
  table.rename("member " + m.id);
  m.shown_as = table.shown_text("shown_as", 60);
  m.level = *level_from(table.known_id(table.need("level"), "level", levels));
  if (table.has("present")) m.present = table.slot_range(table.need("present"), "present");
  for (const std::string& id : table.known_ids("excluded_groups", groups))
    m.excluded_groups.insert(*group_from(id));
  for (const std::string& id : table.known_ids("excluded_features", features))
    m.excluded_features.insert(*feature_from(id));
  m.excluded_exercises = table.known_ids("excluded_exercises", parts.exercises);
  m.allowed_exercises = table.known_ids("allowed_exercises", parts.exercises);
  if (table.has("required")) m.required = table.known_ids("required", parts.stations);
  if (table.has("loads_kg")) read_loads(parts, table, m);
  return m;
}

/// One of the two members of a pair; a guest can stand in none.
std::string pair_member(const ClassParts& parts, const TomlTable& table, const toml::node& n) {
  if (const auto* id = n.as_string(); id && !parts.members.has(id->get()))
    for (const MemberSpec& m : parts.spec.members)
      if (m.guest && m.id == id->get())
        table.fail(n, "a guest can stand in no pair: " + m.id, "pair members who have an id of their own");
  return table.known_id(n, "members", parts.members);
}

void read_pairs(ClassParts& parts) {
  static const Known rules = words_of<PairRule>("rule of a pair", 2);
  for (const toml::table* t : tables_of(parts, "pair")) {
    const TomlTable table(parts.document, *t, "a [[pair]]", pair_keys);
    const toml::array& two = table.list("members");
    if (two.size() != 2) table.wrong("members", "names " + std::to_string(two.size()) + ", not two");
    PairSpec p;
    p.a = pair_member(parts, table, two[0]);
    p.b = pair_member(parts, table, two[1]);
    if (p.a == p.b) table.wrong("members", "names " + p.a + " twice");
    p.rule = *pair_rule_from(table.known_id(table.need("rule"), "rule", rules));
    parts.spec.pairs.push_back(p);
  }
}

}  // namespace

void read_members(ClassParts& parts) {
  for (const toml::table* t : tables_of(parts, "member")) {
    TomlTable table(parts.document, *t, "a [[member]]", member_keys);
    parts.spec.members.push_back(read_member(parts, table));
  }
  add_guests(parts.spec, parts.guests);
  if (parts.spec.members.empty())
    parts.document.fail({{1, 1}, {1, 1}, nullptr}, "nobody is in the class",
                        "add a [[member]], or guests = 1 under [class]");
  read_pairs(parts);
}

}  // namespace floorwheel::files
