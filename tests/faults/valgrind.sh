#!/bin/sh
# One wind with all its reports under valgrind: no byte is read before it is written, none outside of what was asked
# for, none is lost. Prints valgrind's own counts.
#
#   valgrind.sh PROGRAM FOLDER
set -eu
program=$1
folder=$2
rm -rf "$folder"
mkdir -p "$folder"
cat >"$folder/small.lay.toml" <<'PLAN'
format = "lay-plan 1"
title = "Small"
[spool]
barrel_diameter = "50 mm"
flange_diameter = "100 mm"
inside_width = "6 mm"
flange_taper = "2 deg"
flange_runout = "0.1 mm"
[fiber]
diameter = "1 mm"
friction = 0.4
linear_mass = "1 kg/km"
[traverse]
pitch = "1.05 mm"
left_stop = "0.4 mm"
right_stop = "0.4 mm"
free_length = "50 mm"
pitch_scatter = "1 %"
[traverse.reversal]
kind = "dwell"
turns = 0.5
[wind]
turns = 20
line_speed = "100 m/min"
[[wind.step]]
from_layer = 2
pitch = "1.2 mm"
PLAN

# Without OpenGL, whose processor code is made while it runs: the sheet then has the outline of the spool.
export __EGL_VENDOR_LIBRARY_DIRS=/nowhere __EGL_VENDOR_LIBRARY_FILENAMES=/nowhere/none.json
if ! valgrind --error-exitcode=99 --leak-check=full --show-leak-kinds=definite,indirect,possible \
  --errors-for-leak-kinds=definite,indirect,possible \
  --suppressions="$(dirname "$0")/fontconfig.supp" --log-file="$folder/valgrind.log" \
  "$program" lay "$folder/small.lay.toml" --out "$folder/reports" >"$folder/summary" 2>&1; then
  cat "$folder/summary" "$folder/valgrind.log"
  exit 1
fi
test -s "$folder/reports/build.json"
grep -E 'in use at exit|total heap usage|lost:|reachable:|suppressed:|ERROR SUMMARY' "$folder/valgrind.log"
grep -q 'ERROR SUMMARY: 0 errors' "$folder/valgrind.log"
