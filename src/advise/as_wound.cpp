#include "advise/as_wound.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "base/inch.h"
#include "base/read_file.h"
#include "base/readable.h"
#include "base/spelling.h"
#include "base/text_distance.h"

namespace laywright {
namespace {

constexpr double mm_per_m = 1000.0;
constexpr std::size_t largest_table_bytes = 10'000'000;

// A column: its name, what its numbers are multiplied with, and where they go.
struct Column {
  const char* name;
  double unit;
  std::optional<double>& (*place)(Reading&);
};

const std::vector<Column>& columns() {
  static const std::vector<Column> all{{"layer_turns", 1.0, [](Reading & r) -> auto& {return r.layer_turns;
}
}  // namespace
, {"counter_turns", 1.0, [](Reading& r) -> auto& {return r.counter_turns;
}  // namespace laywright
}
, {"counter_length_m", mm_per_m, [](Reading& r) -> auto& {return r.counter_length_mm;
}
}
, {"counter_length_ft", mm_per_foot, [](Reading& r) -> auto& {return r.counter_length_mm;
}
}
, {"left_mm", 1.0, [](Reading& r) -> auto& {return r.diameter_mm[0];
}
}
, {"middle_mm", 1.0, [](Reading& r) -> auto& {return r.diameter_mm[1];
}
}
, {"right_mm", 1.0, [](Reading& r) -> auto& {return r.diameter_mm[2];
}
}
, {"left_in", mm_per_inch, [](Reading& r) -> auto& {return r.diameter_mm[0];
}
}
, {"middle_in", mm_per_inch, [](Reading& r) -> auto& {return r.diameter_mm[1];
}
}
, {"right_in", mm_per_inch, [](Reading& r) -> auto& {return r.diameter_mm[2];
}
}
,
}
;
return all;
}

// Quotes of a spreadsheet among it.
constexpr std::string_view blank = " \t\r\"";

std::vector<std::string_view> cells_of(std::string_view line) {
  std::vector<std::string_view> cells;
  for (std::size_t begin = 0; begin <= line.size();) {
    const std::size_t comma = std::min(line.find(',', begin), line.size());
    cells.push_back(trimmed(line.substr(begin, comma - begin), blank));
    begin = comma + 1;
  }
  return cells;
}

std::optional<double> number_in(std::string_view text) {
  double number = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  // It reads "inf" and "nan", too.
  if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(number)) return std::nullopt;
  return number;
}

class Reader {
 public:
  explicit Reader(std::string file) { wound_.file = std::move(file); }

  void read(std::string_view text) {
    for (std::size_t begin = 0; begin < text.size();) {
      const std::size_t end = std::min(text.find('\n', begin), text.size());
      ++line_;
      const std::string_view line = trimmed(text.substr(begin, end - begin), blank);
      if (!line.empty() && line.front() != '#') (heading_.empty() ? read_heading(line) : read_row(line));
      begin = end + 1;
    }
    if (heading_.empty()) error("", "", "is no table of readings: its first line names the columns");
    if (issues_.empty() && wound_.readings.empty()) error("", "", "holds no reading");
  }

  [[nodiscard]] Result<AsWound> finish() && {
    if (has_error(issues_)) return issues_;
    return std::move(wound_);
  }

 private:
  void error(std::string_view column, std::string_view value, std::string what) {
    constexpr std::size_t most_issues = 20;
    if (issues_.size() >= most_issues) return;
    Issue issue;
    issue.file = wound_.file;
    issue.line = line_;
    issue.key = readable(column);
    issue.value = readable(value);
    issue.what = std::move(what);
    issues_.push_back(std::move(issue));
  }

  void read_heading(std::string_view line) {
    std::vector<std::string> known{"layer"};
    for (const Column& column : columns()) known.emplace_back(column.name);
    for (const std::string_view cell : cells_of(line)) {
      heading_.emplace_back(cell);
      if (std::find(known.begin(), known.end(), cell) != known.end()) continue;
      const std::string nearest = nearest_word(cell, known);
      error(cell, "",
            nearest.empty() ? fmt::format("is no column; there are {}", fmt::join(known, ", "))
                            : fmt::format("is no column; did you mean {}?", nearest));
    }
  }

  void read_row(std::string_view line) {
    Reading reading;
    reading.line = line_;
    const std::vector<std::string_view> cells = cells_of(line);
    if (cells.size() > heading_.size()) {
      return error("", "", fmt::format("has {} cells, but there are {} columns", cells.size(), heading_.size()));
    }
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (!cells[i].empty()) read_cell(heading_[i], cells[i], reading);
    }
    if (reading.empty()) return;
    if (!reading.layer && !reading.at_end && !reading.counter_turns && !reading.counter_length_mm) {
      return error("layer", "", "says neither a layer nor a counter, so nobody knows where it was read");
    }
    if (reading.counter_turns) {
      if (*reading.counter_turns < last_turns_) {
        return error("counter_turns", fmt::format("{}", *reading.counter_turns), "runs back; put readings in order");
      }
      last_turns_ = *reading.counter_turns;
    }
    wound_.readings.push_back(reading);
  }

  void read_cell(const std::string& column, std::string_view cell, Reading& reading) {
    if (column == "layer") {
      if (cell == "end") {
        reading.at_end = true;
        return;
      }
      const std::optional<double> layer = number_in(cell);
      constexpr double most_layers = 1e6;
      if (!layer || *layer < 1.0 || *layer > most_layers || *layer != static_cast<int>(*layer)) {
        return error(column, cell, "is no layer: a whole number from 1 on, or \"end\", or nothing");
      }
      reading.layer = static_cast<int>(*layer);
      return;
    }
    const auto found =
        std::find_if(columns().begin(), columns().end(), [&](const Column& each) { return each.name == column; });
    if (found == columns().end()) return;  // told with the heading
    const std::optional<double> number = number_in(cell);
    if (!number || *number <= 0.0 || !std::isfinite(*number * found->unit))
      return error(column, cell, "is not a number above 0; leave it empty if unknown");
    found->place(reading) = *number * found->unit;
  }

  AsWound wound_;
  Issues issues_;
  std::vector<std::string> heading_;
  int line_ = 0;
  double last_turns_ = 0.0;
};

}  // namespace

bool Reading::empty() const {
  return !layer_turns && !counter_turns && !counter_length_mm && !diameter_mm[0] && !diameter_mm[1] &&
         !diameter_mm[2];
}

Result<AsWound> read_as_wound(std::string_view text, std::string file) {
  Reader reader(std::move(file));
  reader.read(text);
  return std::move(reader).finish();
}

Result<AsWound> load_as_wound(const std::filesystem::path& path) {
  const Result<std::string> text = read_file(path, "a table of readings", largest_table_bytes);
  if (!text) return text.issues();
  return read_as_wound(text.value(), path.string());
}

std::string as_wound_template(const Plan& plan, int layers) {
  std::string text = fmt::format(
      "# As wound: {}\n"
      "# One line per reading; leave empty what was not measured, and delete columns that nobody measured.\n"
      "# layer: the layer that has just ended; \"end\" for the end of the wind; empty anywhere else, then give a "
      "counter.\n"
      "# layer_turns: turns of this layer alone. counter_...: since the start of the wind.\n"
      "# left, middle, right: outer diameter over the fiber, in mm (or name the columns left_in, ...).\n"
      "layer,layer_turns,counter_turns,counter_length_m,left_mm,middle_mm,right_mm\n",
      readable(plan.title().empty() ? plan.file() : plan.title(), longest_title));
  for (int layer = 1; layer <= layers; ++layer) text += fmt::format("{},,,,,,\n", layer);
  return text + "end,,,,,,\n";
}

}  // namespace laywright
