#include "render/scene_renderer.h"

#include <algorithm>
#include <array>

namespace laywright {
namespace {

SolidLayer::Wind wind_of(const Scene& scene) {
  const auto outermost = std::max_element(scene.shell.radius_mm.begin(), scene.shell.radius_mm.end());
  const double radius = outermost == scene.shell.radius_mm.end() ? 1.0 : static_cast<double>(*outermost);
  return {scene.x_from_mm, scene.x_to_mm, radius};
}

// Of a band: the processor takes less than half a second for so many, and the shapes that are placed anew for each band
// cost less than they.
constexpr double band_pixels = 2e6;

// Pieces of strands that a quick frame may have.
constexpr int most_quick_strands = 6000;

// What is drawn into, of the framebuffer that is bound.
void draw_colours(bool and_ids) {
  constexpr std::array<GLenum, 2> buffers{GL_COLOR_ATTACHMENT0, GL_COLOR_ATTACHMENT1};
  glDrawBuffers(and_ids ? 2 : 1, buffers.data());
}

void clear(bool and_ids) {
  const std::array<float, 4> nothing{0.0F, 0.0F, 0.0F, 0.0F};
  const std::array<GLuint, 4> no_id{no_node, no_node, no_node, no_node};
  const float farthest = 1.0F;
  glDepthMask(GL_TRUE);
  glClearBufferfv(GL_COLOR, 0, nothing.data());
  if (and_ids) glClearBufferuiv(GL_COLOR, 1, no_id.data());
  glClearBufferfv(GL_DEPTH, 0, &farthest);
}

}  // namespace

SceneRenderer::SceneRenderer(bool ids) : ids_(ids), shell_(ids), veil_(false) {}

void SceneRenderer::make_ready() const {
  solids_.make_ready();
  shell_.make_ready();
  ground_.make_ready();
  marks_.make_ready();
}

void SceneRenderer::load(const Scene& scene) {
  shell_.load(scene.shell);
  has_veil_ = scene.veil.has_value();
  if (has_veil_) veil_.load(*scene.veil);
  faces_.load(scene);
  solids_.load(scene.spool, scene.spool_sheen);
  marks_.load(scene);
  strands_.clear();
  share_ = 0.0;
  wind_ = wind_of(scene);
}

void SceneRenderer::load(const CloseUp& close_up, const Scene& scene) {
  share_ = close_up.share;
  if (close_up.strands) {
    strands_.load(*close_up.strands, left_by(scene.removed));
  } else {
    strands_.clear();
  }
  faces_.clear_discs();
  for (std::size_t i = 0; i < close_up.discs.size(); ++i) faces_.load_discs(i, close_up.discs[i]);
}

// What hides most comes first, so that little is shaded in vain.
void SceneRenderer::draw_opaque(const Frame& frame) const {
  // Many are fine, and the shell shows as much of them while the picture moves.
  const bool wanted = !strands_.empty() && !(frame.coarse && strands_.count() > most_quick_strands);
  const double strands = wanted ? share_ : 0.0;
  // Under strands the shell sinks below their axes, and still fills the chinks between them.
  const double fiber_mm = 2.0 * static_cast<double>(frame.fiber_radius_mm);
  glEnable(GL_DEPTH_TEST);
  glDepthFunc(GL_LEQUAL);
  glCullFace(GL_BACK);
  glDisable(GL_BLEND);
  glEnable(GL_CULL_FACE);
  solids_.draw_flanges(frame, wind_);
  glDisable(GL_CULL_FACE);
  if (strands >= 1.0) strands_.draw(frame, 1.0);
  glEnable(GL_CULL_FACE);
  shell_.draw(frame, strands > 0.0 ? fiber_mm : 0.0, 1.0);
  glDisable(GL_CULL_FACE);
  glEnable(GL_BLEND);
  glBlendFunc(GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  faces_.draw(frame, share_);
  if (strands > 0.0 && strands < 1.0) strands_.draw(frame, strands);
  glDisable(GL_BLEND);
  glEnable(GL_CULL_FACE);
  solids_.draw_barrel(frame, wind_);
  glDisable(GL_CULL_FACE);
}

void SceneRenderer::draw_ground(const Frame& frame) const {
  ground_.use();
  ground_.set("top", rgb_of(frame.colours.ground_top));
  ground_.set("foot", rgb_of(frame.colours.ground_foot));
  ground_.set("height", static_cast<float>(frame.height));
  glBindVertexArray(nothing_.name());
  glDrawArrays(GL_TRIANGLES, 0, 3);
}

// Over what is opaque: nothing here is hit by the pointer or hides anything.
void SceneRenderer::draw_over(const Frame& frame, const FrameStyle& style) const {
  glEnable(GL_BLEND);
  glBlendFunc(GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  glDepthMask(GL_FALSE);
  marks_.draw(frame);
  if (has_veil_) {
    glEnable(GL_CULL_FACE);
    veil_.draw(frame, 0.0, style.veil_opacity);
    glDisable(GL_CULL_FACE);
  }
  solids_.draw_glass(frame, wind_, style.flange_opacity);
  glDisable(GL_CULL_FACE);
  glDepthMask(GL_TRUE);
}

void SceneRenderer::draw_into(const Frame& frame, const FrameStyle& style) const {
  glViewport(0, 0, frame.width, frame.height);
  draw_colours(ids_);
  clear(ids_);
  draw_opaque(frame);
  draw_colours(false);
  if (!style.transparent) draw_ground(frame);
  draw_over(frame, style);
}

bool SceneRenderer::draw(const FrameTarget& target, const Scene& scene, const View& view, const Sphere& sphere,
                         const FrameStyle& style, const GoesOn& goes_on) {
  target.begin();
  Frame frame = make_frame(scene, view, sphere, target.fine_width(), target.fine_height());
  frame.dither.x = frame.factor;
  if (!goes_on) {
    draw_into(frame, style);
  } else if (!draw_bands(frame, style, goes_on)) {
    return false;
  }
  target.resolve(average_, nothing_);
  if (style.overlay == nullptr) return true;
  words_.load(*style.overlay);
  words_.draw();
  return true;
}

bool SceneRenderer::draw_bands(const Frame& frame, const FrameStyle& style, const GoesOn& goes_on) const {
  const int rows = std::max(1, static_cast<int>(band_pixels / frame.width));
  bool wanted = true;
  glEnable(GL_SCISSOR_TEST);
  for (int row = 0; wanted && row < frame.height; row += rows) {
    glScissor(0, row, frame.width, std::min(rows, frame.height - row));
    draw_into(frame, style);
    glFinish();
    wanted = goes_on(std::min(1.0, static_cast<double>(row + rows) / frame.height));
  }
  glDisable(GL_SCISSOR_TEST);
  return wanted;
}

}  // namespace laywright
