#include "web/browser/picture.h"

#include <stdexcept>

#include <emscripten/html5.h>

#include "render/texture.h"

namespace laywright {
namespace {

// Beyond this, a picture is fine enough as it is: screens of phones have small pixels, and small memories.
constexpr double most_fine_pixels = 12e6;

// Both ask for the same scene: all but the camera and the picture's size.
bool same_scene(const View& a, View b) {
  b.camera = a.camera;
  b.width_px = a.width_px;
  b.height_px = a.height_px;
  return a == b;
}

std::intptr_t make_context() {
  EmscriptenWebGLContextAttributes wanted;
  emscripten_webgl_init_context_attributes(&wanted);
  wanted.majorVersion = 2;
  wanted.minorVersion = 0;
  wanted.alpha = wanted.depth = wanted.stencil = wanted.antialias = EM_FALSE;
  wanted.powerPreference = EM_WEBGL_POWER_PREFERENCE_HIGH_PERFORMANCE;
  const EMSCRIPTEN_WEBGL_CONTEXT_HANDLE context = emscripten_webgl_create_context("#picture", &wanted);
  if (context <= 0 || emscripten_webgl_make_context_current(context) != EMSCRIPTEN_RESULT_SUCCESS)
    throw std::runtime_error("this browser gives no WebGL 2");
  return context;
}

}  // namespace

Picture::Context::Context() : handle(make_context()) {}
Picture::Context::~Context() { emscripten_webgl_destroy_context(handle); }

Picture::Picture() = default;

const Scene& Picture::scene_of(const WoundPtr& wound, const View& view) {
  if (wound != wound_ || !view_ || !same_scene(*view_, view)) {
    wound_ = wound;
    view_ = view;
    scene_ = make_scene(wound->source, view);
    close_up_ = make_close_up(wound->source, scene_, view);
    loaded_ = near_loaded_ = false;
  } else if (!covers(close_up_, scene_, view)) {
    close_up_ = make_close_up(wound->source, scene_, view);
    near_loaded_ = false;
  }
  return scene_;
}

void Picture::fit(glm::ivec2 size, glm::ivec2 most) {
  const bool roomy = target_.width >= size.x && target_.height >= size.y;
  if (roomy && target_.width <= most.x && target_.height <= most.y) return;
  target_ = Target{size.x, size.y, make_texture(size.x, size.y, four_bytes, nullptr), Renderbuffer::make(),
                   Framebuffer::make()};
  glBindRenderbuffer(GL_RENDERBUFFER, target_.depth.name());
  glRenderbufferStorage(GL_RENDERBUFFER, GL_DEPTH_COMPONENT24, size.x, size.y);
  glBindFramebuffer(GL_FRAMEBUFFER, target_.framebuffer.name());
  glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, target_.colours.name(), 0);
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, target_.depth.name());
  if (glCheckFramebufferStatus(GL_FRAMEBUFFER) != GL_FRAMEBUFFER_COMPLETE)
    throw std::runtime_error("the graphics driver refuses a picture of this size");
}

void Picture::draw(const WoundPtr& wound, const View& view, Pass pass) {
  const Scene& scene = scene_of(wound, view);
  if (!loaded_) renderer_.load(scene);
  if (!loaded_ || !near_loaded_) renderer_.load(close_up_, scene);
  loaded_ = near_loaded_ = true;

  const glm::ivec2 plain(view.width_px, view.height_px);
  const glm::ivec2 finest = plain * (4.0 * plain.x * plain.y <= most_fine_pixels ? 2 : 1);
  const glm::ivec2 size = pass == Pass::fine ? finest : pass == Pass::plain ? plain : (plain + 1) / 2;
  fit(size, finest);
  glBindFramebuffer(GL_FRAMEBUFFER, target_.framebuffer.name());
  glScissor(0, 0, size.x, size.y);
  glEnable(GL_SCISSOR_TEST);
  Frame frame = make_frame(scene, view, sphere_around(wound->plan()), size.x, size.y);
  frame.coarse = pass == Pass::quick;
  renderer_.draw_into(frame, {});
  glDisable(GL_SCISSOR_TEST);
  glBindFramebuffer(GL_READ_FRAMEBUFFER, target_.framebuffer.name());
  glReadBuffer(GL_COLOR_ATTACHMENT0);
  glBindFramebuffer(GL_DRAW_FRAMEBUFFER, 0);
  // Twice as fine is halved exactly: each sample lies at the corner of four pixels.
  glBlitFramebuffer(0, 0, size.x, size.y, 0, 0, plain.x, plain.y, GL_COLOR_BUFFER_BIT,
                    size == plain ? GL_NEAREST : GL_LINEAR);
}

}  // namespace laywright
