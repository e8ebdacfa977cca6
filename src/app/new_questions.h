// What `laywright new` asks for, and the lists that it can tell.
#pragma once

#include <string>

#include "store/catalogues.h"
#include "store/new_request.h"

namespace laywright {

// Asks for what the request does not say. False: the person ended it.
[[nodiscard]] bool ask_for_rest(NewRequest& request, const Catalogues& catalogues);

// The entries of a kind below their files, each on a line with its source; says so where there are none.
[[nodiscard]] std::string entries_text(const Shelf& shelf, EntryKind kind);

}  // namespace laywright
