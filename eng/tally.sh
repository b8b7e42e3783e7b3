#!/usr/bin/env bash
# Adds up the test reports (TRX) of a folder and prints "N passed, N failed" alone on a line.
# usage: eng/tally.sh FOLDER EXPECTED_REPORTS
# Fails when a test failed or was skipped, when nothing ran, and when a report is missing: a crashed process writes none.
set -euo pipefail
folder=$1 expected=$2
shopt -s nullglob
reports=("$folder"/*.trx)
if ((${#reports[@]} != expected)); then
    echo "${#reports[@]} test reports in $folder, $expected expected: a test process did not finish." >&2
    printf '  %s\n' "${reports[@]##*/}" >&2
    unfinished=1
fi
grep -oh '<Counters [^>]*>' "${reports[@]:-/dev/null}" | awk -F'"' -v unfinished="${unfinished:-0}" '
    {
        for (i = 1; i < NF; i++) {
            if ($i ~ / passed=$/) passed += $(i + 1)
            if ($i ~ / (failed|error|timeout|aborted)=$/) failed += $(i + 1)
            if ($i ~ / notExecuted=$/) skipped += $(i + 1)
        }
    }
    END {
        if (skipped) print skipped " skipped: here no test is skipped."
        printf "%d passed, %d failed\n", passed, failed
        exit (failed || skipped || !passed || unfinished) ? 1 : 0
    }'
