#!/usr/bin/env bash
# Converts records on all cores of this machine, by the contract of the guide to scale.
#   convert.sh RECORDS.ndjson MAPPING.json OUT
# OUT gets one answer a record in the order of the records. Settings by environment: PROGRAM, OPTIONS,
# CORES, PART (records of a part), TRIES (how often a record may end a worker before it is kept back).
set -euo pipefail
records=$1
export MAPPING=$2 PROGRAM=${PROGRAM:-npx face-neck-fhir} OPTIONS=${OPTIONS:-} TRIES=${TRIES:-3}
out=$3
parts=$(mktemp -d)
trap 'rm -rf "$parts"' EXIT

# Answers one part; a worker that ends before its time is started again behind its last answer.
answer() {
  local part=$1 failed=0 code done full
  : >"$part.answers"
  while true; do
    done=$(wc -l <"$part.answers")
    code=0
    # shellcheck disable=SC2086 # words of a command
    tail -n "+$((done + 1))" "$part" |
      { $PROGRAM convert --lines --mapping "$MAPPING" $OPTIONS >"$part.attempt" || exit $?; } || code=$?
    # A line without its end is no answer.
    full=$(wc -l <"$part.attempt")
    head -n "$full" "$part.attempt" >>"$part.answers"
    case $code in
      0 | 4) return 0 ;;
      1 | 2) return 255 ;; # nothing can be answered: xargs stops at 255
    esac
    if [ "$full" -gt 0 ]; then failed=1; else failed=$((failed + 1)); fi
    if [ "$failed" -ge "$TRIES" ]; then
      # Records are taken one after the other, so the first without an answer is the one.
      sed -n "$((done + full + 1))p" "$part" | kept_back >>"$part.answers"
      failed=0
    fi
  done
}

kept_back() {
  node -e '
    const raw = require("node:fs").readFileSync(0, "utf8").replace(/\n$/, "");
    let named = {};
    try { const { id } = JSON.parse(raw); if (id !== undefined) named = { id }; } catch {}
    const message = "the record ended the worker each time";
    const facts = { reason: "record" };
    const issue = { code: "internal-fault", severity: "error", message, path: [], facts };
    console.log(JSON.stringify({ ...named, quarantine: { reason: issue.code, issues: [issue], raw } }));'
}
export -f answer kept_back

# A blank line is no record.
grep '[^[:space:]]' "$records" | split -d -a 6 -l "${PART:-5000}" - "$parts/part-" || true
find "$parts" -name 'part-*' | sort |
  xargs -r -P "${CORES:-$(nproc)}" -I {} bash -c 'answer "$1"' _ {}
find "$parts" -name '*.answers' | sort | xargs -r cat >"$out.part"
asked=$(grep -c '[^[:space:]]' "$records" || true)
given=$(wc -l <"$out.part")
if [ "$given" -ne "$asked" ]; then
  echo "records were lost: $asked in, $given out" >&2
  exit 1
fi
mv "$out.part" "$out"
kept=$(grep -c '"quarantine":{' "$out" || true)
echo "$asked records, $kept kept back"
if [ "$kept" -gt 0 ]; then exit 4; fi
