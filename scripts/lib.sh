# Shared by the scripts beside it.

need_dotnet() {
  if ! command -v dotnet >/dev/null 2>&1; then
    echo "The .NET 10 SDK is needed: 'dotnet' was not found on the PATH." >&2
    exit 2
  fi
  export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_USE_MSBUILD_SERVER=0 MSBUILDDISABLENODEREUSE=1
}

# want_package COMMAND PACKAGE WHY: installs a Debian package that only some tests need, where this user may; says so where not.
want_package() {
  if command -v "$1" >/dev/null 2>&1; then return 0; fi
  if [ "$(id -u)" -eq 0 ] && command -v apt-get >/dev/null 2>&1; then
    step "installing $2 from the system's packages" install_package "$2" && return 0
  fi
  echo "$2 is not here and may not be installed: $3 are skipped."
}

install_package() {
  apt-get update -q && DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "$1"
}

# step WORDS COMMAND...: runs a command, shows its output only when it fails.
step() {
  local words=$1 out; shift
  out=$(mktemp)
  printf '%s ... ' "$words"
  if "$@" >"$out" 2>&1; then
    echo "done"
    rm -f "$out"
    return 0
  fi
  echo "FAILED"
  cat "$out"
  rm -f "$out"
  return 1
}

# count_results FILE: sums the closing lines of 'dotnet test'.
count_results() {
  awk '/(Passed|Failed|Skipped)! +- Failed:/ {
    gsub(/,/, "")
    for (i = 1; i <= NF; i++) { if ($i == "Failed:") f += $(i+1); if ($i == "Passed:") p += $(i+1); if ($i == "Skipped:") s += $(i+1) }
  } END { print p + 0, f + 0, s + 0 }' "$1"
}
