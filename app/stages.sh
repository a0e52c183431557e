# Read by run.sh here and in tests: stages with their times, and packages from Debian.

started=$(date +%s)
stage_started=$started
stage_times=""
stage_name=""

# stage NAME: ends the stage before and begins NAME.
stage() {
    now=$(date +%s)
    if [ -n "$stage_name" ]; then
        stage_times="$stage_times$(printf '%6d s  %s' $((now - stage_started)) "$stage_name")
"
    fi
    stage_name=$1
    stage_started=$now
    [ -z "$stage_name" ] || printf '\n== %s\n' "$stage_name"
}

# Ends the last stage and prints the time of each.
stage_report() {
    stage ""
    printf '\n%s%6d s  altogether\n' "$stage_times" $(($(date +%s) - started))
}

die() {
    printf '%s\n' "$*" >&2
    exit 1
}

# install_missing LIST...: installs those packages of the lists that are not there yet, asking for nothing.
install_missing() {
    missing=""
    for package in $(grep -hv '^#' "$@"); do
        dpkg-query -W -f='${Status}\n' "$package" 2>/dev/null | grep -q '^install ok installed' || missing="$missing $package"
    done
    [ -n "$missing" ] || { echo "Everything needed is installed."; return 0; }
    command -v apt-get >/dev/null || die "These are needed, and there is no apt-get here to install them:$missing"
    if [ "$(id -u)" = 0 ]; then
        as_root="env"
    elif command -v sudo >/dev/null; then
        as_root="sudo"
    else
        die "These packages are missing; install them as root, then run this again:$missing"
    fi
    echo "Installing:$missing"
    $as_root apt-get -q update || die "The list of packages could not be brought up to date; is the network there?"
    # shellcheck disable=SC2086
    $as_root DEBIAN_FRONTEND=noninteractive apt-get -qy -o Dpkg::Use-Pty=0 install --no-install-recommends $missing >"$log_folder/install.log" 2>&1 || {
        tail -n 20 "$log_folder/install.log" >&2
        die "Installing failed; the whole log is $log_folder/install.log"
    }
}

# build FOLDER "CMAKE OPTIONS" TARGET...: configures on first use and builds, with the builder's own progress lines.
build() {
    folder=$1
    options=$2
    shift 2
    # shellcheck disable=SC2086
    cmake -S "$top" -B "$folder" -G Ninja $options >"$folder.configure.log" 2>&1 || {
        cat "$folder.configure.log" >&2
        die "The build could not be configured in $folder."
    }
    if [ -t 1 ]; then
        cmake --build "$folder" --target "$@" || die "The build failed in $folder."
    else
        # Not on a terminal: about every twentieth step, and whatever is wrong.
        cmake --build "$folder" --target "$@" >"$folder.build.log" 2>&1 &
        builder=$!
        trail "$folder.build.log" "$builder"
        wait "$builder" || {
            grep -vE '^\[[0-9]+/[0-9]+\]' "$folder.build.log" | tail -n 60 >&2
            die "The build failed in $folder; its log is $folder.build.log"
        }
        tail -n 1 "$folder.build.log"
    fi
}

# trail LOG PID: the last line of LOG every fifteen seconds while PID runs.
trail() {
    ticks=0
    while kill -0 "$2" 2>/dev/null; do
        sleep 1
        ticks=$((ticks + 1))
        [ $((ticks % 15)) -ne 0 ] || tail -n 1 "$1"
    done
}
