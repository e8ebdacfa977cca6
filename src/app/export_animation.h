// Moving pictures of a wind: the spool turns once before the eye, or the wind grows.
#pragma once

#include <string>
#include <vector>

#include "app/command_outcome.h"
#include "app/export_options.h"
#include "base/progress.h"
#include "scene/scene_source.h"

namespace laywright {

// The view of a frame, `frame` from 0 to `frames` - 1. A turntable moves the eye once around the upright, from the
// view's azimuth on, and so that the last frame and the first are a step apart. A fill grows evenly in fiber length
// over the first five sixths, and then stands still.
[[nodiscard]] View view_of_frame(const SceneSource& source, const View& view, ExportKind kind, int frame,
                                 int frames);

// The files that go into options.frames_folder: frame-0001.png and so on.
[[nodiscard]] std::vector<std::string> names_of_frames(const ExportOptions& options);

// Draws the frames into options.file (WebP) and options.frames_folder (names_of_frames), whichever are given.
[[nodiscard]] CommandOutcome export_animation(const SceneSource& source, ExportKind kind,
                                              const ExportOptions& options, Progress& progress);

}  // namespace laywright
