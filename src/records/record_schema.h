// The tables in which records stand, and how older ones become today's. Inside the folder only.
#pragma once

#include <soci/soci.h>

#include "base/issue.h"
#include "records/records_place.h"

namespace laywright {

// What this program writes. The table laywright_versions holds every version that a database has had.
inline constexpr int schema_version = 2;

// Brings the database to this version, in one transaction. Without `make`, one that holds no records yet is an issue. Other
// issues: a newer version; a file that holds something else. Throws what SOCI throws.
[[nodiscard]] Issues bring_to_schema(soci::session& sql, const RecordsPlace& place, bool make);

}  // namespace laywright
