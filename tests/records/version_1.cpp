#include "records/version_1.h"

namespace laywright::testing {

std::vector<std::string> version_1() {
  const std::string plan = "format = \"lay-plan 1\"";
  return {
      "CREATE TABLE laywright_versions (version BIGINT PRIMARY KEY, made TEXT NOT NULL)",
      "INSERT INTO laywright_versions (version, made) VALUES (1, '2026-11-29')",
      "CREATE TABLE records (number BIGINT PRIMARY KEY, identity TEXT NOT NULL UNIQUE, spool TEXT NOT NULL, machine "
      "TEXT NOT "
      "NULL, order_number TEXT NOT NULL, date TEXT NOT NULL, title TEXT NOT NULL, plan_file TEXT NOT NULL, revision "
      "TEXT NOT "
      "NULL, plan_text TEXT NOT NULL, program TEXT NOT NULL, fidelity DOUBLE PRECISION NOT NULL, seed TEXT NOT "
      "NULL, "
      "greatest_diameter_mm DOUBLE PRECISION NOT NULL, inside_width_mm DOUBLE PRECISION NOT NULL)",
      "CREATE TABLE planned (record BIGINT NOT NULL REFERENCES records, layer BIGINT NOT NULL, at_end BIGINT NOT "
      "NULL, "
      "layer_turns DOUBLE PRECISION NOT NULL, turns DOUBLE PRECISION NOT NULL, length_mm DOUBLE PRECISION NOT NULL, "
      "width_mm "
      "DOUBLE PRECISION NOT NULL, left_mm DOUBLE PRECISION NOT NULL, middle_mm DOUBLE PRECISION NOT NULL, right_mm "
      "DOUBLE "
      "PRECISION NOT NULL, PRIMARY KEY (record, layer))",
      "CREATE TABLE entries (record BIGINT NOT NULL REFERENCES records, entry BIGINT NOT NULL, written TEXT NOT "
      "NULL, "
      "written_by TEXT NOT NULL, program TEXT NOT NULL, decision TEXT NOT NULL, reason TEXT NOT NULL, note TEXT NOT "
      "NULL, "
      "PRIMARY KEY (record, entry))",
      "CREATE TABLE readings (record BIGINT NOT NULL, entry BIGINT NOT NULL, place BIGINT NOT NULL, layer BIGINT, "
      "at_end "
      "BIGINT NOT NULL, layer_turns DOUBLE PRECISION, counter_turns DOUBLE PRECISION, counter_length_mm DOUBLE "
      "PRECISION, "
      "left_mm DOUBLE PRECISION, middle_mm DOUBLE PRECISION, right_mm DOUBLE PRECISION, PRIMARY KEY (record, entry, "
      "place), "
      "FOREIGN KEY (record, entry) REFERENCES entries)",
      "CREATE TABLE pictures (record BIGINT NOT NULL, entry BIGINT NOT NULL, place BIGINT NOT NULL, kind TEXT NOT "
      "NULL, "
      "caption TEXT NOT NULL, size BIGINT NOT NULL, hash TEXT NOT NULL, base64 TEXT NOT NULL, PRIMARY KEY (record, "
      "entry, "
      "place), FOREIGN KEY (record, entry) REFERENCES entries)",
      "CREATE INDEX records_by_revision ON records (revision)",
      "CREATE INDEX records_by_machine ON records (machine, date)",
      "INSERT INTO records VALUES (1, '0123456789abcdef0123456789abcdef', 'S-1', 'winder', '', '2026-11-28', 'Old', "
      "'old.lay.toml', "
      "'0000-0000', '" +
          plan + "', '0.1', 1.0, '1', 103.5, 20.5)",
      "INSERT INTO planned VALUES (1, 1, 1, 19.5, 19.5, 6187.25, 20.4, 102.0, 102.0, 102.0)",
      "INSERT INTO entries VALUES (1, 1, '2026-11-28T08:00:00Z', 'me', '0.1', 'accepted', '', '')",
      "INSERT INTO readings VALUES (1, 1, 1, 1, 0, NULL, NULL, NULL, NULL, 102.1, NULL)",
      "INSERT INTO pictures VALUES (1, 1, 1, 'png', '', 6, '0000000000000000', 'Zm9vYmFy')",
  };
}

}  // namespace laywright::testing
