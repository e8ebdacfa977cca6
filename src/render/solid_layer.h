// Draws barrel and flanges.
#pragma once

#include <array>

#include "render/frame.h"
#include "render/solid_part.h"

namespace laywright {

class SolidLayer {
 public:
  void make_ready() const { program_.make_ready(); }
  void load(const SpoolSolid& spool, const Sheen& sheen);

  // How far out the wind lies, for the shade that it throws on the flanges.
  struct Wind {
    double x_from_mm = 0.0, x_to_mm = 0.0, radius_mm = 0.0;
  };
  void draw_barrel(const Frame& frame, const Wind& wind) const;
  // Those that are not of glass; and, after everything else, those that are.
  void draw_flanges(const Frame& frame, const Wind& wind) const;
  void draw_glass(const Frame& frame, const Wind& wind, double opacity) const;

 private:
  void begin(const Frame& frame, const Wind& wind, const glm::vec3& albedo, double opacity) const;

  Program program_{"solid"};
  std::array<SolidPart, 3> parts_;  // barrel, left flange, right flange
  float metal_ = 0.0F;
};

}  // namespace laywright
