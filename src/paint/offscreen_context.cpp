#include "paint/offscreen_context.h"

#include <dlfcn.h>

#include <array>
#include <cstddef>
#include <string_view>
#include <utility>

#define EGL_NO_X11
#include <EGL/egl.h>
#include <EGL/eglext.h>

#include "base/addresses.h"
#include "render/gl.h"

namespace laywright {
namespace {

Issue no_graphics(const std::string& reason) {
  Issue issue;
  issue.what =
      "no picture can be drawn: " + reason +
      ". Install a driver for OpenGL 3.3; on Debian, libegl1 and libgl1-mesa-dri draw without a graphics card";
  return issue;
}

// A software driver and its compiler, with a picture. Where they get less, some end the program instead of refusing.
constexpr std::size_t driver_needs_bytes = std::size_t{1} << 30U;

template <class Function>
Function procedure(PFNEGLGETPROCADDRESSPROC find, const char* name) {
  return reinterpret_cast<Function>(find(name));
}

// Set while load_gl() runs, which passes no state on.
thread_local PFNEGLGETPROCADDRESSPROC current_find = nullptr;
GlProcedure find_gl(const char* name) { return current_find(name); }

}  // namespace

struct OffscreenContext::Session {
  // libEGL keeps threads' state until the process ends, so it is never unloaded.
  PFNEGLGETPROCADDRESSPROC find = nullptr;
  EGLDisplay display = EGL_NO_DISPLAY;
  EGLContext context = EGL_NO_CONTEXT;
  bool loads_functions = true;

  Session() = default;
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;
  ~Session() { close(); }

  [[nodiscard]] bool load() {
    void* library = dlopen("libEGL.so.1", RTLD_NOW | RTLD_LOCAL);
    if (library == nullptr) return false;
    find = reinterpret_cast<PFNEGLGETPROCADDRESSPROC>(dlsym(library, "eglGetProcAddress"));
    return find != nullptr;
  }

  template <class Function>
  [[nodiscard]] Function get(const char* name) const {
    return procedure<Function>(find, name);
  }

  // A context on this display; nothing is kept open when it has none.
  [[nodiscard]] bool open_on(EGLDisplay candidate) {
    if (candidate == EGL_NO_DISPLAY) return false;
    display = candidate;
    if (get<PFNEGLINITIALIZEPROC>("eglInitialize")(display, nullptr, nullptr) == EGL_TRUE && make_context())
      return true;
    close();
    return false;
  }

  [[nodiscard]] bool make_context() {
    if (get<PFNEGLBINDAPIPROC>("eglBindAPI")(EGL_OPENGL_API) != EGL_TRUE) return false;
    constexpr std::array<EGLint, 5> wanted{EGL_RENDERABLE_TYPE, EGL_OPENGL_BIT, EGL_SURFACE_TYPE, 0, EGL_NONE};
    EGLConfig config = nullptr;
    EGLint found = 0;
    if (get<PFNEGLCHOOSECONFIGPROC>("eglChooseConfig")(display, wanted.data(), &config, 1, &found) != EGL_TRUE ||
        found < 1)
      return false;
    constexpr std::array<EGLint, 7> version{
        EGL_CONTEXT_MAJOR_VERSION,           3,       EGL_CONTEXT_MINOR_VERSION, 3, EGL_CONTEXT_OPENGL_PROFILE_MASK,
        EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT, EGL_NONE};
    context = get<PFNEGLCREATECONTEXTPROC>("eglCreateContext")(display, config, EGL_NO_CONTEXT, version.data());
    if (context == EGL_NO_CONTEXT) return false;
    if (get<PFNEGLMAKECURRENTPROC>("eglMakeCurrent")(display, EGL_NO_SURFACE, EGL_NO_SURFACE, context) != EGL_TRUE)
      return false;
    if (!loads_functions) return true;
    current_find = find;
    return load_gl(&find_gl);
  }

  [[nodiscard]] bool open_any() {
    const auto platform_display = get<PFNEGLGETPLATFORMDISPLAYEXTPROC>("eglGetPlatformDisplayEXT");
    if (platform_display == nullptr) return false;
    if (open_on(platform_display(EGL_PLATFORM_SURFACELESS_MESA, EGL_DEFAULT_DISPLAY, nullptr))) return true;
    const auto query_devices = get<PFNEGLQUERYDEVICESEXTPROC>("eglQueryDevicesEXT");
    std::array<EGLDeviceEXT, 16> devices{};
    EGLint count = 0;
    if (query_devices == nullptr ||
        query_devices(static_cast<EGLint>(devices.size()), devices.data(), &count) != EGL_TRUE)
      return false;
    for (EGLint i = 0; i < count; ++i)
      if (open_on(platform_display(EGL_PLATFORM_DEVICE_EXT, devices[static_cast<std::size_t>(i)], nullptr)))
        return true;
    return false;
  }

  void close() {
    if (display == EGL_NO_DISPLAY) return;
    get<PFNEGLMAKECURRENTPROC>("eglMakeCurrent")(display, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
    if (context != EGL_NO_CONTEXT) get<PFNEGLDESTROYCONTEXTPROC>("eglDestroyContext")(display, context);
    get<PFNEGLTERMINATEPROC>("eglTerminate")(display);
    context = EGL_NO_CONTEXT;
    display = EGL_NO_DISPLAY;
  }
};

OffscreenContext::OffscreenContext(std::unique_ptr<Session> session) : session_(std::move(session)) {}
OffscreenContext::OffscreenContext(OffscreenContext&&) noexcept = default;
OffscreenContext& OffscreenContext::operator=(OffscreenContext&&) noexcept = default;
OffscreenContext::~OffscreenContext() = default;

Result<OffscreenContext> OffscreenContext::open() { return open(true); }
// The functions find the context of the thread that calls them, whichever library made it.
Result<OffscreenContext> OffscreenContext::open_beside_another() { return open(false); }

Result<OffscreenContext> OffscreenContext::open(bool loads_functions) {
  if (!addresses_left(driver_needs_bytes)) {
    Issue issue;
    issue.what =
        "no picture can be drawn: there is too little memory for a graphics driver, which needs 1 GiB of addresses";
    return issue;
  }
  auto session = std::make_unique<Session>();
  session->loads_functions = loads_functions;
  if (!session->load()) return no_graphics("the library libEGL.so.1 was not found");
  if (!session->open_any()) return no_graphics("no driver here offers OpenGL 3.3 without a window");
  return OffscreenContext(std::move(session));
}

std::string OffscreenContext::renderer() const {
  const auto* words = reinterpret_cast<const char*>(glGetString(GL_RENDERER));
  return words == nullptr ? std::string() : std::string(words);
}

}  // namespace laywright
