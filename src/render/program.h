// A pair of shaders and its uniforms. They are compiled when the program is first used, or made ready for it: that takes a
// driver milliseconds each, and most pictures need few of them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <glm/glm.hpp>

#include "render/handles.h"

namespace laywright {

class Program {
 public:
  // File names in shaders/ without their endings: "shell" is shell.vert.glsl and shell.frag.glsl.
  explicit Program(std::string_view name) : Program(name, name) {}
  // `defines`: lines before the shaders, "#define IDS\n".
  Program(std::string_view vertex_name, std::string_view fragment_name, std::string_view defines = {})
      : vertex_name_(vertex_name), fragment_name_(fragment_name), defines_(defines) {}

  // Gives the shaders to the driver and does not wait for it: it may compile several at once, or beside what follows.
  void make_ready() const;

  // From here on, draws use this program. Throws std::logic_error with the compiler's words when the shaders do not
  // compile: they are part of the program, so this is a defect (or a driver's), never a person's mistake.
  void use() const;

  // Sets a uniform of the program in use; one that the compiler dropped is passed over.
  void set(const char* name, int value) const { glUniform1i(place(name), value); }
  void set(const char* name, float value) const { glUniform1f(place(name), value); }
  void set(const char* name, double value) const { set(name, static_cast<float>(value)); }
  void set(const char* name, const glm::ivec2& value) const { glUniform2i(place(name), value.x, value.y); }
  void set(const char* name, const std::vector<glm::vec2>& values) const {
    glUniform2fv(place(name), static_cast<GLsizei>(values.size()), &values.front().x);
  }
  void set(const char* name, const glm::vec2& value) const { glUniform2f(place(name), value.x, value.y); }
  void set(const char* name, const glm::vec3& value) const { glUniform3f(place(name), value.x, value.y, value.z); }
  void set(const char* name, const glm::vec4& value) const {
    glUniform4f(place(name), value.x, value.y, value.z, value.w);
  }
  void set(const char* name, const glm::mat4& value) const {
    glUniformMatrix4fv(place(name), 1, GL_FALSE, &value[0][0]);
  }

 private:
  [[nodiscard]] GLint place(const char* name) const { return glGetUniformLocation(handle_.name(), name); }

  std::string vertex_name_, fragment_name_, defines_;
  mutable ProgramHandle handle_;            // none before it is made ready
  mutable ShaderHandle vertex_, fragment_;  // until it is known whether they could be compiled
};

}  // namespace laywright
