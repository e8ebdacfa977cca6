// How much memory the process may still have, asked for the sake of libraries that do not bear to be refused.
#pragma once

#include <cstddef>

namespace laywright {

// Whether so many bytes of addresses are left in one piece; a limit on a process's memory is counted in addresses. None is
// touched or kept. True on systems that cannot tell.
[[nodiscard]] bool addresses_left(std::size_t bytes);

}  // namespace laywright
