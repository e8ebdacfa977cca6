#!/bin/sh
# Do a debug and a release configuration lay the same bits? Builds the program lay_hashes in another configuration
# and compares what it prints with what the one at hand prints.
#
#   same_bits.sh SOURCE_FOLDER WORK_FOLDER LAY_HASHES OTHER_BUILD_TYPE
set -eu
source=$1
work=$2
program=$3
type=$4
mkdir -p "$work"
log=$work/$type.log

# Without what only a debugger reads: it takes longer to write than the program to compile.
if ! { cmake -G Ninja -S "$source" -B "$work/$type" -DCMAKE_BUILD_TYPE="$type" -DCMAKE_CXX_FLAGS_DEBUG= -DLAYWRIGHT_TESTS=ON &&
  cmake --build "$work/$type" --parallel 2 --target lay_hashes; } >"$log" 2>&1; then
  echo "error: cannot build lay_hashes as $type:" >&2
  tail -n 40 "$log" >&2
  exit 1
fi

"$program" >"$work/this.hashes"
"$work/$type/tests/lay_hashes" >"$work/$type.hashes"
test -s "$work/this.hashes"
if ! diff "$work/this.hashes" "$work/$type.hashes"; then
  echo "error: this configuration (<) and $type (>) lay different bits; a line is: seed, stations per turn, nodes, hash" >&2
  exit 1
fi
echo "$(wc -l <"$work/this.hashes") builds, the same bits as in $type"
