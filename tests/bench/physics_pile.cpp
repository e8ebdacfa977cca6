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
// A disc that leans by .01 d gains .02 d / s in so many steps.
constexpr int steps_at_rest = 2, steps_at_rest_rolling = 20;
constexpr float damping = 3.0F;  // 1 / s, of discs that roll
constexpr float nudge = 0.05F;   // d / s
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

// The disc on which this one stands alone, if it does.
const b2Fixture* only_disc_below(b2Body* disc) {
  const b2Fixture* below = nullptr;
  for (const b2ContactEdge* edge = disc->GetContactList(); edge != nullptr; edge = edge->next) {
    if (!edge->contact->IsTouching()) continue;
    const b2Fixture* first = edge->contact->GetFixtureA();
    const b2Fixture* other = first->GetBody() == disc ? edge->contact->GetFixtureB() : first;
    if (below != nullptr || other->GetType() != b2Shape::e_circle) return nullptr;
    below = other;
  }
  return below;
}

}  // namespace

PhysicsPile::PhysicsPile(double width, double friction, Laid laid, Turning turning)
    : world_({0.0F, -gravity}), friction_(static_cast<float>(friction)), laid_(laid), turning_(turning) {
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
  at.fixedRotation = turning_ == Turning::held;
  at.linearDamping = turning_ == Turning::rolls ? damping : 0.0F;
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

// What balances on one disc is pushed on to the side to which it leans.
void PhysicsPile::rest(b2Body* disc) {
  const int enough = turning_ == Turning::rolls ? steps_at_rest_rolling : steps_at_rest;
  int still = 0;
  for (int i = 0; i < most_steps && still < enough; ++i) {
    step();
    still = disc->GetLinearVelocity().LengthSquared() < slow * slow ? still + 1 : 0;
    const b2Fixture* below = turning_ == Turning::rolls && still == enough ? only_disc_below(disc) : nullptr;
    if (below == nullptr) continue;
    const float from = below->GetBody()->GetWorldPoint(static_cast<const b2CircleShape*>(below->GetShape())->m_p).x;
    disc->SetLinearVelocity({disc->GetPosition().x < from ? -nudge : nudge, 0.0F});
    still = 0;
  }
  if (still < enough) ++restless_;
}

void PhysicsPile::fix_at(b2Vec2 centre) {
  b2CircleShape circle;
  circle.m_radius = radius;
  circle.m_p = centre;
  ground_->CreateFixture(&circle, 0.0F)->SetFriction(friction_);
  held_.push_back(centre);
}

void PhysicsPile::fix(double x) { fix_at({static_cast<float>(x), radius}); }

void PhysicsPile::hold(b2Body* disc) {
  const b2Vec2 centre = disc->GetPosition();
  world_.DestroyBody(disc);
  fix_at(centre);
}

void PhysicsPile::drop(double x) {
  const auto at = static_cast<float>(x);
  b2Body* disc = add(at, top_at(at));
  if (laid_ == Laid::moves) discs_.push_back(disc);
  if (laid_ == Laid::moves && turning_ == Turning::held) {
    for (int i = 0; i < steps_apart; ++i) step();
    return;
  }
  rest(disc);
  if (laid_ == Laid::stays) hold(disc);
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
