// Draws a shell: the same few triangles and one look-up per pixel, whatever the number of turns.
#pragma once

#include "render/frame.h"
#include "render/geometry.h"
#include "render/texture.h"
#include "scene/shell.h"

namespace laywright {

class ShellLayer {
 public:
  // `ids`: it draws ids as well.
  explicit ShellLayer(bool ids);

  void make_ready() const { program_.make_ready(); }
  void load(const Shell& shell);

  // `sink_mm`: drawn so much lower, under strands. `opacity` below 1: a veil, blended over what stands there.
  void draw(const Frame& frame, double sink_mm, double opacity) const;

 private:
  Program program_;
  bool draws_ids_;
  GridMesh whole_, part_, coarse_whole_, coarse_part_;  // a full turn, and a part of one
  Texture mesh_radii_, skin_, bent_, ids_;
  ShellGrid grid_;
  double fiber_diameter_mm_ = 0.0;
  glm::ivec2 mesh_size_{0};
  double mesh_column_mm_ = 0.0;
  glm::vec2 atlas_size_{0.0F};
  std::vector<glm::vec2> starts_;  // of each level: first column, and columns
};

}  // namespace laywright
