#include "export/glb.h"

#include <bit>
#include <cmath>
#include <cstring>
#include <limits>
#include <utility>

#include <nlohmann/json.hpp>

#include "export/gltf_parts.h"
#include "export/tube.h"
#include "figures/figures.h"
#include "scene/palette.h"
#include "scene/spool_solid.h"

namespace laywright {

namespace {

constexpr double metres_per_mm = 1e-3;

// Puts a build together from parts.
class GlbMaker {
 public:
  GlbMaker(const SceneSource& source, const GlbSettings& settings) : source_(source), settings_(settings) {}

  Result<Glb> make(Progress& progress) {
    const NodePlaces places(source_.build());
    Result<GlbFit> fitted = fit_glb(source_.build(), places, settings_);
    if (!fitted.ok()) return fitted.issues();
    const GlbFit fit = std::move(fitted).value();
    const std::vector<int> roots{add_spool(), add_fiber(fit, places, progress)};
    parts_.finish(roots, title_of(source_.plan()));
    facts_.note = fit.note;
    return Glb{std::move(parts_.contents), std::move(parts_.bytes), facts_};
  }

 private:
  int add_spool() {
    const SpoolSolid spool = make_spool(source_.plan(), View{});
    const Rgba colour = theme_colours(Theme::light).spool;
    const int solid = parts_.add_material("Spool", colour, 0.55);
    const int flange = settings_.flanges_see_through
                           ? parts_.add_material("Flange", {colour.r, colour.g, colour.b, 90}, 0.3)
                           : solid;
    const std::vector<int> children{parts_.add_solid("Barrel", spool.barrel, solid),
                                    parts_.add_solid("Left flange", spool.left_flange, flange),
                                    parts_.add_solid("Right flange", spool.right_flange, flange)};
    return parts_.add_group("Spool", children);
  }

  int add_fiber(const GlbFit& fit, const NodePlaces& places, Progress& progress) {
    const double d = source_.d();
    const TubeMaker maker(source_.build(), places, fit.sides, settings_.numbers);
    const std::vector<ThinnedLayer>& layers = fit.line.layers;
    parts_.begin_tubes(fit.sides, settings_.numbers, tube_bytes(fit.line, fit.sides, settings_.numbers));
    std::vector<int> children;
    for (const ThinnedLayer& layer : layers) {
      const TubeLayer tube = maker.add(layer, &layer == &layers.front(), &layer == &layers.back(), parts_.bytes);
      children.push_back(parts_.add_tube(tube, material_of(layer.layer)));
      // A float of 1 at most is off by 2^-25.
      const double step = settings_.numbers == Numbers::small ? 1.0 : TubeGrid::most * 0x1p-24;
      facts_.step_mm = std::max(facts_.step_mm, step * tube.grid.step_mm);
      progress.report(static_cast<double>(children.size()) / static_cast<double>(layers.size()));
      if (progress.cancelled()) break;
    }
    parts_.end_tubes();
    facts_.first_layer = layers.front().layer;
    facts_.last_layer = layers.back().layer;
    facts_.sides = fit.sides;
    const double rounding = 0.5 * std::sqrt(3.0) * facts_.step_mm;
    facts_.deviation_mm = fit.line.deviation_mm + side_deviation(d, fit.sides) + rounding;
    return parts_.add_group("Fiber", children);
  }

  int material_of(std::size_t layer) {
    return parts_.add_material("Layer " + std::to_string(layer), layer_rgba(layer, source_.build().strokes.size()),
                               0.45);
  }

  const SceneSource& source_;
  const GlbSettings& settings_;
  GltfParts parts_{metres_per_mm};
  GlbFacts facts_;
};

void put_u32(std::ostream& out, std::uint32_t value) {
  static_assert(std::endian::native == std::endian::little, "glTF is little-endian");
  out.write(reinterpret_cast<const char*>(&value), sizeof value);
}

}  // namespace

Result<Glb> make_glb(const SceneSource& source, const GlbSettings& settings, Progress& progress) {
  Result<Glb> made = GlbMaker(source, settings).make(progress);
  if (!made.ok() || made.value().size() <= std::numeric_limits<std::uint32_t>::max()) return made;
  Issue issue;
  issue.what = "the model would be larger than 4 GiB, which glTF does not allow; choose fewer --layers or --sides";
  return issue;
}

// Source of the layout: Khronos Group, glTF 2.0 specification, section 4 (GLB file format).
void write_glb(std::ostream& out, const Glb& glb) {
  constexpr std::uint32_t magic = 0x46546C67, version = 2, json_chunk = 0x4E4F534A, binary_chunk = 0x004E4942;
  const auto put_chunk = [&](std::uint32_t type, const std::string& bytes) {
    put_u32(out, static_cast<std::uint32_t>(bytes.size()));
    put_u32(out, type);
    out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  };
  put_u32(out, magic);
  put_u32(out, version);
  put_u32(out, static_cast<std::uint32_t>(glb.size()));
  put_chunk(json_chunk, glb.contents);
  put_chunk(binary_chunk, glb.bytes);
}

}  // namespace laywright
