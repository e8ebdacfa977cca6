#include "app/export_animation.h"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <new>
#include <stdexcept>

#include <fmt/format.h>

#include "app/picture_maker.h"
#include "base/atomic_file.h"
#include "base/folder_paths.h"
#include "base/quantity_text.h"
#include "base/readable.h"
#include "desk/playback.h"
#include "export/file_size.h"
#include "export/webp_animation.h"
#include "paint/offscreen_context.h"
#include "paint/png.h"
#include "paper/file_set.h"

namespace laywright {
namespace {

std::string frame_name(int frame) { return fmt::format("frame-{:04}.png", frame + 1); }

int frames_of(const ExportOptions& options) {
  return std::max(2, static_cast<int>(std::lround(options.frames_per_second * options.seconds)));
}

// Frames of an animation that was longer would be taken for the end of this one.
Issues refuse_leftovers(const std::string& folder, int frames) {
  std::error_code error;
  for (const std::filesystem::path& path : paths_in(folder, error)) {
    const std::string name = path.filename().string();
    if (!name.starts_with("frame-") || !name.ends_with(".png") || name <= frame_name(frames - 1)) continue;
    Issue issue;
    issue.file = folder;
    issue.what =
        fmt::format("frames of a longer animation stand in this folder ({}); choose another or empty it", name);
    return {issue};
  }
  return {};
}

// Where the frames go.
class FrameSinks {
 public:
  FrameSinks(const ExportOptions& options, const View& view) : options_(options) {
    if (options.file.empty()) return;
    movie_.emplace(WebpSettings{view.width_px, view.height_px, options.frames_per_second, options.quality});
  }

  Issues open(int frames) {
    if (options_.frames_folder.empty()) return {};
    Issues leftovers = refuse_leftovers(options_.frames_folder, frames);
    if (!leftovers.empty()) return leftovers;
    Result<FileSet> opened = FileSet::into(options_.frames_folder);
    if (!opened.ok()) return opened.issues();
    files_.emplace(std::move(opened).value());
    return {};
  }

  Issues add(const Image& image, int frame) {
    if (movie_ && !movie_->add(image.bytes)) throw std::bad_alloc();
    if (!files_) return {};
    const std::string bytes = to_png(image);
    if (bytes.empty()) throw std::bad_alloc();
    return files_->add(frame_name(frame), bytes);
  }

  // Both, or neither unless the disk fails or the program is killed between them.
  Issues commit(std::string& text) {
    if (movie_) {
      const std::string bytes = movie_->finish();
      if (bytes.empty()) throw std::bad_alloc();
      Issues trouble = write_file_atomically(options_.file, bytes);
      if (!trouble.empty()) return trouble;
      text +=
          fmt::format("Written: {}, {}\n", visible(options_.file), size_of_file(static_cast<double>(bytes.size())));
    }
    if (!files_) return {};
    Issues trouble = files_->commit();
    if (trouble.empty())
      text += fmt::format("Written into {}: {} to {}\n", visible(options_.frames_folder), files_->names().front(),
                          files_->names().back());
    return trouble;
  }

 private:
  const ExportOptions& options_;
  std::optional<WebpAnimation> movie_;
  std::optional<FileSet> files_;
};

// From so far away that the spool is seen whole wherever the eye is on its way round, unless a place was chosen.
void fit_turntable(const SceneSource& source, const ExportOptions& options, View& view) {
  if (!options.view.look_at.empty() || options.view.finding) return;
  constexpr int places = 24;
  double distance_mm = 0.0;
  View seen = view;
  for (int place = 0; place < places; ++place) {
    seen.camera.azimuth_deg = 360.0 * place / places;
    distance_mm = std::max(distance_mm, fit_camera(source.plan(), seen).distance_mm);
  }
  view.camera.target = sphere_around(source.plan()).centre;
  view.camera.distance_mm = distance_mm / options.view.zoom;
}

// As they stand in the pictures of a film.
std::vector<GuideInWay> guides_of(const SceneSource& source, const View& view, int frames) {
  std::vector<GuideInWay> guides;
  for (int frame = 0; frame < frames; ++frame) {
    const auto turn = view_of_frame(source, view, ExportKind::fill, frame, frames).until_turn;
    if (!turn) continue;
    const GuidePose pose = guide_pose(source, *turn);
    const double radius_mm = guides.empty() ? make_guide(source, pose).eye_radius_mm : guides.back().eye_radius_mm;
    guides.push_back({pose, radius_mm});
  }
  return guides;
}

CommandOutcome draw_frames(const SceneSource& source, const View& view, ExportKind kind,
                           const ExportOptions& options, Progress& progress) {
  const int frames = frames_of(options);
  FrameSinks sinks(options, view);
  if (Issues trouble = sinks.open(frames); !trouble.empty()) return {exit_not_written, std::move(trouble), {}};
  PictureStyle style;
  style.figures = !options.view.no_figures;
  style.diameter = kind == ExportKind::fill;
  if (view.guide && kind == ExportKind::fill) style.guides = guides_of(source, view, frames);
  style.most_fine_pixels = 5e6;  // half a second for a frame on two cores would be too long
  PictureMaker maker(source, style);
  for (int frame = 0; frame < frames; ++frame) {
    const Image image = maker.draw(view_of_frame(source, view, kind, frame, frames), [&](double share) {
      progress.report((frame + share) / frames);
      return !progress.cancelled();
    });
    if (progress.cancelled()) return {exit_stopped, {}, {}};
    Issues trouble = sinks.add(image, frame);
    if (!trouble.empty()) return {exit_not_written, std::move(trouble), {}};
  }
  CommandOutcome done;
  done.text = fmt::format("{} frames of {} x {} pixels, {} a second\n", frames, view.width_px, view.height_px,
                          short_figure(options.frames_per_second, 4));
  if (progress.cancelled()) return {exit_stopped, {}, {}};
  done.issues = sinks.commit(done.text);
  if (!done.issues.empty()) done.code = exit_not_written;
  return done;
}

}  // namespace

std::vector<std::string> names_of_frames(const ExportOptions& options) {
  std::vector<std::string> names;
  for (int frame = 0; frame < frames_of(options); ++frame) names.push_back(frame_name(frame));
  return names;
}

View view_of_frame(const SceneSource& source, const View& view, ExportKind kind, int frame, int frames) {
  View now = view;
  if (kind == ExportKind::turntable) {
    now.camera.azimuth_deg = std::remainder(view.camera.azimuth_deg + 360.0 * frame / frames, 360.0);
    return now;
  }
  const int growing = std::max(1, frames * 5 / 6);
  if (frame + 1 >= growing) return now;
  const double turns = view.until_turn.value_or(source.build().turns), end = length_at_turn(source, turns);
  const double turn = turn_at_length(source, end * (frame + 1) / growing);
  // Where the guide would be at another place around the spool in each frame, it stands in front, as in play.
  const bool leaps = view.guide && turns > 0.25 * growing;
  now.until_turn = leaps ? std::max(0.0, std::floor(turn - fast_angle_share) + fast_angle_share) : turn;
  return now;
}

CommandOutcome export_animation(const SceneSource& source, ExportKind kind, const ExportOptions& options,
                                Progress& progress) {
  // Title, legend and scale bar are good in motion; dimension lines would flicker.
  PictureView without_dimensions = options.view;
  without_dimensions.no_figures = true;
  const Result<View> chosen = view_from(without_dimensions, source);
  if (!chosen.ok()) return {exit_command_line, chosen.issues(), {}};
  View view = chosen.value();
  if (kind == ExportKind::turntable) fit_turntable(source, options, view);
  const Result<OffscreenContext> context = OffscreenContext::open();
  if (!context.ok()) return {exit_not_written, context.issues(), {}};
  try {
    return draw_frames(source, view, kind, options, progress);
  } catch (const std::runtime_error& error) {
    Issue issue;
    issue.what = fmt::format("no picture can be drawn: {}; try a smaller --size", error.what());
    return {exit_not_written, {issue}, {}};
  }
}

}  // namespace laywright
