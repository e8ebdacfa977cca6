#include "desk/field_help.h"

#include <algorithm>
#include <iterator>

namespace laywright {
namespace {

struct Row {
  std::string_view path;
  FieldHelp help;
};

constexpr Row rows[] = {
    {"order.number", {"order number", "Of the order that the wind is made for; it stands on the set-up sheet."}},
    {"order.customer", {"customer", "For whom the wind is made; it stands on the set-up sheet."}},
    {"order.lot", {"fiber lot", "Lot or batch of the fiber; it stands on the set-up sheet."}},
    {"order.spool", {"spool number", "Number or name of this one spool; it stands on the set-up sheet."}},
    {"spool.barrel_diameter", {"barrel diameter", "Diameter of the bare barrel, at its left end."}},
    {"spool.flange_diameter",
     {"flange diameter", "Outer diameter of the flanges: the wind must stay below this rim."}},
    {"spool.inside_width", {"inside width", "Distance between the flange faces, measured at the barrel."}},
    {"spool.flange_taper", {"flange taper", "How far each flange face leans outward from square."}},
    {"spool.barrel_taper", {"barrel taper", "Diameter at the right end of the barrel minus that at the left end."}},
    {"spool.flange_runout",
     {"flange run-out", "How far the rim of a flange wobbles sideways in one turn, from one extreme to the other."}},
    {"spool.mass", {"spool mass", "Mass of the empty spool."}},
    {"spool.look", {"look", "What the spool is made of, in pictures; the wind does not depend on it."}},
    {"fiber.diameter", {"fiber diameter", "Overall diameter, with coating or enamel."}},
    {"fiber.diameter_tolerance", {"diameter tolerance", "The diameter may be larger or smaller by this much."}},
    {"fiber.friction",
     {"friction", "Coefficient of friction of the fiber on itself; \"held\" for a fiber that never slips."}},
    {"fiber.section",
     {"section",
      "Round: the fiber rolls off what it lies on. Flat, as a tape is: it slides where friction lets it."}},
    {"fiber.linear_mass", {"linear mass", "Mass of the fiber per length; with it the mass of the wind is told."}},
    {"fiber.modulus",
     {"modulus", "Stiffness of the core's material; with core and tension the fiber's bending counts."}},
    {"fiber.shear_modulus",
     {"shear modulus", "How the core's material resists twist, and with it rolling; else from the modulus."}},
    {"fiber.poisson",
     {"Poisson's ratio", "Of the core's material: the shear modulus is the modulus over 2 (1 + Poisson's ratio)."}},
    {"fiber.diameter_scatter",
     {"diameter scatter", "How much the diameter varies along the fiber, one sigma; cut off at three."}},
    {"fiber.scatter_length",
     {"scatter length",
      "Along this length of fiber the diameter keeps its departure; only with a diameter scatter."}},
    {"fiber.core_diameter", {"core diameter", "Diameter of the part that carries the load, without coating."}},
    {"fiber.max_tension", {"greatest tension", "More than this the fiber should never bear."}},
    {"fiber.min_bend_diameter", {"least bend diameter", "The fiber should never be bent around anything smaller."}},
    {"fiber.look",
     {"look", "What the fiber is made of, in pictures; usual: by its kind. The wind does not depend on it."}},
    {"fiber.colour",
     {"colour",
      "Colour of its coating, enamel or yarn, in pictures; natural: its own. A plan may mix one: \"#c0392b\"."}},
    {"traverse.motion",
     {"motion", "Continuous: the guide travels evenly. Stepped: it stands, and moves one pitch within each turn."}},
    {"traverse.pitch", {"pitch", "How far the guide travels in one turn of the spool."}},
    {"traverse.left_stop",
     {"left stop", "Where the guide turns back, inward from the left flange face; negative: beyond the face."}},
    {"traverse.right_stop",
     {"right stop", "Where the guide turns back, inward from the right flange face; negative: beyond the face."}},
    {"traverse.start", {"start", "The flange at which the wind begins."}},
    {"traverse.free_length",
     {"free length",
      "Length of fiber between guide and spool: the longer, the more the fiber lags behind the guide."}},
    {"traverse.step_angle", {"step angle", "Spool angle in which a stepped guide moves one pitch."}},
    {"traverse.guide_play", {"guide play", "How far the fiber can wander in the eye of the guide."}},
    {"traverse.pitch_scatter", {"pitch scatter", "How much the pitch varies from stroke to stroke, one sigma."}},
    {"traverse.reversal.kind",
     {"reversal",
      "At a stop the guide turns back at once, stands for a while (dwell), or slows down and speeds up (ramp)."}},
    {"traverse.reversal.turns", {"reversal turns", "How many turns of the spool a dwell or a ramp lasts."}},
    {"traverse.reversal.lost_motion",
     {"lost motion", "Travel of the drive that is taken up after each reversal before the guide moves."}},
    {"traverse.reversal.stop_scatter", {"stop scatter", "How much the place of turning back varies, one sigma."}},
    {"wind.length", {"length", "Length of fiber to wind."}},
    {"wind.turns", {"turns", "Turns of the spool to wind."}},
    {"wind.diameter", {"outer diameter", "Wind until the fiber reaches this diameter."}},
    {"wind.tension", {"tension", "Tension of the fiber as it is wound."}},
    {"wind.line_speed", {"line speed", "Speed of the fiber; with it the time of the wind is told."}},
    {"wind.step.from_layer", {"from layer", "The first layer for which these settings hold; 1 lies on the barrel."}},
    {"wind.step.pitch", {"pitch", "Guide travel per turn from this layer on; empty: as before."}},
    {"wind.step.left_stop", {"left stop", "Left stop from this layer on; empty: as before."}},
    {"wind.step.right_stop", {"right stop", "Right stop from this layer on; empty: as before."}},
    {"takeup.control",
     {"control",
      "How the drive keeps the tension: constant torque, constant tension, or falling with the diameter (taper)."}},
    {"takeup.taper", {"taper", "Share by which the tension falls from barrel to full spool, 0 to 1."}},
    {"takeup.torque_at_full_current", {"torque at full current", "What the drive or clutch gives at full current."}},
    {"takeup.full_current", {"full current", "Current at which the drive or clutch gives that torque."}},
    {"takeup.speed_ceiling", {"speed ceiling", "The spool never turns faster than this."}},
    {"takeup.length_stop",
     {"length stop", "What happens at the length: the drive stops, a signal sounds, or both."}},
    {"takeup.reaction_time", {"reaction time", "Time from the length signal until the drive begins to stop."}},
    {"takeup.start_ramp", {"start ramp", "Time in which the line gets from rest to its speed, as measured."}},
    {"takeup.stop_ramp",
     {"stop ramp", "Time in which the line comes to rest, as measured; the counter stops before it."}},
    {"limits.gap", {"gap limit", "Gaps wider than this are told, in fiber diameters."}},
    {"limits.pile_up",
     {"pile-up limit", "Ridges and valleys at the flanges of more than this are told, in fiber diameters."}},
    {"limits.rim_clearance", {"rim clearance", "This much of the flange should stand above the finished wind."}},
    {"limits.valley",
     {"valley limit", "How deep a valley at a flange may be, in fiber diameters; empty: as usual for the product."}},
    {"limits.unevenness",
     {"unevenness limit",
      "How far the surface may differ in height, left, middle and right, in fiber diameters; empty: as usual."}},
    {"limits.open_gaps",
     {"open gaps limit", "Share of the fiber that may lie beside gaps over the gap limit; empty: as usual."}},
    {"limits.flange_gap",
     {"flange gap limit", "How far from a flange fiber may turn back, in fiber diameters; empty: as usual."}},
    {"limits.dropped_turns",
     {"dropped turns limit", "In how many places per km turns may have fallen in; empty: as usual."}},
    {"limits.drop_depth",
     {"drop depth limit", "How deep a turn may have fallen, in fiber diameters; empty: as usual."}},
    {"limits.ride_ups", {"ride-ups limit", "In how many places per km turns may climb on others; empty: as usual."}},
    {"limits.ribbon", {"ribbon limit", "How high a ribbon may build, in fiber diameters; empty: as usual."}},
    {"limits.payoff_force",
     {"payoff force limit",
      "How hard the fiber may have to be drawn off, in times its winding tension; empty: as usual."}},
    {"limits.pull", {"pull limit", "Share of the greatest tension that the pull may take."}},
};

constexpr Row tables[] = {
    {"order", {"Order", ""}},
    {"spool", {"Spool", ""}},
    {"fiber", {"Fiber", ""}},
    {"traverse", {"Traverse", ""}},
    {"traverse.reversal", {"Reversal", ""}},
    {"wind", {"Wind", ""}},
    {"wind.step", {"Step of the wind", ""}},
    {"takeup", {"Take-up", ""}},
    {"limits", {"Limits", ""}},
};

template <class Rows>
FieldHelp find(const Rows& all, std::string_view path) {
  const auto found = std::find_if(std::begin(all), std::end(all), [&](const Row& row) { return row.path == path; });
  return found == std::end(all) ? FieldHelp{} : found->help;
}

}  // namespace

FieldHelp help_for(std::string_view path) { return find(rows, path); }

std::string_view table_title(std::string_view table) { return find(tables, table).name; }

}  // namespace laywright
