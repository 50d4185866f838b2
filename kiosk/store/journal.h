// SPDX-License-Identifier: GPL-3.0-or-later
// The journal: one row for every change, with its audience, and its words kept apart so that erasing empties
// the words and the numbers stay whole. Call within a transaction of the caller.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kiosk/store/sqlite.h"
#include "kiosk/wire/row.h"

namespace floorwheel::store {

/// A piece of a row's words.
struct WordPart {
  wire::Audience audience;
  std::string member;  // whom it is about: an id, "*" for people of the class, "" for nobody
  std::string json;    // an object; parts of one row are merged, object by object
};

struct JournalRow {
  std::optional<Uuid> command;
  std::int64_t at_ms = 0;
  std::int64_t civil_ms = 0;
  std::string kind;
  wire::Audience audience;
  std::optional<Uuid> class_id;
  std::string body;
  std::vector<WordPart> words;
};

/// Appends and returns the row's number.
std::int64_t append(Database&, const JournalRow&);
std::int64_t last_seq(Database&);

/// The row as one role may see it; nothing where the row is not for it.
std::optional<wire::Row> row_for(const JournalRow&, std::int64_t seq, wire::Role);

/// Rows for a role after a number: in order, at most `most` rows or about `bytes` of text.
struct Stretch {
  std::vector<wire::Row> rows;
  std::int64_t reached = 0;  // rows of other audiences up to here are counted in
};
Stretch rows_after(Database&, wire::Role, std::int64_t after, int most, std::size_t bytes);

struct KeptReceipt {
  std::int64_t digest = 0;
  std::int64_t seq = 0;
  std::string body;
};
std::optional<KeptReceipt> find_receipt(Database&, const Uuid& command);
void keep_receipt(Database&, const Uuid& command, const KeptReceipt&);
/// Of a command's kind and body, to tell a repeat from another command under the same id (FNV-1a, 64 bits).
std::int64_t digest_of(std::string_view kind, std::string_view body);

}  // namespace floorwheel::store
