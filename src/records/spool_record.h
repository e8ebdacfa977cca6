// What is kept of one spool that was wound: its plan, what the program expected of it, and what people said of it since.
//
// A record is never deleted, and nothing in it is changed: whoever knows more adds an entry. What holds now (the decision,
// the readings) follows from all entries, the later ones counting for more.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "advise/as_wound.h"
#include "base/result.h"

namespace laywright {

// The build as planned once a layer lies; lengths mm, counted from the start of the wind.
struct PlannedLayer {
  int layer = 0;
  bool at_end = false;                        // the end of the wind, within this layer or after it
  double layer_turns = 0.0;                   // of this layer alone
  double turns = 0.0;                         // counted
  double length_mm = 0.0;                     // counted
  double width_mm = 0.0;                      // of the last whole layer, over its outermost turns
  std::array<double, 3> outer_diameter_mm{};  // left, middle, right

  friend bool operator==(const PlannedLayer&, const PlannedLayer&) = default;
};

enum class Decision { none, accepted, rejected };

// Stable names: "", "accepted", "rejected".
[[nodiscard]] const char* name_of(Decision decision);

struct RecordPicture {
  std::string kind;  // "png", "jpeg" or "webp", by its first bytes
  std::string caption;
  std::string bytes;     // empty where only the list of pictures was asked for
  std::size_t size = 0;  // of the bytes
  std::string hash;      // of the bytes, 16 hexadecimal digits
};

// A setting as a fit found it (advise/fit.h), in the unit used inside.
struct FittedSetting {
  std::string key;
  double planned = 0.0, value = 0.0, sigma = 0.0;
  bool told_by_readings = true;

  friend bool operator==(const FittedSetting&, const FittedSetting&) = default;
};

// What somebody added at one time.
struct RecordEntry {
  std::string written;  // "2026-11-29T13:50:12Z"
  std::string by;       // whoever it was, in words of their own; may be empty
  std::string program;  // version that wrote it
  Decision decision = Decision::none;
  std::string reason;  // of the decision
  std::string note;
  std::vector<Reading> readings;  // their line is 0
  std::vector<FittedSetting> fitted;
  std::vector<RecordPicture> pictures;
};

// One of this moment, by this version of the program.
[[nodiscard]] RecordEntry new_entry(std::string program);

// Apart from who, when and by which program: whether there is anything in it.
[[nodiscard]] bool says_something(const RecordEntry& entry);

// Pictures do not count: a table of records alone does not carry them.
[[nodiscard]] bool same_entry(const RecordEntry& a, const RecordEntry& b);

struct SpoolRecord {
  long long number = 0;  // given by the database, 1 = the first
  std::string identity;  // 32 hexadecimal digits, by which a record is known wherever it goes
  std::string spool;     // number or name of the spool; what follows may be empty
  std::string machine, order;
  std::string date;  // of the wind, "2026-11-29"
  std::string title, plan_file;
  std::string revision;   // of the plan (plan/revision.h)
  std::string plan_text;  // stands alone: what it named of catalogues is written in
  std::string program;    // version that laid it
  double fidelity = 1.0;  // with which it was laid
  std::string seed;       // decimal digits: no database holds all of its values as a number
  double greatest_diameter_mm = 0.0;
  double inside_width_mm = 0.0;  // between the flange faces, at the barrel
  std::vector<PlannedLayer> planned;
  std::vector<RecordEntry> entries;  // in their order, at least one
};

inline constexpr std::size_t largest_picture_bytes = 16'000'000;
inline constexpr std::size_t longest_record_note = 4000;  // of note and reason, in characters
inline constexpr std::size_t longest_record_caption = 200;
inline constexpr std::size_t longest_record_name = 60;  // of spool, machine, order, who

// The latest decision.
[[nodiscard]] Decision decision_of(const SpoolRecord& record);
[[nodiscard]] const RecordEntry* entry_of_decision(const SpoolRecord& record);  // null where there is none

// "accepted", "rejected" or "undecided".
[[nodiscard]] std::string state_of(const SpoolRecord& record);

// All readings as one table, in the order in which they lie on the spool. Of two at one place the later one holds.
[[nodiscard]] AsWound as_wound_of(const SpoolRecord& record);

// Of the latest fit; empty where there was none.
[[nodiscard]] std::vector<FittedSetting> fitted_of(const SpoolRecord& record);

// Fills in kind, size and hash. Errors name `file`: no picture of a kind that is kept, too large, an overlong caption.
[[nodiscard]] Result<RecordPicture> picture_of(std::string bytes, std::string caption, const std::string& file);

// What keeps an entry, or a record apart from its entries, from being kept: texts that are too long or hold what is no text, a
// date that is none, a decision without a reason.
[[nodiscard]] Issues check_entry(const RecordEntry& entry);
[[nodiscard]] Issues check_record(const SpoolRecord& record);

// 16 hexadecimal digits, by base/hash.h.
[[nodiscard]] std::string hash_text(std::string_view bytes);

// Whether it is a day of the calendar, "2026-11-29".
[[nodiscard]] bool is_date(std::string_view text);

// Drawn from the system's randomness.
[[nodiscard]] std::string new_identity();

}  // namespace laywright
