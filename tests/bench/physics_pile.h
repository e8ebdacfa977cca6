// Discs pressed onto a floor between two walls, in a general-purpose physics library (Box2D): what the section does,
// done the general way. Lengths in diameters, heights from the floor.
//
// The general way is given its best case. A disc begins where it touches, straight above, so that it does not have to
// fall. It is at rest when it has kept below `slow` for some steps. Floor and walls stand back by the skin that the
// library gives to lines.
//
// A disc that turns rolls freely where it has one contact. Exactly on top of another, where the library would balance it,
// is no rest: it is pushed on.
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

  enum class Turning {
    held,   // two steps of rest are enough
    rolls,  // damped, as taut fiber does not coast; must rest for longer, as a fall begins slowly
  };

  PhysicsPile(double width, double friction, Laid laid, Turning turning = Turning::held);

  // Sets a disc down at x and steps: until it is at rest where what is laid stays or it rolls, else `steps_apart` times.
  void drop(double x);

  // Sets a disc on the floor that is ground from the start.
  void fix(double x);

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
  void rest(b2Body* disc);
  void hold(b2Body* disc);
  void fix_at(b2Vec2 centre);

  b2World world_;
  b2Body* ground_ = nullptr;
  float friction_;
  Laid laid_;
  Turning turning_;
  std::vector<b2Vec2> held_;
  std::vector<const b2Body*> discs_;
  std::size_t steps_ = 0, restless_ = 0;
};

}  // namespace laywright::bench
