#include "records/record_trouble.h"

#include <stdexcept>
#include <string>
#include <utility>

#include <fmt/format.h>
#include <libpq-fe.h>
#include <soci/postgresql/soci-postgresql.h>
#include <soci/soci.h>
#include <soci/sqlite3/soci-sqlite3.h>

namespace laywright {
namespace {

// Primary result codes: https://www.sqlite.org/rescode.html
std::string file_trouble(int code) {
  switch (code & 0xff) {
    case 5:  // SQLITE_BUSY
    case 6:  // SQLITE_LOCKED
      return fmt::format("is being written by another program, and was so for {} s; try again in a moment",
                         writers_wait_s);
    case 13:  // SQLITE_FULL
      return "cannot take more: the disk is full; make room and try again. What was recorded before is kept";
    case 10:  // SQLITE_IOERR
      return "cannot be read or written: the disk fails or is full; make room, or copy the file to another disk. "
             "What was "
             "recorded before is kept";
    case 3:  // SQLITE_PERM
    case 8:  // SQLITE_READONLY
      return "cannot be written: you may only read the file or its folder; ask its owner, or choose another "
             "place for records";
    case 14:  // SQLITE_CANTOPEN
      return "cannot be opened; check that its folder is there and that you may read and write there";
    case 26:  // SQLITE_NOTADB
      return "is no file of records; choose another place for records";
    case 11:  // SQLITE_CORRUPT
      return "is damaged; leave it as it is, and go on with a backup of it";
    default: return fmt::format("cannot be used (SQLite's error {})", code);
  }
}

// Classes and codes: PostgreSQL's manual, appendix A.
std::string server_trouble(const std::string& code) {
  const std::string kind = code.substr(0, 2);
  if (code == "55P03")
    return fmt::format("is being written by another program, and was so for {} s; try again in a moment",
                       writers_wait_s);
  if (code == "53100") return "cannot take more: the server's disk is full. What was recorded before is kept";
  if (code == "42501" || code == "3F000")
    return "does not let you write or read records; ask who keeps the server for the right to create and use tables";
  if (code == "25006")
    return "can only be read at the moment: the server is a copy or is being kept; try again later";
  if (kind == "22") return "does not take a character of this record; the database must be one in UTF8";
  if (kind == "57" || kind == "08" || kind == "53")
    return "has broken off: the server stops or has too much to do; try again. What was recorded before is kept";
  return code.find_first_of("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ") == std::string::npos
             ? std::string("has broken off; try again. What was recorded before is kept")
             : fmt::format("cannot be used (PostgreSQL's error {})", code);
}

std::string unreachable(const RecordsPlace& place) {
  switch (PQping(place.connection.c_str())) {
    case PQPING_OK:
      return "does not let you in; check the name of database and user, and the password, which is best kept in "
             "~/.pgpass";
    case PQPING_REJECT: return "is not ready: the server starts or stops; try again in a moment";
    default: return "cannot be reached; check that the server runs, and its name and port";
  }
}

}  // namespace

Issue place_issue(const RecordsPlace& place, std::string what) {
  Issue issue;
  issue.file = place.words;
  issue.what = std::move(what);
  return issue;
}

Issue database_trouble(const RecordsPlace& place) {
  try {
    throw;
  } catch (const soci::sqlite3_soci_error& error) {
    return place_issue(place, file_trouble(error.result()));
  } catch (const soci::postgresql_soci_error& error) {
    return place_issue(place, server_trouble(error.sqlstate()));
  } catch (const soci::soci_error&) {
    // It gives no code where there was no connection.
    return place_issue(place, place.on_server() ? unreachable(place) : "cannot be used as a file of records");
  }
}

}  // namespace laywright
