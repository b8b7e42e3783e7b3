#!/usr/bin/env bash
# How the files were made; `handhold` is the tool of the state that the certificate names. Files are never made anew: a new state of the format adds files.
set -euo pipefail
case "${1:-}" in
  1-first)
    handhold fit frames.csv --save 1-first-posterior.json
    handhold fit frames.csv --luck none --ceiling one --save 1-first-quick.json
    ;;
  1-terms)
    handhold fit frames.csv --estimator likelihood --each photographer,criterion --term setup --save 1-terms-likelihood.json
    handhold fit frames.csv --estimator bias-reduced --link probit --save 1-terms-bias-reduced.json
    ;;
  1-days)
    handhold fit frames.csv --each photographer,criterion --term setup --sensitivity 95% --save 1-days-terms.json
    handhold fit frames.csv --estimator likelihood --luck normal --save 1-days-likelihood.json
    ;;
  *) echo "usage: make.sh 1-first | 1-terms | 1-days" >&2; exit 2 ;;
esac
