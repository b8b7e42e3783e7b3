#!/usr/bin/env bash
# Builds everything and runs every test. Needs the .NET SDK that global.json names, nothing else.
set -uo pipefail
cd "$(dirname "$0")/.."
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 TESTINGPLATFORM_TELEMETRY_OPTOUT=1
results=artifacts/test-results
projects=(tests/*/*.csproj)
rm -rf "$results"
dotnet build Handhold.slnx -c Release || exit 1
dotnet test --solution Handhold.slnx -c Release --no-build --results-directory "$results" --no-progress --no-ansi
tested=$?
eng/tally.sh "$results" "${#projects[@]}" && exit "$tested"
