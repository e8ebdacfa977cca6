// Commands about records: what is looked at, what is kept, what a recorded spool was wound with.
#pragma once

#include <string>
#include <vector>

#include "advise/carry_over.h"
#include "records/planned.h"
#include "records/record_book.h"
#include "session/command.h"
#include "session/typed_readings.h"

namespace laywright {

// What somebody says of a spool, as typed.
struct SaidOfSpool {
  Decision decision = Decision::none;
  std::string reason;  // counts where it is rejected
  std::string by, note;
  TypedReadings readings;
};

// As an entry of this moment. `plan`: of the spool. Errors: readings that cannot be read, and as check_entry().
[[nodiscard]] Result<RecordEntry> entry_said(const SaidOfSpool& said, const Plan& plan);

// What the fit that was found would set otherwise in the plan in hand; empty where there is no fit, or no plan. `next`, where given,
// becomes the plan with it.
[[nodiscard]] std::vector<CarriedSetting> would_carry(const Workbench& bench, PlanDraft* next = nullptr);

// The plan in hand has it already: carried twice, a correction would count twice.
[[nodiscard]] bool is_carried(const Workbench& bench);

namespace cmd {

// Another place: a file, or the address of a server; empty: the usual one. It is remembered, unless it has a password.
Command move_records(const std::string& place);
Command filter_records(const RecordFilter& filter);
Command open_record(long long number);  // 0: none
Command reload_records();

// The present plan and its build, with what is said of the spool; Workbench::records() tells what becomes of it.
Command keep_spool(const RecordNames& names, const SaidOfSpool& said);
// More about the record whose page is open.
Command amend_record(const SaidOfSpool& said);

// The record whose page is open; kept with it.
Command fit_record(const std::string& by);
Command stop_fitting();
// What was found into the plan in hand, as one edit.
Command carry_fit();

}  // namespace cmd
}  // namespace laywright
