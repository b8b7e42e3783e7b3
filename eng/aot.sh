#!/usr/bin/env bash
# Publishes the sample as native code, warnings being errors, and runs it.
# usage: eng/aot.sh
set -euo pipefail
cd "$(dirname "$0")/.."
out=artifacts/aot
rm -rf "$out"
dotnet publish samples/Handhold.Aot -c Release -o "$out" --nologo -v quiet
said=$("$out/Handhold.Aot")
echo "$said"
[ "$(wc -l <<<"$said")" -ge 4 ] || { echo "aot: the sample said too little" >&2; exit 1; }
