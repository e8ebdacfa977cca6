// A wound spool in its buyer's words: how much it holds, how thick it is with what is wound, how sure that is. What stands on a
// page and on a sheet for a customer comes from here, so that no two of them differ.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "lay/build.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"

namespace laywright {

// A figure and between what it may come to lie, mm.
struct Span {
  double value_mm = 0.0, least_mm = 0.0, most_mm = 0.0;
};

// Of a wind as it lies.
struct LaidFigures {
  double length_mm = 0.0;
  double diameter_mm = 0.0;   // greatest anywhere
  double clearance_mm = 0.0;  // from there to the rim; negative beyond it
};

[[nodiscard]] LaidFigures laid_figures(const Build& build, const Measurements& measurements);

struct CustomerFigures {
  Span capacity;  // length that the spool takes, up to the plan's rim clearance
  Span diameter;  // greatest, of what is wound
  LaidFigures wound;
  std::optional<double> mass_kg;  // of what is wound
  double model_margin = 0.0;      // share of the lengths that stands in the spans for the model
  double tolerance_mm = 0.0;      // half width of the fiber's diameter, in the spans; 0: the plan states none
  bool scatters = false;          // the plan states scatter, which is in the spans
};

struct CustomerSummary {
  std::string holds;  // "Your spool holds 7.62 km of enamelled wire."
  std::string wound;  // "With 1.04 km it is 69.5 mm thick, 15.2 mm below the rim."
  std::string sure;   // where the figures come from, and between what they lie
  std::string care;   // a caution for who takes it off the spool
  std::vector<std::pair<std::string, std::string>> rows;  // name and value
};

// Longest word of one's own for what is wound, in characters.
inline constexpr std::size_t longest_ware = 40;

// What is wound: "wire", "fiber", "yarn", "cable"; `own`, where it is not empty, instead.
[[nodiscard]] std::string ware_of(const Plan& plan, const std::string& own = "");
// The same with what it is made of: "enamelled wire", "bare glass fiber".
[[nodiscard]] std::string full_ware_of(const Plan& plan, const std::string& own = "");

// Lengths of fiber in the unit of wind.length (m and km by their size), diameters in that of the flange; else by the plan's
// system. ASCII. `ware`: a word of one's own.
[[nodiscard]] CustomerSummary customer_summary(const Plan& plan, const CustomerFigures& figures,
                                               const std::string& ware = "");

// The second sentence alone.
[[nodiscard]] std::string wound_sentence(const Plan& plan, const LaidFigures& wound);

}  // namespace laywright
