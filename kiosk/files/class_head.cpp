// SPDX-License-Identifier: GPL-3.0-or-later
// [class] and [[break]] of a class file: name, times, style.
#include "kiosk/files/class_parts.h"

namespace floorwheel::files {
namespace {

constexpr int most_s = 36'000;  // ten hours: longer is a slip of the pen

constexpr std::array<Key, 14> class_keys{{
    {"name", "name = \"Thursday evening ring\""},
    {"start", "start = 2026-03-05T18:30:00+01:00, with its offset and without quotes"},
    {"length_min", "length_min = 60"},
    {"laps", "laps = 1"},
    {"work_s", "work_s = 40, whole seconds"},
    {"change_s", "change_s = 20, whole seconds"},
    {"slots", "slots = 12, or leave it out"},
    {"style", "style = \"auto\""},
    {"show_s", "show_s = 60, whole seconds"},
    {"warm_up_s", "warm_up_s = 360, whole seconds"},
    {"lead_in_s", "lead_in_s = 30, whole seconds"},
    {"cool_down_s", "cool_down_s = 300, whole seconds"},
    {"recovery_s", "recovery_s = { novice = 60, intermediate = 90, advanced = 120 }"},
    {"guests", "guests = 1"},
}};
constexpr std::array<Key, level_count> recovery_keys{{
    {"novice", "novice = 60, whole seconds"},
    {"intermediate", "intermediate = 90, whole seconds"},
    {"advanced", "advanced = 120, whole seconds"},
}};
constexpr std::array<Key, 2> break_keys{{{"after_slot", "after_slot = 2"}, {"s", "s = 90, whole seconds"}}};

/// RFC 3339 as written; its 'T' and 'Z' may be a blank and small letters in TOML.
std::string start_of(const TomlTable& head) {
  const toml::node& n = head.need("start");
  const auto* value = n.as_date_time();
  if (!value) head.wrong("start", "is no date with a time");
  if (!value->get().offset) head.wrong("start", "has no offset from UTC");
  std::string text = head.document().raw(n);
  for (char& c : text) {
    if (c == ' ' || c == 't') c = 'T';
    if (c == 'z') c = 'Z';
  }
  return text;
}

void read_recovery(const ClassParts& parts, const TomlTable& head, ClassSpec& spec) {
  const TomlTable recovery(parts.document, head.inner("recovery_s"), "recovery_s", recovery_keys);
  for (int l = 0; l < level_count; ++l) {
    int& s = spec.recovery_s[static_cast<std::size_t>(l)];
    s = recovery.whole(id_of(static_cast<Level>(l)), 0, most_s, s);
  }
}

void read_breaks(ClassParts& parts) {
  Known after("break after slot");
  for (const toml::table* t : tables_of(parts, "break")) {
    const TomlTable table(parts.document, *t, "a [[break]]", break_keys);
    const BreakSpec b{table.whole("after_slot", 1, most_slots), table.whole("s", 0, most_s)};
    const std::string slot = std::to_string(b.after_slot);
    if (after.has(slot))
      table.fail(table.need("after_slot"), "there are two breaks after slot " + slot,
                 "write one; the first stands in line " + std::to_string(after.line(slot)));
    after.add(slot, static_cast<int>(table.need("after_slot").source().begin.line));
    parts.spec.breaks.push_back(b);
  }
}

}  // namespace

void read_head(ClassParts& parts) {
  const toml::node* n = parts.document.root().get("class");
  if (!n)
    parts.document.fail({{1, 1}, {1, 1}, nullptr}, "the file has no [class]",
                        "begin with [class] and its name, work_s and change_s");
  if (!n->is_table()) parts.document.fail(n->source(), "class is no table", "write [class] once");
  const TomlTable head(parts.document, *n->as_table(), "[class]", class_keys);
  ClassSpec& c = parts.spec;
  c.name = head.shown_text("name", 120);
  if (head.has("start")) c.start = start_of(head);
  if (head.has("length_min")) c.length_s = 60 * head.whole("length_min", 1, most_s / 60);
  c.laps = head.whole("laps", 1, 100, 1);
  c.work_s = head.whole("work_s", 1, most_s);
  c.change_s = head.whole("change_s", 0, most_s);
  if (head.has("slots")) c.slots = head.whole("slots", 1, most_slots);
  if (head.has("style"))
    c.style = *style_from(head.known_id(head.need("style"), "style", words_of<Style>("style", 3)));
  c.show_s = head.whole("show_s", 0, most_s, 0);
  c.warm_up_s = head.whole("warm_up_s", 0, most_s, 0);
  c.lead_in_s = head.whole("lead_in_s", 0, most_s, c.change_s);
  c.cool_down_s = head.whole("cool_down_s", 0, most_s, 0);
  if (head.has("recovery_s")) read_recovery(parts, head, c);
  parts.guests = head.whole("guests", 0, 10'000, 0);
  read_breaks(parts);
}

}  // namespace floorwheel::files
