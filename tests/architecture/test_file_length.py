"""Files stay small; a longer one stands here with its reason."""

from __future__ import annotations

from pathlib import Path

SOURCE_TREE = Path(__file__).parents[2] / "src" / "entremetry"
LIMIT = 300
LONGER: dict[str, str] = {}


def length(path: Path) -> int:
    """Number of lines of a file."""
    return len(path.read_text(encoding="utf-8").splitlines())


def too_long() -> set[str]:
    """Modules over the limit."""
    return {
        str(path.relative_to(SOURCE_TREE))
        for path in SOURCE_TREE.rglob("*.py")
        if length(path) > LIMIT
    }


def test_no_module_is_over_the_limit_without_a_reason() -> None:
    assert too_long() <= set(LONGER)


def test_no_reason_outlives_its_module() -> None:
    assert set(LONGER) <= too_long()
