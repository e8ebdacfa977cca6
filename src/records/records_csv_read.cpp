#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "base/number.h"
#include "base/readable.h"
#include "plan/plan_file.h"
#include "plan/revision.h"
#include "records/csv_rows.h"
#include "records/records_columns.h"
#include "records/records_csv.h"

namespace laywright {
namespace {

constexpr std::size_t most_issues = 20;

class TableReader {
 public:
  TableReader(const std::string& file, const PictureReader& read_picture)
      : file_(file), read_picture_(read_picture) {}

  void read(const std::vector<CsvRow>& rows) {
    if (rows.empty() || rows.front().cells.front() != records_format) {
      line_ = rows.empty() ? 0 : rows.front().line;
      return error("", "", fmt::format("is no table of records: its heading begins with \"{}\"", records_format));
    }
    read_heading(rows.front());
    for (std::size_t i = 1; i < rows.size() && issues_.empty(); ++i) check_width(rows[i]);
    if (!issues_.empty()) return;
    for (std::size_t i = 1; i < rows.size() && issues_.size() < most_issues; ++i) read_row(rows[i]);
    for (Held& each : held_) finish(each);
  }

  [[nodiscard]] Result<ReadRecords> take() && {
    if (!issues_.empty()) return issues_;
    ReadRecords read;
    for (Held& each : held_) read.records.push_back(std::move(each.record));
    read.pictures_left_out = left_out_;
    return read;
  }

 private:
  struct Held {
    SpoolRecord record;
    int line = 0;
    std::vector<int> entry_lines;
  };

  void error(std::string_view column, std::string_view value, std::string what) {
    if (issues_.size() >= most_issues) return;
    Issue issue;
    issue.file = file_;
    issue.line = line_;
    issue.key = readable(column);
    issue.value = readable(value);
    issue.what = std::move(what);
    issues_.push_back(std::move(issue));
  }

  void read_heading(const CsvRow& row) {
    line_ = row.line;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const std::string& name = row.cells[i];
      if (std::find(records_columns.begin(), records_columns.end(), name) == records_columns.end())
        error(name, "", "is no column of a table of records");
      columns_.emplace(name, i);
    }
    for (const std::string_view column : records_columns) {
      if (columns_.count(std::string(column)) == 0)
        error(column, "", "is missing among the columns; is the table whole?");
    }
  }

  void check_width(const CsvRow& row) {
    line_ = row.line;
    if (row.cells.size() != columns_.size())
      error("", "",
            fmt::format("has {} cells, but there are {} columns; is the line whole?", row.cells.size(),
                        columns_.size()));
  }

  [[nodiscard]] const std::string& text(const char* column) const { return row_->cells[columns_.at(column)]; }

  // Of a cell that may be empty; none, with an error, where it does not fit.
  template <class Number>
  std::optional<Number> number(const char* column, bool due, Number least, Number most) {
    const std::string& cell = text(column);
    if (cell.empty()) {
      if (due) error(column, "", "is missing");
      return std::nullopt;
    }
    const auto value = read_number<Number>(cell);
    if (value && *value >= least && *value <= most) return value;
    error(column, cell, fmt::format("is no number from {} to {}", least, most));
    return std::nullopt;
  }
  std::optional<double> measure(const char* column, bool due) { return number(column, due, 0.0, 1e15); }
  bool flag(const char* column) { return number(column, false, 0, 1).value_or(0) == 1; }

  void read_row(const CsvRow& row) {
    row_ = &row;
    line_ = row.line;
    const std::string& what = row.cells[columns_.at(std::string(records_format))];
    constexpr long long most_records = 1'000'000'000'000;
    const auto number_here = number<long long>("record", true, 1, most_records);
    if (!number_here) return;
    if (what == "record") return read_head(*number_here);
    const auto found = places_.find(*number_here);
    if (found == places_.end()) return error("record", text("record"), "is of no record that stands above it");
    Held& held = held_[found->second];
    if (what == "planned") return read_planned(held);
    if (what == "entry") return read_entry(held);
    const auto entry = number<long long>("entry", true, 1, static_cast<long long>(held.record.entries.size()));
    if (!entry) return;
    RecordEntry& of = held.record.entries[static_cast<std::size_t>(*entry) - 1];
    if (what == "reading") return read_reading(of);
    if (what == "fitted") return read_fitted(of);
    if (what == "picture") return read_a_picture(of);
    error(records_format, what, "is nothing that a record has");
  }

  void read_head(long long number_here) {
    if (!places_.emplace(number_here, held_.size()).second)
      return error("record", text("record"), "stands in the table twice");
    if (!identities_.insert(text("identity")).second)
      return error("identity", text("identity"), "stands in the table twice");
    Held held;
    held.line = line_;
    SpoolRecord& record = held.record;
    record.number = number_here;
    record.identity = text("identity");
    record.spool = text("spool");
    record.machine = text("machine");
    record.order = text("order");
    record.date = text("date");
    record.title = text("title");
    record.plan_file = text("plan_file");
    record.revision = text("revision");
    record.plan_text = text("plan");
    record.program = text("program");
    record.fidelity = number("fidelity", true, 1e-6, 1e6).value_or(1.0);
    record.seed = text("seed");
    if (!read_number<std::uint64_t>(record.seed)) error("seed", record.seed, "is no whole number");
    record.greatest_diameter_mm = measure("greatest_diameter_mm", true).value_or(0.0);
    record.inside_width_mm = measure("inside_width_mm", true).value_or(0.0);
    held_.push_back(std::move(held));
  }

  std::optional<int> layer(bool due) { return number("layer", due, 1, 1'000'000); }

  void read_planned(Held& held) {
    PlannedLayer each;
    each.layer = layer(true).value_or(0);
    each.at_end = flag("end");
    each.layer_turns = measure("layer_turns", true).value_or(0.0);
    each.turns = measure("counter_turns", true).value_or(0.0);
    each.length_mm = measure("counter_length_mm", true).value_or(0.0);
    each.width_mm = measure("width_mm", true).value_or(0.0);
    each.outer_diameter_mm = {measure("left_mm", true).value_or(0.0), measure("middle_mm", true).value_or(0.0),
                              measure("right_mm", true).value_or(0.0)};
    if (each.layer != static_cast<int>(held.record.planned.size()) + 1)
      return error("layer", text("layer"), "is not the next layer of its record; is a line missing?");
    held.record.planned.push_back(each);
  }

  void read_entry(Held& held) {
    RecordEntry entry;
    entry.written = text("written");
    entry.by = text("by");
    entry.program = text("program");
    entry.reason = text("reason");
    entry.note = text("note");
    const std::string& decision = text("decision");
    for (const Decision each : {Decision::accepted, Decision::rejected}) {
      if (decision == name_of(each)) entry.decision = each;
    }
    if (decision != name_of(entry.decision)) error("decision", decision, "is none: accepted, rejected, or nothing");
    const auto place = static_cast<long long>(held.record.entries.size()) + 1;
    if (number<long long>("entry", true, 1, 1'000'000) != place)
      return error("entry", text("entry"), "is not the next entry of its record; is a line missing?");
    held.record.entries.push_back(std::move(entry));
    held.entry_lines.push_back(line_);
  }

  void read_reading(RecordEntry& entry) {
    Reading reading;
    reading.layer = layer(false);
    reading.at_end = flag("end");
    reading.layer_turns = measure("layer_turns", false);
    reading.counter_turns = measure("counter_turns", false);
    reading.counter_length_mm = measure("counter_length_mm", false);
    reading.counter_reading = measure("counter_reading", false);
    reading.width_mm = measure("width_mm", false);
    reading.diameter_mm = {measure("left_mm", false), measure("middle_mm", false), measure("right_mm", false)};
    const bool placed = reading.layer || reading.at_end || reading.counter_turns || reading.counter_length_mm;
    if (!placed || reading.empty()) return error("", "", "is a reading without a place or without a value");
    entry.readings.push_back(reading);
  }

  void read_fitted(RecordEntry& entry) {
    constexpr double most = 1e15;
    FittedSetting each;
    each.key = text("setting");
    each.planned = number("planned", true, -most, most).value_or(0.0);
    each.value = number("value", true, -most, most).value_or(0.0);
    each.sigma = number("sigma", true, 0.0, most).value_or(0.0);
    each.told_by_readings = flag("told");
    entry.fitted.push_back(std::move(each));
  }

  void read_a_picture(RecordEntry& entry) {
    const std::string& name = text("file");
    if (name.empty()) {
      ++left_out_;
      return;
    }
    // Never a file from elsewhere: the table may come from anybody.
    if (!name.starts_with("picture-") || name.find('/') != std::string::npos)
      return error("file", name, "is not the name of a picture beside the table");
    Result<std::string> bytes = read_picture_(name);
    if (!bytes.ok()) return error("file", name, bytes.issues().front().what);
    Result<RecordPicture> picture = picture_of(std::move(bytes).value(), text("caption"), name);
    if (!picture.ok()) return error("file", name, picture.issues().front().what);
    if (picture.value().hash != text("hash"))
      return error("file", name, "is not the picture that was kept: its bytes differ");
    entry.pictures.push_back(std::move(picture).value());
  }

  // What can be told only when all of a record is there.
  void finish(Held& held) {
    SpoolRecord& record = held.record;
    const auto pass_on = [&](const Issues& issues, int line) {
      line_ = line;
      for (const Issue& issue : issues) error(issue.key, issue.value, issue.what);
    };
    pass_on(check_record(record), held.line);
    for (std::size_t i = 0; i < record.entries.size(); ++i)
      pass_on(check_entry(record.entries[i]), held.entry_lines[i]);
    if (!record.planned.empty() && !record.planned.back().at_end) {
      line_ = held.line;
      error("end", "", "is missing: no planned line of this record is the end of the wind; is one missing?");
    }
    line_ = held.line;
    const Result<Plan> plan = plan_from_text(record.plan_text, record.plan_file);
    if (!plan.ok()) {
      const Issue& first = plan.issues().front();
      return error("plan", "", fmt::format("is not sound: {} {}", first.key, first.what));
    }
    if (revision_of(plan.value().draft()) != record.revision)
      error("revision", record.revision,
            fmt::format("is not that of the plan, {}", revision_of(plan.value().draft())));
  }

  const std::string& file_;
  const PictureReader& read_picture_;
  std::map<std::string, std::size_t> columns_;
  const CsvRow* row_ = nullptr;
  int line_ = 0;
  std::vector<Held> held_;
  std::map<long long, std::size_t> places_;
  std::set<std::string> identities_;
  std::size_t left_out_ = 0;
  Issues issues_;
};

}  // namespace

Result<ReadRecords> read_records_table(std::string_view text, const std::string& file,
                                       const PictureReader& read_picture) {
  const Result<std::vector<CsvRow>> rows = read_csv_rows(text, file);
  if (!rows.ok()) return rows.issues();
  TableReader reader(file, read_picture);
  reader.read(rows.value());
  return std::move(reader).take();
}

}  // namespace laywright
