// Discs pressed onto a floor between two walls, in a general-purpose physics library (Box2D): what the section does,
// done the general way. Lengths in diameters, heights from the floor.
//
// The general way is given its best case. A disc begins where it touches, straight above, so that it does not have to
// fall. It does not turn, as fiber does not roll. It is at rest when it has kept below `slow` for two steps. Floor and
// walls stand back by the skin that the library gives to lines.
#pragma once

#include <cstddef>
#include <vector>

#include <box2d/box2d.h>

namespace laywright::bench {

struct Place {
  double x = 0.0, r = 0.0;  // of a disc's centre
};

class PhysicsPile {
 public:
  enum class Laid {
    stays,  // a disc at rest becomes ground, as in the lay model: what comes later cannot push it
    moves,  // later discs press and push it
  };

  PhysicsPile(double width, double friction, Laid laid);

  // Sets a disc down at x and steps: until it is at rest where what is laid stays, `steps_apart` times where it moves.
  void drop(double x);

  // Steps until nothing moves any more.
  void come_to_rest();

  [[nodiscard]] std::vector<Place> places() const;
  [[nodiscard]] std::size_t steps() const { return steps_; }
  // Times that it was not at rest after `most_steps`, and was left.
  [[nodiscard]] std::size_t restless() const { return restless_; }

 private:
  [[nodiscard]] float top_at(float x) const;
  b2Body* add(float x, float r);
  void step();
  void hold(b2Body* disc);

  b2World world_;
  b2Body* ground_ = nullptr;
  float friction_;
  Laid laid_;
  std::vector<b2Vec2> held_;
  std::vector<const b2Body*> discs_;
  std::size_t steps_ = 0, restless_ = 0;
};

}  // namespace laywright::bench
