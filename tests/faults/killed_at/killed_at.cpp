// A program that is killed at a chosen step of its writing: loaded before it (LD_PRELOAD), it counts the calls that change
// names in a folder or bring files to the disk, and kills the program just before the one that KILLED_AT numbers, from 1.
// All else is the system's.
#include <atomic>
#include <csignal>
#include <cstdlib>

#include <dlfcn.h>
#include <sys/types.h>
#include <unistd.h>

namespace {

void step() {
  static std::atomic<long> steps{0};
  static const char* const at = std::getenv("KILLED_AT");
  if (at != nullptr && ++steps == std::atol(at)) ::kill(::getpid(), SIGKILL);
}

template <class Function>
Function real(const char* name) {
  return reinterpret_cast<Function>(::dlsym(RTLD_NEXT, name));
}

}  // namespace

extern "C" {

int rename(const char* from, const char* to) {
  step();
  return real<int (*)(const char*, const char*)>("rename")(from, to);
}

int mkdir(const char* path, mode_t mode) {
  step();
  return real<int (*)(const char*, mode_t)>("mkdir")(path, mode);
}

char* mkdtemp(char* path) {
  step();
  return real<char* (*)(char*)>("mkdtemp")(path);
}

int unlink(const char* path) {
  step();
  return real<int (*)(const char*)>("unlink")(path);
}

int unlinkat(int folder, const char* path, int flags) {
  step();
  return real<int (*)(int, const char*, int)>("unlinkat")(folder, path, flags);
}

int remove(const char* path) {
  step();
  return real<int (*)(const char*)>("remove")(path);
}

int fsync(int file) {
  step();
  return real<int (*)(int)>("fsync")(file);
}

int flock(int file, int what) {
  step();
  return real<int (*)(int, int)>("flock")(file, what);
}

}  // extern "C"
