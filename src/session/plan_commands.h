// Commands that change a plan, or lay it. `gesture`: see History::edit.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>

#include "desk/plan_edits.h"
#include "session/command.h"

namespace laywright::cmd {

// In the unit used inside; none: its default.
Command set_field(const std::string& path, std::optional<double> value, std::uint64_t gesture = 0);
Command type_field(const std::string& path, const std::string& text, std::uint64_t gesture = 0);
Command set_title(const std::string& title, std::uint64_t gesture = 0);
Command set_notes(const std::string& notes, std::uint64_t gesture = 0);
// A text of the plan's [order].
Command set_order_text(const OrderField& field, const std::string& text, std::uint64_t gesture = 0);
Command add_step();
Command remove_step(std::size_t index);
Command set_takeup(bool has_one);
Command set_wind_end(WindEnd end);
Command leave_out_unknown();
Command undo();
Command redo();

Command stop_laying();  // or what is searched for
Command lay_again();
Command set_seed(std::uint64_t seed);
Command next_seed();

}  // namespace laywright::cmd
