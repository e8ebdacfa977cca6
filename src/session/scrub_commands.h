// Commands of the scrubber, of the picked turn and of the chosen finding: those of the picture in hand.
#pragma once

#include <cstddef>
#include <optional>

#include "desk/stage.h"
#include "session/command.h"

namespace laywright::cmd {

Command scrub_length(double length_mm);
Command scrub_turn(double turn);
Command scrub_time(double time_s);
Command play_pause();
Command set_rate(double rate);  // times the line speed
Command change_rate(double factor);
Command step_turns(double turns);
Command step_finding(int direction);
Command to_start();
Command to_end();

Command pick_node(std::optional<std::size_t> node = std::nullopt);  // of the build shown; none: nothing
Command pick_toward(Toward toward);
Command scrub_to_picked();
Command choose_finding(std::optional<std::size_t> finding = std::nullopt);
Command fly_to_finding(std::size_t finding);
Command fly_to_catch(std::size_t caught);    // of those that payoff lists, the hardest first
Command fly_to_next_finding(int direction);  // in the order of the list

}  // namespace laywright::cmd
