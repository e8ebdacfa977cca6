// Records as rows of tables. Inside the folder only. All throw what SOCI throws.
#pragma once

#include <map>
#include <string>
#include <vector>

#include <soci/soci.h>

#include "records/spool_record.h"

namespace laywright {

// The record with its number, and all of its entries.
void insert_record(soci::session& sql, const SpoolRecord& record);
// As the entry of that place, 1 = the first. Pictures must have their bytes.
void insert_entry(soci::session& sql, long long number, long long place, const RecordEntry& entry);

// Planned layers and entries of records that have only themselves so far, in one go; pictures without their bytes.
void read_details(soci::session& sql, std::map<long long, SpoolRecord>& records);
void read_picture_bytes(soci::session& sql, SpoolRecord& record);

}  // namespace laywright
