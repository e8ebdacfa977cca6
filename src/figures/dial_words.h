// What is dialled on the machine, in words: one wording for text, sheet and window.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/lay_plan.h"

namespace laywright {

struct DialWords {
  std::string setting;  // "pitch"; "pitch from layer 10"
  std::string reading;  // "38 teeth"; "not measured"
  std::string laid;     // "0.2604 mm": what that gives
  std::string asked;    // where it is another value: "0.26 mm"; else empty
};

// In the units of the plan; empty where the machine has no dials.
[[nodiscard]] std::vector<DialWords> dial_words(const Plan& plan);

// Of the value at that path; none where it is not dialled.
[[nodiscard]] std::optional<DialWords> dial_words_at(const Plan& plan, std::string_view path);

// Of "pitch", "left_stop" or "right_stop" as it is set in that layer, by the steps of the wind up to there.
[[nodiscard]] std::optional<DialWords> dial_words_in_layer(const Plan& plan, std::string_view key, int layer);

// "= 0.2604 mm, asked 0.26 mm": what a reading is followed by.
[[nodiscard]] std::string meaning(const DialWords& words);

// "12,345.7 m": what a counter shows.
[[nodiscard]] std::string counter_shows(double reading, const std::string& unit);

// A line for each, indented by two; empty where there is none.
[[nodiscard]] std::string dial_table(const Plan& plan);

}  // namespace laywright
