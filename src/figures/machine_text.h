// The machine side of a wind in words, for a terminal and for the sheet.
#pragma once

#include <string>

#include "plan/lay_plan.h"
#include "takeup/takeup_run.h"

namespace laywright {

// The section "Machine" of the summary: plain ASCII of at most 100 columns, ends with a line feed. Empty when the plan
// says nothing about the machine (no speed, no tension, no take-up) and nothing is to be warned of.
[[nodiscard]] std::string machine_text(const Plan& plan, const TakeupRun& run);

// A kind in words: "speed ceiling".
[[nodiscard]] std::string words_for(MachineWarningKind kind);

// "constant torque".
[[nodiscard]] const char* words_for(TensionControl control);

// What the pressure estimate takes for granted, in sentences.
[[nodiscard]] std::string pressure_assumptions(const PressureEstimate& estimate);

}  // namespace laywright
