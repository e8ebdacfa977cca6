#include "lay/grains.h"

#include <algorithm>
#include <cmath>

#include "lay/settle.h"

namespace laywright {
namespace {

// A contact under the pull of one turn gives way by so little of a diameter, and along the surface by a quarter more
// (for elastic spheres the ratio lies between 2/3 and 1, Mindlin; from memory).
constexpr double one_turn_dents = 1.0 / 1000.0;
constexpr double along_over_normal = 0.8;

// Contacts begin so much of a diameter before discs touch: what presses into one another then, does not overlap.
constexpr double skin = 0.002;

// Share of the force that damping takes from what speeds up, and adds to what slows down (Cundall's local damping).
constexpr double damping = 0.3;

// Of the time in which the stiffest contact swings by a radian.
constexpr double time_step = 0.3;

// Steps between two looks at who moves; and how many such rounds there are at most.
constexpr int steps_in_a_round = 32;
constexpr int most_passes = 400;

// Slower than this (in diameters over the time of falling through one, near enough) and with less force left over than this
// (in pulls of a turn) a disc is at rest.
constexpr double rest_speed = 0.02;
constexpr double rest_force = 0.03;
// All is at rest when no more than this share of the discs moves: some rattle in their holes.
constexpr double restless_share = 0.005;

// Touches are looked for as far as this, in d, and anew when something has gone half as far.
constexpr double looked_for = 1.4;
constexpr double drift_allowed = 0.1;

double damped(double force, double speed) {
  if (speed == 0.0) return force;
  const double taken = damping * std::abs(force);
  return speed > 0.0 ? force - taken : force + taken;
}

// The spring along a surface, no further strained than friction bears; its force, against the way in which it was strained.
double strain(double& strained, double by, double most) {
  strained = std::clamp(strained + by, -most, most);
  return strained;
}

}  // namespace

Grains::Grains(const GrainLaw& law, const std::vector<Section>& bare)
    : law_(law),
      bare_(bare),
      normal_(1.0 / (one_turn_dents * law.diameter_mm)),
      along_(along_over_normal * normal_),
      time_(time_step / std::sqrt(std::max(normal_, law.twist_stiffness + law.string_stiffness))),
      drag_(2.0 / std::sqrt(law.slack_mm)),
      slices_(bare.size()) {}

int Grains::add(std::size_t station, double x, double r, double laid_r, double half, bool moves) {
  const int i = static_cast<int>(grains_.size());
  Grain grain;
  grain.x = grain.x_from = x;
  grain.r = grain.r_from = r;
  grain.laid_r = laid_r;
  grain.half = half;
  grain.moves = grain.awake = moves;
  grains_.push_back(grain);
  slices_[station].grains.push_back(i);
  return i;
}

void Grains::join(int before, int after) {
  at(before).after = after;
  at(after).before = before;
}

void Grains::find_touches(Slice& slice) {
  const double reach = looked_for * law_.diameter_mm;
  std::vector<int>& order = slice.grains;
  std::sort(order.begin(), order.end(),
            [this](int a, int b) { return at(a).x < at(b).x || (at(a).x == at(b).x && a < b); });
  const auto earlier = [](const Touch& s, const Touch& t) { return s.a < t.a || (s.a == t.a && s.b < t.b); };
  std::vector<Touch> before;
  before.swap(slice.touches);
  std::sort(before.begin(), before.end(), earlier);
  for (std::size_t i = 0; i < order.size(); ++i) {
    for (std::size_t j = i + 1; j < order.size() && at(order[j]).x - at(order[i]).x < reach; ++j) {
      int a = order[i];
      int b = order[j];
      if (!at(a).moves) std::swap(a, b);
      if (!at(a).moves) continue;
      if (at(b).moves && b < a) std::swap(a, b);
      const double dx = at(b).x - at(a).x;
      const double dr = at(b).r - at(a).r;
      if (dx * dx + dr * dr >= reach * reach) continue;
      Touch touch{a, b, 0.0};
      const auto known = std::lower_bound(before.begin(), before.end(), touch, earlier);
      if (known != before.end() && known->a == a && known->b == b) touch.strained = known->strained;
      slice.touches.push_back(touch);
    }
  }
  slice.drift = 0.0;
}

// Barrel and faces. Their lines are those of the centre of a fiber without scatter.
void Grains::push_off(Grain& grain, const Section& bare) const {
  const double thicker = grain.half - 0.5 * law_.diameter_mm;
  const auto press = [&](double into, Normal normal, std::size_t which) {
    if (into <= 0.0) {
      grain.strained[which] = 0.0;
      return;
    }
    const double force = normal_ * into;
    grain.force_x += force * normal.x;
    grain.force_r += force * normal.r;
    // To the right of the normal; a disc that rolls to the right goes there without slipping.
    const double tx = normal.r;
    const double tr = -normal.x;
    const double slides = (grain.speed_x * tx + grain.speed_r * tr - grain.speed_rolled) * time_;
    const double holds = along_ * strain(grain.strained[which], slides, law_.friction * force / along_);
    grain.force_x -= holds * tx;
    grain.force_r -= holds * tr;
    grain.force_rolled += holds;
  };
  press(bare.barrel().at(grain.x) + thicker - grain.r, {0.0, 1.0}, 0);
  press(bare.left().at(grain.r) + thicker - grain.x, {1.0, 0.0}, 1);
  press(grain.x - (bare.right().at(grain.r) - thicker), {-1.0, 0.0}, 2);
}

void Grains::push_apart(Touch& touch) {
  Grain& a = at(touch.a);
  Grain& b = at(touch.b);
  const double dx = b.x - a.x;
  const double dr = b.r - a.r;
  const double square = dx * dx + dr * dr;
  const double keeps = (a.half + b.half) * (1.0 + skin);
  if (square >= keeps * keeps) {
    touch.strained = 0.0;
    return;
  }
  const double apart = std::sqrt(square);
  const double nx = dx / apart;
  const double nr = dr / apart;
  const double force = normal_ * (keeps - apart);
  // Both surfaces move the other way where both roll the same way.
  const double slides =
      ((b.speed_x - a.speed_x) * nr - (b.speed_r - a.speed_r) * nx - b.speed_rolled - a.speed_rolled) * time_;
  const double holds = along_ * strain(touch.strained, slides, law_.friction * force / along_);
  if (a.awake) {
    a.force_x += holds * nr - force * nx;
    a.force_r += -holds * nx - force * nr;
    a.force_rolled += holds;
  }
  if (b.awake) {
    b.force_x += force * nx - holds * nr;
    b.force_r += force * nr + holds * nx;
    b.force_rolled += holds;
  }
}

void Grains::hold_together(Grain& grain) const {
  const double x = grain.x - grain.x_from;
  const double r = grain.r - grain.r_from;
  for (const int beside : {grain.before, grain.after}) {
    double other_x = 0.0;
    double other_r = 0.0;
    double other_rolled = 0.0;
    if (beside != none) {
      const Grain& other = (*this)[beside];
      other_x = other.x - other.x_from;
      other_r = other.r - other.r_from;
      other_rolled = other.rolled;
    }
    grain.force_x += law_.string_stiffness * (other_x - x);
    grain.force_r += law_.string_stiffness * (other_r - r);
    grain.force_rolled += law_.twist_stiffness * (other_rolled - grain.rolled);
  }
}

void Grains::push(Slice& slice, const Section& bare) {
  for (const int i : slice.awake) {
    Grain& grain = at(i);
    grain.force_x = grain.force_rolled = 0.0;
    // Damped as much as keeps what falls freely from falling past the depth at which it is slack.
    grain.force_r = -std::max(0.0, 1.0 - (grain.laid_r - grain.r) / law_.slack_mm) - drag_ * grain.speed_r;
    push_off(grain, bare);
    hold_together(grain);
  }
  for (const std::size_t i : slice.live) push_apart(slice.touches[i]);
}

// The greatest distance gone.
double Grains::move(Slice& slice) {
  double fastest = 0.0;
  for (const int i : slice.awake) {
    Grain& grain = at(i);
    grain.speed_x += damped(grain.force_x, grain.speed_x) * time_;
    grain.speed_r += damped(grain.force_r, grain.speed_r) * time_;
    // A disc's resistance to turning, seen at its rim, is half its mass.
    if (law_.rolls) grain.speed_rolled += 2.0 * damped(grain.force_rolled, grain.speed_rolled) * time_;
    grain.x += grain.speed_x * time_;
    grain.r += grain.speed_r * time_;
    grain.rolled += grain.speed_rolled * time_;
    fastest = std::max(fastest, grain.speed_x * grain.speed_x + grain.speed_r * grain.speed_r);
  }
  return std::sqrt(fastest) * time_;
}

// All that moves or is pushed is awake, and what touches it or is joined to it. The rest stays where it is for a round.
void Grains::look_who_moves() {
  for (Grain& grain : grains_) grain.awake = grain.moves;
  for (std::size_t s = 0; s < slices_.size(); ++s) {
    Slice& slice = slices_[s];
    if (slice.drift > drift_allowed * law_.diameter_mm) find_touches(slice);
    slice.awake.clear();
    slice.live.clear();
    for (const int i : slice.grains) {
      if (at(i).moves) slice.awake.push_back(i);
    }
    for (std::size_t i = 0; i < slice.touches.size(); ++i) slice.live.push_back(i);
    push(slice, bare_[s]);
  }
  const double slow = rest_speed * rest_speed * law_.diameter_mm;
  restless_ = 0;
  std::vector<char> wakes(grains_.size(), 0);
  for (std::size_t i = 0; i < grains_.size(); ++i) {
    const Grain& grain = grains_[i];
    if (!grain.moves) continue;
    const double speed = grain.speed_x * grain.speed_x + grain.speed_r * grain.speed_r;
    const double turning = law_.rolls ? grain.force_rolled : 0.0;
    const double force = grain.force_x * grain.force_x + grain.force_r * grain.force_r + turning * turning;
    if (speed <= slow && force <= rest_force * rest_force) continue;
    ++restless_;
    wakes[i] = 1;
  }
  const std::vector<char> first = wakes;
  for (std::size_t i = 0; i < grains_.size(); ++i) {
    if (first[i] == 0) continue;
    for (const int beside : {grains_[i].before, grains_[i].after}) {
      if (beside != none) wakes[static_cast<std::size_t>(beside)] = 1;
    }
  }
  for (const Slice& slice : slices_) {
    for (const Touch& touch : slice.touches) {
      const auto a = static_cast<std::size_t>(touch.a);
      const auto b = static_cast<std::size_t>(touch.b);
      if (first[a] != 0) wakes[b] = 1;
      if (first[b] != 0) wakes[a] = 1;
    }
  }
  for (std::size_t i = 0; i < grains_.size(); ++i) {
    Grain& grain = grains_[i];
    grain.awake = grain.moves && wakes[i] != 0;
    if (!grain.awake) grain.speed_x = grain.speed_r = grain.speed_rolled = 0.0;
  }
  for (Slice& slice : slices_) {
    slice.awake.clear();
    slice.live.clear();
    for (const int i : slice.grains) {
      if (at(i).awake) slice.awake.push_back(i);
    }
    for (std::size_t i = 0; i < slice.touches.size(); ++i) {
      if (at(slice.touches[i].a).awake || at(slice.touches[i].b).awake) slice.live.push_back(i);
    }
  }
}

bool Grains::come_to_rest(Progress& progress) {
  for (int round = 0; round < most_passes; ++round) {
    if (progress.cancelled()) return false;
    look_who_moves();
    if (static_cast<double>(restless_) <= restless_share * static_cast<double>(grains_.size())) return true;
    for (int step = 0; step < steps_in_a_round; ++step) {
      for (std::size_t s = 0; s < slices_.size(); ++s) {
        if (!slices_[s].awake.empty()) push(slices_[s], bare_[s]);
      }
      for (Slice& slice : slices_) {
        if (!slice.awake.empty()) slice.drift += move(slice);
      }
    }
  }
  return true;
}

}  // namespace laywright
