#include "export/glb_fit.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "export/file_size.h"

namespace laywright {

namespace {

// In fiber diameters. The first has six sides, the last three.
constexpr std::array<double, 5> tolerances_d{0.07, 0.1, 0.15, 0.2, 0.25};
// Of the spool, and of what the list of contents says of a piece and of a layer; at most.
constexpr double spool_bytes = 250e3, piece_bytes = 500.0, layer_bytes = 400.0;

double bytes_of(const ThinnedLine& line, int sides, Numbers numbers) {
  std::size_t longest = 0;
  for (const ThinnedLayer& layer : line.layers) longest = std::max(longest, layer.nodes.size());
  // All pieces share their triangles.
  const double triangles = 12.0 * sides * static_cast<double>(std::min(longest, rings_in_piece(sides)));
  return static_cast<double>(tube_bytes(line, sides, numbers)) + triangles +
         piece_bytes * static_cast<double>(tube_pieces(line, sides)) +
         layer_bytes * static_cast<double>(line.layers.size()) + spool_bytes;
}

GlbFit fit_of(const Build& build, const NodePlaces& places, const GlbSettings& settings, double tolerance,
              int sides) {
  GlbFit fit;
  fit.line = thin_line(build, places, settings.layers, tolerance);
  fit.sides = sides;
  fit.bytes = bytes_of(fit.line, sides, settings.numbers);
  return fit;
}

Issue too_large(double bytes, const GlbSettings& settings, const std::string& cure) {
  Issue issue;
  issue.what =
      fmt::format("the model would have {}, more than the {} that are allowed; {}, or allow more with --at-most",
                  size_of_file(bytes), size_of_file(settings.most_bytes), cure);
  return issue;
}

// The outermost layers of a line that stay within the size.
bool leave_out_inner(GlbFit& fit, const GlbSettings& settings) {
  std::vector<ThinnedLayer>& layers = fit.line.layers;
  const std::size_t all = layers.size();
  // By halves: the size grows with the number of layers.
  std::size_t few = 0, many = all;
  const std::vector<ThinnedLayer> whole = layers;
  while (many - few > 1) {
    const std::size_t middle = (few + many) / 2;
    layers.assign(whole.end() - static_cast<std::ptrdiff_t>(middle), whole.end());
    (bytes_of(fit.line, fit.sides, settings.numbers) <= settings.most_bytes ? few : many) = middle;
  }
  if (few == 0) return false;
  layers.assign(whole.end() - static_cast<std::ptrdiff_t>(few), whole.end());
  fit.bytes = bytes_of(fit.line, fit.sides, settings.numbers);
  return true;
}

Result<GlbFit> as_asked(const Build& build, const NodePlaces& places, const GlbSettings& settings) {
  const double d = build.fiber_diameter_mm;
  const double tolerance = settings.tolerance_mm.value_or(tolerances_d.front() * d);
  GlbFit fit =
      fit_of(build, places, settings, tolerance, settings.sides ? *settings.sides : sides_for(d, tolerance));
  if (fit.bytes <= settings.most_bytes) return fit;
  return too_large(fit.bytes, settings,
                   fmt::format("raise --tolerance (now {} mm), lower --sides (now {}), choose fewer --layers",
                               short_figure(tolerance, 4), fit.sides));
}

}  // namespace

Result<GlbFit> fit_glb(const Build& build, const NodePlaces& places, const GlbSettings& settings) {
  if (settings.sides || settings.tolerance_mm) return as_asked(build, places, settings);
  const double d = build.fiber_diameter_mm;
  double finest_bytes = 0.0;
  GlbFit fit;
  for (const double tolerance_d : tolerances_d) {
    fit = fit_of(build, places, settings, tolerance_d * d, sides_for(d, tolerance_d * d));
    if (finest_bytes == 0.0) finest_bytes = fit.bytes;
    if (fit.bytes <= settings.most_bytes) break;
  }
  if (fit.bytes <= settings.most_bytes && fit.bytes == finest_bytes) return fit;
  const std::size_t first_wanted = fit.line.layers.front().layer;
  if (fit.bytes > settings.most_bytes && !leave_out_inner(fit, settings))
    return too_large(fit.bytes, settings, "choose fewer --layers");
  fit.note = fmt::format("made coarser to stay within {} (it would be {}): {} sides",
                         size_of_file(settings.most_bytes), size_of_file(finest_bytes), fit.sides);
  const std::size_t first_left = fit.line.layers.front().layer;
  if (first_left == first_wanted + 1) fit.note += fmt::format(", layer {} left out", first_wanted);
  if (first_left > first_wanted + 1)
    fit.note += fmt::format(", layers {} to {} left out", first_wanted, first_left - 1);
  return fit;
}

}  // namespace laywright
