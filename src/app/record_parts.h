// The parts of `laywright record`, and what they have in common. Inside the record command only.
#pragma once

#include <string>
#include <vector>

#include "app/command_line.h"
#include "app/command_outcome.h"
#include "plan/named_entry.h"
#include "records/record_book.h"

namespace laywright {

// --records, or LAYWRIGHT_RECORDS, or the person's own file.
struct RecordsOption {
  std::string place;
};
void add_records_option(CommandLine command, RecordsOption& option);
[[nodiscard]] Result<RecordBook> open_records(const RecordsOption& option, Opening opening);
// What the place is called; empty where it is none.
[[nodiscard]] std::string records_words(const RecordsOption& option);

// NUMBER, of a record.
void add_number(CommandLine command, long long& number);

// What somebody says of a spool: readings, pictures, decision, name, note.
struct EntryOptions {
  std::string measured;
  std::vector<std::string> pictures, captions;
  bool accept = false;
  std::string reject;
  std::string by, note;
};
void add_entry_options(CommandLine command, EntryOptions& options);
// Errors: a file that cannot be read, or is not what it should be; a decision without a reason; more captions than pictures.
// `counter`: the machine's of the plan, or null.
[[nodiscard]] Result<RecordEntry> entry_of(const EntryOptions& options, const Counter* counter);

// Which records.
void add_filter_options(CommandLine command, RecordFilter& filter);

// A day of the calendar.
[[nodiscard]] OptionCheck a_date();

void add_record_add(CommandLine record, const EntrySource& entries, int& exit_code);
void add_record_amend(CommandLine record, int& exit_code);
void add_record_list(CommandLine record, int& exit_code);
void add_record_show(CommandLine record, int& exit_code);
void add_record_fit(CommandLine record, const EntrySource& entries, int& exit_code);
void add_record_trends(CommandLine record, int& exit_code);
void add_record_export(CommandLine record, int& exit_code);
void add_record_import(CommandLine record, int& exit_code);

}  // namespace laywright
