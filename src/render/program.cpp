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

struct ShaderKind {
  static void release(GLuint name) { glDeleteShader(name); }
};
using Shader = Handle<ShaderKind>;

Shader compile(GLenum stage, const std::string& file, std::string_view defines) {
  const std::string_view common = shader_source("common.glsl");
  const std::string_view own = shader_source(file);
  if (own.empty()) throw std::logic_error("there is no shader " + file);
  Shader shader(glCreateShader(stage));
  const std::string_view head = preamble();
  const std::array<const GLchar*, 4> texts{head.data(), defines.data(), common.data(), own.data()};
  const std::array<GLint, 4> lengths{static_cast<GLint>(head.size()), static_cast<GLint>(defines.size()),
                                     static_cast<GLint>(common.size()), static_cast<GLint>(own.size())};
  glShaderSource(shader.name(), static_cast<GLsizei>(texts.size()), texts.data(), lengths.data());
  glCompileShader(shader.name());
  GLint compiled = GL_FALSE;
  glGetShaderiv(shader.name(), GL_COMPILE_STATUS, &compiled);
  if (compiled == GL_TRUE) return shader;
  std::array<GLchar, 2048> words{};
  glGetShaderInfoLog(shader.name(), static_cast<GLsizei>(words.size()), nullptr, words.data());
  throw std::logic_error("shader " + file + " does not compile: " + words.data());
}

}  // namespace

Program::Program(std::string_view vertex_name, std::string_view fragment_name, std::string_view defines)
    : handle_(ProgramHandle::make()) {
  if (defines.empty()) defines = "\n";  // OpenGL takes no null text
  const Shader vertex = compile(GL_VERTEX_SHADER, std::string(vertex_name) + ".vert.glsl", defines);
  const Shader fragment = compile(GL_FRAGMENT_SHADER, std::string(fragment_name) + ".frag.glsl", defines);
  glAttachShader(handle_.name(), vertex.name());
  glAttachShader(handle_.name(), fragment.name());
  glLinkProgram(handle_.name());
  GLint linked = GL_FALSE;
  glGetProgramiv(handle_.name(), GL_LINK_STATUS, &linked);
  if (linked == GL_TRUE) return;
  std::array<GLchar, 2048> words{};
  glGetProgramInfoLog(handle_.name(), static_cast<GLsizei>(words.size()), nullptr, words.data());
  throw std::logic_error("shaders " + std::string(fragment_name) + " do not link: " + words.data());
}

}  // namespace laywright
