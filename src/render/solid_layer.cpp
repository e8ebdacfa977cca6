#include "render/solid_layer.h"

#include <cstddef>

namespace laywright {

void SolidLayer::Part::load(const Mesh& mesh) {
  static_assert(sizeof(MeshVertex) == 6 * sizeof(float));
  count = static_cast<GLsizei>(mesh.triangles.size());
  glBindVertexArray(array.name());
  glBindBuffer(GL_ARRAY_BUFFER, vertices.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(mesh.vertices.size() * sizeof(MeshVertex)),
               mesh.vertices.data(), GL_STATIC_DRAW);
  glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices.name());
  glBufferData(GL_ELEMENT_ARRAY_BUFFER, static_cast<GLsizeiptr>(mesh.triangles.size() * sizeof(std::uint32_t)),
               mesh.triangles.data(), GL_STATIC_DRAW);
  glEnableVertexAttribArray(0);
  glVertexAttribPointer(0, 3, GL_FLOAT, GL_FALSE, sizeof(MeshVertex), nullptr);
  glEnableVertexAttribArray(1);
  glVertexAttribPointer(1, 3, GL_FLOAT, GL_FALSE, sizeof(MeshVertex),
                        reinterpret_cast<const void*>(offsetof(MeshVertex, nx)));
}

void SolidLayer::Part::draw() const {
  glBindVertexArray(array.name());
  glDrawElements(GL_TRIANGLES, count, GL_UNSIGNED_INT, nullptr);
}

void SolidLayer::load(const SpoolSolid& spool) {
  parts_[0].load(spool.barrel);
  parts_[1].load(spool.left_flange);
  parts_[2].load(spool.right_flange);
}

void SolidLayer::begin(const Frame& frame, const Wind& wind, const glm::vec3& albedo, double opacity) const {
  frame.use(program_);
  program_.set("albedo", albedo);
  program_.set("opacity", opacity);
  const double reach_mm = 0.06 * wind.radius_mm;
  program_.set("wind", glm::vec4(wind.x_from_mm, wind.x_to_mm, wind.radius_mm, reach_mm));
}

void SolidLayer::draw_barrel(const Frame& frame, const Wind& wind) const {
  begin(frame, wind, rgb_of(frame.colours.spool) * 0.9F, 1.0);
  // The bare surface is part of the shell, which must win where both lie.
  glEnable(GL_POLYGON_OFFSET_FILL);
  glPolygonOffset(1.0F, 2.0F);
  parts_[0].draw();
  glDisable(GL_POLYGON_OFFSET_FILL);
}

void SolidLayer::draw_flanges(const Frame& frame, const Wind& wind, double opacity) const {
  begin(frame, wind, rgb_of(frame.colours.spool), opacity);
  if (opacity >= 1.0) {
    parts_[1].draw();
    parts_[2].draw();
    return;
  }
  // Far sides first, so that what is blended lies in the right order.
  glEnable(GL_CULL_FACE);
  for (const GLenum hidden : std::array<GLenum, 2>{GL_FRONT, GL_BACK}) {
    glCullFace(hidden);
    parts_[1].draw();
    parts_[2].draw();
  }
  glCullFace(GL_BACK);
}

}  // namespace laywright
