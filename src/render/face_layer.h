// Draws the faces of cuts: from afar as pictures, close up with each turn as a circle.
#pragma once

#include <vector>

#include "render/frame.h"
#include "render/geometry.h"
#include "render/texture.h"

namespace laywright {

class FaceLayer {
 public:
  void load(const Scene& scene);

  // The circles of one face of the scene; they take the place of its picture where they lie.
  void load_discs(std::size_t face, const std::vector<FaceDisc>& discs);
  void clear_discs();

  void draw(const Frame& frame, double disc_opacity) const;

 private:
  struct Face {
    double angle = 0.0;
    bool looks_onward = false;
    FaceWindow window;
    Texture picture, ids;
    QuadInstances discs{-1.0F};
  };
  struct Cross {
    double x_mm = 0.0;
    bool faces_right = false;
    double r_from = 0.0, r_to = 0.0, px_mm = 1.0;
    Texture picture, ids;
  };
  void draw_pictures(const Frame& frame, double disc_opacity) const;
  void draw_discs(const Frame& frame, double opacity) const;
  void draw_crosses(const Frame& frame) const;

  Program face_{"face"}, disc_{"disc"}, cross_{"cross"};
  VertexArray nothing_ = VertexArray::make();
  GridMesh ring_{1, 180};
  std::vector<Face> faces_;
  std::vector<Cross> crosses_;
};

}  // namespace laywright
