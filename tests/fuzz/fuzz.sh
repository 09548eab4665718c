#!/bin/sh
# Feeds each reader with libFuzzer, seeded from the samples: `sh tests/fuzz/fuzz.sh` for a few seconds
# each, `sh tests/fuzz/fuzz.sh NAME RUNS [SECONDS]` for one reader. What it finds stays in build/fuzz/NAME.
set -eu
cd "$(dirname "$0")/../.."
CCACHE_BASEDIR=$PWD
CCACHE_NOHASHDIR=1
export CCACHE_BASEDIR CCACHE_NOHASHDIR
cmake -S . -B build/fuzz -G Ninja -DCMAKE_BUILD_TYPE=Release -DCMAKE_CXX_COMPILER=clang++ \
  -DNOOKFIT_FUZZ=ON >/dev/null
cmake --build build/fuzz -j "$(nproc)" --target fuzzers

seed() { # reader: its corpus in build/fuzz/READER/corpus, its words in build/fuzz/READER/words
  to=build/fuzz/$1
  mkdir -p "$to/corpus"
  /usr/bin/python3 tests/fuzz/seeds.py "$1" "$to"
}

feed() { # reader, libFuzzer's options
  name=$1
  shift
  seed "$name"
  echo "$name:"
  case $name in
    notation) longest=128 ;; # a reading of a line is one too many
    *) longest=4096 ;;
  esac
  build/fuzz/tests/fuzz/engine/fuzz_"$name" -dict="build/fuzz/$name/words" -max_len="$longest" \
    -timeout=10 -rss_limit_mb=2048 -artifact_prefix="build/fuzz/$name/" -print_final_stats=1 "$@" \
    "build/fuzz/$name/corpus" >"build/fuzz/$name/log" 2>&1 || {
    tail -n 40 "build/fuzz/$name/log"
    return 1
  }
  grep -E 'number_of_executed_units|average_exec_per_sec|peak_rss_mb' "build/fuzz/$name/log"
}

if [ $# -ge 2 ]; then
  feed "$1" -runs="$2" -max_total_time="${3:-0}"
else
  for name in notation room design pieces command_line; do feed "$name" -max_total_time=4 -seed=1; done
fi
