#!/bin/sh
# Puts uv, at the version given, into .make/uv: a small environment of its own.
set -eu
version=$1
folder=.make/uv
python=$(sh tools/setup/python.sh)

case $("$folder/bin/uv" --version 2>/dev/null || true) in
  "uv $version"*) exit 0 ;;
esac

make_folder() { rm -rf "$folder" && "$python" -m venv "$folder" >/dev/null 2>&1; }

as_root() {
  if [ "$(id -u)" = 0 ]; then "$@"
  elif [ -t 0 ] && command -v sudo >/dev/null; then sudo "$@"
  elif command -v sudo >/dev/null; then sudo -n "$@"
  else return 1
  fi
}

# Debian and Ubuntu keep the venv module of their Python in a package of its own.
add_venv_module() {
  command -v apt-get >/dev/null || return 1
  number=$("$python" -c 'import sys; print("%d.%d" % sys.version_info[:2])')
  echo "Python's venv module is missing; installing python$number-venv with apt-get." >&2
  as_root apt-get update -qq >&2 &&
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq "python$number-venv" >&2
}

mkdir -p .make
if ! make_folder && ! { add_venv_module && make_folder; }; then
  echo "Could not make an environment with '$python -m venv'." >&2
  echo "Debian and Ubuntu: sudo apt-get install python3-venv, then run make again." >&2
  exit 1
fi
"$folder/bin/python" -m pip install --quiet --disable-pip-version-check "uv==$version"
