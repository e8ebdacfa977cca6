#!/bin/sh
# Installs what Laywright is built and tested with, on Debian 12: as root, or through sudo. Does nothing when all
# is there.
#
#   sh cmake/install-packages.sh         to build the program
#   sh cmake/install-packages.sh test    to test it, too
set -eu

packages="g++ cmake ninja-build pkg-config libtomlplusplus-dev libcli11-dev libfmt-dev libfast-float-dev nlohmann-json3-dev libcairo2-dev libqrencode-dev libjpeg-dev libopencv-core-dev libopencv-imgproc-dev libnlopt-cxx-dev libnlopt-dev libeigen3-dev libboost-dev libsoci-dev libsqlite3-dev libpq-dev python3-glad librsvg2-bin librsvg2-dev dpkg-dev file libegl-dev libegl1 libgl1-mesa-dri libglm-dev libwebp-dev libimgui-dev libglfw3-dev fonts-dejavu-core emscripten"
if [ "${1:-}" = test ]; then
  packages="$packages catch2 libcgal-dev libfcl-dev libpng-dev libassimp-dev python3-vtk9 python3-numpy webp libxml2-utils libbenchmark-dev poppler-utils zbar-tools clang-format clang-tidy clang-14 libclang-rt-14-dev valgrind python3 parallel xvfb xdotool imagemagick desktop-file-utils shared-mime-info libglib2.0-bin groff-base man-db chromium chromium-driver python3-selenium postgresql"
  # Comes with Node.js from elsewhere, and then must not be installed beside it.
  command -v npm >/dev/null || packages="$packages npm"
fi

missing=""
for package in $packages; do
  status=$(dpkg-query -W -f '${Status}' "$package" 2>/dev/null || true)
  [ "$status" = "install ok installed" ] || missing="$missing $package"
done
[ -n "$missing" ] || exit 0

as_root=""
if [ "$(id -u)" -ne 0 ]; then
  if ! command -v sudo >/dev/null; then
    echo "error: these packages are missing, and only root can install them:$missing" >&2
    exit 1
  fi
  as_root=sudo
fi
echo "Installing:$missing" >&2
export DEBIAN_FRONTEND=noninteractive
$as_root apt-get update -qq
# shellcheck disable=SC2086  # a list of words
$as_root apt-get install -y -qq --no-install-recommends $missing >/dev/null
