#include "scene/scene.h"

#include <algorithm>

#include "base/units.h"

namespace laywright {

namespace {

void add_faces(const SceneSource& source, const View& view, Scene& scene) {
  const FaceWindow whole = whole_face(source);
  for (const Sector& sector : scene.removed) {
    if (sector.to - sector.from >= full_turn) continue;
    scene.faces.push_back({sector.from, true, face_image(source, view, sector.from, whole)});
    const double end = sector.to >= full_turn ? sector.to - full_turn : sector.to;
    scene.faces.push_back({end, false, face_image(source, view, end, whole)});
  }
  if (view.x_from_mm) scene.cross_faces.push_back(cross_face(source, view, scene.x_from_mm, false));
  if (view.x_to_mm) scene.cross_faces.push_back(cross_face(source, view, scene.x_to_mm, true));
}

// On the faces where removed sectors begin and end; both are seen of a wedge, and their numbers agree.
void number_layers(const SceneSource& source, const View& view, Scene& scene) {
  for (const CutFace& face : scene.faces) {
    const std::vector<LayerNumber> numbers = layer_numbers(source, view, face.angle, face.looks_onward);
    scene.layer_numbers.insert(scene.layer_numbers.end(), numbers.begin(), numbers.end());
  }
}

LayPoint lay_point_of(const SceneSource& source, const View& view) {
  const std::size_t node = visible_fiber(source, view).wind_end - 1;
  LayPoint point;
  point.x_mm = source.build().nodes.x(node);
  point.r_mm = source.build().nodes.r(node);
  point.angle = full_turn * static_cast<double>(node % source.stations()) / static_cast<double>(source.stations());
  point.place = in_space(point.x_mm, point.r_mm, point.angle);
  return point;
}

}  // namespace

Scene make_scene(const SceneSource& source, const View& view) {
  Scene scene;
  scene.shell = make_shell(source, view);
  scene.veil = make_veil(source, view);
  scene.removed = removed_sectors(view);
  const ShellGrid& grid = source.shells().grid();
  const double left = grid.x_from_mm, right = left + grid.column_mm * static_cast<double>(grid.columns);
  scene.x_from_mm = std::max(left, view.x_from_mm.value_or(left));
  scene.x_to_mm = std::min(right, view.x_to_mm.value_or(right));
  add_faces(source, view, scene);
  scene.spool = make_spool(source.plan(), view);
  scene.flanges_see_through = view.flanges_see_through;
  const Material spool = spool_material(source.plan(), view.theme);
  scene.spool_colour = spool.colour;
  scene.spool_sheen = spool.sheen;
  if (view.colouring == Colouring::material) scene.sheen = fiber_material(source.plan()).sheen;
  if (view.colouring == Colouring::layer) number_layers(source, view, scene);
  scene.marks = make_marks(source, view);
  scene.lit = lit_texels(source, view, scene.shell);
  scene.dimensions = make_dimensions(source, view);
  scene.axis = make_axis(source.plan());
  scene.scale_bar = make_scale_bar(view);
  scene.legend = Colourer(source, view).legend();
  scene.lay_point = lay_point_of(source, view);
  if (view.guide && view.until_turn && *view.until_turn < source.build().turns) {
    scene.guide = make_guide(source, guide_pose(source, *view.until_turn));
    scene.guide->fiber_colour = Colourer(source, view).colour(visible_fiber(source, view).wind_end - 1);
  }
  scene.theme = view.theme;
  return scene;
}

}  // namespace laywright
