// Why a panel does not show what it should.
#pragma once

#include "base/issue.h"
#include "scene/view.h"

namespace laywright {

// A line or two in the colour of errors; none where nothing is wrong.
void panel_trouble(const Issues& trouble, Theme theme);

}  // namespace laywright
