// What the program expected of a wind, to be kept with it.
#pragma once

#include <string>

#include "lay/lay.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"
#include "records/spool_record.h"

namespace laywright {

// A record without number, date and entries: the plan's text, made to stand alone, and the figures of its build layer by
// layer. Spool, machine and order are what the plan says of them. Preconditions: the plan was read from the text, and
// build and measurements belong to it.
[[nodiscard]] SpoolRecord planned_record(const Plan& plan, std::string_view text, const LaySettings& settings,
                                         const Build& build, const Measurements& measurements);

// What a person calls a spool that was wound; what is empty the plan says, or today's date.
struct RecordNames {
  std::string spool, machine, order;
  std::string date;  // "2026-11-29"

  friend bool operator==(const RecordNames&, const RecordNames&) = default;
};

// `program`: the version that laid it.
void name_record(SpoolRecord& record, const RecordNames& names, std::string program);

// The machine that the plan names; empty where it names none.
[[nodiscard]] std::string machine_of(const Plan& plan);

}  // namespace laywright
