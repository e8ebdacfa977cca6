#include "render/shell_layer.h"

#include <algorithm>
#include <numbers>

#include "render/shell_levels.h"

namespace laywright {
namespace {

// Enough that a silhouette as high as a large screen is round to a tenth of a pixel; and half of it for quick frames.
constexpr int columns = 128, rows_all_round = 240;

void filter_smoothly(GLint around) {
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, around);
}

}  // namespace

ShellLayer::ShellLayer(bool ids)
    : program_("shell", "shell", ids ? "#define IDS\n" : ""),
      draws_ids_(ids),
      whole_(columns, rows_all_round),
      part_(columns, rows_all_round / 2),
      coarse_whole_(columns / 2, rows_all_round / 2),
      coarse_part_(columns / 2, rows_all_round / 4) {}

void ShellLayer::load(const Shell& shell) {
  const ShellLevels levels = make_levels(shell);
  grid_ = shell.grid;
  fiber_diameter_mm_ = shell.fiber_diameter_mm;
  mesh_size_ = {levels.mesh_columns, levels.rows};
  mesh_column_mm_ = levels.mesh_column_mm;
  atlas_size_ = {levels.width, levels.rows};
  starts_.clear();
  for (std::size_t level = 0; level < levels.levels; ++level)
    starts_.emplace_back(levels.starts[level], std::max<std::size_t>(grid_.columns >> level, 1));
  const int rows = static_cast<int>(levels.rows);
  mesh_radii_ = make_texture(mesh_size_.x, rows, one_float, levels.mesh_radius_mm.data());
  skin_ = make_texture(static_cast<int>(levels.width), rows, four_bytes, levels.skin.data());
  filter_smoothly(GL_REPEAT);
  bent_ = make_texture(static_cast<int>(levels.width), rows, four_bytes, levels.bent.data());
  filter_smoothly(GL_REPEAT);
  if (draws_ids_) ids_ = make_texture(static_cast<int>(grid_.columns), rows, one_id, shell.node.data());
}

void ShellLayer::draw(const Frame& frame, double sink_mm, double opacity) const {
  if (grid_.texels() == 0) return;
  frame.use(program_);
  program_.set("radii", 0);
  program_.set("skin", 1);
  program_.set("bent", 2);
  if (draws_ids_) program_.set("ids", 3);
  bind_texture(0, mesh_radii_);
  bind_texture(1, skin_);
  bind_texture(2, bent_);
  if (draws_ids_) bind_texture(3, ids_);
  program_.set("field_size", mesh_size_);
  program_.set("columns", glm::vec2(grid_.x_from_mm, 1.0 / mesh_column_mm_));
  program_.set("grid_size", glm::vec2(grid_.columns, grid_.rows));
  program_.set("grid", glm::vec2(grid_.x_from_mm, 1.0 / grid_.column_mm));
  program_.set("per_atlas", 1.0F / atlas_size_);
  program_.set("starts", starts_);
  program_.set("levels", static_cast<float>(starts_.size()));
  program_.set("dither", frame.dither);
  program_.set("pixel", 1.0F / frame.detail);
  program_.set("fibers_per_column", grid_.column_mm / fiber_diameter_mm_);
  program_.set("eye_along", glm::vec3(frame.to_eye[0]));
  program_.set("ground", rgb_of(frame.colours.spool));
  program_.set("sheen", glm::vec2(frame.sheen.metal, frame.sheen.clear));
  program_.set("sink", sink_mm);
  program_.set("opacity", opacity);
  const auto grid_from = static_cast<float>(grid_.x_from_mm);
  const auto grid_to = static_cast<float>(grid_.x_from_mm + grid_.column_mm * static_cast<double>(grid_.columns));
  const float from = std::max(frame.x_range.x, grid_from), to = std::min(frame.x_range.y, grid_to);
  if (from >= to) return;
  for (const Sector& sector : frame.shown) {
    program_.set("window", glm::vec4(from, to, sector.from, sector.to));
    const bool most = sector.to - sector.from > std::numbers::pi;
    (frame.coarse ? (most ? coarse_whole_ : coarse_part_) : (most ? whole_ : part_)).draw();
  }
}

}  // namespace laywright
