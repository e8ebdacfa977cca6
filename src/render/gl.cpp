#include "render/gl.h"

namespace laywright {

bool load_gl([[maybe_unused]] GlLoader loader) {
#ifdef __EMSCRIPTEN__
  return true;
#else
  const int version = gladLoadGL(loader);
  return version >= GLAD_MAKE_VERSION(3, 3);
#endif
}

}  // namespace laywright
