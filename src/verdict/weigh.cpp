#include "verdict/weigh.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "measure/acceptance.h"
#include "measure/severity.h"
#include "measure/surface.h"
#include "plan/guide_cycle.h"

namespace laywright {
namespace {

constexpr double rim_margin_d = 2.0;

struct Scales {
  const Plan& plan;
  const Build& build;
  const Measurements& measurements;
  Acceptance accepted;
  std::vector<Check> checks;

  [[nodiscard]] double d() const { return plan.fiber().diameter_mm; }

  void uncertain(Weighed what, double value, const std::optional<double>& limit, std::optional<Side> side = {},
                 Grade at_worst = Grade::do_not_wind) {
    if (!limit) return;
    checks.push_back({what, side, value, *limit, false, *limit - value, grade_at_most(value, *limit, at_worst)});
  }
  void disorder(Weighed what, FindingKind kind, const std::optional<double>& limit) {
    uncertain(what, places_per_km(build, measurements, kind), limit, {}, accepted.disorder);
  }

  // `margin`: with less than that it is marginal.
  void firm(Weighed what, double value, double limit, bool at_least, double margin) {
    const double left = at_least ? value - limit : limit - value;
    const Grade grade = left < 0.0 ? Grade::do_not_wind : left < margin ? Grade::marginal : Grade::good;
    checks.push_back({what, {}, value, limit, at_least, left, grade});
  }
  void at_most(Weighed what, double value, double limit) { firm(what, value, limit, false, firm_share * limit); }
  void at_least(Weighed what, double value, double limit) { firm(what, value, limit, true, firm_share * limit); }
};

void weigh_room(Scales& on) {
  if (on.build.stopped_by == StopReason::rim) {
    const Wind& wind = on.plan.wind();
    const double wound = wind.length_mm     ? on.build.length_mm / *wind.length_mm
                         : wind.turns       ? on.build.turns / *wind.turns
                         : wind.diameter_mm ? on.measurements.outer_diameter.greatest_mm / *wind.diameter_mm
                                            : 0.0;
    // It stopped before its end, by however little.
    constexpr double whole = 100.0, nearly = 1e-6;
    on.at_least(Weighed::planned_end, std::min(whole * wound, whole - nearly), whole);
  }
  on.firm(Weighed::rim_clearance, on.measurements.rim_clearance_mm, on.accepted.rim_clearance_mm, true,
          rim_margin_d * on.d());
}

void weigh_load(Scales& on, const TakeupRun& run) {
  const auto& takeup = on.plan.takeup();
  const std::optional<double> planned = on.plan.wind().tension_N;
  const std::vector<double>& pulls = run.curves.tension_N;
  if (planned || !pulls.empty()) {
    const double most = pulls.empty() ? *planned : *std::max_element(pulls.begin(), pulls.end());
    const double least = pulls.empty() ? *planned : *std::min_element(pulls.begin(), pulls.end());
    if (on.plan.fiber().max_tension_N)
      on.at_most(Weighed::greatest_pull, most, on.accepted.pull * *on.plan.fiber().max_tension_N);
    if (run.hold.least_tension_N) on.at_least(Weighed::least_pull, least, *run.hold.least_tension_N);
  }
  if (on.plan.fiber().min_bend_diameter_mm) {
    // The plan allows no barrel that is smaller; one that is as large is right.
    on.firm(Weighed::bend, on.plan.spool().least_barrel_diameter_mm(), *on.plan.fiber().min_bend_diameter_mm, true,
            0.0);
  }
  if (takeup && takeup->speed_ceiling_rpm && run.least_speed_ceiling_rpm)
    on.at_most(Weighed::spool_speed, *run.least_speed_ceiling_rpm, *takeup->speed_ceiling_rpm);
  if (takeup && takeup->full_current_A && !run.curves.current_A.empty()) {
    on.at_most(Weighed::clutch_current, *std::max_element(run.curves.current_A.begin(), run.curves.current_A.end()),
               *takeup->full_current_A);
  }
}

void weigh_shape(Scales& on) {
  const Measurements& m = on.measurements;
  if (!m.edges) return;
  constexpr std::array sides{Side::left, Side::right};
  for (const Side side : sides) {
    on.uncertain(Weighed::ridge, (*m.edges)[static_cast<std::size_t>(side)].ridge_mm / on.d(), on.accepted.ridge_d,
                 side);
  }
  for (const Side side : sides) {
    on.uncertain(Weighed::valley, (*m.edges)[static_cast<std::size_t>(side)].valley_mm / on.d(),
                 on.accepted.valley_d, side);
  }
  const auto [left, right] = edges_over_middle_mm(on.plan, m);
  on.uncertain(Weighed::unevenness, (std::max({left, right, 0.0}) - std::min({left, right, 0.0})) / on.d(),
               on.accepted.unevenness_d);
}

void weigh_order(Scales& on) {
  const Measurements& m = on.measurements;
  constexpr double percent = 100.0;
  const auto in_percent = [](const std::optional<double>& share) {
    return share ? std::optional(percent * *share) : std::nullopt;
  };
  on.uncertain(Weighed::open_gaps, percent * share_beside_gaps(on.build, m), in_percent(on.accepted.open_gaps));
  on.uncertain(Weighed::flange_gap, largest_d(m, FindingKind::flange_gap), on.accepted.flange_gap_d);
  on.disorder(Weighed::dropped_turns, FindingKind::dropped_turn, on.accepted.dropped_turns_per_km);
  on.uncertain(Weighed::drop_depth, largest_d(m, FindingKind::dropped_turn), on.accepted.drop_depth_d);
  on.disorder(Weighed::ride_ups, FindingKind::ride_up, on.accepted.ride_ups_per_km);
}

// A pull of 1 is that of winding: what counts is how far it is above.
void weigh_payoff(Scales& on, const PayoffRun& payoff) {
  on.checks.push_back({Weighed::payoff_force,
                       {},
                       payoff.greatest,
                       payoff.limit,
                       false,
                       payoff.limit - payoff.greatest,
                       grade_of_force(payoff.greatest, payoff.limit)});
}

}  // namespace

std::vector<Check> weigh(const Plan& plan, const Build& build, const Measurements& measurements,
                         const TakeupRun* run) {
  Scales on{plan, build, measurements, acceptance_of(plan), {}};
  weigh_room(on);
  if (run != nullptr) weigh_load(on, *run);
  if (plan.traverse().pitch_mm > close_wind_d * on.d())
    on.uncertain(Weighed::ribbon, largest_d(measurements, FindingKind::ribbon), on.accepted.ribbon_d);
  weigh_shape(on);
  weigh_order(on);
  if (run != nullptr && run->payoff) weigh_payoff(on, *run->payoff);
  return std::move(on.checks);
}

bool is_firm(Weighed what) { return what < Weighed::ribbon; }

bool depends_on_lay(Weighed what) { return what <= Weighed::rim_clearance || what >= Weighed::ribbon; }

bool depends_on_tension(Weighed what) {
  return what == Weighed::greatest_pull || what == Weighed::least_pull || what == Weighed::clutch_current;
}

double good_up_to(const Check& check) { return is_firm(check.what) ? 1.0 - firm_share : 1.0 - uncertain_share; }

double strain_of(const Check& check) {
  if (check.what == Weighed::payoff_force) return (check.value - 1.0) / (check.limit - 1.0);
  const double over = check.at_least ? check.limit : check.value, under = check.at_least ? check.value : check.limit;
  if (over <= 0.0) return 0.0;
  return under > 0.0 ? over / under : std::numeric_limits<double>::infinity();
}

CheckRank rank_of(const Check& check, Product product) {
  const bool good = check.grade == Grade::good;
  const bool leads = product == Product::crossed && check.what == Weighed::ribbon;
  return {check.grade, !good && is_firm(check.what), !good && leads, strain_of(check) / good_up_to(check)};
}

std::array<double, 2> edges_over_middle_mm(const Plan& plan, const Measurements& measurements) {
  const auto zones = zones_of(plan);
  const double slope = 0.5 * plan.spool().barrel_taper_mm / plan.spool().inside_width_mm;
  const auto middle_of = [&](Zone zone) {
    const Extent& extent = zones[static_cast<std::size_t>(zone)];
    return 0.5 * (extent.from_mm + extent.to_mm);
  };
  const OuterDiameter& outer = measurements.outer_diameter;
  const auto over = [&](double diameter_mm, Zone zone) {
    return 0.5 * (diameter_mm - outer.middle_mm) - slope * (middle_of(zone) - middle_of(Zone::middle));
  };
  return {over(outer.left_mm, Zone::left), over(outer.right_mm, Zone::right)};
}

}  // namespace laywright
