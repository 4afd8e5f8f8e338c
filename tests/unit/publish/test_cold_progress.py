"""Whoever waits for the tables of freezing times is told how far they are, and may end them."""

from __future__ import annotations

import pytest

from entremetry.publish import cold_tables as tables
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import reckoned_sheet, surroundings

TEXT = demo_texts()["blackcurrant-vanilla-dome"]


class Enough(Exception):
    """The one who waits has had enough."""


def test_each_point_is_told_with_how_many_there_are(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(tables, "minutes", lambda reckoning, kitchen: {"freeze-until": 60.0})
    reckoning, _ = reckoned_sheet(TEXT, "dome", surroundings(None, "kitchen"))
    told: list[tuple[int, int]] = []
    tables.cold_tables(reckoning, None, lambda done, whole: told.append((done, whole)))
    # 5 + 5 x 4 + 3 x 4 x 3 + 3 x 4 x 3 + 5 x 5 + 5
    assert {whole for _, whole in told} == {127}
    assert [done for done, _ in told] == sorted(done for done, _ in told)
    assert told[0][0] == 0 and told[-1][0] <= 126


def test_what_it_raises_ends_the_work() -> None:
    reckoning, _ = reckoned_sheet(TEXT, "dome", surroundings(None, "kitchen"))

    def enough(done: int, whole: int) -> None:
        raise Enough

    with pytest.raises(Enough):
        tables.cold_tables(reckoning, None, enough)
