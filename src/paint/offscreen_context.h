// An OpenGL context without a window, for pictures on machines with or without a screen.
#pragma once

#include <memory>
#include <string>

#include "base/result.h"

namespace laywright {

// Current on the thread that opened it, until it is destroyed there. One at a time per thread.
class OffscreenContext {
 public:
  // Opens OpenGL 3.3 through EGL: Mesa's surfaceless platform, else the first device that has it. The issue says
  // what is missing and what to install, or that there is too little memory.
  [[nodiscard]] static Result<OffscreenContext> open();
  // The same, for a process whose functions of OpenGL another thread has loaded and may be using.
  [[nodiscard]] static Result<OffscreenContext> open_beside_another();

  OffscreenContext(OffscreenContext&&) noexcept;
  OffscreenContext& operator=(OffscreenContext&&) noexcept;
  ~OffscreenContext();

  // What draws: "llvmpipe (LLVM 15.0.6, 256 bits)".
  [[nodiscard]] std::string renderer() const;

 private:
  struct Session;
  explicit OffscreenContext(std::unique_ptr<Session> session);
  static Result<OffscreenContext> open(bool loads_functions);
  std::unique_ptr<Session> session_;
};

}  // namespace laywright
