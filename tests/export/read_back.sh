#!/bin/sh
# Exports winds and has foreign programs read them: read_back.sh PROGRAM NODE_MODULES PYTHON_WITH_VTK SAMPLES
# gltf-validator and glTF Transform from npm, VTK, and the tools that come with libwebp.
set -eu
program=$1 modules=$2 python=$3 samples=$4
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# A wind whose layers end within a turn, with a take-up of constant torque and 0.5 mm fiber.
cat > "$work/wind.lay.toml" <<'END'
format = "lay-plan 1"
title = "Read back"
[spool]
barrel_diameter = "50 mm"
flange_diameter = "90 mm"
inside_width = "12 mm"
[fiber]
diameter = "0.5 mm"
friction = 0.5
[traverse]
motion = "continuous"
pitch = "0.56 mm"
left_stop = "0.26 mm"
right_stop = "0.26 mm"
start = "left"
free_length = "50 mm"
[traverse.reversal]
kind = "instant"
[wind]
turns = 130
tension = "0.5 N"
[takeup]
control = "constant torque"
END
cd "$work"

echo "== lines and table"
"$program" export wind.lay.toml -o lines.vtp
"$program" export wind.lay.toml -o path.csv
"$python" "$here/read_lines.py" lines.vtp path.csv 0.5

echo "== model, every station"
"$program" export wind.lay.toml -o every.glb --tolerance "0 mm" --sides 5 | tee said
step=$(sed -n 's/.*the step is \([0-9.e-]*\) mm.*/\1/p' said)
node "$here/read_model.mjs" "$modules" every.glb path.csv 0.5 5 "$step"
"$program" export wind.lay.toml -o floats.glb --tolerance "0 mm" --sides 32 --floats
# So many sides that layers are made of two pieces.
node "$here/read_model.mjs" "$modules" floats.glb path.csv 0.5 32 1e-5

echo "== models against the specification"
"$program" export wind.lay.toml -o plain.glb
"$program" export wind.lay.toml -o few.glb --layers 2:3 --see-through
"$program" export "$samples/tapered-flanges.lay.toml" -o small.glb --at-most 3 --fidelity 0.5
node "$here/validate.mjs" "$modules" plain.glb few.glb floats.glb every.glb small.glb

echo "== moving pictures"
"$program" export wind.lay.toml -o turn.webp --frames frames --size 128x96 --fps 10 --seconds 1.2
webpmux -info turn.webp | tee said
grep -q 'Canvas size: 128 x 96' said
grep -q 'Number of frames: 12' said
convert turn.webp -coalesce webp-%02d.png
# The frames of both are the same pictures, but for what WebP loses.
for frame in 1 7 12; do
  off=$(compare -metric RMSE "$(printf 'frames/frame-%04d.png' $frame)" "$(printf 'webp-%02d.png' $((frame - 1)))" \
    null: 2>&1 || true)
  echo "frame $frame: $off"
  echo "$off" | sed 's/.*(\(.*\))/\1/' | awk '{ exit !($1 < 0.03) }'
done
