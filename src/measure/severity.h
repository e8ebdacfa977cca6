// How severe each finding is, by what it does later, when the spool is inspected or unwound:
//   grave         the wind is not to be accepted with it: beyond a limit of acceptance.h (grade.h: do not wind)
//   worth a look  near such a limit; or large enough to be seen on the spool
//   small         a place as every wind has some
// A kind of which there are many places is weighed as a whole, too: where its places per km, or the fiber beside gaps, are near
// or over the limit, those findings are as severe that have a tenth or more of the places.
#pragma once

#include "measure/measurements.h"

namespace laywright {

// "grave", "worth a look", "small": stable, as in the JSON document.
[[nodiscard]] const char* name_of(FindingSeverity severity);

// A place as every wind has some: told by number, not one by one.
[[nodiscard]] inline bool is_small(const Finding& finding) { return finding.severity == FindingSeverity::small; }

// Places of all findings of a kind.
[[nodiscard]] int places_of(const Measurements& measurements, FindingKind kind);

// Places of a kind per km of fiber; 0 of an empty build.
[[nodiscard]] double places_per_km(const Build& build, const Measurements& measurements, FindingKind kind);

// Of the fiber, the share that lies beside an open gap; 0 of an empty build.
[[nodiscard]] double share_beside_gaps(const Build& build, const Measurements& measurements);

// The largest finding of a kind, d; 0 where there is none.
[[nodiscard]] double largest_d(const Measurements& measurements, FindingKind kind);

// Sets the severity of all findings, and puts the gravest first: of grave ones the kind that is furthest over its limit; else
// their order stays (gravity.h).
void set_severities(const Plan& plan, const Build& build, Measurements& measurements);

}  // namespace laywright
