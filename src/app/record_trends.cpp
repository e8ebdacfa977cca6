#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "app/output.h"
#include "app/record_parts.h"
#include "app/written_files.h"
#include "base/atomic_file.h"
#include "records/record_text.h"

namespace laywright {
namespace {

struct TrendsOptions {
  RecordFilter filter;
  std::vector<std::string> quantities;
  RecordsOption records;
  bool json = false;
  std::string output;
};

int trends(const TrendsOptions& options) {
  Result<RecordBook> book = open_records(options.records, Opening::to_read);
  if (!book.ok()) return conclude({exit_unsound, book.issues(), {}});
  RecordBook open = std::move(book).value();
  const Result<std::vector<SpoolRecord>> records = open.list(options.filter);
  if (!records.ok()) return conclude({exit_unsound, records.issues(), {}});
  const Trends found = trends_of(records.value(), options.quantities);
  if (!options.output.empty()) {
    if (const Issues trouble = write_file_atomically(options.output, trends_csv(found)); !trouble.empty())
      return conclude({exit_not_written, trouble, {}});
  }
  return conclude({exit_done, {}, options.json ? trends_json(found) : trends_text(found)});
}

std::vector<std::string> quantity_names() {
  std::vector<std::string> names;
  for (const TrendQuantity& each : trend_quantities()) names.push_back(each.name);
  return names;
}

}  // namespace

void add_record_trends(CommandLine record, int& exit_code) {
  const CommandLine command =
      record.add_command("trends", "How each machine goes from spool to spool, as control charts");
  const auto options = std::make_shared<TrendsOptions>();
  add_filter_options(command, options->filter);
  command
      .add_option("--of", options->quantities,
                  fmt::format("Only this: {}; may be given several times", fmt::join(quantity_names(), ", ")))
      .type_name("WORD")
      .check(one_of(quantity_names()))
      .one_at_a_time();
  const CommandOption output =
      command.add_option("-o,--output", options->output, "Write the charts as a table to this file, too")
          .type_name("FILE.csv");
  guard_inputs(command, {}, {{output, {".csv"}}});
  add_records_option(command, options->records);
  command.add_flag("--json", options->json, "Print one JSON document (format \"lay-trends 1\") instead of text");
  command.footer(
      "Charts of individual values: limits are the mean and 2.66 times the mean moving range to either side; eight\n"
      "in a row on one side of the mean count as a shift, too.\n\n"
      "Examples:\n"
      "  laywright record trends --machine \"winder 2\"\n"
      "  laywright record trends --of left_stop --of right_stop\n");
  command.callback([options, &exit_code] { exit_code = trends(*options); });
}

}  // namespace laywright
