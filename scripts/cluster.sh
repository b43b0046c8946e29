# Several copies of the service behind a reverse proxy, over one throw-away PostgreSQL; shared by the scripts beside it.

COPY_PID=() COPY_ADDRESS=()
PROXY_PID=""

build_cluster() {
  dotnet build src/RebuildApi.Server -c Release -v q -nologo -clp:ErrorsOnly && dotnet build tests/Cluster -c Release -v q -nologo -clp:ErrorsOnly
}

# start_cluster COPIES: sets PROXY_ADDRESS, and COPY_ADDRESS and COPY_PID by number.
start_cluster() {
  local i
  step "starting PostgreSQL" start_postgres
  CLUSTER_FOLDER=$(mktemp -d)
  for i in $(seq 1 "$1"); do
    COPY_ADDRESS[$i]="http://127.0.0.1:$(free_port)"
    start_copy "$i"
    wait_ready "${COPY_ADDRESS[$i]}"
  done
  proxy_before "${COPY_ADDRESS[@]}"
}

start_copy() {
  dotnet src/RebuildApi.Server/bin/Release/net10.0/RebuildApi.Server.dll serve --Rebuild:Access=this-machine --Rebuild:BackupAt=off \
    "--Rebuild:Listen=${COPY_ADDRESS[$1]}" "--Rebuild:DataFolder=$CLUSTER_FOLDER/$1" "--Rebuild:Database=$PG_CONNECTION" \
    "--Rebuild:AttachmentFolder=$CLUSTER_FOLDER/attachments" "--Rebuild:KeyFolder=$CLUSTER_FOLDER/keys" --Logging:LogLevel:Default=Warning >>"$CLUSTER_FOLDER/copy-$1.log" 2>&1 &
  COPY_PID[$1]=$!
}

# proxy_before ADDRESS...: sets PROXY_ADDRESS; one that stood before other copies ends.
proxy_before() {
  stop_one "$PROXY_PID"
  PROXY_ADDRESS="http://127.0.0.1:$(free_port)"
  dotnet tests/Cluster/bin/Release/net10.0/RebuildApi.Cluster.dll proxy "$PROXY_ADDRESS" "$@" >"$CLUSTER_FOLDER/proxy.log" 2>&1 &
  PROXY_PID=$!
  wait_ready "$PROXY_ADDRESS"
}

load() { dotnet tests/Cluster/bin/Release/net10.0/RebuildApi.Cluster.dll load "$PROXY_ADDRESS" "$@"; }

wait_ready() {
  local tries
  for tries in $(seq 1 300); do
    if curl -fs -o /dev/null --max-time 2 "$1/health/ready"; then return 0; fi
    sleep 0.2
  done
  echo "$1 does not become ready" >&2
  return 1
}

# The process that was started here ends, and is waited for.
stop_one() {
  [ -n "$1" ] && kill "$1" 2>/dev/null && wait "$1" 2>/dev/null || true
}

stop_cluster() {
  local i
  stop_one "$PROXY_PID"
  for i in "${!COPY_PID[@]}"; do stop_one "${COPY_PID[$i]}"; done
  stop_postgres
  [ -z "${CLUSTER_FOLDER:-}" ] || rm -rf "$CLUSTER_FOLDER"
}
