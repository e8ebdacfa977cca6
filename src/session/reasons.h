// Why a command cannot be done now: what several of them say, in words that say what would help.
#pragma once

#include <string>

namespace laywright {

class Workbench;

namespace reason {

inline constexpr const char* no_plan = "No plan is open: open one first.";
inline constexpr const char* not_laid = "Nothing is laid yet: wait a moment, or mend the plan.";
inline constexpr const char* being_laid = "The plan is still being laid: wait until the whole wind lies.";
inline constexpr const char* no_finding = "This build has no findings.";
inline constexpr const char* in_lesson = "A lesson is open: leave it first, from the Learn menu.";
inline constexpr const char* not_open = "That plan is no longer open.";
inline constexpr const char* no_order = "No order is open: choose its file first.";

}  // namespace reason

// Empty: none. Precondition of these: a plan is open.
[[nodiscard]] std::string why_not_sound(const Workbench& bench);
// None can be made of the plan as it stands.
[[nodiscard]] std::string why_no_page(const Workbench& bench);
// What comes of the order cannot be written; asked whether a plan is open or not.
[[nodiscard]] std::string why_not_write_order(const Workbench& bench);

}  // namespace laywright
