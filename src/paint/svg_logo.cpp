#include "paint/svg_logo.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <optional>

#include <fmt/format.h>
#include <librsvg/rsvg.h>

#include "base/readable.h"
#include "paint/logo.h"

namespace laywright {
namespace {

struct Found {
  std::size_t at = 0;
  std::string what;
};

struct Refused {
  std::string_view word;
  const char* what;
};
// In small letters. Anywhere in the file, in a text or a comment as well: a mark has no need of these words.
constexpr std::array<Refused, 11> refused_words{{{"<script", "a script"},
                                                 {":script", "a script"},
                                                 {"javascript:", "a script"},
                                                 {"<foreignobject", "foreign content"},
                                                 {":foreignobject", "foreign content"},
                                                 {"<!doctype", "a document type"},
                                                 {"<!entity", "an entity"},
                                                 {"<?xml-stylesheet", "a style sheet from outside"},
                                                 {"@import", "a style sheet from outside"},
                                                 {"xml:base", "another place that its references start from"},
                                                 {"<iframe", "foreign content"}}};

bool is_name(char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '-' || c == '_' || c == ':'; }
bool is_space(char c) { return std::isspace(static_cast<unsigned char>(c)) != 0; }

std::size_t past_space(std::string_view text, std::size_t at) {
  while (at < text.size() && is_space(text[at])) ++at;
  return at;
}

// What stands behind a reference: in quotes or brackets, up to a hundred characters.
std::string target_at(std::string_view text, std::size_t at) {
  at = past_space(text, at);
  while (at < text.size() && (text[at] == '"' || text[at] == '\'')) ++at;
  at = past_space(text, at);
  const std::size_t end = std::min(text.find_first_of("\"')>", at), text.size());
  return std::string(text.substr(at, end - at));
}

bool stays_inside(const std::string& target) { return target.empty() || target.front() == '#'; }

std::optional<Found> word_refused(std::string_view small) {
  for (const auto& [word, what] : refused_words)
    if (const std::size_t at = small.find(word); at != std::string_view::npos) return Found{at, what};
  return std::nullopt;
}

// href="...", src="...", of any prefix; and url(...) in a style.
std::optional<Found> reference_refused(std::string_view small) {
  for (const std::string_view name : {"href", "src", "url"})
    for (std::size_t at = small.find(name); at != std::string_view::npos; at = small.find(name, at + 1)) {
      const std::size_t behind = past_space(small, at + name.size());
      if (behind >= small.size() || small[behind] != (name == "url" ? '(' : '=')) continue;
      const std::string target = target_at(small, behind + 1);
      if (!stays_inside(target)) return Found{at, fmt::format("a reference to outside it ({})", readable(target))};
    }
  return std::nullopt;
}

// onload="...": an attribute that begins so.
std::optional<Found> event_refused(std::string_view small) {
  for (std::size_t at = small.find("on"); at != std::string_view::npos; at = small.find("on", at + 1)) {
    if (at == 0 ||
        !(is_space(small[at - 1]) || small[at - 1] == '"' || small[at - 1] == '\'' || small[at - 1] == '/'))
      continue;
    std::size_t end = at;
    while (end < small.size() && is_name(small[end])) ++end;
    const std::size_t behind = past_space(small, end);
    if (end > at + 2 && behind < small.size() && small[behind] == '=')
      return Found{at, fmt::format("a script for an event ({})", small.substr(at, end - at))};
  }
  return std::nullopt;
}

std::optional<Found> first_refused(std::string_view bytes) {
  std::string small(bytes);
  std::transform(small.begin(), small.end(), small.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  if (small.find('\0') != std::string::npos) return Found{small.find('\0'), "a character that is none"};
  // Written as a number, a word would not be found.
  if (const std::size_t at = small.find("&#"); at != std::string::npos)
    return Found{at, "characters written as numbers"};
  for (const auto& find : {word_refused, reference_refused, event_refused})
    if (std::optional<Found> found = find(small)) return found;
  return std::nullopt;
}

using LogoHandle = std::unique_ptr<RsvgHandle, decltype(&g_object_unref)>;

// Of no base: nothing outside it can be found.
LogoHandle handle_of(std::string_view bytes) {
  GError* error = nullptr;
  RsvgHandle* handle =
      rsvg_handle_new_from_data(reinterpret_cast<const guint8*>(bytes.data()), bytes.size(), &error);
  if (error != nullptr) g_error_free(error);
  return {handle, &g_object_unref};
}

// As it says, or by its view box, or a square.
std::array<double, 2> size_of(RsvgHandle* handle) {
  double width = 0.0, height = 0.0;
  if (rsvg_handle_get_intrinsic_size_in_pixels(handle, &width, &height) != FALSE && width > 0.0 && height > 0.0) {
    // A drawing has no pixels of its own: as fine as may be.
    const double times = drawn_logo_px / std::max(width, height);
    return {width * times, height * times};
  }
  gboolean has_width = FALSE, has_height = FALSE, has_box = FALSE;
  RsvgLength of_width{}, of_height{};
  RsvgRectangle box{};
  rsvg_handle_get_intrinsic_dimensions(handle, &has_width, &of_width, &has_height, &of_height, &has_box, &box);
  if (has_box != FALSE && box.width > 0.0 && box.height > 0.0) {
    const double times = drawn_logo_px / std::max(box.width, box.height);
    return {box.width * times, box.height * times};
  }
  return {drawn_logo_px, drawn_logo_px};
}

Image rendered(RsvgHandle* handle) {
  const auto [wanted_width, wanted_height] = size_of(handle);
  const auto [width, height] = fitted_logo(wanted_width, wanted_height);
  const LogoSurface surface = logo_surface(width, height);
  {
    const std::unique_ptr<cairo_t, decltype(&cairo_destroy)> context(cairo_create(surface.get()), &cairo_destroy);
    const RsvgRectangle viewport{0.0, 0.0, static_cast<double>(width), static_cast<double>(height)};
    GError* error = nullptr;
    const bool drawn = rsvg_handle_render_document(handle, context.get(), &viewport, &error) != FALSE;
    if (error != nullptr) g_error_free(error);
    if (!drawn) return {};
  }
  return pixels_of(surface.get());
}

}  // namespace

Result<Image> svg_logo(std::string_view bytes, const std::string& file) {
  Issue issue;
  issue.file = file;
  if (const std::optional<Found> found = first_refused(bytes)) {
    const std::string_view before = bytes.substr(0, found->at);
    issue.line = 1 + static_cast<int>(std::count(before.begin(), before.end(), '\n'));
    issue.what =
        fmt::format("this SVG has {}, which a logo may not; save it as a plain SVG or as a PNG", found->what);
    return issue;
  }
  const LogoHandle handle = handle_of(bytes);
  Image image = handle ? rendered(handle.get()) : Image{};
  if (image.bytes.empty()) {
    issue.what = "this SVG is damaged and cannot be drawn; save the logo anew, or as a PNG";
    return issue;
  }
  return image;
}

}  // namespace laywright
