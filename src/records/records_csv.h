// Records as one table, to be taken elsewhere and back without loss: CSV, one line for each thing.
//
// The heading's first cell is the format, "lay-records 1"; below it stands what each line is: `record`, then of that record
// `planned` for each layer, `entry`, and of that entry `reading`, `fitted`, `picture`. Lengths are in mm. Pictures stand in
// files beside the table, or are only named where there are none.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "records/spool_record.h"

namespace laywright {

// A picture's file, beside the table, and which one it is: "picture-12-1-2.jpeg" is the second of the first entry of record 12.
struct PictureFile {
  std::string name;
  long long number = 0;
  std::size_t entry = 0, picture = 0;  // 0 = the first
};

struct RecordsTable {
  std::string csv;
  std::vector<PictureFile> pictures;  // by record; empty unless asked for
};

[[nodiscard]] RecordsTable records_table(const std::vector<SpoolRecord>& records, bool with_pictures);

struct ReadRecords {
  std::vector<SpoolRecord> records;
  std::size_t pictures_left_out = 0;  // that are only named
};

// Reads the bytes of a picture's file, by its name in the table.
using PictureReader = std::function<Result<std::string>(const std::string& name)>;

// Errors with file and line, up to 20: no such table, a cell that does not fit its column, a plan that is not sound or not of
// its revision, a line of no record, a picture that is not the one that was kept.
[[nodiscard]] Result<ReadRecords> read_records_table(std::string_view text, const std::string& file,
                                                     const PictureReader& read_picture);

}  // namespace laywright
