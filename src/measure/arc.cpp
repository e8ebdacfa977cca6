#include "measure/arc.h"

#include <algorithm>
#include <cmath>

namespace laywright {

namespace {

double wrapped(double deg) {
  const double turn = std::fmod(deg, 360.0);
  return turn < 0.0 ? turn + 360.0 : turn;
}

// Span of the arc that begins with a and goes on until b is covered.
double span_through(const Arc& a, const Arc& b) {
  const double to_b = wrapped(b.from_deg - a.from_deg);
  const double through_b = std::max(a.span_deg, to_b + b.span_deg);
  // b may reach round to where a begins.
  return std::min(360.0, through_b);
}

}  // namespace

Arc arc_between(double from_deg, double to_deg) {
  if (to_deg - from_deg >= 360.0) return Arc::all_round();
  return {wrapped(from_deg), std::max(0.0, to_deg - from_deg)};
}

Arc covering(const Arc& a, const Arc& b) {
  const double from_a = span_through(a, b);
  const double from_b = span_through(b, a);
  const double span = std::min(from_a, from_b);
  if (span >= 360.0) return Arc::all_round();
  return {from_a <= from_b ? a.from_deg : b.from_deg, span};
}

double apart_deg(const Arc& a, const Arc& b) {
  const double to_b = wrapped(b.from_deg - a.from_deg) - a.span_deg;
  const double to_a = wrapped(a.from_deg - b.from_deg) - b.span_deg;
  return std::max(0.0, std::min(to_a, to_b));
}

}  // namespace laywright
