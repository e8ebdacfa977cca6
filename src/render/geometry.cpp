#include "render/geometry.h"

#include <array>
#include <cstdint>
#include <vector>

namespace laywright {
namespace {

const void* at_offset(std::size_t offset) { return reinterpret_cast<const void*>(offset); }

}  // namespace

GridMesh::GridMesh(int columns, int rows) {
  std::vector<float> places;
  for (int j = 0; j <= rows; ++j)
    for (int i = 0; i <= columns; ++i) {
      places.push_back(static_cast<float>(i) / static_cast<float>(columns));
      places.push_back(static_cast<float>(j) / static_cast<float>(rows));
    }
  std::vector<std::uint32_t> indices;
  const auto row = static_cast<std::uint32_t>(columns + 1);
  for (std::uint32_t j = 0; j < static_cast<std::uint32_t>(rows); ++j)
    for (std::uint32_t i = 0; i < static_cast<std::uint32_t>(columns); ++i) {
      const std::uint32_t a = j * row + i, b = a + 1, c = a + row, d = c + 1;
      indices.insert(indices.end(), {a, c, b, b, c, d});
    }
  count_ = static_cast<GLsizei>(indices.size());
  glBindVertexArray(array_.name());
  glBindBuffer(GL_ARRAY_BUFFER, places_.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(places.size() * sizeof(float)), places.data(),
               GL_STATIC_DRAW);
  glEnableVertexAttribArray(0);
  glVertexAttribPointer(0, 2, GL_FLOAT, GL_FALSE, 0, nullptr);
  glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_.name());
  glBufferData(GL_ELEMENT_ARRAY_BUFFER, static_cast<GLsizeiptr>(indices.size() * sizeof(std::uint32_t)),
               indices.data(), GL_STATIC_DRAW);
}

void GridMesh::draw() const {
  glBindVertexArray(array_.name());
  glDrawElements(GL_TRIANGLES, count_, GL_UNSIGNED_INT, nullptr);
}

QuadInstances::QuadInstances(float low) {
  const std::array<float, 8> corners{low, -1.0F, 1.0F, -1.0F, low, 1.0F, 1.0F, 1.0F};
  glBindVertexArray(array_.name());
  glBindBuffer(GL_ARRAY_BUFFER, corners_.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(sizeof corners), corners.data(), GL_STATIC_DRAW);
  glEnableVertexAttribArray(0);
  glVertexAttribPointer(0, 2, GL_FLOAT, GL_FALSE, 0, nullptr);
}

void QuadInstances::load(const void* data, std::size_t bytes, std::size_t count) {
  glBindVertexArray(array_.name());
  glBindBuffer(GL_ARRAY_BUFFER, data_.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(bytes), data, GL_DYNAMIC_DRAW);
  count_ = static_cast<GLsizei>(count);
}

void QuadInstances::floats(GLuint attribute, int components, std::size_t stride, std::size_t offset) const {
  glEnableVertexAttribArray(attribute);
  glVertexAttribPointer(attribute, components, GL_FLOAT, GL_FALSE, static_cast<GLsizei>(stride), at_offset(offset));
  glVertexAttribDivisor(attribute, 1);
}

void QuadInstances::whole(GLuint attribute, std::size_t stride, std::size_t offset) const {
  glEnableVertexAttribArray(attribute);
  glVertexAttribIPointer(attribute, 1, GL_UNSIGNED_INT, static_cast<GLsizei>(stride), at_offset(offset));
  glVertexAttribDivisor(attribute, 1);
}

void QuadInstances::color(GLuint attribute, std::size_t stride, std::size_t offset) const {
  glEnableVertexAttribArray(attribute);
  glVertexAttribPointer(attribute, 4, GL_UNSIGNED_BYTE, GL_TRUE, static_cast<GLsizei>(stride), at_offset(offset));
  glVertexAttribDivisor(attribute, 1);
}

void QuadInstances::draw() const {
  if (empty()) return;
  glBindVertexArray(array_.name());
  glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, count_);
}

}  // namespace laywright
