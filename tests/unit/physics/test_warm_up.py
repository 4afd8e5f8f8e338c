from __future__ import annotations

from entremetry.physics.conduction.warm_up import warm_up


def test_progress_is_told_from_nought_to_one() -> None:
    told: list[tuple[float, str]] = []
    warm_up(lambda part, text: told.append((part, text)))
    parts = [part for part, _ in told]
    assert parts == sorted(parts)
    assert (parts[0], parts[-1]) == (0.0, 1.0)
    assert all(text for _, text in told)


def test_no_listener_is_needed() -> None:
    warm_up()
