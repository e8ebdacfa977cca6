#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "figures/csv_field.h"
#include "records/records_columns.h"
#include "records/records_csv.h"

namespace laywright {
namespace {

class TableWriter {
 public:
  TableWriter() {
    for (std::size_t i = 0; i < records_columns.size(); ++i)
      csv_ += fmt::format("{}{}", i > 0 ? "," : "", records_columns[i]);
    csv_ += '\n';
  }

  void begin(std::string_view what, long long record, std::size_t entry = 0) {
    cells_ = {};
    cells_[0] = what;
    number("record", record);
    if (entry > 0) number("entry", entry);
  }
  void text(std::string_view column, const std::string& value) {
    if (!value.empty()) cell(column) = quoted(value);
  }
  template <class Number>
  void number(std::string_view column, Number value) {
    cell(column) = fmt::format("{}", value);  // the fewest digits that read back as the same
  }
  template <class Number>
  void number(std::string_view column, const std::optional<Number>& value) {
    if (value) number(column, *value);
  }
  void end() {
    for (std::size_t i = 0; i < cells_.size(); ++i) csv_ += (i > 0 ? "," : "") + cells_[i];
    csv_ += '\n';
  }

  [[nodiscard]] std::string take() && { return std::move(csv_); }

 private:
  std::string& cell(std::string_view column) {
    const auto found = std::find(records_columns.begin(), records_columns.end(), column);
    return cells_.at(static_cast<std::size_t>(found - records_columns.begin()));
  }

  std::array<std::string, records_columns.size()> cells_;
  std::string csv_;
};

void write_head(TableWriter& table, const SpoolRecord& record) {
  table.begin("record", record.number);
  table.text("spool", record.spool);
  table.text("machine", record.machine);
  table.text("order", record.order);
  table.text("date", record.date);
  table.text("title", record.title);
  table.text("plan_file", record.plan_file);
  table.text("revision", record.revision);
  table.text("program", record.program);
  table.number("fidelity", record.fidelity);
  table.text("seed", record.seed);
  table.number("greatest_diameter_mm", record.greatest_diameter_mm);
  table.number("inside_width_mm", record.inside_width_mm);
  table.text("identity", record.identity);
  table.text("plan", record.plan_text);
  table.end();
}

template <class Diameter>
void write_diameters(TableWriter& table, const std::array<Diameter, 3>& diameter_mm) {
  table.number("left_mm", diameter_mm[0]);
  table.number("middle_mm", diameter_mm[1]);
  table.number("right_mm", diameter_mm[2]);
}

void write_planned(TableWriter& table, const SpoolRecord& record) {
  for (const PlannedLayer& each : record.planned) {
    table.begin("planned", record.number);
    table.number("layer", each.layer);
    if (each.at_end) table.number("end", 1);
    table.number("layer_turns", each.layer_turns);
    table.number("counter_turns", each.turns);
    table.number("counter_length_mm", each.length_mm);
    table.number("width_mm", each.width_mm);
    write_diameters(table, each.outer_diameter_mm);
    table.end();
  }
}

void write_entry(TableWriter& table, long long record, std::size_t place, const RecordEntry& entry) {
  table.begin("entry", record, place);
  table.text("written", entry.written);
  table.text("by", entry.by);
  table.text("program", entry.program);
  table.text("decision", name_of(entry.decision));
  table.text("reason", entry.reason);
  table.text("note", entry.note);
  table.end();
  for (const Reading& reading : entry.readings) {
    table.begin("reading", record, place);
    table.number("layer", reading.layer);
    if (reading.at_end) table.number("end", 1);
    table.number("layer_turns", reading.layer_turns);
    table.number("counter_turns", reading.counter_turns);
    table.number("counter_length_mm", reading.counter_length_mm);
    table.number("counter_reading", reading.counter_reading);
    write_diameters(table, reading.diameter_mm);
    table.number("width_mm", reading.width_mm);
    table.end();
  }
  for (const FittedSetting& each : entry.fitted) {
    table.begin("fitted", record, place);
    table.text("setting", each.key);
    table.number("planned", each.planned);
    table.number("value", each.value);
    table.number("sigma", each.sigma);
    table.number("told", each.told_by_readings ? 1 : 0);
    table.end();
  }
}

void write_picture(TableWriter& table, long long record, std::size_t place, const RecordPicture& picture,
                   const std::string& file) {
  table.begin("picture", record, place);
  table.text("kind", picture.kind);
  table.text("caption", picture.caption);
  table.text("file", file);
  table.number("size", picture.size);
  table.text("hash", picture.hash);
  table.end();
}

}  // namespace

RecordsTable records_table(const std::vector<SpoolRecord>& records, bool with_pictures) {
  TableWriter table;
  RecordsTable made;
  for (const SpoolRecord& record : records) {
    write_head(table, record);
    write_planned(table, record);
    for (std::size_t i = 0; i < record.entries.size(); ++i) {
      write_entry(table, record.number, i + 1, record.entries[i]);
      for (std::size_t k = 0; k < record.entries[i].pictures.size(); ++k) {
        const RecordPicture& picture = record.entries[i].pictures[k];
        std::string file;
        if (with_pictures) {
          file = fmt::format("picture-{}-{}-{}.{}", record.number, i + 1, k + 1, picture.kind);
          made.pictures.push_back({file, record.number, i, k});
        }
        write_picture(table, record.number, i + 1, picture, file);
      }
    }
  }
  made.csv = std::move(table).take();
  return made;
}

}  // namespace laywright
