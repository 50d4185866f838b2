// SPDX-License-Identifier: GPL-3.0-or-later
// Reads one TOML 1.0 document table by table, with the place of everything that is wrong. The parser is
// toml++; numbers that are rounded are read from their text, so that no binary fraction comes in between.
// Inside kiosk/files the first error is thrown as `Stop`; the public functions catch it and return it.
#pragma once

#include <initializer_list>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <toml++/toml.h>

#include "kiosk/files/file_error.h"
#include "kiosk/files/ids.h"
#include "kiosk/files/text_file.h"
#include "scheduler/class_spec.h"

namespace floorwheel::files {

struct Stop {
  FileError error;
};

/// What `read` gives, or the error it stopped with.
template <class Read>
auto or_stopped(Read read) -> OrFileError<decltype(read())> {
  try {
    return read();
  } catch (const Stop& stop) {
    return stop.error;
  }
}

/// The text of a file handed to `parse`; `kind` is what the file should be.
template <class Parse>
auto parse_file(const std::string& path, const std::string& kind, Parse parse)
    -> decltype(parse(std::string())) {
  auto text = read_text(path, kind);
  if (auto* error = std::get_if<FileError>(&text)) return std::move(*error);
  return parse(std::get<std::string>(text));
}

/// The document as text and as a tree.
class TomlDocument {
 public:
  TomlDocument(std::string_view text, const std::string& file, std::string_view kind);

  [[nodiscard]] const toml::table& root() const { return root_; }
  [[noreturn]] void fail(const toml::source_region& where, std::string what, std::string right) const;
  /// The characters of a value as written, without blanks around it.
  [[nodiscard]] std::string raw(const toml::node&) const;

 private:
  std::string file_;
  std::vector<std::string_view> lines_;
  toml::table root_;
};

/// A key a table may have, with an example line for whoever wrote another.
struct Key {
  std::string_view name;
  std::string_view example;
};

/// Ids already read, in file order, with their lines.
class Known {
 public:
  Known(std::string noun, const std::vector<std::string>& ids = {});
  void add(const std::string& id, int line = 0);
  [[nodiscard]] bool has(std::string_view id) const { return lines_.contains(id); }
  [[nodiscard]] int line(std::string_view id) const;
  [[nodiscard]] const std::string& noun() const { return noun_; }
  [[nodiscard]] const std::vector<std::string>& ids() const { return ids_; }

 private:
  std::string noun_;
  std::vector<std::string> ids_;
  std::map<std::string, int, std::less<>> lines_;
};

/// One table of the document. Keys outside `keys` are refused at once.
class TomlTable {
 public:
  TomlTable(const TomlDocument&, const toml::table&, std::string name, std::span<const Key> keys);

  [[nodiscard]] bool has(std::string_view key) const { return table_.contains(key); }
  [[nodiscard]] const std::string& name() const { return name_; }
  void rename(std::string name) { name_ = std::move(name); }
  [[nodiscard]] int line() const { return static_cast<int>(table_.source().begin.line); }

  /// The value of a key that must be there.
  [[nodiscard]] const toml::node& need(std::string_view key) const;
  [[noreturn]] void fail(const toml::node&, std::string what, std::string right) const;
  /// Fails at the value of `key` with its example as what would be right.
  [[noreturn]] void wrong(std::string_view key, const std::string& what) const;

  [[nodiscard]] std::string text(std::string_view key) const;  // a string of any content
  [[nodiscard]] std::string shown_text(std::string_view key, std::size_t most_characters) const;
  [[nodiscard]] bool truth(std::string_view key, bool otherwise) const;
  [[nodiscard]] int whole(std::string_view key, int low, int high) const;
  [[nodiscard]] int whole(std::string_view key, int low, int high, int otherwise) const;
  [[nodiscard]] int whole(const toml::node&, std::string_view key, int low, int high) const;
  /// A decimal times 10^places, rounded halves up; low and high are in the unit of the file.
  [[nodiscard]] int decimal(const toml::node&, std::string_view key, int places, int low, int high) const;
  [[nodiscard]] const toml::array& list(std::string_view key) const;

  /// A new id of its kind that `known` does not have yet; it is added.
  [[nodiscard]] std::string new_id(std::string_view key, IdKind, Known& known) const;
  /// A text that is one of `known`.
  [[nodiscard]] std::string known_id(const toml::node&, std::string_view key, const Known& known) const;
  /// A list of them, none twice; empty where the key is left out.
  [[nodiscard]] std::vector<std::string> known_ids(std::string_view key, const Known& known) const;
  /// Loads in hectograms, ascending, none twice; empty where the key is left out.
  [[nodiscard]] std::vector<int> loads(std::string_view key) const;
  /// [first, last] or [first].
  [[nodiscard]] SlotRange slot_range(const toml::node&, std::string_view key) const;
  /// [low, high] of whole numbers.
  [[nodiscard]] std::array<int, 2> span(std::string_view key, int low, int high) const;
  /// A table that is the value of `key`.
  [[nodiscard]] const toml::table& inner(std::string_view key) const;
  [[nodiscard]] const TomlDocument& document() const { return document_; }

 private:
  [[nodiscard]] std::string example(std::string_view key) const;

  const TomlDocument& document_;
  const toml::table& table_;
  std::string name_;
  std::span<const Key> keys_;
};

/// The words of an enumeration as known ids.
template <class E>
Known words_of(std::string noun, int count) {
  std::vector<std::string> ids;
  for (int i = 0; i < count; ++i) ids.emplace_back(id_of(static_cast<E>(i)));
  return Known(std::move(noun), ids);
}

inline constexpr int most_load_kg = 1000;
inline constexpr int most_slots = 1000;
inline constexpr int most_reps = 1000;
inline constexpr int most_rir = 10;

}  // namespace floorwheel::files
