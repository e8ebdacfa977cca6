// What must hold for every input: a fuzzer sees that it does not when the program ends abnormally.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <string>

namespace laywright::fuzz {

inline void require(bool holds, const std::string& what) {
  if (holds) return;
  std::fprintf(stderr, "\nDoes not hold: %s\n", what.c_str());
  std::abort();
}

}  // namespace laywright::fuzz
