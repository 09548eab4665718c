#!/bin/sh
# The sample jobs' answers against rooms/*/expected/; `--accept` writes what the program says now.
# NOOKFIT names the program, build/release/src/nookfit where it is not set.
cd "$(dirname "$0")/../.." && exec /usr/bin/python3 tests/cli/golden_test.py "$@"
