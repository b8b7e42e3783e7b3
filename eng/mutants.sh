#!/usr/bin/env bash
# Reads damaged photographs and sidecars, by default a million of each; the tests read a few thousand. Same numbers, same damage.
# usage, after a Release build: eng/mutants.sh [HOW_MANY]
set -euo pipefail
cd "$(dirname "$0")/.."
HANDHOLD_MUTANTS=${1:-1000000} artifacts/bin/Handhold.Photos.Tests/release/Handhold.Photos.Tests --filter-class '*MutantFacts' --show-live-output on
