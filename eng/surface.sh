#!/usr/bin/env bash
# Lists every public member in its project's PublicAPI.Unshipped.txt (what PublicAPI.Shipped.txt has aside) and drops the lines of those that are gone.
set -euo pipefail
cd "$(dirname "$0")/.."

dotnet restore Handhold.slnx --verbosity quiet
for project in src/*/*.csproj; do
  folder=$(dirname "$project")
  for list in "$folder/PublicAPI.Shipped.txt" "$folder/PublicAPI.Unshipped.txt"; do
    [ -f "$list" ] || echo '#nullable enable' > "$list"
  done
  removed=$(grep '^\*REMOVED\*' "$list" || true)
  { echo '#nullable enable'; [ -z "$removed" ] || echo "$removed"; } > "$list"
  dotnet format analyzers "$project" --diagnostics RS0016 --severity warn --no-restore
  echo "$list: $(($(wc -l < "$list") - 1)) lines"
done
