// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/store/store.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <optional>

#include "kiosk/store/schema.h"

namespace floorwheel::store {
namespace fs = std::filesystem;
namespace {

std::string quoted(const std::string& path) { return "'" + path + "'"; }

std::uint32_t big_endian(const std::array<char, 100>& header, std::size_t at) {
  std::uint32_t v = 0;
  for (std::size_t i = 0; i < 4; ++i) v = v << 8 | static_cast<unsigned char>(header[at + i]);
  return v;
}

StoreError newer(const std::string& path, std::int64_t found) {
  return {"The database " + quoted(path) + " has schema " + std::to_string(found) +
              ", written by a newer Floorwheel; this one knows up to " + std::to_string(schema_version()) +
              ".",
          "Start the newer program, or give another folder with --data. The file was left as it is."};
}

StoreError foreign(const std::string& path) {
  return {"The database " + quoted(path) + " belongs to another program.",
          "Give another folder with --data. The file was left as it is."};
}

/// Reads the first page's header without SQLite, so that a file that is not ours is not even opened.
/// Offsets: the SQLite file format, "The Database Header".
std::optional<StoreError> refuse_by_header(const std::string& path) {
  std::error_code ignored;
  if (!fs::exists(path, ignored)) return {};
  if (fs::is_directory(path, ignored))
    return StoreError{quoted(path) + " is a folder, not a database file.",
                      "Give another folder with --data."};
  std::ifstream in(path, std::ios::binary);
  std::array<char, 100> header{};
  in.read(header.data(), header.size());
  if (in.gcount() == 0 && in.eof()) return {};  // made a moment before a power cut: still empty
  constexpr std::string_view magic{"SQLite format 3\0", 16};
  if (in.gcount() < 100 || std::string_view(header.data(), 16) != magic)
    return StoreError{"The file " + quoted(path) + " is not a database.",
                      "Move it away, or give another folder with --data. The file was left as it is."};
  const std::uint32_t version = big_endian(header, 60);
  const std::uint32_t application = big_endian(header, 68);
  if (application != 0 && application != static_cast<std::uint32_t>(application_id)) return foreign(path);
  if (version > static_cast<std::uint32_t>(schema_version())) return newer(path, version);
  return {};
}

std::optional<StoreError> make_folder(const std::string& directory) {
  std::error_code error;
  fs::create_directories(directory, error);
  if (fs::is_directory(directory)) return {};
  return StoreError{"The data folder " + quoted(directory) + " cannot be made: " +
                        (error ? error.message() : std::string("a file has that name")) + ".",
                    "Give a folder that this user may write with --data."};
}

std::variant<int, StoreError> lock_folder(const std::string& directory) {
  const std::string path = directory + "/hub.lock";
  const int file = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (file < 0)
    return StoreError{
        "The data folder " + quoted(directory) + " cannot be written: " + std::strerror(errno) + ".",
        "Let this user write there, or give another folder with --data."};
  if (::flock(file, LOCK_EX | LOCK_NB) != 0) {
    ::close(file);
    return StoreError{"Another hub is using the data folder " + quoted(directory) + ".",
                      "Stop it first, or give another folder with --data."};
  }
  return file;
}

bool is_empty(Database& db) { return !db.statement("SELECT 1 FROM sqlite_schema LIMIT 1").step(); }

std::int64_t pragma(Database& db, const char* name) {
  Statement s = db.statement(std::string("PRAGMA ") + name);
  return s.step() ? s.integer(0) : 0;
}

StoreError cannot_open(const std::string& path, const SqlError& e) {
  return {"The database " + quoted(path) + " cannot be opened: " + e.what() + ".",
          "Check the file's permissions and the disk, or give another folder with --data."};
}

}  // namespace

Store::~Store() {
  database_.reset();
  if (lock_ >= 0) ::close(lock_);
}

void Store::migrate() {
  Database& db = *database_;
  for (auto version = static_cast<std::size_t>(pragma(db, "user_version")); version < migrations().size();
       ++version) {
    Transaction step(db);
    db.execute(std::string(migrations()[version]));
    db.execute("PRAGMA user_version = " + std::to_string(version + 1));
    if (version == 0) {
      db.execute("PRAGMA application_id = " + std::to_string(application_id));
      db.statement("INSERT INTO hub(id) VALUES(?)").bind(make_uuid()).run();
    }
    step.commit();
  }
}

void Store::set_up() {
  database_->execute("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;");
}

void Store::reopen() {
  database_ = std::make_unique<Database>(path_);  // the old one stays until the new one is there
  set_up();
}

std::variant<std::unique_ptr<Store>, StoreError> Store::open(const std::string& directory) {
  if (auto error = make_folder(directory)) return *error;
  const std::string path = directory + "/floorwheel.db";
  if (auto error = refuse_by_header(path)) return *error;
  auto lock = lock_folder(directory);
  if (const auto* error = std::get_if<StoreError>(&lock)) return *error;
  std::unique_ptr<Store> store(new Store(path, std::get<int>(lock)));
  try {
    store->database_ = std::make_unique<Database>(path);
    Database& db = *store->database_;
    if (db.read_only())
      return StoreError{"The database " + quoted(path) + " can be read but not written.",
                        "Let this user write it, or give another folder with --data."};
    // The header may be older than the write-ahead log: ask again before anything is changed.
    db.checkpoint_on_close(false);
    const std::int64_t application = pragma(db, "application_id");
    if (application != application_id && !(application == 0 && is_empty(db))) return foreign(path);
    const std::int64_t version = pragma(db, "user_version");
    if (version > schema_version()) return newer(path, version);
    db.checkpoint_on_close(true);
    store->set_up();
    store->migrate();
    Statement hub = db.statement("SELECT id FROM hub");
    if (hub.step()) store->hub_id_ = hub.uuid(0);
  } catch (const SqlError& e) {
    return cannot_open(path, e);
  }
  return store;
}

std::variant<std::unique_ptr<Store>, StoreError> Store::open_to_read(const std::string& directory) {
  const std::string path = directory + "/floorwheel.db";
  std::error_code ignored;
  if (!fs::exists(path, ignored))
    return StoreError{"There is no database at " + quoted(path) + ".",
                      "Give the hub's data folder with --data, or start a hub there first."};
  if (auto error = refuse_by_header(path)) return *error;
  std::unique_ptr<Store> store(new Store(path, -1));
  try {
    store->database_ = std::make_unique<Database>(path);
    Database& db = *store->database_;
    db.checkpoint_on_close(false);
    db.execute("PRAGMA query_only = ON");
    if (pragma(db, "application_id") != application_id) return foreign(path);
    const std::int64_t version = pragma(db, "user_version");
    if (version > schema_version()) return newer(path, version);
    if (version < schema_version())
      return StoreError{
          "The database " + quoted(path) + " has the older schema " + std::to_string(version) + ".",
          "Start the hub on it once: it brings the schema up to date."};
    Statement hub = db.statement("SELECT id FROM hub");
    if (hub.step()) store->hub_id_ = hub.uuid(0);
  } catch (const SqlError& e) {
    return cannot_open(path, e);
  }
  return store;
}

std::int64_t Store::wal_bytes() const {
  std::error_code error;
  const auto size = fs::file_size(path_ + "-wal", error);
  return error ? 0 : static_cast<std::int64_t>(size);
}

}  // namespace floorwheel::store
