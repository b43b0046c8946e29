# Shared by the long runs: what they found goes to one page, a row each.

page=scripts/soak/reliability.md

# found WHAT WORDS: puts a row into the page, in the place of the one of the same name, with when and where it was.
found() {
  local rows where
  where="$(date -u +%Y-%m-%d), $SECONDS s, $(nproc) cores, $(uname -s) $(uname -m)"
  rows=$(grep -E '^\| `' "$page" 2>/dev/null | grep -vF "| \`$1\` |" || true)
  {
    printf '%s\n' '# Reliability' '' 'Written by the scripts beside it, a row each; run them to renew it. `README.md` and `DEVELOPERS.md` say what is promised.' ''
    printf '%s\n' '| run | found | when and where |' '| --- | --- | --- |'
    printf '%s\n' "$rows" "| \`$1\` | $2 | $where |" | grep . | sort
    cat <<'WORDS'

- `kills` ends the writing process with SIGKILL at random moments under 16 writers. After each round every reading that was acknowledged is there, a
  repeated request gives its first answer again, the hash chain is intact, the tables say what it says, and it still holds the head noted before.
  A kill ends the process, not the machine: what a power cut does depends on the disk honouring a sync, which every commit asks for.
- `day` lets 16 benches record and ask at one service on real connections without a pause; then every reading is counted. Times hang on the machine and on
  what else it did meanwhile.
WORDS
  } >"$page.new"
  mv "$page.new" "$page"
}
