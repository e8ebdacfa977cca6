// A connection to records, with what every use of one takes. Inside the folder only. All throw what SOCI throws.
#pragma once

#include <memory>

#include <soci/soci.h>

#include "records/records_place.h"

namespace laywright {

// Commits come to the disk before they are told; a writer waits for another one.
[[nodiscard]] std::unique_ptr<soci::session> open_session(const RecordsPlace& place);

// From its making on nobody else writes; what was not committed is taken back.
class WriteTransaction {
 public:
  WriteTransaction(soci::session& sql, const RecordsPlace& place);
  ~WriteTransaction();
  WriteTransaction(const WriteTransaction&) = delete;
  WriteTransaction& operator=(const WriteTransaction&) = delete;

  void commit();

 private:
  // What was begun is taken back by the destructor from here on, also where the rest of the making fails.
  explicit WriteTransaction(soci::session& sql) : sql_(sql) {}

  soci::session& sql_;
  bool open_ = false;
};

// All that is read within it is of one moment.
class ReadTransaction {
 public:
  ReadTransaction(soci::session& sql, const RecordsPlace& place);
  ~ReadTransaction();
  ReadTransaction(const ReadTransaction&) = delete;
  ReadTransaction& operator=(const ReadTransaction&) = delete;

 private:
  soci::session& sql_;
};

}  // namespace laywright
