// Lay plans as files: `*.lay.toml`, TOML 1.0 in UTF-8.
//
// The first thing a plan says is its format. There has been one so far:
//   "lay-plan 1"  this one; every key of it is listed in fields.h
// A reader of a later format reads all earlier ones. A format that is not known is an error that names those
// that are, so that an old program does not misread a new plan.
//
// All readers report every issue of a plan at once, in the order of its lines (the first 100), each with file,
// line, key path, value as written, what is allowed and what to do. Nothing they are given makes them fail
// otherwise or take longer than about a second: what is over 1 MB or nested out of reason is refused.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.h"
#include "plan/lay_plan.h"

namespace laywright {

// The numbers of a plan as they stand, with their origins; ranges and cross checks are left to check().
// `file_name` is how the person named the file; it goes into the issues. What the plan names of catalogues is looked up in
// `entries` (of all three).
[[nodiscard]] Result<PlanDraft> read_plan(std::string_view text, std::string file_name,
                                          const EntrySource* entries = nullptr);

// read_plan and check() in one, so that the issues of both come together.
[[nodiscard]] Result<Plan> plan_from_text(std::string_view text, std::string file_name,
                                          const EntrySource* entries = nullptr);

// The same from a file. Errors also as read_file has them.
[[nodiscard]] Result<Plan> load_plan(const std::filesystem::path& path, const EntrySource* entries = nullptr);

// The bytes of a plan's file, for read_plan and for saving over it later. Errors as read_file has them.
[[nodiscard]] Result<std::string> read_plan_text(const std::filesystem::path& path);

}  // namespace laywright
