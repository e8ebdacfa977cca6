// Shapes that are drawn again and again: a grid over the unit square, and a quad for many instances.
#pragma once

#include <cstddef>

#include "render/handles.h"

namespace laywright {

// (columns + 1) x (rows + 1) places in the unit square, attribute 0; triangles counterclockwise where the first
// coordinate runs to the right and the second downward (x, and angles that come towards the viewer from the top).
class GridMesh {
 public:
  GridMesh(int columns, int rows);
  void draw() const;

 private:
  Buffer places_ = Buffer::make(), indices_ = Buffer::make();
  VertexArray array_ = VertexArray::make();
  GLsizei count_ = 0;
};

// Instances of the quad whose corners are `low`..1 along and -1..1 across, attribute 0. What each instance has is
// laid out by the owner, after bind().
class QuadInstances {
 public:
  explicit QuadInstances(float low);

  // Replaces the data of all instances; their array and buffer are bound afterwards.
  void load(const void* data, std::size_t bytes, std::size_t count);
  // Attribute of `components` floats, or one unsigned integer, or four bytes of a colour.
  void floats(GLuint attribute, int components, std::size_t stride, std::size_t offset) const;
  void whole(GLuint attribute, std::size_t stride, std::size_t offset) const;
  void color(GLuint attribute, std::size_t stride, std::size_t offset) const;

  [[nodiscard]] bool empty() const { return count_ == 0; }
  [[nodiscard]] int count() const { return count_; }
  void draw() const;

 private:
  Buffer corners_ = Buffer::make(), data_ = Buffer::make();
  VertexArray array_ = VertexArray::make();
  GLsizei count_ = 0;
};

}  // namespace laywright
