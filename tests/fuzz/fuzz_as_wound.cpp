// The reader of measured tables: whatever the file, either issues that say what is wrong, or readings that a fit can
// reckon with.
#include <cmath>
#include <cstdint>
#include <optional>
#include <string_view>

#include "advise/as_wound.h"
#include "fuzz/clean_issue.h"
#include "fuzz/require.h"

using namespace laywright;
using fuzz::require;

namespace {

bool sound(const std::optional<double>& number) { return !number || (std::isfinite(*number) && *number > 0.0); }

void require_sound(const Reading& reading) {
  require(!reading.empty(), "a reading without a number is left out");
  require(reading.line >= 1, "a reading knows its line");
  require(!reading.layer || *reading.layer >= 1, "layers are counted from 1");
  require(reading.layer || reading.at_end || reading.counter_turns || reading.counter_length_mm,
          "a reading says where it was taken");
  require(sound(reading.layer_turns) && sound(reading.counter_turns) && sound(reading.counter_length_mm),
          "turns and lengths are numbers above 0");
  for (const auto& diameter : reading.diameter_mm) require(sound(diameter), "diameters are numbers above 0");
  require(sound(reading.width_mm) && sound(reading.counter_reading), "widths and readings are numbers above 0");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  Counter counter;
  counter.unit = "m";
  counter.wheel_mm = 200.0;
  const Result<AsWound> wound = read_as_wound(text, "as-wound.csv", &counter);
  fuzz::require_clean(wound.issues());
  require(wound.ok() != has_error(wound.issues()), "a table is refused where it has an error, and only there");
  if (!wound.ok()) return 0;
  require(!wound.value().readings.empty(), "a table that is accepted holds readings");
  double turns = 0.0;
  for (const Reading& reading : wound.value().readings) {
    require_sound(reading);
    require(reading.counter_turns.value_or(turns) >= turns, "counters do not run back");
    turns = reading.counter_turns.value_or(turns);
  }
  return 0;
}
