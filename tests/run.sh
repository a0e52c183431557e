#!/bin/sh
# Installs what is missing, builds everything, and runs all tests, the window's included.
# With --all also the sanitizers on the quick tests, and clang-tidy on every file that has changed since it last passed.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
mkdir -p "$top/build"
log_folder=$top/build
. "$top/app/stages.sh"

everything=no
case "${1:-}" in
    "") ;;
    --all) everything=yes ;;
    *) die "sh tests/run.sh [--all]" ;;
esac
jobs=$(nproc)
ctest_log=$top/build/ctest.log

# run_ctest FOLDER LOG ARGUMENTS...: the runner's output as it comes, kept in LOG too; fails when a test fails.
run_ctest() {
    folder=$1
    log=$2
    shift 2
    ctest --test-dir "$folder" -j "$jobs" --output-on-failure --no-tests=error "$@" >"$log" 2>&1 &
    runner=$!
    trail "$log" "$runner"
    if wait "$runner"; then
        tail -n 25 "$log"
    else
        grep -vE ' +Passed +[0-9.]+ sec$|^ +Start +[0-9]+: ' "$log" | tail -n 150
        die "A test failed; all of the output is in $log"
    fi
}

stage "Looking for what is needed"
install_missing "$top/app/packages.txt" "$top/tests/packages.txt"

stage "Layout of the code (clang-format)"
find "$top/app" "$top/model" "$top/reports" "$top/tests" -name '*.h' -o -name '*.cpp' | sort |
    xargs clang-format --dry-run -Werror || die "clang-format -i on these files puts it right."

stage "Building the program and the tests"
build "$top/build/tests" "-DCMAKE_BUILD_TYPE=RelWithDebInfo" all all_verify_interface_header_sets

stage "Running the tests"
run_ctest "$top/build/tests" "$ctest_log"

if [ "$everything" = yes ]; then
    stage "Building with the sanitizers"
    build "$top/build/sanitized" "-DCMAKE_BUILD_TYPE=RelWithDebInfo -DLOWLEDGER_SANITIZE=ON -DLOWLEDGER_WINDOW=OFF" all
    stage "Running the quick tests with the sanitizers"
    run_ctest "$top/build/sanitized" "$top/build/ctest-sanitized.log" -L quick
    stage "Looking for mistakes (clang-tidy)"
    sh "$top/tests/house/tidy.sh" "$top/build/tests"
fi

stage_report
echo
grep -E 'tests passed, .* failed out of|^Total Test time' "$ctest_log"
