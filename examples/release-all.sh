#!/bin/sh
# Checks all examples, knitting and crochet, and writes their pages into a folder. Works from any directory.
#
#     sh examples/release-all.sh [OUTPUT FOLDER]
#
# The folder is seen from where you stand, and `out` if you name none. The program is the one in $PATTERNFORGE if that is set (a path, or a name on
# the PATH), else the one on the PATH, else the one in this repository, which needs the .NET SDK and is built first if need be.
# It stops at the first pattern that has an error or a warning, or that cannot be built, says which, and ends with the program's exit code.
set -eu

fail() {
    code=$1
    shift
    printf 'release-all: %s\n' "$*" >&2
    exit "$code"
}

[ $# -le 1 ] || fail 2 'one folder at most; a name with blanks in it needs quotes'
out=${1-out}
[ -n "$out" ] || fail 2 'the name of the output folder is empty'
case $out in
    /* | ?:[\\/]*) ;;
    *) out=./$out ;;
esac

examples=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || fail 2 'the folder of the examples cannot be entered'

run() {
    if [ -n "${PATTERNFORGE-}" ]; then
        "$PATTERNFORGE" "$@"
    elif command -v patternforge > /dev/null 2>&1; then
        patternforge "$@"
    else
        dotnet run --project "$examples/../src/PatternForge.Cli" -c Release -- "$@"
    fi
}

count=0
for pattern in "$examples"/*.pattern.md; do
    [ -f "$pattern" ] || fail 2 "there are no patterns in $examples"
    name=${pattern##*/}
    printf '== %s\n' "$name"
    run lint --warnings-as-errors -- "$pattern" || fail $? "$name is not clean, so nothing more is released"
    run build --out "$out" -- "$pattern" || fail $? "$name could not be built, so nothing more is released"
    count=$((count + 1))
done

printf '%s patterns released into %s\n' "$count" "$out"
