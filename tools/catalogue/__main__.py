"""Brings the catalogues up to date with the code; with --check, only says what is amiss.

What is new is added without a translation, what is gone is dropped, and what is translated stays.
"""

from __future__ import annotations

import sys
from pathlib import Path

from messages import CATALOGUES, Slip, fresh, kept, slips, written


def main() -> None:
    """Write what is stale, or complain of it; complain of what lacks a translation in any case."""
    found = fresh()
    amiss: list[Slip] = []
    for path in sorted(CATALOGUES.glob("*.po")):
        catalogue = kept(path, found)
        amiss += slips(catalogue, path.name)
        text = written(catalogue)
        if path.read_text(encoding="utf-8") == text:
            continue
        if "--check" in sys.argv[1:]:
            sys.exit(f"stale, run 'make fix': {path.relative_to(Path.cwd())}")
        path.write_text(text, encoding="utf-8")
        print(f"wrote {path.name}")
    for slip in amiss:
        print(slip)
    sys.exit(1 if amiss else 0)


if __name__ == "__main__":
    main()
