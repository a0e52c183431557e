#!/bin/sh
# Runs a command on a display of its own: a virtual screen, a window manager, and an empty home, all gone afterwards.
# with_display.sh [--size WIDTHxHEIGHT] COMMAND...
set -eu
size=1280x720
if [ "${1:-}" = --size ]; then
    size=$2
    shift 2
fi
folder=$(mktemp -d "${TMPDIR:-/tmp}/lowledger-display-XXXXXX")
screen=
manager=
clean_up() {
    [ -z "$manager" ] || kill "$manager" 2>/dev/null || true
    [ -z "$screen" ] || kill "$screen" 2>/dev/null || true
    rm -rf "$folder"
}
trap clean_up EXIT
trap 'exit 130' INT TERM

# The screen writes its number once it takes connections; reading the pipe waits for that.
mkfifo "$folder/number"
Xvfb -displayfd 3 -screen 0 "${size}x24" -nolisten tcp -noreset 3>"$folder/number" 2>"$folder/screen.log" &
screen=$!
read -r number <"$folder/number"

mkdir -p "$folder/home" "$folder/run"
chmod 700 "$folder/run"
export DISPLAY=":$number" HOME="$folder/home" XDG_RUNTIME_DIR="$folder/run"
unset WAYLAND_DISPLAY XAUTHORITY XDG_CONFIG_HOME XDG_DATA_HOME XDG_CACHE_HOME DBUS_SESSION_BUS_ADDRESS
export GDK_BACKEND=x11 NO_AT_BRIDGE=1 GSETTINGS_BACKEND=memory GTK_IM_MODULE=gtk-im-context-simple
export GTK_THEME="${GTK_THEME:-Adwaita}" GDK_SCALE=1 LC_ALL=C.UTF-8 TZ=UTC
openbox --sm-disable >"$folder/manager.log" 2>&1 &
manager=$!

"$@"
