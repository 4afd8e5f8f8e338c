#!/bin/sh
# Prints the first Python on the path that is 3.11 or newer.
set -eu
for name in "${PYTHON:-python3}" python3 python3.14 python3.13 python3.12 python3.11 python; do
  if "$name" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; then
    command -v "$name"
    exit 0
  fi
done
echo "Python 3.11 or newer is needed, and none was found on the path." >&2
echo "Debian and Ubuntu: sudo apt-get install python3    macOS: brew install python" >&2
exit 1
