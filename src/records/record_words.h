// What is said of a record, piece by piece: the command puts it into text, the window into tables.
#pragma once

#include <string>
#include <vector>

#include "records/spool_record.h"

namespace laywright {

// A column of a list: "+0.12 mm", the outer diameter in the middle, measured less planned, at the outermost reading; "-".
[[nodiscard]] std::string difference_text(const SpoolRecord& record);
// What it is, as a sentence: below a list, or as a tip.
inline constexpr const char* difference_is =
    "Off: the outer diameter in the middle, measured less planned, at the outermost reading.";

// The title; the file's name where there is none.
[[nodiscard]] std::string plan_words(const SpoolRecord& record);

// "Record 12: spool 17, 2026-11-29, accepted"
[[nodiscard]] std::string record_heading(const SpoolRecord& record);

// "Record 12 of spool 17 is kept in shop.db.", once it is; what was added to it. `place`: as RecordsPlace::words.
[[nodiscard]] std::string kept_words(const SpoolRecord& record, const std::string& place);
[[nodiscard]] std::string added_words(long long number, const std::string& place);

struct RecordLine {
  std::string name, value;
};
// Machine, order, plan, what was planned, who laid it; those without a value are left out.
[[nodiscard]] std::vector<RecordLine> head_lines(const SpoolRecord& record);

struct ReadingLine {
  std::string what;                           // "layer 3, turns of the layer"
  std::string measured, planned, difference;  // with units; "-" where nothing was planned
  bool beside_plan = true;                    // it was
};
// As readings_beside_plan() has them.
[[nodiscard]] std::vector<ReadingLine> reading_lines(const SpoolRecord& record);

struct HistoryEntry {
  std::string when;                // "2026-11-29T13:50:12Z"
  std::string what;                // "accepted, 3 lines of readings, by late shift"
  std::vector<std::string> said;   // reason and note, as they were written
  std::vector<std::string> lines;  // settings that were fitted, pictures
};
// `plan`: the record's, for the units of what was fitted; null: it cannot be read.
[[nodiscard]] std::vector<HistoryEntry> history_of(const SpoolRecord& record, const PlanDraft* plan);

}  // namespace laywright
