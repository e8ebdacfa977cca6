#include "base/addresses.h"

#ifdef __linux__
#include <sys/mman.h>
#endif

namespace laywright {

bool addresses_left([[maybe_unused]] std::size_t bytes) {
#ifdef __linux__
  void* const place = mmap(nullptr, bytes, PROT_NONE, MAP_PRIVATE | MAP_ANONYMOUS | MAP_NORESERVE, -1, 0);
  if (place == MAP_FAILED) return false;
  munmap(place, bytes);
#endif
  return true;
}

}  // namespace laywright
