#include "app/page_maker.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>
#include <vector>

#include "app/build_picture.h"
#include "app/picture_maker.h"
#include "base/units.h"
#include "paint/png.h"
#include "paper/cairo_sink.h"
#include "paper/section_sheet.h"
#include "plan/flatten.h"
#include "scene/camera.h"
#include "takeup/takeup_run.h"
#include "verdict/verdict.h"
#include "web/share_page.h"

namespace laywright {
namespace {

// The whole wind.
View whole_view(const Plan& plan) {
  View view;
  view.width_px = 1200;
  view.height_px = 800;
  view.camera.azimuth_deg = 24.0;
  view.camera.elevation_deg = 16.0;
  view.camera = fit_camera(plan, view);
  return view;
}

// Onto the lower face of a wedge, from so near that the wind's thickness is a third of the picture.
View open_view(const SceneSource& source) {
  View view = whole_view(source.plan());
  view.dimensions = false;
  view.wedge = Sector{0.6, 2.1};
  const double middle_mm = 0.5 * source.plan().spool().inside_width_mm;
  const double inner_mm = source.barrel_radius(middle_mm);
  const double outer_mm = std::max(0.5 * source.measurements().outer_diameter.middle_mm, inner_mm + source.d());
  view.camera.target = in_space(middle_mm, 0.5 * (inner_mm + outer_mm), view.wedge->to);
  view.camera.elevation_deg = 40.0;
  const double half_view = std::tan(0.5 * view.camera.field_of_view_deg * rad_per_deg);
  view.camera.distance_mm = std::min(view.camera.distance_mm, 1.5 * (outer_mm - inner_mm) / half_view);
  return view;
}

std::vector<SharePicture> drawn_pictures(const SceneSource& source, bool for_customer, Progress& progress) {
  PictureStyle style;
  style.title = !for_customer;
  style.transparent = for_customer;
  if (for_customer) style.text_scale = customer_text_scale;
  PictureMaker maker(source, style);
  const auto part = [&](double from, double to) {
    return [&progress, from, to](double share) {
      progress.report(from + (to - from) * share);
      return !progress.cancelled();
    };
  };
  const std::string whole = to_png(
      maker.draw(for_customer ? view_for_customer(source.plan()) : whole_view(source.plan()), part(0.0, 0.2)));
  if (progress.cancelled()) return {};
  if (for_customer) return {{"image/png", whole, "The wound spool"}};
  return {{"image/png", whole, "The whole wind"},
          {"image/png", to_png(maker.draw(open_view(source), part(0.2, 0.4))),
           "A look into the wind, cut open; coloured by layer"}};
}

// For browsers that cannot draw, and for paper. Where no picture can be drawn here, the section as a drawing.
std::vector<SharePicture> pictures_of(const SceneSource& source, const OpenContext& open, bool for_customer,
                                      Progress& progress) {
  const Result<OffscreenContext> context = open();
  if (context.ok()) {
    try {
      return drawn_pictures(source, for_customer, progress);
    } catch (const std::runtime_error&) {  // the driver refuses: the drawing does
    }
  }
  const Drawing section = draw_section_sheet(source.plan(), source.build(), source.measurements(), 0.0);
  return {{"image/png", to_png(section, 150.0), "Axial section"}};
}

}  // namespace

Result<std::string> make_share_page(const std::string& plan_text, const Plan& plan, const SceneSource& source,
                                    const OpenContext& open, const CustomerOrder* customer, Progress& progress) {
  progress.report(0.0);
  std::vector<SharePicture> pictures = pictures_of(source, open, customer != nullptr, progress);
  if (progress.cancelled()) return std::string();
  progress.report(0.4);
  const TakeupRun run = take_up(plan, source.build(), source.measurements(), progress);
  if (progress.cancelled()) return std::string();
  const WindVerdict verdict = verdict_of(plan, source.build(), source.measurements(), &run);
  SharedWind wind{"", plan, source.build(), source.measurements(), verdict, std::move(pictures)};
  std::string alone;  // a page has no catalogues
  CustomerPage page;
  if (customer == nullptr) {
    alone = flattened(plan_text, plan.asked());
  } else {
    LaySettings settings;
    settings.seed = source.build().seed;
    Result<CustomerTold> told = told_to(*customer, plan, source, settings, {progress, 0.5, 1.0});
    if (progress.cancelled()) return std::string();
    if (!told.ok()) return told.issues();
    CustomerTold to = std::move(told).value();
    alone = customer_plan_text(plan_text, plan, to.letter);
    page = {std::move(to.letter), std::move(to.summary), customer->logo ? to_png(*customer->logo) : ""};
    wind.customer = &page;
  }
  wind.plan_text = alone;
  std::string made = share_page(share_page_template(), wind);
  progress.report(1.0);
  return made;
}

}  // namespace laywright
