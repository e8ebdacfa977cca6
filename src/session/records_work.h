// What is done with records in the background. Inside the folder only.
#pragma once

#include "base/progress.h"
#include "jobs/job_result.h"
#include "session/records_desk.h"

namespace laywright {

// `known`: how many entries the place had when the same was read last; where it has as many, the result is "stopped". A trouble of the
// place is no trouble of the job: it stands in what is seen.
[[nodiscard]] JobResult<RecordsSeen> read_records(const RecordsLook& look, std::optional<long long> known);

// As `laywright record fit` with what it takes without options; what is found is kept with the record.
[[nodiscard]] JobResult<RecordFit> fit_recorded(const std::string& place, long long number, const std::string& by,
                                                Progress& progress);

}  // namespace laywright
