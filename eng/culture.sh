#!/usr/bin/env bash
# Runs the tests of the core, the tables, the photographs and the tool once more under German culture, where 0.5 is written 0,5.
# Classes of the core that compare numbers, for minutes, are left out.
# usage, after a Release build: eng/culture.sh
set -uo pipefail
cd "$(dirname "$0")/.."
results=artifacts/test-results-de
projects=(Handhold.Tests Handhold.Tables.Tests Handhold.Photos.Tests Handhold.Cli.Tests)
rm -rf "$results"
numbers=(Fitting.BruteForceFacts Fitting.TermPosteriorFacts Fitting.TermProperties)
numbers+=(Pooling.LongChainFacts Pooling.LevelsInStopsFacts Pooling.LevelCheckFacts Pooling.DaysOfLevelsFacts)
for project in "${projects[@]}"; do
    dotnet test --project "tests/$project" -c Release --no-build --results-directory "$results" --no-progress --no-ansi --culture de-DE --filter-not-class "${numbers[@]/#/Handhold.Tests.}"
done
eng/tally.sh "$results" "${#projects[@]}"
