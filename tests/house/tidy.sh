#!/bin/sh
# clang-tidy on every .cpp whose own text, headers of this project, or settings have changed since it last passed.
# sh tests/house/tidy.sh BUILD-FOLDER
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
build=$1
passed=$build/tidy-passed
mkdir -p "$passed"
cd "$top"

headers=$(find app model reports tests -name '*.h' -print0 | sort -z | xargs -0 cat .clang-tidy tests/.clang-tidy | sha256sum | cut -c1-16)
todo=""
for file in $(find app model reports tests -name '*.cpp' | sort); do
    grep -q "\"file\": \".*/$file\"" "$build/compile_commands.json" || continue
    mark=$passed/$(cat "$file" | sha256sum | cut -c1-32)-$headers
    [ -e "$mark" ] || todo="$todo $file:$mark"
done
[ -n "$todo" ] || { echo "Nothing has changed since it last passed."; exit 0; }
printf '%s\n' $todo | xargs -P "$(nproc)" -I{} sh -c '
    file=${1%%:*}
    mark=${1#*:}
    if clang-tidy --quiet --extra-arg=-Wno-unknown-warning-option -p "$2" "$file" >"$mark.out" 2>/dev/null; then
        mv "$mark.out" "$mark"
        echo "  $file"
    else
        cat "$mark.out"
        rm -f "$mark.out"
        exit 1
    fi' sh {} "$build" || { echo "clang-tidy has found something; see above."; exit 1; }
