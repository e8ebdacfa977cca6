// The shaders of the folder shaders/, which travel inside the program.
#pragma once

#include <string_view>

namespace laywright {

// The text of a shader by its file name ("shell.vert.glsl"); empty if there is none.
[[nodiscard]] std::string_view shader_source(std::string_view name);

}  // namespace laywright
