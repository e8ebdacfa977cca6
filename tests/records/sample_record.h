// A record as a spool might have it, made by hand; odd texts on purpose.
#pragma once

#include <string>

#include "plan/plan_file.h"
#include "plan/revision.h"
#include "records/spool_record.h"

namespace laywright::testing {

// The bytes of a picture of one pixel's head; what is behind it does not matter to a database.
inline std::string png_bytes(std::size_t size = 64) {
  std::string bytes = "\x89PNG\r\n\x1a\n";
  while (bytes.size() < size) bytes += static_cast<char>(bytes.size() * 37 % 256);
  return bytes;
}

inline const char* const sample_plan = R"(format = "lay-plan 1"
title = "It's \"odd\": ;,é"
[spool]
barrel_diameter = "100 mm"
flange_diameter = "190 mm"
inside_width = "20.5 mm"
[fiber]
diameter = "1 mm"
friction = 0.5
[traverse]
pitch = "1.02 mm"
left_stop = "0.5 mm"
right_stop = "0.5 mm"
free_length = "100 mm"
[wind]
turns = 40
)";

inline Reading reading_of(int layer, double left, double middle, double right) {
  Reading reading;
  reading.layer = layer;
  reading.diameter_mm = {left, middle, right};
  return reading;
}

inline RecordEntry sample_entry() {
  RecordEntry entry;
  entry.written = "2026-11-29T13:50:12Z";
  entry.by = "O'Hara; DROP TABLE records --";
  entry.program = "0.1";
  entry.note = "two lines,\n\"quoted\"\tand 100 % näive: ключ 卷";
  return entry;
}

inline SpoolRecord sample_record(const std::string& spool = "17") {
  SpoolRecord record;
  record.identity = new_identity();
  record.spool = spool;
  record.machine = "winder 2";
  record.order = "A/7";
  record.date = "2026-11-20";
  record.title = "It's \"odd\": ;,é";
  record.plan_file = "a folder/odd.lay.toml";
  record.plan_text = sample_plan;
  const Result<PlanDraft> draft = read_plan(sample_plan, "");
  record.revision = revision_of(draft.value());
  record.program = "0.1";
  record.seed = "18446744073709551615";
  record.fidelity = 0.1 + 0.2;
  record.greatest_diameter_mm = 103.7 + 1e-13;
  record.inside_width_mm = 20.5;
  record.planned = {{1, false, 19.5, 19.5, 6'187.25, 20.4, {102.0, 102.0, 102.0}},
                    {2, true, 20.5, 40.0, 12'800.0 / 3.0, 20.45, {103.7, 103.7, 103.6}}};
  record.entries = {sample_entry()};
  return record;
}

}  // namespace laywright::testing
