#!/usr/bin/env bash
# Times whole runs of the program: `lint` and `build` of 1, 200 and 2,000 patterns of 120 lines and of one file of 5 MB, for the native, the
# ReadyToRun and the plain program, each beside an empty program made in the same way. Prints a table: the median of wall time, the processor time of that run, wall as times the empty program, and the peak of memory.
# Processor time holds better than wall time on a busy machine. Each run of `build` writes into a folder of its own, and all of them are deleted at the very end:
# where thousands of files have just been deleted, some file systems are slow to make new ones.
# Usage: bash tests/PatternForge.Benchmarks/whole-runs.sh [RUNS] [KIND...]    (kinds: native readytorun plain; needs GNU time)
set -euo pipefail
runs=${1:-5}
kinds=("${@:2}")
[ ${#kinds[@]} -gt 0 ] || kinds=(native readytorun plain)
root=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
rid=$(dotnet --info | awk '/^ *RID:/ { print $2; exit }')
bench=$work/bench/PatternForge.Benchmarks.dll

dotnet build "$root/tests/PatternForge.Benchmarks" -c Release -v q -o "$work/bench" >&2
mkdir -p "$work/p1" "$work/p200" "$work/p2000" "$work/large"
dotnet "$bench" fill "$work/p2000" 2000
cp "$work"/p2000/p000*.pattern.md "$work"/p2000/p001*.pattern.md "$work/p200"
cp "$work/p2000/p00001.pattern.md" "$work/p1"
dotnet "$bench" print 165000 > "$work/large/large.pattern.md"

# The empty program: the same settings, and nothing in it.
mkdir "$work/empty"
cat > "$work/empty/empty.csproj" <<'PROJECT'
<Project Sdk="Microsoft.NET.Sdk">
  <PropertyGroup>
    <OutputType>Exe</OutputType>
    <TargetFramework>net10.0</TargetFramework>
    <InvariantGlobalization>true</InvariantGlobalization>
    <TieredPGO>false</TieredPGO>
    <ConcurrentGarbageCollection>false</ConcurrentGarbageCollection>
    <EventSourceSupport>false</EventSourceSupport>
    <OptimizationPreference>Speed</OptimizationPreference>
  </PropertyGroup>
</Project>
PROJECT
echo 'return 0;' > "$work/empty/Program.cs"

publish() { # KIND PROJECT OUT
    case $1 in
        native) dotnet publish "$2" -c Release -r "$rid" -p:PublishAot=true -o "$3" -v q >&2 ;;
        readytorun) dotnet publish "$2" -c Release -r "$rid" --self-contained false -p:PublishAot=false -p:PublishReadyToRun=true -o "$3" -v q >&2 ;;
        plain) dotnet publish "$2" -c Release -p:PublishAot=false -o "$3" -v q >&2 ;;
    esac
}

# Median of wall milliseconds, processor milliseconds of that run, and the largest peak in MiB.
measure() { # COMMAND...; OUT among its words becomes a fresh folder
    for ((i = 0; i <= runs; i++)); do
        local command=("${@/#OUT/$(mktemp -u -d -p "$work" out.XXXXXXXX)}")
        local start=$EPOCHREALTIME
        command time -f '%U %S %M' -o "$work/peak" "${command[@]}" > /dev/null 2> "$work/err" || { cat "$work/err" >&2; return 1; }
        local end=$EPOCHREALTIME
        [ "$i" -eq 0 ] || echo "$((${end/./} - ${start/./})) $(tail -1 "$work/peak")"
    done | sort -n | awk '{ t[NR] = $1; c[NR] = ($2 + $3) * 1000; if ($4 > m) m = $4 } END { printf "%.1f %.0f %.0f\n", t[int((NR + 1) / 2)] / 1000, c[int((NR + 1) / 2)], m / 1024 }'
}

row() { # KIND WHAT COMMAND...
    read -r ms cpu mib < <(measure "${@:3}")
    [ "$2" != nothing ] || empty=$ms
    awk -v k="$1" -v w="$2" -v t="$ms" -v c="$cpu" -v e="$empty" -v m="$mib" 'BEGIN { printf "| %s | %s | %.1f | %d | %.1f | %d |\n", k, w, t, c, t / e, m }'
}

echo "| program | run | wall ms | processor ms | wall, times the empty program | peak MiB |"
echo "|---|---|--:|--:|--:|--:|"
for kind in "${kinds[@]}"; do
    publish "$kind" "$root/src/PatternForge.Cli" "$work/$kind"
    publish "$kind" "$work/empty/empty.csproj" "$work/$kind-empty"
    program=$work/$kind/patternforge
    row "$kind" nothing "$work/$kind-empty/empty"
    for set in p1 p200 p2000 large; do
        row "$kind" "lint $set" "$program" lint "$work/$set"
        row "$kind" "build $set" "$program" build "$work/$set" --out OUT
    done
done
