// OpenGL 3.3 core, and what of it WebGL 2 shares. The functions are pointers (glad), filled by load_gl(): a test
// can put its own in their place.
#pragma once

#ifdef __EMSCRIPTEN__
#include <GLES3/gl3.h>
#else
#include <glad/gl.h>
#endif

namespace laywright {

using GlProcedure = void (*)();
using GlLoader = GlProcedure (*)(const char* name);

// Finds all functions of OpenGL 3.3 through the loader of the current context (eglGetProcAddress,
// glfwGetProcAddress). False when the context has less than 3.3. In a browser there is nothing to load.
[[nodiscard]] bool load_gl(GlLoader loader);

}  // namespace laywright
