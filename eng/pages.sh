#!/usr/bin/env bash
# Runs every program and command that the documentation shows and writes what they print today into the pages.
# usage, after a Release build: eng/pages.sh; then read the difference
cd "$(dirname "$0")/.." || exit 1
HANDHOLD_WRITE_PAGES=1 dotnet test --project tests/Handhold.Architecture.Tests -c Release --no-build --no-progress --filter-class '*PagesTests' >/dev/null
git diff --stat -- '*.md'
