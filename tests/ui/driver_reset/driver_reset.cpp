// A graphics driver that is reset when it is asked to be: loaded before the window's program (LD_PRELOAD), it stands
// between GLFW and the program. Once the file that DRIVER_RESET names is there, OpenGL reports a reset, once; after that
// the file is gone. All else is the real driver's.
#include <cstdlib>
#include <cstring>

#include <dlfcn.h>
#include <unistd.h>

namespace {

using Procedure = void (*)();

unsigned reset_status() {
  constexpr unsigned no_error = 0, unknown_context_reset = 0x8255;  // GL_UNKNOWN_CONTEXT_RESET, GL/glext.h
  const char* file = std::getenv("DRIVER_RESET");
  return file != nullptr && ::unlink(file) == 0 ? unknown_context_reset : no_error;
}

template <class Function>
Function real(const char* name) {
  return reinterpret_cast<Function>(::dlsym(RTLD_NEXT, name));
}

}  // namespace

extern "C" {

Procedure glfwGetProcAddress(const char* name) {
  if (std::strcmp(name, "glGetGraphicsResetStatus") == 0) return reinterpret_cast<Procedure>(&reset_status);
  return real<Procedure (*)(const char*)>("glfwGetProcAddress")(name);
}

int glfwExtensionSupported(const char* extension) {
  if (std::strcmp(extension, "GL_KHR_robustness") == 0) return 1;
  return real<int (*)(const char*)>("glfwExtensionSupported")(extension);
}

}  // extern "C"
