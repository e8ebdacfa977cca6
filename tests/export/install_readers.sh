#!/bin/sh
# Installs what reads models from npm into a folder, unless it is there already: install_readers.sh FOLDER
set -eu
here=$(cd "$(dirname "$0")" && pwd)
mkdir -p "$1"
if cmp -s "$here/package-lock.json" "$1/package-lock.json" && [ -d "$1/node_modules/gltf-validator" ]; then exit 0; fi
cp "$here/package.json" "$here/package-lock.json" "$1"
cd "$1" && npm ci --no-audit --no-fund
