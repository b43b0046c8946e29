# A throw-away PostgreSQL for tests and for the cluster on one machine; shared by the scripts beside it.
# It listens on this machine only, lets everybody of this machine in (trust), lies in a temporary folder, and ends with whoever started it.

# The folder of its programs, version 15 or newer; fails when there is none.
postgres_bin() {
  local folder
  for folder in $(ls -d /usr/lib/postgresql/*/bin 2>/dev/null | sort -Vr) $(dirname "$(command -v initdb || echo /none/initdb)"); do
    if [ -x "$folder/initdb" ] && [ "$("$folder/initdb" --version | grep -oE '[0-9]+' | head -1)" -ge 15 ]; then echo "$folder"; return 0; fi
  done
  return 1
}

# Finds it, or installs it from the system's packages where this user may.
want_postgres() {
  postgres_bin >/dev/null && return 0
  if [ "$(id -u)" -eq 0 ] && command -v apt-get >/dev/null 2>&1; then
    step "installing postgresql from the system's packages" install_package postgresql && postgres_bin >/dev/null && return 0
  fi
  echo "PostgreSQL is not here and may not be installed: $1 are skipped."
  return 1
}

# It refuses to run as root, so root hands it to the user that its package made.
as_plain() {
  if [ "$(id -u)" -eq 0 ]; then (cd / && runuser -u postgres -- "$@"); else "$@"; fi
}

free_port() {
  local port
  while port=$((20000 + RANDOM % 20000)); do
    (exec 3<>"/dev/tcp/127.0.0.1/$port") 2>/dev/null || { echo "$port"; return 0; }
  done
}

# start_postgres [OPTIONS]: sets PG_FOLDER, PG_PORT and PG_CONNECTION, that of a role which is the master of its own database and of nothing else.
start_postgres() {
  PG_BIN=$(postgres_bin) || return 1
  PG_FOLDER=$(mktemp -d) && chmod 755 "$PG_FOLDER"
  [ "$(id -u)" -ne 0 ] || chown postgres "$PG_FOLDER"
  PG_PORT=$(free_port)
  as_plain "$PG_BIN/initdb" -D "$PG_FOLDER/data" -U postgres -A trust --no-locale -E UTF8 >/dev/null || return 1
  run_postgres "$@" || return 1
  as_plain "$PG_BIN/psql" -q -h 127.0.0.1 -p "$PG_PORT" -U postgres -c "CREATE ROLE rebuild LOGIN" -c "CREATE DATABASE rebuild OWNER rebuild" postgres || return 1
  PG_CONNECTION="Host=127.0.0.1;Port=$PG_PORT;Username=rebuild;Database=rebuild"
}

# Starts it again over the data that it has.
run_postgres() {
  as_plain "$PG_BIN/pg_ctl" -D "$PG_FOLDER/data" -w -l "$PG_FOLDER/log" \
    -o "-c listen_addresses=127.0.0.1 -p $PG_PORT -c unix_socket_directories=$PG_FOLDER -c max_connections=300 $*" start >/dev/null
}

# Ends it, by the id that stands in its own folder, and removes that folder.
stop_postgres() {
  [ -n "${PG_FOLDER:-}" ] || return 0
  as_plain "$PG_BIN/pg_ctl" -D "$PG_FOLDER/data" -m immediate stop >/dev/null 2>&1
  rm -rf "$PG_FOLDER"
}
