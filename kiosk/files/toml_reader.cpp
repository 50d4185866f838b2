// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/toml_reader.h"

#include "kiosk/files/nearest.h"

namespace floorwheel::files {
namespace {

/// What would be right where the parser gave up; its own words say what is wrong.
std::string hint_for(std::string_view description) {
  const auto says = [&](std::string_view part) { return description.find(part) != std::string_view::npos; };
  if (says("could not determine value type")) return "a text stands in \"quotes\", a list in [ ]";
  if (says("cannot redefine")) return "write it once; several of a kind stand under [[double brackets]]";
  if (says("utf-8")) return "save the file as UTF-8";
  if (says("parsing string")) return "close the text with a quote on the same line";
  if (says("parsing array")) return "close the list with ] and put commas between its entries";
  if (says("table header")) return "write [class] or [[station]] on a line of its own";
  if (says("leading zeroes")) return "write the number without zeros in front";
  if (says("parsing date") || says("parsing time")) return "write 2026-03-05T18:30:00+01:00";
  if (says("parsing floating-point") || says("integer")) return "write a number such as 12 or 2.5";
  if (says("comment or whitespace")) return "one key = value a line";
  if (says("nested value depth")) return "write lists one or two deep";
  return "a line is key = value, [class] or [[station]]";
}

std::string what_failed(std::string_view description) {
  constexpr std::string_view prefix = "Error while parsing ";
  if (description.starts_with(prefix)) {
    description.remove_prefix(prefix.size());
    return "this is no TOML: " + std::string(description);
  }
  return "this is no TOML: " + std::string(description);
}

bool is_blank(char c) { return c == ' ' || c == '\t'; }

std::string trimmed(std::string_view text) {
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return std::string(text);
}

/// Bytes of a line before its character number `column`, counted from 1.
std::size_t offset_of(std::string_view line, std::size_t column) {
  std::size_t i = 0;
  for (std::size_t character = 1; i < line.size(); ++i) {
    const bool starts = (static_cast<unsigned char>(line[i]) & 0xC0U) != 0x80U;
    if (starts && character++ == column) return i;
  }
  return i;
}

}  // namespace

TomlDocument::TomlDocument(std::string_view text, const std::string& file, std::string_view kind)
    : file_(file) {
  for (std::size_t from = 0; from <= text.size();) {
    const std::size_t end = std::min(text.find('\n', from), text.size());
    lines_.push_back(text.substr(from, end - from));
    from = end + 1;
  }
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first != std::string_view::npos && text[first] == '{')
    throw Stop{{file, 1, 1, "", "this looks like JSON, not like a " + std::string(kind),
                "give a " + std::string(kind) + " (TOML) here"}};
  try {
    root_ = toml::parse(text);
  } catch (const toml::parse_error& e) {
    fail(e.source(), what_failed(e.description()), hint_for(e.description()));
  }
}

void TomlDocument::fail(const toml::source_region& where, std::string what, std::string right) const {
  throw Stop{{file_, static_cast<int>(where.begin.line), static_cast<int>(where.begin.column), "",
              std::move(what), std::move(right)}};
}

std::string TomlDocument::raw(const toml::node& n) const {
  const toml::source_region& s = n.source();
  if (s.begin.line == 0 || s.begin.line > lines_.size() || s.begin.line != s.end.line) return {};
  const std::string_view line = lines_[s.begin.line - 1];
  const std::size_t from = offset_of(line, s.begin.column);
  return trimmed(line.substr(from, offset_of(line, s.end.column) - from));
}

Known::Known(std::string noun, const std::vector<std::string>& ids) : noun_(std::move(noun)) {
  for (const std::string& id : ids) add(id);
}

void Known::add(const std::string& id, int line) {
  if (lines_.emplace(id, line).second) ids_.push_back(id);
}

int Known::line(std::string_view id) const {
  const auto it = lines_.find(id);
  return it == lines_.end() ? 0 : it->second;
}

TomlTable::TomlTable(const TomlDocument& document, const toml::table& table, std::string name,
                     std::span<const Key> keys)
    : document_(document), table_(table), name_(std::move(name)), keys_(keys) {
  for (auto&& [key, value] : table_) {
    const std::string_view written = key.str();
    bool known = false;
    std::vector<std::string> names;
    for (const Key& k : keys_) {
      known = known || k.name == written;
      names.emplace_back(k.name);
    }
    if (known) continue;
    document_.fail(key.source(), name_ + " has no key " + std::string(written), did_you_mean(written, names));
  }
}

std::string TomlTable::example(std::string_view key) const {
  for (const Key& k : keys_)
    if (k.name == key) return "write " + std::string(k.example);
  return {};
}

const toml::node& TomlTable::need(std::string_view key) const {
  if (const toml::node* n = table_.get(key)) return *n;
  document_.fail(table_.source(), name_ + " has no " + std::string(key), example(key));
}

void TomlTable::fail(const toml::node& n, std::string what, std::string right) const {
  document_.fail(n.source(), std::move(what), std::move(right));
}

void TomlTable::wrong(std::string_view key, const std::string& what) const {
  fail(need(key), std::string(key) + " of " + name_ + " " + what, example(key));
}

std::string TomlTable::text(std::string_view key) const {
  const auto* value = need(key).as_string();
  if (!value) wrong(key, "is no text in quotes");
  return value->get();
}

std::string TomlTable::shown_text(std::string_view key, std::size_t most_characters) const {
  std::string value = text(key);
  const Spelling s = spelling_of_text(value, most_characters);
  if (!s.holds()) fail(need(key), std::string(key) + " of " + name_ + ": " + s.what, s.right);
  return value;
}

bool TomlTable::truth(std::string_view key, bool otherwise) const {
  if (!has(key)) return otherwise;
  const auto* value = need(key).as_boolean();
  if (!value) wrong(key, "is neither true nor false");
  return value->get();
}

const toml::array& TomlTable::list(std::string_view key) const {
  const auto* value = need(key).as_array();
  if (!value) wrong(key, "is no list in [ ]");
  return *value;
}

const toml::table& TomlTable::inner(std::string_view key) const {
  const auto* value = need(key).as_table();
  if (!value) wrong(key, "is no table in { }");
  return *value;
}

std::string TomlTable::new_id(std::string_view key, IdKind kind, Known& known) const {
  std::string id = text(key);
  const Spelling s = spelling_of(kind, id);
  if (!s.holds()) fail(need(key), s.what, s.right);
  const int here = static_cast<int>(need(key).source().begin.line);
  if (known.has(id))
    fail(need(key), "the " + known.noun() + " id " + id + " is taken",
         "give one of them another; the first stands in line " + std::to_string(known.line(id)));
  known.add(id, here);
  return id;
}

std::string TomlTable::known_id(const toml::node& n, std::string_view key, const Known& known) const {
  const auto* value = n.as_string();
  if (!value) fail(n, std::string(key) + " of " + name_ + " is no text in quotes", example(key));
  if (!known.has(value->get()))
    fail(n, std::string(key) + " of " + name_ + ": there is no " + known.noun() + " " + value->get(),
         did_you_mean(value->get(), known.ids(), "this file has none"));
  return value->get();
}

std::vector<std::string> TomlTable::known_ids(std::string_view key, const Known& known) const {
  std::vector<std::string> ids;
  if (!has(key)) return ids;
  std::set<std::string, std::less<>> seen;
  for (const toml::node& n : list(key)) {
    ids.push_back(known_id(n, key, known));
    if (!seen.insert(ids.back()).second)
      fail(n, std::string(key) + " of " + name_ + " names " + ids.back() + " twice", "name it once");
  }
  return ids;
}

}  // namespace floorwheel::files
