// Laid turns that may move, as discs in contact, one axial section a station: how they come to rest under their own pull.
//
// A distinct element method (Cundall and Strack, Geotechnique 29, 1979): contacts are stiff springs, along the surface with
// Coulomb friction that remembers how far it has been strained, discs turn freely, and motion is damped until all is at
// rest. What belongs to a fiber: a disc's pull fades as it sinks and its fiber grows slack, and consecutive places of the
// fiber are joined, by the tension as they move apart and by the twist as they turn.
//
// Forces are in units of the pull of a taut turn, T / R per length; a disc's mass is one. Nothing is done in parallel and
// only sums, products, quotients and roots are taken: the same bits everywhere.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "base/progress.h"
#include "lay/section.h"

namespace laywright {

struct GrainLaw {
  double diameter_mm = 0.0;
  double friction = 0.0;
  bool rolls = true;              // a flat fiber does not turn about itself
  double slack_mm = 0.0;          // a disc that has sunk so far from where it was laid pulls no more
  double string_stiffness = 0.0;  // R / step^2, 1/mm: force for each mm that neighbours along the fiber move apart
  double twist_stiffness = 0.0;   // K / T times that: for each mm that they have rolled apart
};

class Grains {
 public:
  static constexpr int none = -1;

  struct Grain {
    double x = 0.0, r = 0.0;  // mm, of the centre
    double rolled = 0.0;      // half its diameter times the angle that it has turned, mm, to the right
    double x_from = 0.0, r_from = 0.0;
    double laid_r = 0.0;  // where it was laid
    double half = 0.0;    // of its diameter, mm
    double speed_x = 0.0, speed_r = 0.0, speed_rolled = 0.0;
    double force_x = 0.0, force_r = 0.0, force_rolled = 0.0;
    std::array<double, 3> strained{};  // along barrel, left and right face
    int before = none, after = none;   // along the fiber; none: that neighbour stays where it is
    bool moves = false, awake = false;
  };

  // `bare`: the empty section of each station, which gives barrel and faces.
  Grains(const GrainLaw& law, const std::vector<Section>& bare);

  // A turn's place at a station. One that does not move stays where it is, and carries.
  int add(std::size_t station, double x, double r, double laid_r, double half, bool moves);

  // Consecutive places of the fiber, both of which move.
  void join(int before, int after);

  // Moves them until all are at rest, or for as long as `most_rounds` last. False when it was cancelled.
  bool come_to_rest(Progress& progress);

  [[nodiscard]] const Grain& operator[](int i) const { return grains_[static_cast<std::size_t>(i)]; }
  [[nodiscard]] std::size_t restless() const { return restless_; }  // that still moved at the end

 private:
  struct Touch {
    int a = 0, b = 0;       // a moves
    double strained = 0.0;  // along the surface
  };
  struct Slice {
    std::vector<int> grains;
    std::vector<Touch> touches;
    std::vector<std::size_t> live;  // of the touches, those of what is awake
    std::vector<int> awake;
    double drift = HUGE_VAL;  // since touches were looked for, at most
  };

  void find_touches(Slice& slice);
  void look_who_moves();
  void push(Slice& slice, const Section& bare);
  void push_off(Grain& grain, const Section& bare) const;
  void push_apart(Touch& touch);
  void hold_together(Grain& grain) const;
  double move(Slice& slice);
  Grain& at(int i) { return grains_[static_cast<std::size_t>(i)]; }

  GrainLaw law_;
  const std::vector<Section>& bare_;
  double normal_, along_;  // stiffness of a contact, 1/mm
  double time_;            // step
  double drag_;
  std::vector<Grain> grains_;
  std::vector<Slice> slices_;
  std::size_t restless_ = 0;
};

}  // namespace laywright
