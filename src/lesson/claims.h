// Whether what a lesson says is so, and its text with the figures in it.
#pragma once

#include <array>
#include <string>

#include "lesson/figures.h"
#include "lesson/lesson.h"

namespace laywright {

using LaidPair = std::array<LaidBuild, 2>;

struct Verdict {
  bool holds = false;
  std::string text;  // "second: fill 78.1 %, above 75.0 % of the first"
};

[[nodiscard]] Verdict judge(const Claim& claim, const LaidPair& laid);

// {second.gap_length} becomes "12.4 m". Which is not laid yet becomes "...".
[[nodiscard]] std::string with_figures(const std::string& text, const LaidPair& laid, bool inch = false);

// The first {figure} of a text that names none; empty where all are known.
[[nodiscard]] std::string unknown_figure(const std::string& text);

}  // namespace laywright
