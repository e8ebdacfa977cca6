// Saving lay plans.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.h"
#include "plan/lay_plan.h"

namespace laywright {

// True if they say the same: all but file and origins, numbers to the last bit. Entries of catalogues count by their names.
[[nodiscard]] bool same_plan(const PlanDraft& a, const PlanDraft& b);

// A fresh file: every value that is required or is not its default, in the order of the tables, in the units
// that the draft's origins were written in, or the usual ones. It stands alone: what entries gave is written in. Reads
// back as the same plan, without entries.
[[nodiscard]] std::string write_plan(const PlanDraft& draft);

// The original text with what changed from `before` to `after`, and nothing else: comments, order, spacing and
// the units of what was written stay; new keys go to their tables. Reads back as `after`. Precondition: `before`
// was read from the text. A text that cannot be read, or edited that way, gives way to a fresh file.
[[nodiscard]] std::string write_plan(std::string_view original_text, const PlanDraft& before,
                                     const PlanDraft& after);

// Writes the text that write_plan makes, as write_file_atomically does, and returns it: the original for the
// next time. A draft is saved whether it is sound or not, but for values that a file cannot say (NaN, infinity).
[[nodiscard]] Result<std::string> save_plan(const std::filesystem::path& path, const PlanDraft& draft);
[[nodiscard]] Result<std::string> save_plan(const std::filesystem::path& path, std::string_view original_text,
                                            const PlanDraft& before, const PlanDraft& after);

}  // namespace laywright
