// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/schema.h"

#include <array>

namespace floorwheel::store {
namespace {

// Ids that the program makes are UUIDs as 16 bytes; ids of members and stations are those of class files.
// Times are Unix milliseconds; loads hectograms. Everything that may be erased about a person is in a table
// whose name ends in `words`.
constexpr std::string_view first = R"sql(
CREATE TABLE hub(
  id BLOB NOT NULL CHECK(length(id) = 16)
) STRICT;

CREATE TABLE journal(
  seq INTEGER PRIMARY KEY,
  command BLOB UNIQUE CHECK(command IS NULL OR length(command) = 16),  -- NULL: the hub itself
  at_ms INTEGER NOT NULL,                                              -- class clock
  civil_ms INTEGER NOT NULL,
  kind TEXT NOT NULL,
  audience INTEGER NOT NULL,                                           -- bits of roles
  class BLOB CHECK(class IS NULL OR length(class) = 16),
  body TEXT NOT NULL                                                   -- ids and numbers, no words
) STRICT;

-- What an audience may read beside a row; `member` says whom it is about, NULL nobody, '*' people of the class.
CREATE TABLE journal_words(
  seq INTEGER NOT NULL REFERENCES journal(seq),
  part INTEGER NOT NULL,
  audience INTEGER NOT NULL,
  member TEXT,
  json TEXT NOT NULL,
  PRIMARY KEY(seq, part)
) STRICT, WITHOUT ROWID;
CREATE INDEX journal_words_by_member ON journal_words(member) WHERE member IS NOT NULL;

-- What every command was answered, so that a repeat gets the same.
CREATE TABLE receipt(
  command BLOB PRIMARY KEY CHECK(length(command) = 16),
  digest INTEGER NOT NULL,                                             -- of kind and body
  seq INTEGER NOT NULL,
  body TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE member(
  id TEXT PRIMARY KEY,
  level TEXT NOT NULL,
  added_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE member_words(
  member TEXT PRIMARY KEY REFERENCES member(id),
  shown_as TEXT NOT NULL,
  limits TEXT NOT NULL                                                 -- JSON: exclusions and what is allowed
) STRICT, WITHOUT ROWID;
CREATE UNIQUE INDEX member_words_by_alias ON member_words(shown_as);

CREATE TABLE class(
  id BLOB PRIMARY KEY CHECK(length(id) = 16),
  name TEXT NOT NULL,
  start TEXT NOT NULL,                                                 -- RFC 3339 as the file says, or ''
  spec TEXT NOT NULL,                                                  -- JSON, without words about people
  opened_ms INTEGER,
  opened_offset_s INTEGER,
  opened_day TEXT,
  ended_ms INTEGER
) STRICT, WITHOUT ROWID;
CREATE TABLE class_words(
  class BLOB NOT NULL REFERENCES class(id),
  member TEXT NOT NULL,
  json TEXT NOT NULL,                                                  -- alias, exclusions, loads
  PRIMARY KEY(class, member)
) STRICT, WITHOUT ROWID;
CREATE TABLE pair_words(
  class BLOB NOT NULL REFERENCES class(id),
  a TEXT NOT NULL,
  b TEXT NOT NULL,
  rule TEXT NOT NULL,
  PRIMARY KEY(class, a, b, rule)
) STRICT, WITHOUT ROWID;

CREATE TABLE seat(
  class BLOB NOT NULL REFERENCES class(id),
  member TEXT NOT NULL,
  guest INTEGER NOT NULL,
  expected INTEGER NOT NULL,
  PRIMARY KEY(class, member)
) STRICT, WITHOUT ROWID;
CREATE TABLE check_in(
  class BLOB NOT NULL REFERENCES class(id),
  member TEXT NOT NULL,
  seq INTEGER NOT NULL REFERENCES journal(seq),
  civil_ms INTEGER NOT NULL,
  utc_offset_s INTEGER NOT NULL,
  local_day TEXT NOT NULL,
  iso_week TEXT NOT NULL,
  PRIMARY KEY(class, member)
) STRICT, WITHOUT ROWID;
CREATE INDEX check_in_by_day ON check_in(local_day);

CREATE TABLE run_sheet(
  class BLOB NOT NULL REFERENCES class(id),
  version INTEGER NOT NULL,
  seq INTEGER NOT NULL REFERENCES journal(seq),                        -- the row holds the sheet
  at_slot INTEGER NOT NULL,
  slots INTEGER NOT NULL,
  PRIMARY KEY(class, version)
) STRICT, WITHOUT ROWID;

CREATE TABLE set_record(
  id BLOB PRIMARY KEY CHECK(length(id) = 16),
  seq INTEGER NOT NULL REFERENCES journal(seq),
  class BLOB NOT NULL REFERENCES class(id),
  member TEXT NOT NULL,
  station TEXT NOT NULL,
  exercise TEXT NOT NULL,
  slot INTEGER NOT NULL,
  done INTEGER NOT NULL,
  load_hg INTEGER,
  reps INTEGER,
  rir INTEGER,
  civil_ms INTEGER NOT NULL,
  local_day TEXT NOT NULL,
  iso_week TEXT NOT NULL,
  corrects BLOB REFERENCES set_record(id)
) STRICT, WITHOUT ROWID;
CREATE INDEX set_record_by_member ON set_record(member, civil_ms);

-- Where the running class was, and on which boot of the machine; overwritten every few seconds.
CREATE TABLE pulse(
  id INTEGER PRIMARY KEY CHECK(id = 1),
  class BLOB NOT NULL CHECK(length(class) = 16),
  boot_id TEXT NOT NULL,
  speed REAL NOT NULL,
  elapsed_ms INTEGER NOT NULL,
  civil_ms INTEGER NOT NULL
) STRICT;
)sql";

// What a person decided instead of a suggested load: ids and numbers, grams.
constexpr std::string_view load_decisions = R"sql(
CREATE TABLE load_decision(
  seq INTEGER PRIMARY KEY REFERENCES journal(seq),
  member TEXT NOT NULL,
  exercise TEXT NOT NULL,
  civil_ms INTEGER NOT NULL,
  local_day TEXT NOT NULL,
  decided_by TEXT NOT NULL,                                            -- a role
  load_g INTEGER NOT NULL,
  reps_low INTEGER,                                                    -- NULL: as suggested
  reps_top INTEGER,
  sets INTEGER,
  suggested_g INTEGER NOT NULL,
  suggested_change TEXT NOT NULL
) STRICT;
CREATE INDEX load_decision_by_member ON load_decision(member, exercise);
)sql";

// One week of everybody, and the corrections of a record, without reading all the others.
constexpr std::string_view record_indexes = R"sql(
CREATE INDEX set_record_by_week ON set_record(iso_week) WHERE corrects IS NULL;
CREATE INDEX set_record_by_corrected ON set_record(corrects) WHERE corrects IS NOT NULL;
)sql";

// Visits of one member, and of each: asked for before every class.
constexpr std::string_view visits_by_member = R"sql(
CREATE INDEX check_in_by_member ON check_in(member, local_day);
)sql";

// Whether the touch screen, which all share, may show a member's own week.
constexpr std::string_view own_pages = R"sql(
CREATE TABLE own_page(
  member TEXT PRIMARY KEY REFERENCES member(id),
  shown INTEGER NOT NULL,
  seq INTEGER NOT NULL REFERENCES journal(seq)
) STRICT, WITHOUT ROWID;
)sql";

constexpr std::array steps{first, load_decisions, record_indexes, visits_by_member, own_pages};

}  // namespace

std::span<const std::string_view> migrations() { return steps; }

}  // namespace floorwheel::store
