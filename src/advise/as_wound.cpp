#include "advise/as_wound.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "advise/reading_columns.h"
#include "base/cell_table.h"
#include "base/quantity_text.h"
#include "base/read_file.h"
#include "base/readable.h"
#include "base/spelling.h"
#include "base/units.h"
#include "base/written_number.h"
#include "plan/counter_length.h"

namespace laywright {
namespace {

constexpr std::size_t largest_table_bytes = 10'000'000;

std::optional<double>& place_in(Reading& reading, ReadingField field) {
  switch (field) {
    case ReadingField::layer_turns: return reading.layer_turns;
    case ReadingField::counter_turns: return reading.counter_turns;
    case ReadingField::counter_reading: return reading.counter_reading;
    case ReadingField::left: return reading.diameter_mm[0];
    case ReadingField::middle: return reading.diameter_mm[1];
    case ReadingField::right: return reading.diameter_mm[2];
    case ReadingField::width: return reading.width_mm;
    case ReadingField::layer:
    case ReadingField::counter_length: break;
  }
  return reading.counter_length_mm;
}

class Reader {
 public:
  Reader(std::string file, const Counter* counter) : counter_(counter) { wound_.file = std::move(file); }

  void read(std::string_view text) {
    const std::vector<CellRow> rows = read_cells(text);
    if (rows.empty()) return error(0, "", "is no table of readings: its first row names the columns");
    line_ = rows.front().line;
    take_headings(rows.front().cells);
    find_decimal_mark(rows);
    for (std::size_t i = 1; i < rows.size(); ++i) {
      line_ = rows[i].line;
      take_row(rows[i].cells);
    }
    if (issues_.empty() && wound_.readings.empty()) {
      line_ = 0;
      error(0, "", "holds no reading");
    }
  }

  [[nodiscard]] Result<AsWound> finish() && {
    if (has_error(issues_)) return issues_;
    return std::move(wound_);
  }

 private:
  struct Heading {
    std::string words;
    std::optional<ReadingColumn> column;  // none: wrong, and told
  };

  // `column`: 1-based; 0: it is about the row.
  void error(std::size_t column, std::string_view value, std::string what) {
    constexpr std::size_t most_issues = 20;
    if (issues_.size() >= most_issues) return;
    Issue issue;
    issue.file = wound_.file;
    issue.line = line_;
    if (column > 0) {
      const std::string words = column <= headings_.size() ? readable(headings_[column - 1].words) : "";
      issue.key = words.empty() ? fmt::format("column {}", column) : fmt::format("column {} ({})", column, words);
    }
    issue.value = readable(value);
    issue.what = std::move(what);
    issues_.push_back(std::move(issue));
  }

  [[nodiscard]] std::size_t column_of(ReadingField field) const {
    for (std::size_t i = 0; i < headings_.size(); ++i) {
      if (headings_[i].column && headings_[i].column->field == field) return i + 1;
    }
    return 0;
  }

  void take_headings(const std::vector<std::string>& cells) {
    for (const std::string& cell : cells) {
      if (cell.empty()) {  // a spreadsheet's empty column
        headings_.emplace_back();
        continue;
      }
      ReadHeading heading = read_heading(cell, counter_);
      const bool twice = heading.column && column_of(heading.column->field) > 0;
      headings_.push_back({cell, twice ? std::nullopt : heading.column});
      if (twice) heading.problem = "stands here twice: one column for each";
      if (!heading.problem.empty()) error(headings_.size(), "", std::move(heading.problem));
    }
  }

  void find_decimal_mark(const std::vector<CellRow>& rows) {
    std::vector<std::string_view> numbers;
    for (std::size_t i = 1; i < rows.size(); ++i)
      numbers.insert(numbers.end(), rows[i].cells.begin(), rows[i].cells.end());
    mark_ = decimal_mark_of(numbers);
  }

  void take_row(const std::vector<std::string>& cells) {
    Reading reading;
    reading.line = line_;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (cells[i].empty()) continue;
      if (i >= headings_.size() || headings_[i].words.empty()) {
        return error(i + 1, cells[i],
                     fmt::format("has no heading: there are {} columns; where a comma stands between cells, write "
                                 "2.5 or \"2,5\", in quotes",
                                 headings_.size()));
      }
      if (headings_[i].column) take_cell(*headings_[i].column, i + 1, cells[i], reading);
    }
    if (reading.empty()) return;
    if (!reading.layer && !reading.at_end && !reading.counter_turns && !reading.counter_length_mm) {
      return error(column_of(ReadingField::layer), "",
                   "says neither a layer nor a counter, so nobody knows where it was read");
    }
    check_order(reading);
    wound_.readings.push_back(reading);
  }

  void check_order(const Reading& reading) {
    const auto forward = [&](const std::optional<double>& now, double& last, ReadingField field) {
      if (!now) return;
      if (*now < last) error(column_of(field), "", "runs back; put readings in order");
      last = *now;
    };
    forward(reading.counter_turns, last_turns_, ReadingField::counter_turns);
    const bool by_reading = column_of(ReadingField::counter_length) == 0;
    forward(reading.counter_length_mm, last_length_mm_,
            by_reading ? ReadingField::counter_reading : ReadingField::counter_length);
  }

  void take_layer(std::size_t column, const std::string& cell, Reading& reading) {
    if (lower(cell) == "end") {
      reading.at_end = true;
      return;
    }
    constexpr double most_layers = 1e6;
    const std::optional<double> layer = read_written_number(cell, mark_).value;
    if (!layer || *layer < 1.0 || *layer > most_layers || *layer != std::floor(*layer)) {
      return error(column, cell, "is no layer: a whole number from 1 on, or \"end\", or nothing");
    }
    reading.layer = static_cast<int>(*layer);
  }

  void take_cell(const ReadingColumn& of, std::size_t column, const std::string& cell, Reading& reading) {
    if (of.field == ReadingField::layer) return take_layer(column, cell, reading);
    const WrittenNumber number = read_written_number(cell, mark_);
    if (number.unclear) {
      std::string whole = cell;
      std::erase_if(whole, [](char c) { return c == ',' || c == '.'; });
      return error(
          column, cell,
          fmt::format("may be {0} or a decimal number: write {0}, or the decimal number with another digit, "
                      "like {1}0",
                      whole, cell));
    }
    if (!number.value || *number.value <= 0.0 || !std::isfinite(*number.value * of.unit))
      return error(column, cell, "is not a number above 0; leave it empty if unknown");
    place_in(reading, of.field) = *number.value * of.unit;
    if (of.field == ReadingField::counter_reading && !reading.counter_length_mm)
      reading.counter_length_mm = length_at_reading(*counter_, *number.value);
  }

  const Counter* counter_;
  AsWound wound_;
  Issues issues_;
  std::vector<Heading> headings_;
  DecimalMark mark_ = DecimalMark::untold;
  int line_ = 0;
  double last_turns_ = 0.0, last_length_mm_ = 0.0;
};

std::string cell_text(const std::optional<double>& value, double unit = 1.0) {
  return value ? fmt::format("{:.12g}", *value / unit) : "";
}

constexpr const char* counter_column = "counter_reading,";

std::string headings_with(const char* counter) {
  return fmt::format("layer,layer_turns,counter_turns,counter_length_m,{}left_mm,middle_mm,right_mm,width_mm\n",
                     counter);
}

}  // namespace

std::string place_words(const Reading& reading) {
  if (reading.at_end) return "end";
  if (reading.layer) return fmt::format("layer {}", *reading.layer);
  if (reading.counter_turns) return "at " + counted(setting(*reading.counter_turns), "turn");
  return fmt::format("at {} m", setting(reading.counter_length_mm.value_or(0.0) / 1000.0));
}

bool Reading::empty() const {
  return !layer_turns && !counter_turns && !counter_length_mm && !diameter_mm[0] && !diameter_mm[1] &&
         !diameter_mm[2] && !width_mm;
}

Result<AsWound> read_as_wound(std::string_view text, std::string file, const Counter* counter) {
  Reader reader(std::move(file), counter);
  reader.read(text);
  return std::move(reader).finish();
}

Result<AsWound> load_as_wound(const std::filesystem::path& path, const Counter* counter) {
  const Result<std::string> text = read_file(path, "a table of readings", largest_table_bytes);
  if (!text) return text.issues();
  return read_as_wound(text.value(), path.string(), counter);
}

std::string as_wound_table(const std::vector<Reading>& readings) {
  const bool by_counter =
      std::any_of(readings.begin(), readings.end(), [](const Reading& r) { return r.counter_reading.has_value(); });
  std::string text = headings_with(by_counter ? counter_column : "");
  for (const Reading& r : readings) {
    const std::string layer = r.at_end ? "end" : r.layer ? fmt::format("{}", *r.layer) : "";
    // What the machine's counter showed says the length.
    const std::string length = r.counter_reading ? "" : cell_text(r.counter_length_mm, mm_per_m);
    text += fmt::format("{},{},{},{},{}{},{},{},{}\n", layer, cell_text(r.layer_turns), cell_text(r.counter_turns),
                        length, by_counter ? cell_text(r.counter_reading) + "," : "", cell_text(r.diameter_mm[0]),
                        cell_text(r.diameter_mm[1]), cell_text(r.diameter_mm[2]), cell_text(r.width_mm));
  }
  return text;
}

const Counter* counter_of(const Plan& plan) {
  const std::optional<Counter>& counter = plan.draft().machine.counter;
  return counter ? &*counter : nullptr;
}

std::string as_wound_template(const Plan& plan, int layers) {
  const bool by_counter = counter_of(plan) != nullptr;
  std::string text = fmt::format(
      "# As wound: {}\n"
      "# One row per reading; leave empty what was not measured, and delete columns that nobody measured.\n"
      "# layer: the layer that has just ended; \"end\" for the end of the wind; empty anywhere else, then give a "
      "counter.\n"
      "# layer_turns: turns of this layer alone. counter_...: since the start of the wind.\n"
      "# counter_length: what is wound{}.\n"
      "# left, middle, right: outer diameter over the fiber, in mm (or name the columns left_in, ...).\n"
      "# width: of the layer, over its outermost turns.\n{}",
      readable(plan.title().empty() ? plan.file() : plan.title(), longest_title),
      by_counter ? fmt::format(". counter_reading: what the machine's counter shows, in {}",
                               visible(counter_of(plan)->unit))
                 : "",
      headings_with(by_counter ? counter_column : ""));
  const std::string empty = by_counter ? ",,,,,,,,\n" : ",,,,,,,\n";
  for (int layer = 1; layer <= layers; ++layer) text += fmt::format("{}{}", layer, empty);
  return text + "end" + empty;
}

}  // namespace laywright
