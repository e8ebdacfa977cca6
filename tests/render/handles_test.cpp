// A checking go-between under the renderer: glad's functions are pointers, and here each of them that matters counts
// and checks before it calls the real one.
#include <catch2/catch.hpp>

#include <map>
#include <set>
#include <string>
#include <vector>

#include "paint/offscreen_context.h"
#include "render/laid_scene.h"
#include "render/overlay.h"
#include "render/scene_renderer.h"

using namespace laywright;

namespace {

struct Ledger {
  std::map<std::string, std::set<GLuint>> alive;
  std::vector<std::string> faults;
  int draws = 0;

  void made(const char* kind, GLsizei count, const GLuint* names) {
    for (GLsizei i = 0; i < count; ++i)
      if (!alive[kind].insert(names[i]).second) faults.push_back(std::string("made twice: ") + kind);
  }
  void released(const char* kind, GLsizei count, const GLuint* names) {
    for (GLsizei i = 0; i < count; ++i)
      if (names[i] != 0 && alive[kind].erase(names[i]) == 0)
        faults.push_back(std::string("released twice: ") + kind);
  }
  [[nodiscard]] std::size_t living() const {
    std::size_t count = 0;
    for (const auto& [kind, names] : alive) count += names.size();
    return count;
  }
};

// The functions have no place for a context: one ledger at a time, held here by the test that runs.
Ledger* ledger = nullptr;

void check_before_draw() {
  ++ledger->draws;
  GLint program = 0, array = 0;
  glGetIntegerv(GL_CURRENT_PROGRAM, &program);
  glGetIntegerv(GL_VERTEX_ARRAY_BINDING, &array);
  if (program == 0) ledger->faults.emplace_back("drawn without a program");
  if (array == 0) ledger->faults.emplace_back("drawn without a vertex array");
  if (glCheckFramebufferStatus(GL_DRAW_FRAMEBUFFER) != GL_FRAMEBUFFER_COMPLETE)
    ledger->faults.emplace_back("drawn into an unfinished framebuffer");
}
void check_after_draw() {
  if (const GLenum error = glGetError(); error != GL_NO_ERROR)
    ledger->faults.push_back("OpenGL error " + std::to_string(error));
}

#define GO_BETWEEN(Kind, kind)                             \
  decltype(glad_glGen##Kind) real_gen_##Kind;              \
  decltype(glad_glDelete##Kind) real_delete_##Kind;        \
  void gen_##Kind(GLsizei count, GLuint* names) {          \
    real_gen_##Kind(count, names);                         \
    ledger->made(kind, count, names);                      \
  }                                                        \
  void delete_##Kind(GLsizei count, const GLuint* names) { \
    ledger->released(kind, count, names);                  \
    real_delete_##Kind(count, names);                      \
  }
GO_BETWEEN(Textures, "texture")
GO_BETWEEN(Buffers, "buffer")
GO_BETWEEN(VertexArrays, "vertex array")
GO_BETWEEN(Framebuffers, "framebuffer")
GO_BETWEEN(Renderbuffers, "renderbuffer")

decltype(glad_glDrawArrays) real_draw_arrays;
decltype(glad_glDrawElements) real_draw_elements;
decltype(glad_glDrawArraysInstanced) real_draw_instanced;
void draw_arrays(GLenum mode, GLint first, GLsizei count) {
  check_before_draw();
  real_draw_arrays(mode, first, count);
  check_after_draw();
}
void draw_elements(GLenum mode, GLsizei count, GLenum type, const void* indices) {
  check_before_draw();
  real_draw_elements(mode, count, type, indices);
  check_after_draw();
}
void draw_instanced(GLenum mode, GLint first, GLsizei count, GLsizei instances) {
  check_before_draw();
  real_draw_instanced(mode, first, count, instances);
  check_after_draw();
}

// Stands between as long as it lives. A context loads the functions anew, so it is put up after one is open.
class GoBetween {
 public:
  GoBetween() {
    ledger = &own_;
    real_gen_Textures = glad_glGenTextures;
    glad_glGenTextures = &gen_Textures;
    real_delete_Textures = glad_glDeleteTextures;
    glad_glDeleteTextures = &delete_Textures;
    real_gen_Buffers = glad_glGenBuffers;
    glad_glGenBuffers = &gen_Buffers;
    real_delete_Buffers = glad_glDeleteBuffers;
    glad_glDeleteBuffers = &delete_Buffers;
    real_gen_VertexArrays = glad_glGenVertexArrays;
    glad_glGenVertexArrays = &gen_VertexArrays;
    real_delete_VertexArrays = glad_glDeleteVertexArrays;
    glad_glDeleteVertexArrays = &delete_VertexArrays;
    real_gen_Framebuffers = glad_glGenFramebuffers;
    glad_glGenFramebuffers = &gen_Framebuffers;
    real_delete_Framebuffers = glad_glDeleteFramebuffers;
    glad_glDeleteFramebuffers = &delete_Framebuffers;
    real_gen_Renderbuffers = glad_glGenRenderbuffers;
    glad_glGenRenderbuffers = &gen_Renderbuffers;
    real_delete_Renderbuffers = glad_glDeleteRenderbuffers;
    glad_glDeleteRenderbuffers = &delete_Renderbuffers;
    real_draw_arrays = glad_glDrawArrays;
    glad_glDrawArrays = &draw_arrays;
    real_draw_elements = glad_glDrawElements;
    glad_glDrawElements = &draw_elements;
    real_draw_instanced = glad_glDrawArraysInstanced;
    glad_glDrawArraysInstanced = &draw_instanced;
  }
  GoBetween(const GoBetween&) = delete;
  GoBetween& operator=(const GoBetween&) = delete;
  ~GoBetween() {
    glad_glGenTextures = real_gen_Textures;
    glad_glDeleteTextures = real_delete_Textures;
    glad_glGenBuffers = real_gen_Buffers;
    glad_glDeleteBuffers = real_delete_Buffers;
    glad_glGenVertexArrays = real_gen_VertexArrays;
    glad_glDeleteVertexArrays = real_delete_VertexArrays;
    glad_glGenFramebuffers = real_gen_Framebuffers;
    glad_glDeleteFramebuffers = real_delete_Framebuffers;
    glad_glGenRenderbuffers = real_gen_Renderbuffers;
    glad_glDeleteRenderbuffers = real_delete_Renderbuffers;
    glad_glDrawArrays = real_draw_arrays;
    glad_glDrawElements = real_draw_elements;
    glad_glDrawArraysInstanced = real_draw_instanced;
    ledger = nullptr;
  }
  [[nodiscard]] const Ledger& books() const { return own_; }

 private:
  Ledger own_;
};

}  // namespace

TEST_CASE("all that OpenGL holds is released once, and no call is out of order") {
  const auto context = OffscreenContext::open();
  REQUIRE(context.ok());
  const GoBetween between;
  const SceneSource source = small_source();
  {
    SceneRenderer renderer;
    FrameTarget target(320, 200, 2);
    for (int round = 0; round < 3; ++round) {
      View view;
      view.width_px = 320;
      view.height_px = 200;
      view.flanges_see_through = round == 1;
      if (round == 1) view.wedge = Sector{0.5, 1.6};
      if (round == 2) view.x_to_mm = 12.0;
      view.camera = fit_camera(source.plan(), view);
      view.camera.distance_mm /= 1.0 + 3.0 * round;
      const Scene scene = make_scene(source, view);
      Canvas canvas(320, 200);
      draw_overlay(canvas, scene, view);
      FrameStyle style;
      style.overlay = &canvas;
      renderer.load(scene);
      renderer.load(make_close_up(source, scene, view), scene);
      renderer.draw(target, scene, view, sphere_around(source.plan()), style);
      CHECK(target.read().bytes.size() == 320U * 200U * 4U);
    }
    FrameTarget other(64, 64, 1);
    target = std::move(other);
    CHECK(between.books().living() > 20);
  }
  CHECK(between.books().draws > 20);
  CHECK(between.books().living() == 0);
  CHECK(between.books().faults == std::vector<std::string>{});
}

TEST_CASE("the go-between finds what is wrong") {
  const auto context = OffscreenContext::open();
  REQUIRE(context.ok());
  const GoBetween between;
  GLuint forgotten = 0;
  glGenTextures(1, &forgotten);
  CHECK(between.books().living() == 1);
  glUseProgram(0);
  glDrawArrays(GL_TRIANGLES, 0, 3);
  CHECK(between.books().faults.size() >= 2);
  glDeleteTextures(1, &forgotten);
  glDeleteTextures(1, &forgotten);
  CHECK(between.books().faults.back() == "released twice: texture");
}
