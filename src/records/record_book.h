// Records in their database: a file (SQLite), or a server (PostgreSQL).
//
// Whatever fails (a full disk, a program that is killed, a server that goes away), what was recorded before is kept, and of
// what was being written all is kept or nothing. Writers wait for each other, up to 10 s. Issues name the place, never a password.
// One book is used by one thread at a time.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "base/progress.h"
#include "base/result.h"
#include "records/records_place.h"
#include "records/spool_record.h"

namespace laywright {

enum class Opening {
  to_read,   // one that holds no records is an issue
  to_write,  // made where there is none
};

// Which records are asked for; what is empty is of no matter. Texts as they stand, dates both allowed.
struct RecordFilter {
  std::string machine, spool, order, revision;
  std::string plan;      // part of title or file name, in any case of ASCII letters
  std::string from, to;  // dates, "2026-11-29"
  std::string state;     // "accepted", "rejected", "undecided"
  std::string identity;
  long long number = 0;

  friend bool operator==(const RecordFilter&, const RecordFilter&) = default;
};

// What an import did with each record.
struct TakenIn {
  std::vector<long long> added;     // their numbers here
  std::vector<long long> extended;  // that were here, and have got the entries that were added elsewhere
  std::size_t there = 0;            // already here, with all that they have
};

class RecordBook {
 public:
  // A database of an older version is brought to this one. Issues: cannot be opened, is of a newer version, or of something
  // else.
  [[nodiscard]] static Result<RecordBook> open(const RecordsPlace& place, Opening opening);

  RecordBook(RecordBook&&) noexcept;
  RecordBook& operator=(RecordBook&&) noexcept;
  ~RecordBook();

  // Gives the record the next number, and returns it.
  [[nodiscard]] Result<long long> add(SpoolRecord record);

  // Adds an entry to a record. Issue: there is none of that number.
  [[nodiscard]] Issues amend(long long number, const RecordEntry& entry);

  // Without the bytes of pictures, by number.
  [[nodiscard]] Result<std::vector<SpoolRecord>> list(const RecordFilter& filter);

  // How many entries all records have together: as none is ever taken away, another number says that there is more.
  [[nodiscard]] Result<long long> entries();

  // With them. Issue: there is none of that number.
  [[nodiscard]] Result<SpoolRecord> find(long long number);

  // All of them or none; each keeps its number where it is free. A record that is here already is not doubled. Issue: one that is here, but says something else.
  [[nodiscard]] Result<TakenIn> take_in(std::vector<SpoolRecord> records);

 private:
  struct Inside;
  explicit RecordBook(std::unique_ptr<Inside> inside);

  std::unique_ptr<Inside> inside_;
};

// Whether open() said no more than that nothing was recorded at that place yet.
[[nodiscard]] bool says_none_yet(const Issues& issues);

}  // namespace laywright
