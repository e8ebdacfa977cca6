#include "render/solid_part.h"

#include <cstddef>

namespace laywright {

void SolidPart::load(const Mesh& mesh) {
  static_assert(sizeof(MeshVertex) == 6 * sizeof(float));
  count_ = static_cast<GLsizei>(mesh.triangles.size());
  glBindVertexArray(array_.name());
  glBindBuffer(GL_ARRAY_BUFFER, vertices_.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(mesh.vertices.size() * sizeof(MeshVertex)),
               mesh.vertices.data(), GL_STATIC_DRAW);
  glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_.name());
  glBufferData(GL_ELEMENT_ARRAY_BUFFER, static_cast<GLsizeiptr>(mesh.triangles.size() * sizeof(std::uint32_t)),
               mesh.triangles.data(), GL_STATIC_DRAW);
  glEnableVertexAttribArray(0);
  glVertexAttribPointer(0, 3, GL_FLOAT, GL_FALSE, sizeof(MeshVertex), nullptr);
  glEnableVertexAttribArray(1);
  glVertexAttribPointer(1, 3, GL_FLOAT, GL_FALSE, sizeof(MeshVertex),
                        reinterpret_cast<const void*>(offsetof(MeshVertex, nx)));
}

void SolidPart::draw() const {
  glBindVertexArray(array_.name());
  glDrawElements(GL_TRIANGLES, count_, GL_UNSIGNED_INT, nullptr);
}

}  // namespace laywright
