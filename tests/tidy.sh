#!/bin/sh
# clang-tidy over src/, two files at a time: `sh tests/tidy.sh BUILD`. A file that has passed is
# read again only when it or a header is newer than that pass. The build is g++'s: clang is told to
# let pass the warnings it does not know.
set -u
build=$1
passes=$build/tidy
mkdir -p "$passes"
newest=$(git ls-files 'src/*.h' .clang-tidy | xargs ls -t | sed -n 1p)
for file in $(git ls-files 'src/*.cpp'); do
  pass=$passes/$(echo "$file" | tr / -)
  # Some shells call no file newer than one that is not there.
  if [ ! -e "$pass" ] || [ "$file" -nt "$pass" ] || [ "$newest" -nt "$pass" ]; then
    echo "$file"
  fi
done >"$passes/todo"
echo "$(wc -l <"$passes/todo") files to read"
xargs -r -P "$(nproc)" -I FILE sh -c '
  clang-tidy --quiet --extra-arg=-Wno-unknown-warning-option -p "$1" FILE &&
    touch "$2/$(echo FILE | tr / -)"' \
  tidy "$build" "$passes" <"$passes/todo"
