#include "records/record_session.h"

#include <fmt/format.h>
#include <soci/postgresql/soci-postgresql.h>
#include <soci/sqlite3/soci-sqlite3.h>

#include "records/record_trouble.h"

namespace laywright {
namespace {

// Any number, as long as no other program of the server uses it: writers of records meet at it.
constexpr long long writers_lock = 5'127'441'903;

void roll_back(soci::session& sql) noexcept {
  try {
    sql << "ROLLBACK";
  } catch (const std::exception&) {
    // The database has done so by itself: the disk was full, or the server is gone.
  }
}

}  // namespace

std::unique_ptr<soci::session> open_session(const RecordsPlace& place) {
  if (place.on_server()) {
    auto sql = std::make_unique<soci::session>(soci::postgresql, place.connection);
    // Notices would go to standard error.
    *sql << "SET client_min_messages = error";
    *sql << "SET synchronous_commit = on";
    *sql << fmt::format("SET lock_timeout = '{} s'", writers_wait_s);
    return sql;
  }
  auto sql = std::make_unique<soci::session>(
      soci::sqlite3, fmt::format("dbname=\"{}\" timeout={}", place.file.string(), writers_wait_s));
  // EXTRA is FULL, and the folder is brought to the disk, too, so that a commit survives a power failure right after it.
  *sql << "PRAGMA synchronous = EXTRA";
  *sql << "PRAGMA foreign_keys = ON";
  return sql;
}

WriteTransaction::WriteTransaction(soci::session& sql, const RecordsPlace& place) : WriteTransaction(sql) {
  sql_ << (place.on_server() ? "BEGIN" : "BEGIN IMMEDIATE");
  open_ = true;
  if (place.on_server()) sql_ << "SELECT pg_advisory_xact_lock(" << writers_lock << ")";
}

WriteTransaction::~WriteTransaction() {
  if (open_) roll_back(sql_);
}

void WriteTransaction::commit() {
  sql_ << "COMMIT";
  open_ = false;
}

ReadTransaction::ReadTransaction(soci::session& sql, const RecordsPlace& place) : sql_(sql) {
  sql_ << (place.on_server() ? "BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY" : "BEGIN");
}

ReadTransaction::~ReadTransaction() { roll_back(sql_); }

}  // namespace laywright
