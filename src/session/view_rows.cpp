// The menu View: what is seen, and from where.
#include "session/camera_commands.h"
#include "session/command_rows.h"
#include "session/show_commands.h"
#include "session/view_commands.h"
#include "session/window_commands.h"

namespace laywright {

CommandRows view_rows() {
  using namespace cmd;
  return {
      {"View", "Peel one layer", "PageDown", "Take the outermost layer off.", peel_one(-1)},
      {"View", "Put one layer back", "PageUp", "Put the outermost layer back on.", peel_one(1)},
      {"View", "Wedge", "W", "Cut a quarter out of the spool, or close it.", toggle_wedge()},
      {"View", "Axial cut", "X", "Cut the spool along its axis, or close it.", toggle_axial_cut()},
      {"View", "Fade what is outside", "G", "Show layers outside the peel faded, or not at all.", toggle_outside()},
      {"View", "Show all", "A", "No peel, no cut, the whole wind.", show_all()},
      {"View", "Next colouring", "C", "Colour by something else.", next_colouring()},
      {"View", "Findings", "F", "Mark findings in the picture, or not.", toggle(&View::findings), Also::in_view_tab},
      {"View", "Dimensions", "D", "Show dimension lines, or not.", toggle(&View::dimensions), Also::in_view_tab},
      {"View", "See-through flanges", "S", "See through the flanges, or not.", toggle(&View::flanges_see_through),
       Also::in_view_tab},
      {"View", "Guide", "V", "Show the guide and the free fiber while the wind grows, or not.", toggle(&View::guide),
       Also::in_view_tab},
      {"View", "Legend", "E", "Say beside the spool what colours and marks mean, or not.", toggle(&View::legend),
       Also::in_view_tab},
      {"View", "Metric or inch", "U", "Change the units of all that is shown.", toggle_units()},
      {"View", "Light or dark", "L", "Change the colours of the window.", toggle_theme()},
      {"View", "Perspective or parallel", "P", "Change how depth is drawn.", toggle_projection()},
      {"View", "Flights or jumps", "J", "Let the camera fly to a finding, or be there at once.", toggle_motion()},
      {"View", "Show", "F9", "Show the spool to others: it fills, turns, and begins again.", show()},
  };
}

CommandRows camera_rows() {
  using namespace cmd;
  return {
      {"View", "Fit", "Z", "See the whole spool.", fit_view()},
      {"View", "From the front", "1", "Look at the spool from the side, its left end on the left.",
       look_from(0.0, 0.0)},
      {"View", "From above", "2", "Look at the top of the spool.", look_from(0.0, 90.0)},
      {"View", "From the left", "3", "Look at the left flange.", look_from(-90.0, 0.0)},
      {"View", "From the right", "4", "Look at the right flange.", look_from(90.0, 0.0)},
      {"View", "Askew", "5", "Look at the spool askew, from above.", look_from(30.0, 20.0)},
      {"View", "Turn left", "Ctrl+Alt+Left", "Go round the spool to the left.", orbit(-10.0, 0.0)},
      {"View", "Turn right", "Ctrl+Alt+Right", "Go round the spool to the right.", orbit(10.0, 0.0)},
      {"View", "Turn up", "Ctrl+Alt+Up", "Look from higher above.", orbit(0.0, 10.0)},
      {"View", "Turn down", "Ctrl+Alt+Down", "Look from lower down.", orbit(0.0, -10.0)},
      {"View", "Nearer", "+", "Go nearer.", zoom(1.25)},
      {"View", "Farther", "-", "Go farther away.", zoom(0.8)},
  };
}

}  // namespace laywright
