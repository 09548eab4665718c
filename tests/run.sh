#!/bin/sh
# Every test: `sh tests/run.sh`, with the thousands of simulated rooms too: `sh tests/run.sh --full`.
# Safe to run twice. Ends with 'N passed, N failed'; the exit status is 0 when none failed.
set -u
cd "$(dirname "$0")/.."
. rooms/packages.sh
need $for_program $for_tests || exit 1

passed=0
failed=0
logs=build/logs
mkdir -p "$logs"
# ccache then knows a source again in another checkout.
CCACHE_BASEDIR=$PWD
CCACHE_NOHASHDIR=1
export CCACHE_BASEDIR CCACHE_NOHASHDIR

# `stage NAME COMMAND...` runs one check and keeps its output; what it counts is worked out after.
stage() {
  log=$logs/$(echo "$1" | tr ' /' '--').log
  shift
  "$@" >"$log" 2>&1 </dev/null
}

count() { # name, how many passed, how many failed
  passed=$((passed + $2))
  failed=$((failed + $3))
  if [ "$3" -eq 0 ]; then echo "ok      $1 ($2)"; else
    echo "FAILED  $1 ($2 passed, $3 failed)"
    tail -n 60 "$log"
  fi
}

one() { # a check that passes or fails as a whole
  if stage "$@"; then count "$1" 1 0; else count "$1" 0 1; fi
}

# Catch2 closes with 'All tests passed (9 assertions in 3 test cases)',
# 'test cases: 5 | 4 passed | 1 failed' or 'No tests ran'; a program that dies closes with neither.
catch() {
  name=$1
  if stage "$@" --use-colour no; then status=0; else status=1; fi
  good=$(sed -n -e 's/^All tests passed (.* in \([0-9]*\) test case.*/\1/p' \
    -e 's/^test cases: .* \([0-9]*\) passed.*/\1/p' "$log" | tail -n 1)
  bad=$(sed -n 's/^test cases: .* \([0-9]*\) failed.*/\1/p' "$log" | tail -n 1)
  [ "$status" -ne 0 ] && [ "${bad:-0}" -eq 0 ] && bad=1
  count "$name" "${good:-0}" "${bad:-0}"
}

# Python's unittest closes with 'Ran 9 tests in 1s' and 'OK' or 'FAILED (failures=1, errors=1)'.
python_tests() {
  name=$1
  shift
  if stage "$name" /usr/bin/python3 -m unittest discover "$@"; then status=0; else status=1; fi
  all=$(sed -n 's/^Ran \([0-9]*\) test.*/\1/p' "$log" | tail -n 1)
  bad=$(sed -n 's/^FAILED (\(.*\))/\1/p' "$log" | tr -dc '0-9\n,' | tr ',' '+' | tail -n 1)
  bad=$((${bad:-$status}))
  [ "${all:-0}" -eq 0 ] && bad=1 && all=1
  count "$name" $((all - bad)) "$bad"
}

build() { # folder, cmake options
  folder=$1
  shift
  cmake -S . -B "build/$folder" -G Ninja "$@" &&
    cmake --build "build/$folder" -j "$(nproc)" --target $checked
}

programs() { find "build/$1/tests" -maxdepth 1 -name 'test_*' -type f -perm -u+x | sort; }

checked=all
one 'release build' build release -DCMAKE_BUILD_TYPE=Release -DCMAKE_COMPILE_WARNING_AS_ERROR=ON
for program in $(programs release); do
  catch "release $(basename "$program")" "$program"
done
NOOKFIT=build/release/src/nookfit
export NOOKFIT
python_tests 'layers' -s tests/layers -p '*_test.py'
python_tests 'command line' -s tests/cli -p '*_test.py'
one 'layers of the tree' /usr/bin/python3 tests/layers/layers.py .
one 'format' sh -c 'git ls-files "*.cpp" "*.h" | xargs clang-format --dry-run -Werror'

# A few seconds of libFuzzer a reader; the long runs are typed by hand (tests/fuzz/fuzz.sh).
one 'fuzzed readers' sh tests/fuzz/fuzz.sh

# What reads a user's files; all else, and clang-tidy, with --full.
checked='test_base test_room test_job'
[ "${1:-}" = --full ] && checked=all
one 'sanitized build' build sanitized -DCMAKE_BUILD_TYPE=Release -DNOOKFIT_SANITIZE=ON
for program in $(programs sanitized); do
  catch "sanitized $(basename "$program")" "$program" '~[release]~[.]'
done

if [ "${1:-}" = --full ]; then
  command -v debootstrap >/dev/null && [ "$(id -u)" -eq 0 ] && one 'package' sh tests/package.sh
  one 'tidy' sh tests/tidy.sh build/release
  NOOKFIT=build/sanitized/src/nookfit
  python_tests 'command line, sanitized' -s tests/cli -p '*_test.py'
  for program in $(programs release); do
    catch "full $(basename "$program")" "$program" '[.full]'
  done
fi

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
