// The closed forms against published figures, to their printed digits.
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "base/quantity.h"
#include "takeup/formulas.h"

using namespace laywright;

namespace {

double in(double number, const char* unit) {
  const Unit& u = *find_unit(unit);
  return number * static_cast<double>(u.multiplier) / static_cast<double>(u.divisor) * std::pow(10.0, u.exponent);
}

Takeup taking(TensionControl control, double taper = 0.0) {
  Takeup takeup;
  takeup.control = control;
  takeup.taper = taper;
  return takeup;
}

double rounded(double value, int decimals) {
  const double power = std::pow(10.0, decimals);
  return std::round(value * power) / power;
}

}  // namespace

TEST_CASE("tension of a torque: 50 lbf at 12 in is 600 lbf in") {
  // Machine design article on clutches and brakes for tension (machinedesign.com, 2017).
  const double torque = in(50.0, "lbf") * in(12.0, "in");
  CHECK(torque == Approx(in(600.0, "lbf*in")).epsilon(1e-12));
  // T = M / r: the same torque at half the radius.
  const double half =
      tension_at(taking(TensionControl::constant_torque), in(50.0, "lbf"), in(12.0, "in"), in(6.0, "in"));
  CHECK(half == Approx(in(100.0, "lbf")).epsilon(1e-12));
}

TEST_CASE("speed of the spool: the shop's rule in feet and inches, and a drum in metres") {
  // 3.8 x ft/min / inches of diameter (the same article); 3.8197 by the exact foot.
  const double rpm = spool_speed_rpm(in(1.0, "ft/min"), std::numbers::pi * in(1.0, "in"));
  CHECK(rounded(rpm, 4) == 3.8197);
  CHECK(rounded(rpm, 1) == 3.8);
  // A drum of 200 mm at 30 rpm takes up .31 m/s (textile winding exercise).
  const double speed = in(0.31, "m/s");
  CHECK(std::round(spool_speed_rpm(speed, std::numbers::pi * 200.0)) == 30.0);
}

TEST_CASE("heat of a slipping clutch: .012 W for each lbf in and rpm") {
  // machinedesign.com, 2017, prints .012; .011832 by the units.
  const double heat = clutch_heat_W(in(1.0, "lbf*in"), 1.0);
  CHECK(rounded(heat, 3) == 0.012);
  CHECK(rounded(heat, 6) == 0.011832);
}

TEST_CASE("taper of the tension over diameter") {
  // T/T0 = 1 - k (1 - D0/D): values by hand; the formula is from memory.
  const auto share = [](double k, double ratio) {
    return tension_at(taking(TensionControl::taper, k), 1.0, 1.0, ratio);
  };
  CHECK(share(0.3, 1.5) == Approx(0.90));
  CHECK(share(0.3, 2.0) == Approx(0.85));
  CHECK(rounded(share(1.0, 1.5), 3) == 0.667);
  CHECK(share(1.0, 2.0) == Approx(0.500));
  // Its ends are the two other ways of control.
  for (const double ratio : {1.0, 1.2, 2.5}) {
    CHECK(share(0.0, ratio) == tension_at(taking(TensionControl::constant_tension), 1.0, 1.0, ratio));
    CHECK(share(1.0, ratio) == Approx(tension_at(taking(TensionControl::constant_torque), 1.0, 1.0, ratio)));
  }
}

TEST_CASE("a capstan of five turns and friction .6 holds 153,552,935 times") {
  // Encyclopedia, capstan equation.
  CHECK(std::round(capstan_ratio(0.6, 5.0)) == 153'552'935.0);
  // By hand: e^(.3 x 2 pi n).
  CHECK(rounded(capstan_ratio(0.3, 0.5), 4) == 2.5663);
  CHECK(rounded(capstan_ratio(0.3, 1.0), 4) == 6.5861);
  CHECK(rounded(capstan_ratio(0.3, 2.0), 3) == 43.376);
}

TEST_CASE("greatest winding tension of copper wire, by gauge") {
  // Phelps Dodge engineering chart, lbf. Its figures are 10,000 psi (68.9 MPa) on the bare wire, whose diameter
  // (ASTM B258) stands there to a tenth of a mil.
  struct Row {
    int gauge;
    double lbf;
    int decimals;
  };
  for (const Row& row : {Row{10, 82.0, 0}, Row{20, 8.0, 1}, Row{24, 3.2, 1}, Row{30, 0.785, 3}, Row{36, 0.196, 3},
                         Row{40, 0.075, 3}}) {
    CAPTURE(row.gauge);
    const double mils = rounded(5.0 * std::pow(92.0, (36.0 - row.gauge) / 39.0), 1);
    const double of_one_newton = core_stress_MPa(1.0, in(mils, "mil"));
    CHECK(rounded(in(10'000.0, "psi") / of_one_newton / in(1.0, "lbf"), row.decimals) == row.lbf);
  }
}

TEST_CASE("proof load and bend of optical fiber") {
  // ITU-T G.652.D data sheets: proof stress .69 GPa, cladding 125 um; the force by hand.
  CHECK(rounded(0.25 * std::numbers::pi * 0.125 * 0.125 * 690.0, 3) == 8.468);
  CHECK(core_stress_MPa(8.468, 0.125) == Approx(690.0).epsilon(1e-4));
  // Bent to 30 mm: .208 %, 150 MPa at 72 GPa (by hand; the modulus is from memory).
  const double strain = bend_strain(0.125, 30.0);
  CHECK(rounded(100.0 * strain, 3) == 0.208);
  CHECK(std::round(strain * 72'000.0) == 150.0);
}

TEST_CASE("inertia of a full copper spool") {
  // .85 of copper at 8890 kg/m3, 160 mm wide, radius 100 on 62.5 mm: 23.146 kg, .16094 kg m2 (mechanics, by hand).
  const double density = 0.85 * 8890e-9;
  CHECK(rounded(density * 160.0 * std::numbers::pi * (100.0 * 100.0 - 62.5 * 62.5), 3) == 23.146);
  CHECK(rounded(ring_inertia_kg_m2(density, 160.0, 100.0, 62.5), 5) == 0.16094);
  // 1 kg m2 to 60/(2 pi) rpm, 1 rad/s, in 2 s: .5 N m.
  CHECK(ramp_torque_Nmm(1.0, 60.0 / (2.0 * std::numbers::pi), 2.0) == Approx(500.0));
}

TEST_CASE("the least pull turns the motion, carries the weight, and bends a stiff wire") {
  // By hand. 66 g/km at 10 m/s: 66e-6 kg/m x 100 m2/s2.
  CHECK(least_tension_N(66.0, 10'000.0, 1e-9, 0.0) == Approx(0.0066).epsilon(1e-6));
  // 280 g/km at rest on a radius of 50 mm: 280e-6 x 9.80665 x .05.
  CHECK(least_tension_N(280.0, 0.0, 50.0, 0.0) == Approx(280e-6 * 9.80665 * 0.05));
  // Peeling a strip from a cylinder: the bending energy that a length of it gains, E I / (2 r^2), is what the pull
  // spends. Core 1 mm, 100 GPa: E I = 4908.7 N mm2.
  const double stiffness = bending_stiffness_Nmm2(100'000.0, 1.0);
  CHECK(rounded(stiffness, 1) == 4908.7);
  CHECK(least_tension_N(1e-12, 0.0, 50.0, stiffness) == Approx(4908.7 / 5000.0).epsilon(1e-4));
}

TEST_CASE("friction that a reversal needs: the lag, integrated by small steps") {
  // The guide comes in at its steady lag and turns back at once: dx/ds = (guide - x) / L.
  const double radius = 37.5, pitch = 20.0, free_length = 100.0;
  const double slope = pitch / (2.0 * std::numbers::pi * radius), step = 1e-3;
  double x = 0.0, guide = free_length * slope, before = slope, greatest = 0.0;
  for (int i = 0; i < 400'000; ++i) {
    guide -= slope * step;
    const double now = (guide - x) / free_length;
    x += now * step;
    greatest = std::max(greatest, std::abs(now - before) / step * radius);
    before = now;
  }
  CHECK(friction_at_reversal(pitch, free_length) == Approx(greatest).epsilon(1e-3));
}
