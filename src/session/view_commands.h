// Commands that change what is seen of a build, and in which colours. What a person likes (ViewChoices) holds for all
// views.
#pragma once

#include <optional>

#include "scene/view.h"
#include "session/command.h"

namespace laywright::cmd {

Command peel(int first_layer, std::optional<int> last_layer = std::nullopt);
Command peel_one(int layers);  // of the outermost shown: -1 takes one off, +1 puts one back
Command set_wedge(std::optional<Sector> wedge);
Command set_axial_cut(std::optional<double> angle_rad);
Command toggle_wedge();
Command toggle_axial_cut();
Command set_x_range(std::optional<double> from_mm = std::nullopt, std::optional<double> to_mm = std::nullopt);
Command show_all();  // no peel, no cut, the whole wind

Command set_colouring(Colouring colouring);
Command toggle_outside();  // gone, faded
Command toggle_units();
Command toggle_theme();
Command toggle_projection();

}  // namespace laywright::cmd
