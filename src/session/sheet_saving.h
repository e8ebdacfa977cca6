// The set-up sheet, as a file that is saved.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "paper/drawing.h"
#include "session/file_saving.h"

namespace laywright {

// The sheet's bytes, for a FileWriter. Precondition: the path has an ending that sheet_format_of knows. Errors: there is
// too little memory.
[[nodiscard]] MakeFile sheet_maker(const std::string& path, std::shared_ptr<const std::vector<Drawing>> pages,
                                   int page);

}  // namespace laywright
