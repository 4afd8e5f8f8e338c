#!/bin/sh
# Forgets an environment that was made in another folder, or whose Python is gone: its commands
# hold absolute paths and would not start.
set -eu
place=$1
[ -f .venv/.place ] || exit 0
if [ "$(cat .venv/.place)" != "$place" ] || ! .venv/bin/python -c '' 2>/dev/null; then
  rm -rf .venv
fi
if [ ! -x .make/uv/bin/uv ] || ! .make/uv/bin/uv --version >/dev/null 2>&1; then
  rm -f .make/uv-*
fi
