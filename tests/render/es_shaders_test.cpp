// Every shader compiles and links for OpenGL ES 3, which is what WebGL 2 speaks, as well: in a context of that, by the
// driver (Mesa's compiler stands for others).
#include <catch2/catch.hpp>

#include <dlfcn.h>

#include <array>
#include <filesystem>
#include <set>

#define EGL_NO_X11
#include <EGL/egl.h>
#include <EGL/eglext.h>

#include "render/gl.h"
#include "render/program.h"

using namespace laywright;

namespace {

PFNEGLGETPROCADDRESSPROC find_any = nullptr;
GlProcedure find_gl(const char* name) { return find_any(name); }

// A context of OpenGL ES 3 without a window, current while it lives.
class EsContext {
 public:
  EsContext() {
    void* library = dlopen("libEGL.so.1", RTLD_NOW | RTLD_LOCAL);
    REQUIRE(library != nullptr);
    find_any = reinterpret_cast<PFNEGLGETPROCADDRESSPROC>(dlsym(library, "eglGetProcAddress"));
    REQUIRE(find_any != nullptr);
    const auto platform_display = get<PFNEGLGETPLATFORMDISPLAYEXTPROC>("eglGetPlatformDisplayEXT");
    display_ = platform_display(EGL_PLATFORM_SURFACELESS_MESA, EGL_DEFAULT_DISPLAY, nullptr);
    REQUIRE(get<PFNEGLINITIALIZEPROC>("eglInitialize")(display_, nullptr, nullptr) == EGL_TRUE);
    REQUIRE(get<PFNEGLBINDAPIPROC>("eglBindAPI")(EGL_OPENGL_ES_API) == EGL_TRUE);
    constexpr std::array<EGLint, 5> wanted{EGL_RENDERABLE_TYPE, EGL_OPENGL_ES3_BIT, EGL_SURFACE_TYPE, 0, EGL_NONE};
    EGLConfig config = nullptr;
    EGLint found = 0;
    get<PFNEGLCHOOSECONFIGPROC>("eglChooseConfig")(display_, wanted.data(), &config, 1, &found);
    REQUIRE(found == 1);
    constexpr std::array<EGLint, 5> version{EGL_CONTEXT_MAJOR_VERSION, 3, EGL_CONTEXT_MINOR_VERSION, 0, EGL_NONE};
    context_ = get<PFNEGLCREATECONTEXTPROC>("eglCreateContext")(display_, config, EGL_NO_CONTEXT, version.data());
    REQUIRE(context_ != EGL_NO_CONTEXT);
    REQUIRE(get<PFNEGLMAKECURRENTPROC>("eglMakeCurrent")(display_, EGL_NO_SURFACE, EGL_NO_SURFACE, context_) ==
            EGL_TRUE);
    (void)load_gl(&find_gl);  // ES has not all of what this asks for, but all that compiling needs
  }
  ~EsContext() {
    get<PFNEGLMAKECURRENTPROC>("eglMakeCurrent")(display_, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
    get<PFNEGLDESTROYCONTEXTPROC>("eglDestroyContext")(display_, context_);
    get<PFNEGLTERMINATEPROC>("eglTerminate")(display_);
    get<PFNEGLBINDAPIPROC>("eglBindAPI")(EGL_OPENGL_API);
  }
  EsContext(const EsContext&) = delete;
  EsContext& operator=(const EsContext&) = delete;

 private:
  template <class Function>
  static Function get(const char* name) {
    return reinterpret_cast<Function>(find_any(name));
  }
  EGLDisplay display_ = EGL_NO_DISPLAY;
  EGLContext context_ = EGL_NO_CONTEXT;
};

std::set<std::string> names_with(const std::string& ending) {
  std::set<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(LAYWRIGHT_SOURCE_DIR "/shaders")) {
    const std::string name = entry.path().filename().string();
    if (name.ends_with(ending)) names.insert(name.substr(0, name.size() - ending.size()));
  }
  return names;
}

}  // namespace

TEST_CASE("every shader compiles and links for OpenGL ES 3") {
  const EsContext context;
  const std::string version = reinterpret_cast<const char*>(glGetString(GL_VERSION));
  REQUIRE(version.find("OpenGL ES 3") != std::string::npos);
  const std::set<std::string> vertex = names_with(".vert.glsl"), fragment = names_with(".frag.glsl");
  std::size_t linked = 0;
  for (const std::string& name : fragment) {
    INFO(name);
    // Those without a vertex shader of their name cover the whole picture.
    CHECK_NOTHROW(Program(vertex.count(name) != 0 ? name : "cover", name).use());
    ++linked;
  }
  CHECK(linked >= 10);
  // All vertex shaders had their turn.
  for (const std::string& name : vertex) CHECK((name == "cover" || fragment.count(name) != 0));
}
