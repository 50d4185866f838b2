// SPDX-License-Identifier: GPL-3.0-or-later
// The store: one SQLite file in the hub's data folder, in WAL mode with synchronous=FULL and foreign keys on.
// Opening refuses, in words a person can act on and without changing the file, a folder that cannot be
// written, a newer schema, another program's database and a file that is no database.
// Reports and commands have their SQL beside them: journal.h, people.h, classes.h, records.h, reports.h.
#pragma once

#include <memory>
#include <string>
#include <variant>

#include "kiosk/store/sqlite.h"

namespace floorwheel::store {

/// Why a store does not open: what is wrong, and what to do.
struct StoreError {
  std::string what;
  std::string right;
};

class Store {
 public:
  /// Opens DIR/floorwheel.db, making folder and file where they are missing, and brings its schema up to
  /// date.
  static std::variant<std::unique_ptr<Store>, StoreError> open(const std::string& directory);
  /// An existing store for reading reports while a hub may be running; never makes or changes anything.
  static std::variant<std::unique_ptr<Store>, StoreError> open_to_read(const std::string& directory);
  ~Store();

  [[nodiscard]] Database& database() { return *database_; }
  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] const Uuid& hub_id() const { return hub_id_; }
  [[nodiscard]] std::int64_t wal_bytes() const;
  /// Closes the connection and opens it again, after an error of the disk: throws SqlError.
  void reopen();

 private:
  Store(std::string path, int lock) : path_(std::move(path)), lock_(lock) {}
  void migrate();
  void set_up();

  std::string path_;
  int lock_ = -1;  // file descriptor whose lock says that one hub owns this folder; -1: reading only
  std::unique_ptr<Database> database_;
  Uuid hub_id_;
};

}  // namespace floorwheel::store
