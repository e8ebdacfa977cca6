#include "render/face_layer.h"

#include <cmath>
#include <cstddef>
#include <numbers>

#include "render/face_levels.h"
#include "render/face_picture.h"

namespace laywright {
namespace {

Texture picture_texture(int width, int height, const std::vector<Rgba>& pixels) {
  Texture texture = make_texture(width, height, four_bytes, pixels.data());
  glGenerateMipmap(GL_TEXTURE_2D);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR_MIPMAP_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_REPEAT);
  return texture;
}

// The same with levels of our own.
Texture levelled_texture(const std::vector<FaceLevel>& levels) {
  Texture texture =
      make_texture(levels.front().width, levels.front().height, four_bytes, levels.front().colour.data());
  for (std::size_t i = 1; i < levels.size(); ++i) {
    glTexImage2D(GL_TEXTURE_2D, static_cast<GLint>(i), four_bytes.internal, levels[i].width, levels[i].height, 0,
                 four_bytes.format, four_bytes.type, levels[i].colour.data());
  }
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR_MIPMAP_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
  return texture;
}

Vec3 normal_of(double angle, bool looks_onward) {
  const Vec3 onward(0.0, -std::sin(angle), std::cos(angle));
  return looks_onward ? onward : -onward;
}

}  // namespace

void FaceLayer::load(const Scene& scene) {
  faces_.clear();
  for (const CutFace& face : scene.faces) {
    const FaceImage& image = face.image;
    Face& made = faces_.emplace_back();
    if (image.colour.empty()) continue;
    const int width = static_cast<int>(image.width), height = static_cast<int>(image.height);
    made.angle = face.angle;
    made.looks_onward = face.looks_onward;
    made.window = {image.window.x_from, image.window.x_from + image.px_mm * width, image.window.r_from,
                   image.window.r_from + image.px_mm * height};
    made.picture =
        levelled_texture(face_levels(fill_voids(image.colour, image.height, image.width, image.width, 1), image));
    made.ids = make_texture(width, height, one_id, image.node.data());
  }
  crosses_.clear();
  for (const CrossFace& face : scene.cross_faces) {
    if (face.colour.empty()) continue;
    const int width = static_cast<int>(face.columns), height = static_cast<int>(face.rows);
    Cross& made = crosses_.emplace_back();
    made.x_mm = face.x_mm;
    made.faces_right = face.faces_right;
    made.r_from = face.r_from;
    made.r_to = face.r_from + face.px_mm * width;
    made.px_mm = face.px_mm;
    made.picture = picture_texture(width, height, fill_voids(face.colour, face.columns, 1, face.rows, face.columns));
    made.ids = make_texture(width, height, one_id, face.node.data());
  }
}

void FaceLayer::load_discs(std::size_t face, const std::vector<FaceDisc>& discs) {
  QuadInstances& instances = faces_.at(face).discs;
  constexpr std::size_t stride = sizeof(FaceDisc);
  instances.load(discs.data(), discs.size() * stride, discs.size());
  instances.floats(1, 2, stride, offsetof(FaceDisc, x_mm));
  instances.whole(2, stride, offsetof(FaceDisc, node));
  instances.color(3, stride, offsetof(FaceDisc, colour));
}

void FaceLayer::clear_discs() {
  for (Face& face : faces_) face.discs.load(nullptr, 0, 0);
}

void FaceLayer::draw(const Frame& frame, double disc_opacity) const {
  if (!faces_.empty()) draw_pictures(frame, disc_opacity);
  if (!faces_.empty() && disc_opacity > 0.0) draw_discs(frame, disc_opacity);
  if (!crosses_.empty()) draw_crosses(frame);
}

void FaceLayer::draw_pictures(const Frame& frame, double disc_opacity) const {
  frame.use(face_);
  face_.set("picture", 0);
  face_.set("ids", 1);
  face_.set("x_range", frame.x_range);
  glBindVertexArray(nothing_.name());
  for (const Face& face : faces_) {
    if (!face.picture) continue;
    bind_texture(0, face.picture);
    bind_texture(1, face.ids);
    face_.set("window", glm::vec4(face.window.x_from, face.window.x_to, face.window.r_from, face.window.r_to));
    face_.set("angle", face.angle);
    face_.set("picks", disc_opacity < 1.0 || face.discs.empty() ? 1 : 0);
    face_.set("brightness", frame.brightness(normal_of(face.angle, face.looks_onward)));
    glDrawArrays(GL_TRIANGLE_STRIP, 0, 4);
  }
}

void FaceLayer::draw_discs(const Frame& frame, double opacity) const {
  frame.use(disc_);
  disc_.set("radius", frame.fiber_radius_mm);
  disc_.set("x_range", frame.x_range);
  disc_.set("opacity", opacity);
  disc_.set("ground", rgb_of(frame.colours.spool));
  for (const Face& face : faces_) {
    disc_.set("angle", face.angle);
    // Before the picture, by less than can be seen.
    disc_.set("lift", (face.looks_onward ? 0.02F : -0.02F) * frame.fiber_radius_mm);
    disc_.set("brightness", frame.brightness(normal_of(face.angle, face.looks_onward)));
    face.discs.draw();
  }
}

void FaceLayer::draw_crosses(const Frame& frame) const {
  frame.use(cross_);
  cross_.set("picture", 0);
  cross_.set("ids", 1);
  for (const Cross& cross : crosses_) {
    bind_texture(0, cross.picture);
    bind_texture(1, cross.ids);
    cross_.set("x", cross.x_mm);
    cross_.set("radii", glm::vec2(cross.r_from, 1.0 / cross.px_mm));
    cross_.set("brightness", frame.brightness(Vec3(cross.faces_right ? 1.0 : -1.0, 0.0, 0.0)));
    for (const Sector& sector : frame.shown) {
      cross_.set("window", glm::vec4(cross.r_from, cross.r_to, sector.from, sector.to));
      ring_.draw();
    }
  }
}

}  // namespace laywright
