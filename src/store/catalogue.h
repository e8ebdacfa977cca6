// A catalogue: a plain file of spools, fibers and machines that a shop has, whose entries plans name.
//
//   format = "lay-catalogue 1"
//   [[spool]]                             also [[fiber]]; their keys are those of the plan's table of that name
//   name = "Delivery spool 100"           what plans call it
//   source = "drawing 4711, 2021"         where its figures come from
//   barrel_diameter = "63 mm"
//   [[machine]]                           its keys stand in tables as a plan has them
//   name = "Winder 2"
//   source = "measured in March"
//   [machine.traverse]                    all but pitch, left_stop and right_stop, which belong to a wind
//   free_length = "50 mm"
//   [machine.traverse.reversal]
//   lost_motion = "0.02 mm"
//   [machine.takeup]
//   control = "constant torque"
//   [machine.dials.pitch]                 how it is set (plan/dial_text.h); also [machine.counter]
//   unit = "teeth"
//   per_unit = "0.0625 mm"
//
// An entry need not have every key that a plan must have: the plan then adds them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "plan/named_entry.h"

namespace laywright {

inline constexpr std::string_view catalogue_format = "lay-catalogue 1";

struct CatalogueEntry {
  NamedEntry named;
  std::string source;
};

struct Catalogue {
  std::vector<CatalogueEntry> entries;  // in the order of the file; those with an error are left out
  Issues issues;
};

// `file` is named in issues and entries. Issues: no TOML, another format, keys that are not known, values that cannot be read
// or are out of their range, two entries of a kind with one name, an entry without name, source or values.
[[nodiscard]] Catalogue read_catalogue(std::string_view text, const std::string& file);

}  // namespace laywright
