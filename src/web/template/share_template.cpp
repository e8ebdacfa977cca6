// The page without a wind, inside the program: the file's bytes stand in it as they are.
#include "web/share_page.h"

#ifdef LAYWRIGHT_SHARE_PAGE_FILE
__asm__(
    ".section .rodata\n"
    "laywright_share_page_begin:\n"
    ".incbin \"" LAYWRIGHT_SHARE_PAGE_FILE
    "\"\n"
    "laywright_share_page_end:\n"
    ".byte 0\n"
    ".previous\n");

extern "C" {
extern const char laywright_share_page_begin[];
extern const char laywright_share_page_end[];
}
#endif

namespace laywright {

std::string_view share_page_template() {
#ifdef LAYWRIGHT_SHARE_PAGE_FILE
  return {laywright_share_page_begin,
          static_cast<std::size_t>(laywright_share_page_end - laywright_share_page_begin)};
#else
  return {};
#endif
}

}  // namespace laywright
