#include "records/readings_csv.h"

#include <optional>

#include <fmt/format.h>

#include "base/readable.h"

namespace laywright {
namespace {

constexpr double mm_per_m = 1000.0;

std::string cell(const std::optional<double>& value, double unit = 1.0) {
  return value ? fmt::format("{}", *value / unit) : "";
}

}  // namespace

std::string readings_csv(const AsWound& wound) {
  std::string csv =
      fmt::format("# As wound: {}\nlayer,layer_turns,counter_turns,counter_length_m,left_mm,middle_mm,right_mm\n",
                  readable(wound.file));
  for (const Reading& reading : wound.readings) {
    const std::string layer = reading.at_end ? "end" : reading.layer ? fmt::format("{}", *reading.layer) : "";
    csv += fmt::format("{},{},{},{},{},{},{}\n", layer, cell(reading.layer_turns), cell(reading.counter_turns),
                       cell(reading.counter_length_mm, mm_per_m), cell(reading.diameter_mm[0]),
                       cell(reading.diameter_mm[1]), cell(reading.diameter_mm[2]));
  }
  return csv;
}

}  // namespace laywright
