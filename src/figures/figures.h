// Names and lines of a wind as a person reads them. Text is plain ASCII, so that it stands aligned in any terminal. Figures and
// quantities: base/quantity_text.h.
#pragma once

#include <cstddef>
#include <string>

#include "base/quantity_text.h"
#include "base/round_figure.h"
#include "lay/build.h"
#include "measure/measurements.h"
#include "measure/phrases.h"
#include "plan/lay_plan.h"

namespace laywright {

// The names that documents and tables use; stable. Those of sides and findings come with the measurements.
[[nodiscard]] const char* name_of(StopReason reason);     // "length"
[[nodiscard]] const char* name_of(Support support);       // "valley"
[[nodiscard]] const char* direction_name(int direction);  // +1: "right"

// A finding's kind in words: "flange gap".
[[nodiscard]] std::string words_for(FindingKind kind);

// The wind's title, or the plan's file when it has none; visible().
[[nodiscard]] std::string title_of(const PlanDraft& plan);
[[nodiscard]] std::string title_of(const Plan& plan);

// Spool, fiber and pitch in one line, as a page has it below its title.
[[nodiscard]] std::string settings_line(const Plan& plan);

// A line of a report: "  turns           412".
[[nodiscard]] std::string labelled(const char* label, const std::string& value);

// Lines of at most `width` characters, each led by `indent` spaces; ends with a line feed.
[[nodiscard]] std::string wrapped(const std::string& text, std::size_t width, std::size_t indent);

// The same, as wide as a report in a terminal.
[[nodiscard]] std::string paragraph(const std::string& text, std::size_t indent);

}  // namespace laywright
