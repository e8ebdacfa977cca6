// Work where there is no memory for the words of a trouble. The program's own operator new is replaced for that, in all
// its forms that end in the same delete: a sanitizer's own would not be given back there.
#include <cstdlib>
#include <new>

#include <catch2/catch.hpp>

#include "jobs/trouble.h"

namespace {

thread_local bool memory_is_out = false;

}  // namespace

void* operator new(std::size_t bytes, const std::nothrow_t&) noexcept {
  return memory_is_out ? nullptr : std::malloc(bytes == 0 ? 1 : bytes);
}
void* operator new(std::size_t bytes) {
  void* const memory = operator new(bytes, std::nothrow);
  if (memory == nullptr) throw std::bad_alloc();
  return memory;
}
void operator delete(void* memory) noexcept { std::free(memory); }
void operator delete(void* memory, std::size_t) noexcept { std::free(memory); }

using namespace laywright;

TEST_CASE("work is done also where there is no memory for the words of its trouble") {
  bool done = false;
  memory_is_out = true;
  const bool troubled = attempt("something whose name is long", [&] { done = true; }).has_value();
  memory_is_out = false;
  CHECK(done);
  CHECK_FALSE(troubled);
}
