#!/bin/sh
# clang-tidy over src/, two files at a time: `sh tests/tidy.sh BUILD`. A file that has passed is
# read again only when it or a header is newer than that pass.
set -u
build=$1
passes=$build/tidy
mkdir -p "$passes"
newest=$(git ls-files 'src/*.h' .clang-tidy | xargs ls -t | head -n 1)
for file in $(git ls-files 'src/*.cpp'); do
  pass=$passes/$(echo "$file" | tr / -)
  if [ "$file" -nt "$pass" ] || [ "$newest" -nt "$pass" ]; then echo "$file"; fi
done >"$passes/todo"
xargs -r -P "$(nproc)" -I FILE sh -c '
  clang-tidy --quiet -p "$1" FILE && touch "$2/$(echo FILE | tr / -)"' \
  tidy "$build" "$passes" <"$passes/todo"
