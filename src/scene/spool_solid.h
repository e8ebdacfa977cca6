// The spool as solids: barrel and flanges, turned about the axis, with what the cuts leave of them.
//
// A plan says nothing of the flange's thickness or of a bore. Both are estimates (no source, common proportions of
// wire spools): a flange is 4 % of its diameter thick, a bore is 40 % of the barrel's diameter. The barrel is solid
// from the bore to its surface; the flanges reach from the bore to the rim.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "plan/lay_plan.h"
#include "scene/view.h"

namespace laywright {

struct MeshVertex {
  float x = 0.0F, y = 0.0F, z = 0.0F;     // in space
  float nx = 0.0F, ny = 0.0F, nz = 1.0F;  // outward, length 1
};

// Triangles, counterclockwise seen from outside. Vertices with different normals at one place are kept apart, but
// have bit-equal places: the surface is closed.
struct Mesh {
  std::vector<MeshVertex> vertices;
  std::vector<std::uint32_t> triangles;  // three to each
};

inline constexpr double flange_thickness_share = 0.04;  // of the flange diameter; an estimate
inline constexpr double bore_share = 0.4;               // of the barrel diameter; an estimate

struct SpoolSolid {
  Mesh barrel, left_flange, right_flange;
  double bore_radius_mm = 0.0;
  double inside_width_mm = 0.0;
  double flange_thickness_mm = 0.0;
};

// Flange faces: x where the inner face is at a radius and angle, taper and run-out included.
[[nodiscard]] double left_face_x(const Plan& plan, double r, double angle);
[[nodiscard]] double right_face_x(const Plan& plan, double r, double angle);

// Applies wedge and axial cut; the x range of a view leaves the spool whole. `segments` around the full turn.
[[nodiscard]] SpoolSolid make_spool(const Plan& plan, const View& view, int segments = 120);

}  // namespace laywright
