# Shared by the examples beside it: asks the service, and says what it answered when it refuses.

REBUILD_URL=${REBUILD_URL:-http://127.0.0.1:5280}

# ask METHOD PATH [curl arguments...]: prints the answer; a refusal goes to standard error and ends the script.
ask() {
  local method=$1 path=$2 body status; shift 2
  body=$(mktemp)
  status=$(curl -sS -o "$body" -w '%{http_code}' -X "$method" "$REBUILD_URL$path" \
    ${REBUILD_TOKEN:+-H "Authorization: Bearer $REBUILD_TOKEN"} "$@") || status=000
  case $status in
    2*) cat "$body"; rm -f "$body" ;;
    *) echo "$method $path: $status" >&2; cat "$body" >&2; rm -f "$body"; exit 1 ;;
  esac
}

# need COUNT WORDS ARGUMENTS...: ends the script with its usage when arguments are missing.
need() {
  local count=$1 words=$2; shift 2
  if [ $# -lt "$count" ]; then echo "usage: $(basename "$0") $words" >&2; exit 2; fi
}

# quoted TEXT: the text as a JSON string.
quoted() {
  local text=${1//\\/\\\\}
  printf '"%s"' "${text//\"/\\\"}"
}
