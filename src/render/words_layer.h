// Draws figures and words over a picture: only where there are any, since most of the picture is free of them.
#pragma once

#include "render/canvas.h"
#include "render/program.h"
#include "render/texture.h"

namespace laywright {

class WordsLayer {
 public:
  void load(const Canvas& canvas);
  // Into the framebuffer that is bound, of the canvas's size.
  void draw() const;

 private:
  Program program_{"overlay"};
  VertexArray array_ = VertexArray::make();
  Buffer corners_ = Buffer::make();
  GLsizei count_ = 0;
  Texture sheet_;
  int width_ = 0, height_ = 0;
};

}  // namespace laywright
