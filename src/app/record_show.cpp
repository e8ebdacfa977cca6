#include <memory>
#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "app/output.h"
#include "app/record_parts.h"
#include "base/readable.h"
#include "paper/file_set.h"
#include "plan/plan_name.h"
#include "records/record_text.h"

namespace laywright {
namespace {

struct ListOptions {
  RecordFilter filter;
  RecordsOption records;
  bool json = false;
};

struct ShowOptions {
  long long number = 0;
  RecordsOption records;
  bool json = false;
  std::string folder;
};

int list(const ListOptions& options) {
  Result<RecordBook> book = open_records(options.records, Opening::to_read);
  if (!book.ok()) return conclude({exit_unsound, book.issues(), {}});
  RecordBook open = std::move(book).value();
  const Result<std::vector<SpoolRecord>> records = open.list(options.filter);
  if (!records.ok()) return conclude({exit_unsound, records.issues(), {}});
  return conclude({exit_done, {}, options.json ? records_json(records.value()) : records_text(records.value())});
}

// The plan, the readings as `fit` takes them, and the pictures; their names by what the record is.
Issues write_files(const SpoolRecord& record, const std::string& folder, std::string& told) {
  Result<FileSet> opened = FileSet::into(folder);
  if (!opened.ok()) return opened.issues();
  FileSet files = std::move(opened).value();
  const std::string name = fmt::format("record-{}", record.number);
  Issues trouble = files.add(name + plan_ending, record.plan_text);
  const AsWound wound = as_wound_of(record);
  if (trouble.empty() && !wound.readings.empty()) trouble = files.add(name + ".csv", as_wound_table(wound.readings));
  std::size_t count = 0;
  for (const RecordEntry& entry : record.entries) {
    for (const RecordPicture& picture : entry.pictures) {
      if (trouble.empty()) trouble = files.add(fmt::format("{}-{}.{}", name, ++count, picture.kind), picture.bytes);
    }
  }
  if (trouble.empty()) trouble = files.commit();
  if (trouble.empty())
    told = fmt::format("\nWritten into {}\n  {}\n", visible(folder), fmt::join(files.names(), ", "));
  return trouble;
}

int show(const ShowOptions& options) {
  Result<RecordBook> book = open_records(options.records, Opening::to_read);
  if (!book.ok()) return conclude({exit_unsound, book.issues(), {}});
  RecordBook open = std::move(book).value();
  const Result<SpoolRecord> record = open.find(options.number);
  if (!record.ok()) return conclude({exit_unsound, record.issues(), {}});
  std::string told;
  if (!options.folder.empty()) {
    if (const Issues trouble = write_files(record.value(), options.folder, told); !trouble.empty())
      return conclude({exit_not_written, trouble, {}});
  }
  return conclude({exit_done, {}, options.json ? record_json(record.value()) : record_text(record.value()) + told});
}

}  // namespace

void add_record_list(CommandLine record, int& exit_code) {
  const CommandLine command = record.add_command("list", "The records, a line each");
  const auto options = std::make_shared<ListOptions>();
  add_filter_options(command, options->filter);
  add_records_option(command, options->records);
  command.add_flag("--json", options->json,
                   "Print one JSON document (format \"lay-record-list 1\") instead of text");
  command.footer(
      "Examples:\n"
      "  laywright record list --machine \"winder 2\" --from 2026-11-01\n"
      "  laywright record list --state undecided\n");
  command.callback([options, &exit_code] { exit_code = list(*options); });
}

void add_record_show(CommandLine record, int& exit_code) {
  const CommandLine command =
      record.add_command("show", "One record: what was measured beside what was planned, and its history");
  const auto options = std::make_shared<ShowOptions>();
  add_number(command, options->number);
  command
      .add_option("--out", options->folder,
                  "Write the plan, the readings and the pictures into this folder, made if missing")
      .type_name("DIR");
  add_records_option(command, options->records);
  command.add_flag("--json", options->json, "Print one JSON document (format \"lay-record 1\") instead of text");
  command.footer(
      "Examples:\n"
      "  laywright record show 1\n"
      "  laywright record show 1 --out out/record-1\n");
  command.callback([options, &exit_code] { exit_code = show(*options); });
}

}  // namespace laywright
