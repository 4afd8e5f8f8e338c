"""Compiles the heat solver, which is kept on disk, so that no two processes compile it at once."""

from __future__ import annotations

from entremetry.store.demo import demo_texts
from entremetry.usecases.temperatures import temperatures_of_text, timed_steps_of_text

COLD = ("freeze-until", "thaw-until")


def main() -> None:
    """Work out an insert and a whole piece: one material, several, and cells that hold two."""
    name, text = next(iter(demo_texts().items()))
    for step in timed_steps_of_text(text, file=name):
        if step.kind in COLD:
            temperatures_of_text(text, file=name, step=step.id)


if __name__ == "__main__":
    main()
