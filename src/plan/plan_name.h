// What files of plans are called.
#pragma once

#include <filesystem>
#include <string>

namespace laywright {

inline constexpr const char* plan_ending = ".lay.toml";

// The name that a person gave, with the ending of plans where it has none of TOML: "spool" and "spool.lay" become
// "spool.lay.toml". An empty name stays empty.
[[nodiscard]] std::filesystem::path with_plan_ending(const std::filesystem::path& file);

// What a plan is called after its file, without ending: "even" of "samples/even.lay.toml". Files made of it are named so.
[[nodiscard]] std::string plan_name(const std::filesystem::path& file);

}  // namespace laywright
