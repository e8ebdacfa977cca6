// The surface of the layers shown, unrolled, as an image: rows once around upward, columns along x.
#pragma once

#include "scene/scene.h"
#include "ui/panel_image.h"

namespace laywright {

// The shell's colours, each lit by how the fiber's round leans and how open it lies, so that crossovers show as lines.
// Columns that are finer than the screen are averaged. May take long; safe on any thread. Version 0.
[[nodiscard]] PanelImage map_image(const Scene& scene);

}  // namespace laywright
