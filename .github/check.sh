#!/usr/bin/env bash
# What the action does, given by the environment alone: CHECK_PATHS (one a line), FAIL_ON, SARIF_FILE, COMPARE_WITH (a revision),
# RECIPELINT (the program). Writes the log, a summary where GITHUB_STEP_SUMMARY says, one annotation line for each finding, and 'findings',
# 'sarif' and 'comparison' as outputs.
set -euo pipefail

program=${RECIPELINT:-recipelint}
sarif=${SARIF_FILE:-recipelint.sarif}
paths=()
while IFS= read -r path; do
  if [ -n "$path" ]; then paths+=("$path"); fi
done <<< "${CHECK_PATHS:-.}"

code=0
report=$("$program" check --quiet --also "sarif:$sarif" --fail-on "${FAIL_ON:-error}" -- "${paths[@]}") || code=$?
if [ "$code" -gt 1 ]; then exit "$code"; fi

# No line of a report may begin a command of the runner's.
report=$(printf '%s\n' "$report" | sed 's/^::/: :/')
count=0
if [ -n "$report" ]; then
  count=$(printf '%s\n' "$report" | wc -l)
  printf '%s\n' "$report"
fi

# What the change does, as Markdown for a comment: amounts, what the plants get, findings that come and go.
comparison=
if [ -n "${COMPARE_WITH:-}" ]; then
  comparison=${sarif%.sarif}.comparison.md
  "$program" compare --format markdown --output "$comparison" -- "$COMPARE_WITH" "${paths[0]}"
fi

if [ -n "${GITHUB_STEP_SUMMARY:-}" ]; then
  {
    if [ "$count" = 0 ]; then
      echo "## RecipeLint: no rule objects"
    else
      echo "## RecipeLint: $count $([ "$count" = 1 ] && echo finding || echo findings)"
      echo
      echo '````text'
      printf '%s\n' "$report" | sed 's/````/` ` ` `/g' | head -c 500000
      echo '````'
    fi
    if [ -n "$comparison" ]; then
      echo
      head -c 400000 "$comparison"
    fi
  } >> "$GITHUB_STEP_SUMMARY"
fi

if [ -n "${GITHUB_OUTPUT:-}" ]; then
  {
    echo "findings=$count"
    echo "sarif=$sarif"
    echo "comparison=$comparison"
  } >> "$GITHUB_OUTPUT"
fi

exit "$code"
