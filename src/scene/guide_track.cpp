#include "scene/guide_track.h"

#include <algorithm>
#include <cmath>

#include "base/units.h"

namespace laywright {
namespace {

constexpr double most_moments = 500.0;

void go_on(Guide& guide, double turns) {
  for (double left = full_turn * turns; left > 1e-12;) left -= guide.advance(left).angle;
}

}  // namespace

GuideTrack::GuideTrack(const Plan& plan, std::uint64_t seed, double turns)
    : turns_(std::max(0.0, turns)), spacing_(std::max(1.0, std::ceil(turns_ / most_moments))) {
  Guide guide(plan, seed);
  moments_.push_back(guide);
  for (double turn = spacing_; turn <= turns_; turn += spacing_) {
    go_on(guide, spacing_);
    moments_.push_back(guide);
  }
}

Guide GuideTrack::at(double turn) const {
  const double moment = std::clamp(turn, 0.0, turns_);
  const std::size_t kept = std::min(moments_.size() - 1, static_cast<std::size_t>(moment / spacing_));
  Guide guide = moments_[kept];
  go_on(guide, moment - spacing_ * static_cast<double>(kept));
  return guide;
}

double GuideTrack::x_at(double turn) const { return at(turn).x(); }

}  // namespace laywright
