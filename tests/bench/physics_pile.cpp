#include "physics_pile.h"

#include <algorithm>
#include <cmath>

namespace laywright::bench {
namespace {

// As the library's manual advises: 60 steps a second, 8 and 3 iterations, moving things of about 1 in size.
constexpr float step_s = 1.0F / 60.0F;
constexpr int velocity_rounds = 8, position_rounds = 3;
// d / s^2. With four times as much discs enter each other by .06 d and pack to .844 where .818 is known; with a quarter
// of it they lie still before they have begun to slide.
constexpr float gravity = 10.0F;
constexpr float slow = 0.01F;  // d / s, the library's own bound for sleep
constexpr int steps_apart = 10;
constexpr int most_steps = 3000;
constexpr float radius = 0.5F;

class Top : public b2QueryCallback {
 public:
  explicit Top(float x) : x_(x) {}
  bool ReportFixture(b2Fixture* fixture) override {
    if (fixture->GetType() != b2Shape::e_circle) return true;
    const auto* circle = static_cast<const b2CircleShape*>(fixture->GetShape());
    const b2Vec2 centre = fixture->GetBody()->GetWorldPoint(circle->m_p);
    const float dx = x_ - centre.x;
    if (dx * dx < 1.0F) r = std::max(r, centre.y + std::sqrt(1.0F - dx * dx));
    return true;
  }
  float r = radius;

 private:
  float x_;
};

}  // namespace

PhysicsPile::PhysicsPile(double width, double friction, Laid laid)
    : world_({0.0F, -gravity}), friction_(static_cast<float>(friction)), laid_(laid) {
  world_.SetContinuousPhysics(false);  // nothing is fast enough to pass through anything
  const b2BodyDef still;
  ground_ = world_.CreateBody(&still);
  const float right = static_cast<float>(width) + b2_polygonRadius;
  const float left = -b2_polygonRadius;
  const float high = 1e4F;
  for (const auto& [from, to] : {std::pair<b2Vec2, b2Vec2>{{left, left}, {right, left}},
                                 {{left, left}, {left, high}},
                                 {{right, left}, {right, high}}}) {
    b2EdgeShape line;
    line.SetTwoSided(from, to);
    ground_->CreateFixture(&line, 0.0F)->SetFriction(friction_);
  }
}

float PhysicsPile::top_at(float x) const {
  Top top(x);
  world_.QueryAABB(&top, {{x - radius, 0.0F}, {x + radius, 1e4F}});
  return top.r;
}

b2Body* PhysicsPile::add(float x, float r) {
  b2BodyDef at;
  at.type = b2_dynamicBody;
  at.position = {x, r};
  at.fixedRotation = true;
  b2Body* disc = world_.CreateBody(&at);
  b2CircleShape circle;
  circle.m_radius = radius;
  b2Fixture* fixture = disc->CreateFixture(&circle, 1.0F);
  fixture->SetFriction(friction_);
  fixture->SetRestitution(0.0F);
  return disc;
}

void PhysicsPile::step() {
  world_.Step(step_s, velocity_rounds, position_rounds);
  ++steps_;
}

void PhysicsPile::hold(b2Body* disc) {
  b2CircleShape circle;
  circle.m_radius = radius;
  circle.m_p = disc->GetPosition();
  world_.DestroyBody(disc);
  ground_->CreateFixture(&circle, 0.0F)->SetFriction(friction_);
  held_.push_back(circle.m_p);
}

void PhysicsPile::drop(double x) {
  const auto at = static_cast<float>(x);
  b2Body* disc = add(at, top_at(at));
  if (laid_ == Laid::moves) {
    discs_.push_back(disc);
    for (int i = 0; i < steps_apart; ++i) step();
    return;
  }
  int still = 0;
  for (int i = 0; i < most_steps && still < 2; ++i) {
    step();
    still = disc->GetLinearVelocity().LengthSquared() < slow * slow ? still + 1 : 0;
  }
  if (still < 2) ++restless_;
  hold(disc);
}

void PhysicsPile::come_to_rest() {
  if (laid_ == Laid::stays) return;
  const auto moves = [](const b2Body* disc) {
    return disc->IsAwake() && disc->GetLinearVelocity().LengthSquared() >= slow * slow;
  };
  int still = 0;
  for (int i = 0; i < most_steps && still < 2; ++i) {
    step();
    still = std::any_of(discs_.begin(), discs_.end(), moves) ? 0 : still + 1;
  }
  if (still < 2) ++restless_;
}

std::vector<Place> PhysicsPile::places() const {
  std::vector<Place> places;
  for (const b2Vec2& at : held_) places.push_back({at.x, at.y});
  for (const b2Body* disc : discs_) places.push_back({disc->GetPosition().x, disc->GetPosition().y});
  return places;
}

}  // namespace laywright::bench
