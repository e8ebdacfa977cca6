#include "app/record_command.h"

#include "app/record_parts.h"

namespace laywright {

void add_record_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine record = program.add_command("record", "What was wound and measured, kept spool by spool");
  add_record_add(record, entries, exit_code);
  add_record_amend(record, exit_code);
  add_record_list(record, exit_code);
  add_record_show(record, exit_code);
  add_record_fit(record, entries, exit_code);
  add_record_trends(record, exit_code);
  add_record_export(record, exit_code);
  add_record_import(record, exit_code);
  record.require_command();
  record.footer(
      "Records stand in one file, or on a PostgreSQL server where several machines share them: --records, or the\n"
      "variable LAYWRIGHT_RECORDS, or else records.db in your data folder. None is ever deleted or changed; what\n"
      "becomes known later is added.\n\n"
      "Examples:\n"
      "  laywright record add samples/even.lay.toml --spool-number 17 --measured samples/as-wound.csv --accept\n"
      "  laywright record list\n"
      "  laywright record show 1\n");
}

}  // namespace laywright
