#include "render/program.h"

#include <array>
#include <stdexcept>
#include <string>

#include "render/shader_sources.h"

namespace laywright {
namespace {

// By the context that compiles: OpenGL ES 3 (and WebGL 2, which is it), or OpenGL.
std::string_view preamble() {
  const auto* version = reinterpret_cast<const char*>(glGetString(GL_VERSION));
  if (version == nullptr || std::string_view(version).find("OpenGL ES") == std::string_view::npos) {
    return "#version 330 core\n";
  }
  return "#version 300 es\nprecision highp float;\nprecision highp int;\nprecision highp sampler2D;\n"
         "precision highp usampler2D;\n";
}

ShaderHandle compile(GLenum stage, const std::string& file, std::string_view defines) {
  const std::string_view common = shader_source("common.glsl");
  const std::string_view own = shader_source(file);
  if (own.empty()) throw std::logic_error("there is no shader " + file);
  ShaderHandle shader(glCreateShader(stage));
  const std::string_view head = preamble();
  const std::array<const GLchar*, 4> texts{head.data(), defines.data(), common.data(), own.data()};
  const std::array<GLint, 4> lengths{static_cast<GLint>(head.size()), static_cast<GLint>(defines.size()),
                                     static_cast<GLint>(common.size()), static_cast<GLint>(own.size())};
  glShaderSource(shader.name(), static_cast<GLsizei>(texts.size()), texts.data(), lengths.data());
  glCompileShader(shader.name());
  return shader;
}

// The compiler's words; empty when it had nothing to say.
std::string words_about(const ShaderHandle& shader) {
  std::array<GLchar, 2048> words{};
  glGetShaderInfoLog(shader.name(), static_cast<GLsizei>(words.size()), nullptr, words.data());
  return words.data();
}

std::string words_about(const ProgramHandle& program) {
  std::array<GLchar, 2048> words{};
  glGetProgramInfoLog(program.name(), static_cast<GLsizei>(words.size()), nullptr, words.data());
  return words.data();
}

}  // namespace

void Program::make_ready() const {
  if (handle_) return;
  vertex_ = compile(GL_VERTEX_SHADER, vertex_name_ + ".vert.glsl", defines_);
  fragment_ = compile(GL_FRAGMENT_SHADER, fragment_name_ + ".frag.glsl", defines_);
  handle_ = ProgramHandle::make();
  glAttachShader(handle_.name(), vertex_.name());
  glAttachShader(handle_.name(), fragment_.name());
  glLinkProgram(handle_.name());
}

void Program::use() const {
  make_ready();
  if (vertex_) {
    // One question for all: each has to wait for the driver.
    GLint linked = GL_FALSE;
    glGetProgramiv(handle_.name(), GL_LINK_STATUS, &linked);
    if (linked != GL_TRUE) {
      throw std::logic_error("shaders " + vertex_name_ + " and " + fragment_name_ + " do not link: " +
                             words_about(vertex_) + words_about(fragment_) + words_about(handle_));
    }
    vertex_ = ShaderHandle();
    fragment_ = ShaderHandle();
  }
  glUseProgram(handle_.name());
}

}  // namespace laywright
