// A dial of a machine: what a value of the plan is called there, and which values can be set.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace laywright {

// How a value follows from the reading: proportional as with a driving gear's teeth or a scale, inverse as with a driven gear's
// teeth or turns per inch.
enum class DialLaw { proportional, inverse };

struct DialPoint {
  double reading = 0.0;
  double value = 0.0;

  friend bool operator==(const DialPoint&, const DialPoint&) = default;
};

// Values are in the unit used inside, readings in the dial's own.
struct Dial {
  std::string unit;  // what the dial counts, in words of the shop: "teeth", "div"
  DialLaw law = DialLaw::proportional;
  // value = at_zero + per_unit x reading, or at_zero + per_unit / reading. Not with points.
  std::optional<double> per_unit;  // not 0
  double at_zero = 0.0;
  // Measured, two or more, readings and values rising or falling all the way; between them the value goes straight.
  std::vector<DialPoint> points;
  // Of a clutch, whose dial sets a torque: on which diameter the pull was measured.
  std::optional<double> diameter_mm;
  // Of the right stop: values are places of it measured from the left flange face, as on one scale for both stops, so that the
  // dial holds for spools of any width; else inward from the right face, as in the plan.
  bool from_left = false;
  std::optional<double> step;             // readings go by whole steps; absent: to anything
  std::optional<double> least, greatest;  // readings

  friend bool operator==(const Dial&, const Dial&) = default;
};

// A length counter driven by a wheel that the fiber turns.
struct Counter {
  std::string unit;              // of its reading: "m", "counts"
  double wheel_mm = 0.0;         // circumference
  double counts_per_turn = 1.0;  // by so much the reading goes up in a turn of the wheel
  double error = 0.0;            // share by which it shows more than is wound; below 0: less
  double step = 1.0;             // it stops at whole steps of its reading

  friend bool operator==(const Counter&, const Counter&) = default;
};

// A machine's, by their names (dial_places).
struct MachineDials {
  std::map<std::string, Dial, std::less<>> dials;
  std::optional<Counter> counter;

  [[nodiscard]] bool empty() const { return dials.empty() && !counter; }
  friend bool operator==(const MachineDials&, const MachineDials&) = default;
};

// Which value of the plan a dial sets.
struct DialPlace {
  std::string_view name;   // "pitch": of its table, [machine.dials.pitch]
  std::string_view path;   // "traverse.pitch"
  std::string_view words;  // "pitch"
};
[[nodiscard]] const std::vector<DialPlace>& dial_places();

// Precondition of all: a dial as dial_reader.h leaves it.

// Nothing is set finer than nine decimals: figures stay short.
[[nodiscard]] double tidy(double value);

[[nodiscard]] double value_at_reading(const Dial& dial, double reading);
// Not rounded. None where no reading has that value, or none was measured: beyond the points nothing is guessed.
[[nodiscard]] std::optional<double> reading_at_value(const Dial& dial, double value);

struct DialSetting {
  double reading = 0.0;
  double value = 0.0;  // that the reading has; the value asked for where the dial has that
};

enum class DialReach { settable, not_measured, out_of_reach };

// The nearest reading that can be set, no more than half a step away (a whole one at an end of its range). Setting its value
// again gives the same.
struct DialAnswer {
  DialReach reach = DialReach::settable;
  DialSetting setting;  // where it is settable
};
[[nodiscard]] DialAnswer set_dial(const Dial& dial, double value);

// The least and the greatest value that the dial's range allows; as measured where it has points. None: no bound.
struct DialRange {
  std::optional<double> low, high;
};
[[nodiscard]] DialRange range_of(const Dial& dial);

// What the counter shows after so much fiber, rounded to its step, and how much fiber that is.
struct CounterReading {
  double reading = 0.0;
  double length_mm = 0.0;
};
[[nodiscard]] CounterReading counter_reading(const Counter& counter, double length_mm);

}  // namespace laywright
