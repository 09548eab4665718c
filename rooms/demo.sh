#!/bin/sh
# Builds the program and checks the lookout loft against its room: `sh rooms/demo.sh`.
# Safe to run twice. Exits 0 where the program gave an answer, whatever the answer is.
set -eu
cd "$(dirname "$0")/.."
. rooms/packages.sh
need $for_program

mkdir -p build
echo 'Building nookfit; the first time takes a few minutes ...'
if ! {
  cmake -S . -B build/demo -G Ninja -DCMAKE_BUILD_TYPE=Release -DBUILD_TESTING=OFF &&
    cmake --build build/demo -j "$(nproc)"
} >build/demo.log 2>&1; then
  cat build/demo.log >&2
  exit 1
fi

echo '$ nookfit check rooms/lookout'
status=0
build/demo/src/nookfit check rooms/lookout || status=$?
if [ "$status" -gt 1 ]; then
  echo "The program could not answer (exit status $status)." >&2
  exit "$status"
fi
verdict=$(build/demo/src/nookfit check rooms/lookout --quiet) || true
echo "rooms/lookout as drawn: $verdict (exit status $status)"
