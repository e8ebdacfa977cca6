// A system that starts no further thread: loaded before the window's program (LD_PRELOAD), it refuses each as long as
// the file that NO_THREADS_WHILE names is there.
#include <cerrno>
#include <cstdlib>

#include <dlfcn.h>
#include <pthread.h>
#include <unistd.h>

extern "C" int pthread_create(pthread_t* thread, const pthread_attr_t* attributes, void* (*run)(void*),
                              void* given) {
  using Create = int (*)(pthread_t*, const pthread_attr_t*, void* (*)(void*), void*);
  const char* file = std::getenv("NO_THREADS_WHILE");
  if (file != nullptr && ::access(file, F_OK) == 0) return EAGAIN;
  return reinterpret_cast<Create>(::dlsym(RTLD_NEXT, "pthread_create"))(thread, attributes, run, given);
}
