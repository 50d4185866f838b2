// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/sqlite.h"

#include <sqlite3.h>

#include <algorithm>

namespace floorwheel::store {
namespace {

[[noreturn]] void fail(sqlite3* connection, const std::string& doing) {
  const int code = connection ? sqlite3_extended_errcode(connection) : SQLITE_NOMEM;
  const std::string words = connection ? sqlite3_errmsg(connection) : "out of memory";
  throw SqlError(code, doing + ": " + words + " (SQLite " + std::to_string(code) + ")");
}

}  // namespace

Statement::~Statement() {
  if (!statement_) return;
  sqlite3_reset(statement_);
  sqlite3_clear_bindings(statement_);
}

void Statement::check(int code) const {
  if (code != SQLITE_OK) fail(sqlite3_db_handle(statement_), "binding a value");
}
void Statement::bind_one(int index, std::int64_t v) { check(sqlite3_bind_int64(statement_, index, v)); }
void Statement::bind_one(int index, double v) { check(sqlite3_bind_double(statement_, index, v)); }
void Statement::bind_one(int index, std::string_view v) {
  check(sqlite3_bind_text64(statement_, index, v.data() ? v.data() : "", v.size(), SQLITE_TRANSIENT,
                            SQLITE_UTF8));
}
void Statement::bind_one(int index, const Uuid& v) {
  check(sqlite3_bind_blob64(statement_, index, v.bytes.data(), v.bytes.size(), SQLITE_TRANSIENT));
}
void Statement::bind_one(int index, std::nullptr_t) { check(sqlite3_bind_null(statement_, index)); }

bool Statement::step() {
  const int code = sqlite3_step(statement_);
  if (code == SQLITE_ROW) return true;
  if (code == SQLITE_DONE) return false;
  fail(sqlite3_db_handle(statement_), std::string("running '") + sqlite3_sql(statement_) + "'");
}

void Statement::run() {
  while (step()) {
  }
}

std::int64_t Statement::integer(int column) const { return sqlite3_column_int64(statement_, column); }
double Statement::real(int column) const { return sqlite3_column_double(statement_, column); }
std::string Statement::text(int column) const {
  const unsigned char* t = sqlite3_column_text(statement_, column);
  if (!t) return {};
  return {reinterpret_cast<const char*>(t),
          static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}
Uuid Statement::uuid(int column) const {
  Uuid u;
  const auto* blob = static_cast<const std::uint8_t*>(sqlite3_column_blob(statement_, column));
  if (blob && sqlite3_column_bytes(statement_, column) == 16) std::copy_n(blob, 16, u.bytes.begin());
  return u;
}
bool Statement::is_null(int column) const { return sqlite3_column_type(statement_, column) == SQLITE_NULL; }

Database::Database(const std::string& path) {
  const int code = sqlite3_open_v2(path.c_str(), &connection_,
                                   SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_NOMUTEX, nullptr);
  if (code != SQLITE_OK) {
    const SqlError error(code, "opening '" + path + "': " +
                                   (connection_ ? sqlite3_errmsg(connection_) : sqlite3_errstr(code)));
    sqlite3_close(connection_);
    throw error;
  }
  sqlite3_extended_result_codes(connection_, 1);
  sqlite3_busy_timeout(connection_, 5000);
}

Database::~Database() {
  for (const auto& [sql, statement] : prepared_) sqlite3_finalize(statement);
  sqlite3_close(connection_);
}

Statement Database::statement(std::string_view sql) {
  const auto known = prepared_.find(sql);
  if (known != prepared_.end()) return Statement(known->second);
  sqlite3_stmt* made = nullptr;
  if (sqlite3_prepare_v3(connection_, sql.data(), static_cast<int>(sql.size()), SQLITE_PREPARE_PERSISTENT,
                         &made, nullptr) != SQLITE_OK)
    fail(connection_, "preparing '" + std::string(sql) + "'");
  prepared_.emplace(sql, made);
  return Statement(made);
}

void Database::execute(const std::string& script) {
  if (sqlite3_exec(connection_, script.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK)
    fail(connection_, "running '" + script.substr(0, 60) + "'");
}

bool Database::read_only() const { return sqlite3_db_readonly(connection_, "main") == 1; }

void Database::checkpoint_on_close(bool on) {
  sqlite3_db_config(connection_, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, on ? 0 : 1, nullptr);
}

int Database::changes() const { return sqlite3_changes(connection_); }

Transaction::Transaction(Database& d) : database_(d) { database_.statement("BEGIN IMMEDIATE").run(); }
Transaction::~Transaction() {
  if (!open_) return;
  try {
    database_.statement("ROLLBACK").run();
  } catch (const SqlError&) {  // SQLite has rolled back by itself after some errors
  }
}
void Transaction::commit() {
  database_.statement("COMMIT").run();
  open_ = false;
}

Savepoint::Savepoint(Database& d) : database_(d) { database_.statement("SAVEPOINT part").run(); }
Savepoint::~Savepoint() {
  if (!open_) return;
  try {
    database_.statement("ROLLBACK TO part").run();
    database_.statement("RELEASE part").run();
  } catch (const SqlError&) {  // the transaction is gone already; its owner finds out at its next call
  }
}
void Savepoint::keep() {
  database_.statement("RELEASE part").run();
  open_ = false;
}

}  // namespace floorwheel::store
