#include <filesystem>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "app/output.h"
#include "app/record_parts.h"
#include "app/written_files.h"
#include "base/atomic_file.h"
#include "base/quantity_text.h"
#include "base/read_file.h"
#include "base/readable.h"
#include "base/spelling.h"
#include "paper/file_set.h"
#include "records/records_csv.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;

constexpr const char* table_name = "records.csv";
constexpr std::size_t largest_table_bytes = 1'000'000'000;

struct TransferOptions {
  std::string file;
  RecordFilter filter;
  RecordsOption records;
};

bool names_a_table(const std::string& file) { return ending_of(file) == ".csv"; }

Issues write_folder(RecordBook& book, const RecordsTable& table, const std::string& folder) {
  Result<FileSet> opened = FileSet::into(folder);
  if (!opened.ok()) return opened.issues();
  FileSet files = std::move(opened).value();
  Issues trouble = files.add(table_name, table.csv);
  // Record by record, so that not all pictures have to be in memory.
  for (std::size_t i = 0; i < table.pictures.size() && trouble.empty();) {
    const long long number = table.pictures[i].number;
    const Result<SpoolRecord> record = book.find(number);
    if (!record.ok()) return record.issues();
    for (; i < table.pictures.size() && table.pictures[i].number == number && trouble.empty(); ++i) {
      const PictureFile& each = table.pictures[i];
      trouble = files.add(each.name, record.value().entries.at(each.entry).pictures.at(each.picture).bytes);
    }
  }
  return trouble.empty() ? files.commit() : trouble;
}

int export_records(const TransferOptions& options) {
  Result<RecordBook> book = open_records(options.records, Opening::to_read);
  if (!book.ok()) return conclude({exit_unsound, book.issues(), {}});
  RecordBook open = std::move(book).value();
  const Result<std::vector<SpoolRecord>> records = open.list(options.filter);
  if (!records.ok()) return conclude({exit_unsound, records.issues(), {}});
  const bool alone = names_a_table(options.file);
  const RecordsTable table = records_table(records.value(), !alone);
  const Issues trouble =
      alone ? write_file_atomically(options.file, table.csv) : write_folder(open, table, options.file);
  if (!trouble.empty()) return conclude({exit_not_written, trouble, {}});
  return conclude({exit_done,
                   {},
                   fmt::format("{} and {} written to {}.\n", counted(records.value().size(), "record"),
                               counted(table.pictures.size(), "picture"), visible(options.file))});
}

std::string taken_words(const TakenIn& taken, std::size_t left_out, const std::string& place) {
  std::string text = fmt::format("{} added to {}", counted(taken.added.size(), "record"), place);
  if (!taken.added.empty()) text += fmt::format(": {}", fmt::join(taken.added, ", "));
  text += ".\n";
  if (!taken.extended.empty())
    text += fmt::format("Here already, and brought up to date: {}.\n", fmt::join(taken.extended, ", "));
  if (taken.there > 0) text += fmt::format("Here already, with all that the table has: {}.\n", taken.there);
  if (left_out > 0)
    text += fmt::format("{} {} only named in the table; export into a folder to take them along.\n",
                        counted(left_out, "picture"), left_out == 1 ? "is" : "are");
  return text;
}

int import_records(const TransferOptions& options) {
  const Result<std::string> text = read_file(options.file, "a table of records", largest_table_bytes);
  if (!text.ok()) return conclude({exit_unsound, text.issues(), {}});
  const fs::path folder = fs::path(options.file).parent_path();
  Result<ReadRecords> read = read_records_table(text.value(), options.file, [&](const std::string& name) {
    return read_file(folder / name, "a picture", largest_picture_bytes);
  });
  if (!read.ok()) {
    const int code = conclude({exit_unsound, read.issues(), {}});
    tell("nothing was imported\n");
    return code;
  }
  Result<RecordBook> book = open_records(options.records, Opening::to_write);
  if (!book.ok()) return conclude({exit_not_written, book.issues(), {}});
  RecordBook open = std::move(book).value();
  ReadRecords found = std::move(read).value();
  const Result<TakenIn> taken = open.take_in(std::move(found.records));
  if (!taken.ok()) return conclude({exit_not_written, taken.issues(), {}});
  return conclude(
      {exit_done, {}, taken_words(taken.value(), found.pictures_left_out, records_words(options.records))});
}

}  // namespace

void add_record_export(CommandLine record, int& exit_code) {
  const CommandLine command =
      record.add_command("export", "Records as a table, with their pictures where a folder is named");
  const auto options = std::make_shared<TransferOptions>();
  const CommandOption file =
      command
          .add_option("FILE", options->file,
                      "A table, *.csv, or a folder, made if missing: then the pictures stand beside it")
          .type_name("")
          .required();
  guard_inputs(command, {}, {{file, {".csv"}, false, [options] {
                                return names_a_table(options->file) ? std::vector<std::string>{}
                                                                    : std::vector<std::string>{table_name};
                              }}});
  add_filter_options(command, options->filter);
  add_records_option(command, options->records);
  command.footer(
      "Examples:\n"
      "  laywright record export out/records.csv\n"
      "  laywright record export out/winder-2 --machine \"winder 2\"\n");
  command.callback([options, &exit_code] { exit_code = export_records(*options); });
}

void add_record_import(CommandLine record, int& exit_code) {
  const CommandLine command = record.add_command("import", "Records from such a table: all of it, or nothing");
  const auto options = std::make_shared<TransferOptions>();
  command.add_option("FILE", options->file, "The table, *.csv; pictures stand beside it").type_name("").required();
  add_records_option(command, options->records);
  command.footer(
      "A record that is here already is not doubled; what was added to it elsewhere is added here.\n\n"
      "Examples:\n"
      "  laywright record import out/records.csv --records out/winder-2.db\n");
  command.callback([options, &exit_code] { exit_code = import_records(*options); });
}

}  // namespace laywright
