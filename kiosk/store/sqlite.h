// SPDX-License-Identifier: GPL-3.0-or-later
// A thin RAII layer over SQLite: one connection, statements prepared once and bound by parameters only,
// transactions rolled back unless committed. Every failing call throws SqlError with SQLite's own words.
// One thread uses a Database.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "kiosk/store/uuid.h"

struct sqlite3;
struct sqlite3_stmt;

namespace floorwheel::store {

class SqlError : public std::runtime_error {
 public:
  SqlError(int code, const std::string& what) : std::runtime_error(what), code_(code) {}
  [[nodiscard]] int code() const { return code_; }  // SQLite's extended result code

 private:
  int code_;
};

/// One use of a prepared statement; reset when it goes. Parameters and columns count from 0.
class Statement {
 public:
  explicit Statement(sqlite3_stmt* s) : statement_(s) {}
  Statement(Statement&& other) noexcept : statement_(other.statement_) { other.statement_ = nullptr; }
  Statement(const Statement&) = delete;
  Statement& operator=(const Statement&) = delete;
  Statement& operator=(Statement&&) = delete;
  ~Statement();

  /// Binds all parameters in order.
  template <class... Values>
  Statement& bind(const Values&... values) {
    int index = 0;
    (bind_one(++index, values), ...);
    return *this;
  }
  /// Moves to the next row; false when there is none.
  bool step();
  /// For statements without rows.
  void run();

  [[nodiscard]] std::int64_t integer(int column) const;
  [[nodiscard]] double real(int column) const;
  [[nodiscard]] std::string text(int column) const;  // "" for NULL
  [[nodiscard]] Uuid uuid(int column) const;         // all zero for NULL or another length
  [[nodiscard]] bool is_null(int column) const;

 private:
  void bind_one(int index, std::int64_t);
  void bind_one(int index, int value) { bind_one(index, std::int64_t{value}); }
  void bind_one(int index, bool value) { bind_one(index, std::int64_t{value ? 1 : 0}); }
  void bind_one(int index, double);
  void bind_one(int index, std::string_view);
  void bind_one(int index, const std::string& v) { bind_one(index, std::string_view(v)); }
  void bind_one(int index, const char* v) { bind_one(index, std::string_view(v)); }
  void bind_one(int index, const Uuid&);
  void bind_one(int index, std::nullptr_t);
  template <class T>
  void bind_one(int index, const std::optional<T>& v) {
    if (v)
      bind_one(index, *v);
    else
      bind_one(index, nullptr);
  }
  void check(int code) const;
  sqlite3_stmt* statement_;
};

class Database {
 public:
  /// Opens or makes the file; does not touch it before the first statement.
  explicit Database(const std::string& path);
  ~Database();
  Database(const Database&) = delete;
  Database& operator=(const Database&) = delete;

  /// A statement of fixed text, prepared at its first use.
  Statement statement(std::string_view sql);
  /// Several statements without parameters or rows.
  void execute(const std::string& script);
  [[nodiscard]] bool read_only() const;
  /// Whether a closing connection folds the write-ahead log into the file (on by default).
  void checkpoint_on_close(bool);
  [[nodiscard]] int changes() const;

 private:
  sqlite3* connection_ = nullptr;
  std::map<std::string, sqlite3_stmt*, std::less<>> prepared_;
};

/// BEGIN IMMEDIATE ... COMMIT, rolled back unless committed.
class Transaction {
 public:
  explicit Transaction(Database&);
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  void commit();

 private:
  Database& database_;
  bool open_ = true;
};

/// A part of a transaction that can fail alone: undone unless kept.
class Savepoint {
 public:
  explicit Savepoint(Database&);
  ~Savepoint();
  Savepoint(const Savepoint&) = delete;
  Savepoint& operator=(const Savepoint&) = delete;
  void keep();

 private:
  Database& database_;
  bool open_ = true;
};

}  // namespace floorwheel::store
