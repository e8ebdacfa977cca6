// A solid on the graphics card, drawn by whoever has set its material.
#pragma once

#include "render/handles.h"
#include "scene/spool_solid.h"

namespace laywright {

class SolidPart {
 public:
  void load(const Mesh& mesh);
  void draw() const;

 private:
  VertexArray array_ = VertexArray::make();
  Buffer vertices_ = Buffer::make(), indices_ = Buffer::make();
  GLsizei count_ = 0;
};

}  // namespace laywright
