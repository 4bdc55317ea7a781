#!/usr/bin/env bash
# What the action does, given by the environment alone: CHECK_PATHS (one a line), FAIL_ON, SARIF_FILE, RECIPELINT (the program).
# Writes the log, a summary where GITHUB_STEP_SUMMARY says, one annotation line for each finding, and 'findings' and 'sarif' as outputs.
set -euo pipefail

program=${RECIPELINT:-recipelint}
sarif=${SARIF_FILE:-recipelint.sarif}
paths=()
while IFS= read -r path; do
  if [ -n "$path" ]; then paths+=("$path"); fi
done <<< "${CHECK_PATHS:-.}"

code=0
"$program" check --format sarif --output "$sarif" --fail-on "${FAIL_ON:-error}" -- "${paths[@]}" || code=$?
if [ "$code" -gt 1 ]; then exit "$code"; fi

# No line of a report may begin a command of the runner's.
report=$("$program" check --quiet --fail-on never -- "${paths[@]}" | sed 's/^::/: :/')
count=0
if [ -n "$report" ]; then
  count=$(printf '%s\n' "$report" | wc -l)
  printf '%s\n' "$report"
fi

if [ -n "${GITHUB_STEP_SUMMARY:-}" ]; then
  {
    echo "## RecipeLint: $count findings"
    echo
    echo '````text'
    printf '%s\n' "$report" | sed 's/````/` ` ` `/g' | head -c 900000
    echo '````'
  } >> "$GITHUB_STEP_SUMMARY"
fi

if [ -n "${GITHUB_OUTPUT:-}" ]; then
  echo "findings=$count" >> "$GITHUB_OUTPUT"
  echo "sarif=$sarif" >> "$GITHUB_OUTPUT"
fi

exit "$code"
