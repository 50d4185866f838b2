// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/journal.h"

#include <boost/json.hpp>

#include "kiosk/wire/shapes.h"

namespace floorwheel::store {
namespace {

/// Bits of an audience as stored; the order of roles is that of wire::Role and must not change.
std::int64_t bits_of(wire::Audience a) { return a.bits(); }
std::int64_t bit_of(wire::Role r) { return wire::Audience{r}.bits(); }

std::string words_of(Database& db, std::int64_t seq, wire::Role role) {
  boost::json::object all;
  Statement s =
      db.statement("SELECT json FROM journal_words WHERE seq = ? AND (audience & ?) <> 0 ORDER BY part");
  s.bind(seq, bit_of(role));
  while (s.step()) wire::merge(all, wire::object_from(s.text(0)));
  return boost::json::serialize(all);
}

}  // namespace

std::int64_t last_seq(Database& db) {
  Statement s = db.statement("SELECT coalesce(max(seq), 0) FROM journal");
  return s.step() ? s.integer(0) : 0;
}

std::int64_t append(Database& db, const JournalRow& row) {
  const std::int64_t seq = last_seq(db) + 1;
  db.statement(
        "INSERT INTO journal(seq, command, at_ms, civil_ms, kind, audience, class, body)"
        " VALUES(?, ?, ?, ?, ?, ?, ?, ?)")
      .bind(seq, row.command, row.at_ms, row.civil_ms, row.kind, bits_of(row.audience), row.class_id,
            row.body)
      .run();
  int part = 0;
  for (const WordPart& w : row.words)
    db.statement("INSERT INTO journal_words(seq, part, audience, member, json) VALUES(?, ?, ?, ?, ?)")
        .bind(seq, part++, bits_of(w.audience),
              w.member.empty() ? std::optional<std::string>() : std::optional(w.member), w.json)
        .run();
  return seq;
}

std::optional<wire::Row> row_for(const JournalRow& row, std::int64_t seq, wire::Role role) {
  if (!row.audience.contains(role)) return {};
  boost::json::object words;
  for (const WordPart& w : row.words)
    if (w.audience.contains(role)) wire::merge(words, wire::object_from(w.json));
  return wire::Row{.seq = seq,
                   .at_ms = row.at_ms,
                   .civil_ms = row.civil_ms,
                   .kind = row.kind,
                   .body = row.body,
                   .words = boost::json::serialize(words)};
}

Stretch rows_after(Database& db, wire::Role role, std::int64_t after, int most, std::size_t bytes) {
  Stretch out;
  out.reached = last_seq(db);
  std::size_t text = 0;
  Statement s = db.statement(
      "SELECT seq, at_ms, civil_ms, kind, body FROM journal WHERE seq > ? AND (audience & ?) <> 0 ORDER BY "
      "seq");
  s.bind(after, bit_of(role));
  while (s.step()) {
    if (static_cast<int>(out.rows.size()) >= most || text > bytes) {
      out.reached = out.rows.back().seq;
      break;
    }
    wire::Row row{.seq = s.integer(0),
                  .at_ms = s.integer(1),
                  .civil_ms = s.integer(2),
                  .kind = s.text(3),
                  .body = s.text(4),
                  .words = words_of(db, s.integer(0), role)};
    text += row.body.size() + row.words.size();
    out.rows.push_back(std::move(row));
  }
  return out;
}

std::optional<KeptReceipt> find_receipt(Database& db, const Uuid& command) {
  Statement s = db.statement("SELECT digest, seq, body FROM receipt WHERE command = ?");
  s.bind(command);
  if (!s.step()) return {};
  return KeptReceipt{.digest = s.integer(0), .seq = s.integer(1), .body = s.text(2)};
}

void keep_receipt(Database& db, const Uuid& command, const KeptReceipt& r) {
  db.statement("INSERT INTO receipt(command, digest, seq, body) VALUES(?, ?, ?, ?)")
      .bind(command, r.digest, r.seq, r.body)
      .run();
}

std::int64_t digest_of(std::string_view kind, std::string_view body) {
  std::uint64_t h = 14695981039346656037U;
  const auto add = [&h](std::string_view text) {
    for (const char c : text) h = (h ^ static_cast<unsigned char>(c)) * 1099511628211U;
  };
  add(kind);
  add(std::string_view("\0", 1));
  add(body);
  return static_cast<std::int64_t>(h);
}

}  // namespace floorwheel::store
