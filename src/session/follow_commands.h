// Commands of a wind that is followed: what was read is typed, held against the plan, and shown as it will be.
#pragma once

#include <cstddef>
#include <string>

#include "session/command.h"
#include "session/typed_readings.h"

namespace laywright::cmd {

// Into a cell of the row at that place, as typed, in the units of that row.
Command type_reading(const TypedRow& place, std::size_t cell, const std::string& text);
Command clear_readings();
Command follow_wind();  // the answer comes in the background
// What the spool will be, beside the build as planned: with the change from the last reading on, or with nothing changed.
Command show_forecast(bool changed);
Command open_readings(const std::string& path);
Command save_readings(const std::string& path);

}  // namespace laywright::cmd
