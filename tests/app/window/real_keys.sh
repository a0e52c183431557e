#!/bin/sh
# The program from outside, by real keys: a student is found, a sheet typed, the window closed; then the file is asked.
# real_keys.sh LOWLEDGER LOWLEDGER-BATCH, on a display (see with_display.sh).
set -eu
folder=$(mktemp -d "${TMPDIR:-/tmp}/lowledger-keys-XXXXXX")
trap 'rm -rf "$folder"' EXIT
studio=$folder/sample.lowledger
"$2" make-studio "$studio" --as-of 2026-11-25 >/dev/null
"$2" dump "$studio" >"$folder/before"
"$1" "$studio" --as-of 2026-11-25 2>"$folder/log" &
program=$!
# The title comes with the open studio, so that the window takes keys then.
window=$(xdotool search --sync --onlyvisible --name 'Lowledger$' | head -n 1)
xdotool windowfocus --sync "$window"
xdotool key --delay 40 alt+2 ctrl+f
xdotool type --delay 40 'Ngaio'
xdotool key --delay 40 Down ctrl+3 ctrl+2
xdotool type --delay 40 -- '+37'
xdotool key Return
xdotool type --delay 40 -- '-38'
xdotool key Return
xdotool key ctrl+q
wait "$program"
"$2" dump "$studio" >"$folder/after"
added=$(diff "$folder/before" "$folder/after" | grep '^>' || true)
for cents in 37 -38; do
    if ! printf '%s\n' "$added" | grep -q -- "[ ,(]$cents\(\.0\)\?[,)]"; then
        echo "The file holds no reading of $cents cents; what is new in it:"
        printf '%s\n' "$added"
        exit 1
    fi
done
