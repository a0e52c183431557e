#!/bin/sh
# Installs what is missing, builds Lowledger, and opens it on the sample studio.
# Without a display it prints the sample's handouts instead and says where they are.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
mkdir -p "$top/build"
log_folder=$top/build
. "$top/app/stages.sh"

data=${XDG_DATA_HOME:-$HOME/.local/share}/lowledger
sample=$data/sample.lowledger

stage "Looking for what is needed"
install_missing "$top/app/packages.txt"

stage "Building the program"
build "$top/build/program" "-DCMAKE_BUILD_TYPE=RelWithDebInfo -DLOWLEDGER_TESTS=OFF" lowledger lowledger-batch
programs=$top/build/program/bin

if [ ! -e "$sample" ]; then
    stage "Making the sample studio"
    mkdir -p "$data"
    "$programs/lowledger-batch" make-studio "$sample" --as-of "$(date +%F)"
fi

if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
    stage_report
    echo "Opening $sample"
    exec "$programs/lowledger" "$sample"
fi

stage "No display here: printing the sample's handouts"
"$programs/lowledger-batch" handouts "$sample" --into "$data/handouts"
stage_report
echo "The handouts are in $data/handouts"
