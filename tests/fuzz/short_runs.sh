#!/bin/sh
# Builds the fuzzers and runs each for a few seconds from its corpus.
#
#   short_runs.sh SOURCE_FOLDER WORK_FOLDER
set -eu
source=$1
work=$2
mkdir -p "$work"
log=$work/build.log

cd "$source"
if ! { cmake --preset fuzz -B "$work" && cmake --build "$work" --target fuzzers --parallel 2; } >"$log" 2>&1; then
  echo "error: cannot build the fuzzers:" >&2
  tail -n 40 "$log" >&2
  exit 1
fi
ctest --test-dir "$work" --output-on-failure
