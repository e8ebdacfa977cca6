// The lay plan: everything that is decided before a wind. Each field carries its unit in its name;
// pitch, gap and pile-up limits in d are multiples of the fiber's overall diameter.
#pragma once

#include <limits>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "plan/named_entry.h"

namespace laywright {

// What a spool and its fiber look like in pictures; no wind depends on it.
enum class SpoolLook { plastic, wood, steel };
// `usual`: as a fiber, wire or yarn of its kind mostly does.
enum class FiberLook { usual, coated, glass, copper, enamelled, steel, yarn };
// Of a coating, an enamel or a yarn. `natural`: its own. Or one that is mixed (mixed_colour.h).
enum class FiberColour {
  natural,
  white,
  grey,
  black,
  blue,
  turquoise,
  green,
  yellow,
  orange,
  brown,
  red,
  rose,
  violet
};

struct Spool {
  double barrel_diameter_mm = 0.0;  // at the left end of the barrel
  double flange_diameter_mm = 0.0;
  double inside_width_mm = 0.0;   // between the flange faces, at the barrel
  double flange_taper_rad = 0.0;  // opening of each face, from square
  double barrel_taper_mm = 0.0;   // right diameter minus left
  double flange_runout_mm = 0.0;  // out of square, peak to peak at the rim
  std::optional<double> mass_kg;
  SpoolLook look = SpoolLook::plastic;

  // Of its thinner end.
  [[nodiscard]] double least_barrel_diameter_mm() const {
    return barrel_taper_mm < 0.0 ? barrel_diameter_mm + barrel_taper_mm : barrel_diameter_mm;
  }
};

// A round fiber rolls off what it lies on; a flat one (tape, flat yarn) slides.
enum class FiberSection { round, flat };

struct Fiber {
  // Friction of a fiber that never slips.
  static constexpr double held = std::numeric_limits<double>::infinity();
  // Greatest scatter of the diameter, one sigma over the diameter: the lay model's circles stay nearly alike.
  static constexpr double most_scatter = 0.03;

  double diameter_mm = 0.0;            // overall
  double diameter_tolerance_mm = 0.0;  // half width
  double friction = 0.0;               // coefficient, 0 or more; `held` for never slipping
  FiberSection section = FiberSection::round;
  std::optional<double> linear_mass_g_per_km;
  std::optional<double> modulus_MPa;
  std::optional<double> shear_modulus_MPa;
  std::optional<double> poisson;           // Poisson's ratio, 0 to 0.5
  double diameter_scatter_mm = 0.0;        // one sigma along the fiber
  double scatter_length_mm = 10'000.0;     // over which the diameter keeps its departure
  std::optional<double> core_diameter_mm;  // the part that carries load
  std::optional<double> max_tension_N;
  std::optional<double> min_bend_diameter_mm;
  FiberLook look = FiberLook::usual;
  FiberColour colour = FiberColour::natural;
};

enum class Side { left, right };
enum class Motion { continuous, stepped };
enum class ReversalKind { instant, dwell, ramp };

struct Reversal {
  ReversalKind kind = ReversalKind::instant;
  double turns = 0.0;            // dwell or ramp length, in spool turns
  double lost_motion_mm = 0.0;   // drive travel taken up after each trip before the guide moves
  double stop_scatter_mm = 0.0;  // one sigma
};

struct Traverse {
  Motion motion = Motion::continuous;
  double pitch_mm = 0.0;       // guide travel per spool turn
  double left_stop_mm = 0.0;   // inward from the left flange face; may be negative
  double right_stop_mm = 0.0;  // inward from the right flange face; may be negative
  Side start = Side::left;
  double free_length_mm = 0.0;  // guide to lay point; 0 allowed
  double step_angle_rad = 0.0;  // stepped only: spool angle in which the guide moves one pitch
  double guide_play_mm = 0.0;
  double pitch_scatter = 0.0;  // one sigma per stroke, as a share of the pitch
  Reversal reversal;
};

// From a layer on (1 = the first), settings that replace the traverse's.
struct WindStep {
  int from_layer = 1;
  std::optional<double> pitch_mm;
  std::optional<double> left_stop_mm;
  std::optional<double> right_stop_mm;
};

struct Wind {
  // Exactly one is given.
  std::optional<double> length_mm;
  std::optional<double> turns;
  std::optional<double> diameter_mm;

  std::optional<double> tension_N;
  std::optional<double> line_speed_mm_per_s;
  std::vector<WindStep> steps;  // in rising order of from_layer
};

enum class TensionControl { constant_torque, constant_tension, taper };
enum class LengthStop { stop, signal, both };

struct Takeup {
  TensionControl control = TensionControl::constant_torque;
  double taper = 0.0;  // 0 to 1
  std::optional<double> torque_at_full_current_Nmm;
  std::optional<double> full_current_A;
  std::optional<double> speed_ceiling_rpm;
  LengthStop length_stop = LengthStop::stop;
  double reaction_time_s = 0.0;
  std::optional<double> start_ramp_s;  // of the line, from rest to its speed
  std::optional<double> stop_ramp_s;
};

// What is told of a wind, and what is accepted. An absent limit is the usual one for the kind of product
// (measure/acceptance.h).
struct Limits {
  double gap_d = 0.5;
  double pile_up_d = 1.0;
  double rim_clearance_mm = 0.0;
  std::optional<double> valley_d;              // depth at a flange
  std::optional<double> unevenness_d;          // of the surface: difference of its radii
  std::optional<double> open_gaps;             // share of the fiber that lies beside one
  std::optional<double> flange_gap_d;          // width of one
  std::optional<double> dropped_turns_per_km;  // places
  std::optional<double> drop_depth_d;          // of a dropped turn
  std::optional<double> ride_ups_per_km;       // places
  std::optional<double> ribbon_d;              // height
  std::optional<double> payoff_force;          // to draw it off: multiple of the tension
  double pull = 1.0;                           // share of the fiber's greatest tension
};

// Of limits.payoff_force.
constexpr double most_payoff_force = 1000.0;

// Of a plan and of a lesson, in characters: what a line of a sheet or a page has room for.
constexpr std::size_t longest_title = 100;

// What a wind is made for: texts, by which nothing of it changes.
struct PlanOrder {
  std::string number, customer, lot;
  std::string spool;  // number or name of this one spool

  friend bool operator==(const PlanOrder&, const PlanOrder&) = default;
};

// Of each of these texts, in characters: what a field of the sheet has room for.
constexpr std::size_t longest_order_text = 40;

// The numbers of a plan, sound or not, and where each was written.
struct PlanDraft {
  std::string file;  // empty when the plan did not come from a file
  std::string title;
  std::string notes;
  PlanOrder order;
  Spool spool;
  Fiber fiber;
  Traverse traverse;
  Wind wind;
  std::optional<Takeup> takeup;
  Limits limits;
  MachineDials machine;  // how it is set; the plan's own and, where it has none of a name, its entry's
  // That the plan names, one of a kind at most; their values are in the draft already.
  std::vector<NamedEntry> entries;

  // Line (1-based) and spelling (without quotes) of each value that the file gave, by key path
  // ("wind.step[0].pitch"); of each table its line alone ("wind.step[0]", "traverse.reversal"). Of a value that an entry
  // gave: the plan's line that names the entry, and the entry's spelling.
  struct Origin {
    int line = 0;
    std::string written;
  };
  std::map<std::string, Origin> origins;
};

// Whether the plan says that something varies by chance: builds of other seeds then differ.
[[nodiscard]] inline bool scatters(const PlanDraft& draft) {
  const Traverse& traverse = draft.traverse;
  return traverse.pitch_scatter > 0.0 || traverse.reversal.stop_scatter_mm > 0.0 || traverse.guide_play_mm > 0.0 ||
         draft.fiber.diameter_scatter_mm > 0.0;
}

// A setting as the machine takes it.
struct DialledSetting {
  std::string path;  // "traverse.pitch", "wind.step[0].left_stop"
  std::string dial;  // "pitch": of dial_places()
  double asked = 0.0;
  double laid = 0.0;              // what the dial gives; `asked` where that was not measured
  std::optional<double> reading;  // absent: beyond what was measured on the dial
  std::string unit;               // of the reading

  [[nodiscard]] bool moved() const { return asked != laid; }
};

// A sound plan: made by check() alone, never changed. Where its machine has dials, all values are what these can be set to.
class Plan {
 public:
  [[nodiscard]] const std::string& file() const { return draft_.file; }
  [[nodiscard]] const std::string& title() const { return draft_.title; }
  [[nodiscard]] const std::string& notes() const { return draft_.notes; }
  [[nodiscard]] const PlanOrder& order() const { return draft_.order; }
  [[nodiscard]] const Spool& spool() const { return draft_.spool; }
  [[nodiscard]] const Fiber& fiber() const { return draft_.fiber; }
  [[nodiscard]] const Traverse& traverse() const { return draft_.traverse; }
  [[nodiscard]] const Wind& wind() const { return draft_.wind; }
  [[nodiscard]] const std::optional<Takeup>& takeup() const { return draft_.takeup; }
  [[nodiscard]] const Limits& limits() const { return draft_.limits; }

  // How it is dialled, in the order of dial_places(), those of the wind's steps behind; empty without dials.
  [[nodiscard]] const std::vector<DialledSetting>& dialled() const { return dialled_; }

  // All its values, to change and check again: that gives the same plan.
  [[nodiscard]] const PlanDraft& draft() const { return draft_; }
  // The draft it was made from, as its person wrote it: what is saved goes by this one.
  [[nodiscard]] const PlanDraft& asked() const { return asked_; }

 private:
  friend Result<Plan> check(const PlanDraft& draft);
  Plan(PlanDraft asked, PlanDraft laid, std::vector<DialledSetting> dialled)
      : asked_(std::move(asked)), draft_(std::move(laid)), dialled_(std::move(dialled)) {}

  PlanDraft asked_;
  PlanDraft draft_;
  std::vector<DialledSetting> dialled_;
};

// Holds the draft against every rule of the plan (ranges and cross checks) and returns all issues at once.
// Warnings come with the plan, whose values are rounded to what the machine's dials can be set to (dialling.h).
[[nodiscard]] Result<Plan> check(const PlanDraft& draft);

}  // namespace laywright
