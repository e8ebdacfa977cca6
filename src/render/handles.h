// Names of things that OpenGL holds. Each is owned by one handle, moves with it, and is released with it: the
// context it was made in must then be current.
#pragma once

#include <utility>

#include "render/gl.h"

namespace laywright {

// `Kind` has make() and release(name).
template <class Kind>
class Handle {
 public:
  Handle() = default;  // holds nothing
  [[nodiscard]] static Handle make() { return Handle(Kind::make()); }
  explicit Handle(GLuint name) : name_(name) {}

  Handle(Handle&& other) noexcept : name_(std::exchange(other.name_, 0)) {}
  Handle& operator=(Handle&& other) noexcept {
    std::swap(name_, other.name_);
    return *this;
  }
  Handle(const Handle&) = delete;
  Handle& operator=(const Handle&) = delete;
  ~Handle() {
    if (name_ != 0) Kind::release(name_);
  }

  [[nodiscard]] GLuint name() const { return name_; }
  explicit operator bool() const { return name_ != 0; }

 private:
  GLuint name_ = 0;
};

struct BufferKind {
  static GLuint make() {
    GLuint name = 0;
    glGenBuffers(1, &name);
    return name;
  }
  static void release(GLuint name) { glDeleteBuffers(1, &name); }
};

struct VertexArrayKind {
  static GLuint make() {
    GLuint name = 0;
    glGenVertexArrays(1, &name);
    return name;
  }
  static void release(GLuint name) { glDeleteVertexArrays(1, &name); }
};

struct TextureKind {
  static GLuint make() {
    GLuint name = 0;
    glGenTextures(1, &name);
    return name;
  }
  static void release(GLuint name) { glDeleteTextures(1, &name); }
};

struct FramebufferKind {
  static GLuint make() {
    GLuint name = 0;
    glGenFramebuffers(1, &name);
    return name;
  }
  static void release(GLuint name) { glDeleteFramebuffers(1, &name); }
};

struct RenderbufferKind {
  static GLuint make() {
    GLuint name = 0;
    glGenRenderbuffers(1, &name);
    return name;
  }
  static void release(GLuint name) { glDeleteRenderbuffers(1, &name); }
};

struct ProgramKind {
  static GLuint make() { return glCreateProgram(); }
  static void release(GLuint name) { glDeleteProgram(name); }
};

struct ShaderKind {
  static void release(GLuint name) { glDeleteShader(name); }
};

using Buffer = Handle<BufferKind>;
using VertexArray = Handle<VertexArrayKind>;
using Texture = Handle<TextureKind>;
using Framebuffer = Handle<FramebufferKind>;
using Renderbuffer = Handle<RenderbufferKind>;
using ProgramHandle = Handle<ProgramKind>;
using ShaderHandle = Handle<ShaderKind>;

}  // namespace laywright
