#include "render/shell_layer.h"

#include <numbers>

#include "render/shell_levels.h"

namespace laywright {
namespace {

// Enough that a silhouette as high as a large screen is round to a tenth of a pixel.
constexpr int columns = 128, rows_all_round = 360;

void filter_smoothly(GLint around) {
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, around);
}

}  // namespace

ShellLayer::ShellLayer() : whole_(columns, rows_all_round), part_(columns, rows_all_round / 2) {}

void ShellLayer::load(const Shell& shell) {
  const ShellLevels levels = make_levels(shell);
  grid_ = shell.grid;
  fiber_diameter_mm_ = shell.fiber_diameter_mm;
  mesh_size_ = {levels.mesh_columns, levels.rows};
  mesh_column_mm_ = levels.mesh_column_mm;
  atlas_size_ = {levels.width, levels.rows};
  level_starts_.assign(levels.starts.begin(), levels.starts.begin() + static_cast<std::ptrdiff_t>(levels.levels));
  const int rows = static_cast<int>(levels.rows);
  mesh_radii_ = make_texture(mesh_size_.x, rows, one_float, levels.mesh_radius_mm.data());
  skin_ = make_texture(static_cast<int>(levels.width), rows, four_bytes, levels.skin.data());
  filter_smoothly(GL_REPEAT);
  bent_ = make_texture(static_cast<int>(levels.width), rows, four_bytes, levels.bent.data());
  filter_smoothly(GL_REPEAT);
  ids_ = make_texture(static_cast<int>(grid_.columns), rows, one_id, shell.node.data());
}

void ShellLayer::draw(const Frame& frame, double sink_mm, double opacity) const {
  if (grid_.texels() == 0) return;
  frame.use(program_);
  program_.set("radii", 0);
  program_.set("skin", 1);
  program_.set("bent", 2);
  program_.set("ids", 3);
  bind_texture(0, mesh_radii_);
  bind_texture(1, skin_);
  bind_texture(2, bent_);
  bind_texture(3, ids_);
  program_.set("field_size", mesh_size_);
  program_.set("columns", glm::vec2(grid_.x_from_mm, 1.0 / mesh_column_mm_));
  program_.set("grid_size", glm::ivec2(grid_.columns, grid_.rows));
  program_.set("grid", glm::vec2(grid_.x_from_mm, 1.0 / grid_.column_mm));
  program_.set("atlas_size", atlas_size_);
  program_.set("level_starts", level_starts_);
  program_.set("levels", static_cast<int>(level_starts_.size()));
  program_.set("columns_per_fiber", fiber_diameter_mm_ / grid_.column_mm);
  program_.set("ground", rgb_of(frame.colours.spool));
  program_.set("sink", sink_mm);
  program_.set("opacity", opacity);
  const auto grid_from = static_cast<float>(grid_.x_from_mm);
  const auto grid_to = static_cast<float>(grid_.x_from_mm + grid_.column_mm * static_cast<double>(grid_.columns));
  const float from = std::max(frame.x_range.x, grid_from), to = std::min(frame.x_range.y, grid_to);
  if (from >= to) return;
  for (const Sector& sector : frame.shown) {
    program_.set("window", glm::vec4(from, to, sector.from, sector.to));
    (sector.to - sector.from > std::numbers::pi ? whole_ : part_).draw();
  }
}

}  // namespace laywright
