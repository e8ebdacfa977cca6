#include <utility>

#include <fmt/format.h>

#include "app/number_option.h"
#include "app/record_parts.h"
#include "base/read_file.h"
#include "base/readable.h"
#include "session/records_home.h"

namespace laywright {
namespace {

Issue refused(std::string key, std::string what) {
  Issue issue;
  issue.key = std::move(key);
  issue.what = std::move(what);
  return issue;
}

}  // namespace

void add_records_option(CommandLine command, RecordsOption& option) {
  command
      .add_option(
          "--records", option.place,
          fmt::format("Where records are kept: a file, or postgresql://NAME@HOST/DATABASE; without it {}, or the "
                      "file records.db in your data folder",
                      records_variable))
      .type_name("FILE.db");
}

Result<RecordBook> open_records(const RecordsOption& option, Opening opening) {
  return open_book(records_place_text(option.place), opening);
}

std::string records_words(const RecordsOption& option) {
  const Result<RecordsPlace> place = records_place(records_place_text(option.place));
  return place.ok() ? visible(place.value().words) : "";
}

void add_number(CommandLine command, long long& number) {
  command.add_option("NUMBER", number, "The record's number, as list shows it")
      .type_name("")
      .check(number_between(1LL, 1'000'000'000'000LL))
      .required();
}

OptionCheck a_date() {
  return [](const std::string& text) {
    return is_date(text) ? "" : fmt::format("\"{}\" is no day of the calendar, like 2026-11-29", readable(text));
  };
}

void add_entry_options(CommandLine command, EntryOptions& options) {
  command.add_option("--measured", options.measured, "What was measured on it, a table as `fit` takes it")
      .type_name("FILE.csv");
  command.add_option("--picture", options.pictures, "A picture of it; may be given several times")
      .type_name("FILE.png|jpg|jpeg|webp")
      .one_at_a_time();
  command.add_option("--caption", options.captions, "What a picture shows, in the order of the pictures")
      .type_name("TEXT")
      .one_at_a_time();
  const CommandOption accept = command.add_flag("--accept", options.accept, "The spool is accepted");
  command.add_option("--reject", options.reject, "The spool is rejected, and why")
      .type_name("TEXT")
      .excludes(accept);
  command.add_option("--by", options.by, "Who says so").type_name("NAME");
  command.add_option("--note", options.note, "Anything else worth knowing").type_name("TEXT");
}

Result<RecordEntry> entry_of(const EntryOptions& options, const Counter* counter) {
  RecordEntry entry = new_entry(LAYWRIGHT_VERSION);
  entry.by = options.by;
  entry.note = options.note;
  entry.decision = options.accept            ? Decision::accepted
                   : !options.reject.empty() ? Decision::rejected
                                             : Decision::none;
  entry.reason = options.reject;
  if (!options.measured.empty()) {
    Result<AsWound> wound = load_as_wound(options.measured, counter);
    if (!wound.ok()) return wound.issues();
    entry.readings = std::move(wound).value().readings;
    for (Reading& reading : entry.readings) reading.line = 0;
  }
  if (options.captions.size() > options.pictures.size())
    return refused("--caption", "is given more often than --picture; each is of one picture");
  for (std::size_t i = 0; i < options.pictures.size(); ++i) {
    Result<std::string> bytes = read_file(options.pictures[i], "a picture", largest_picture_bytes);
    if (!bytes.ok()) return bytes.issues();
    Result<RecordPicture> picture = picture_of(
        std::move(bytes).value(), i < options.captions.size() ? options.captions[i] : "", options.pictures[i]);
    if (!picture.ok()) return picture.issues();
    entry.pictures.push_back(std::move(picture).value());
  }
  Issues issues = check_entry(entry);
  if (!issues.empty()) return issues;
  return entry;
}

void add_filter_options(CommandLine command, RecordFilter& filter) {
  command.add_option("--machine", filter.machine, "Of this machine").type_name("NAME");
  command.add_option("--spool", filter.spool, "Of the spool of this number").type_name("NAME");
  command.add_option("--order", filter.order, "Of this order's number").type_name("NAME");
  command.add_option("--plan", filter.plan, "Whose plan's title or file holds this").type_name("TEXT");
  command
      .add_option("--revision", filter.revision, "Whose plan has this revision, as the sheet's square code says it")
      .type_name("TEXT");
  command.add_option("--from", filter.from, "Wound on this day or later, like 2026-11-29")
      .type_name("DATE")
      .check(a_date());
  command.add_option("--to", filter.to, "Wound on this day or before").type_name("DATE").check(a_date());
  command.add_option("--state", filter.state, "In this state: accepted, rejected or undecided")
      .type_name("WORD")
      .check(one_of({"accepted", "rejected", "undecided"}));
}

}  // namespace laywright
