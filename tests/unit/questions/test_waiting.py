"""How long parts wait, until when, and when they must leave the freezer."""

from __future__ import annotations

from datetime import datetime
from zoneinfo import ZoneInfo

import pytest

from entremetry.errors import QuantityError, UnknownName
from entremetry.questions import Answer, Reply, Wait
from entremetry.questions.keeping import waitings
from entremetry.questions.waiting import Thaw, wait
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import reckoned, surroundings
from entremetry.usecases.questions import ask_of_text

AROUND = surroundings(None, "kitchen")
DOME = reckoned(demo_texts()["blackcurrant-vanilla-dome"], "dome", AROUND).dessert
GLASS = reckoned(demo_texts()["mango-coconut-lime-glass"], "glass", AROUND).dessert
ROME = ZoneInfo("Europe/Rome")
NOW = datetime(2026, 12, 1, 10, 0, tzinfo=ROME)
DAY = 86400.0


def facts(answer: Answer) -> str:
    return " ".join(fact.text for fact in answer.facts)


@pytest.mark.parametrize(
    ("part", "where", "days", "reply"),
    [
        ("vanilla-insert", "freezer", 14, Reply.YES),
        ("vanilla-insert", "freezer", 15, Reply.NO),  # the document says so
        ("filled", "freezer", 15, Reply.DEPENDS),  # only usual
        ("finished", "fridge", 1, Reply.YES),
        ("finished", "fridge", 2, Reply.NO),  # safety
        ("finished", "freezer", 2, Reply.DEPENDS),
        ("finished", "table", 1, Reply.NO),
        ("filled", "fridge", 1, Reply.NO),
        ("blackcurrant-mousse", "fridge", 1, Reply.NO),  # it sets
        ("blackcurrant-glaze", "fridge", 4, Reply.YES),
        ("blackcurrant-glaze", "freezer", 4, Reply.DEPENDS),  # not written
        ("hazelnut-shortcrust", "table", 2, Reply.YES),
    ],
)
def test_yes_no_or_only_if(part: str, where: str, days: int, reply: Reply) -> None:
    answer = wait(DOME, Wait(part=part, where=where, time=days * DAY))
    assert answer.reply is reply, answer.says


def test_the_latest_moment_and_the_moment_to_thaw() -> None:
    until = datetime(2026, 12, 5, 19, 0, tzinfo=ROME)
    thaw = Thaw(time=8 * 3600.0, because="computed", sources=("our_own",))
    answer = wait(DOME, Wait(part="filled", until=until, now=NOW), thaw)
    assert answer.reply is Reply.YES
    assert "until Tuesday 15 December, 10:00" in facts(answer)
    assert "Take it out of the freezer by Saturday 5 December, 11:00." in facts(answer)


def test_too_late_to_thaw_is_said() -> None:
    until = datetime(2026, 12, 1, 12, 0, tzinfo=ROME)
    answer = wait(
        DOME, Wait(part="filled", until=until, now=NOW), Thaw(time=8 * 3600.0, because="")
    )
    assert "it is too late" in facts(answer)


def test_clocks_that_change_meanwhile_take_no_hour_away() -> None:
    """The night of 25 October 2026 has an hour more."""
    now = datetime(2026, 10, 24, 12, 0, tzinfo=ROME)
    until = datetime(2026, 10, 25, 12, 0, tzinfo=ROME)
    answer = wait(DOME, Wait(part="finished", where="fridge", until=until, now=now))
    assert answer.reply is Reply.NO and "25 h" in answer.question


def test_where_to_write_what_is_missing() -> None:
    answer = wait(DOME, Wait(part="blackcurrant-glaze", where="freezer"))
    assert "components.blackcurrant-glaze.method" in facts(answer)


def test_moist_fruit_does_not_stand_warm_but_nuts_do() -> None:
    warm = {part.id: part.kept[-1].minutes for part in (*waitings(DOME), *waitings(GLASS))}
    assert warm["mango-dice"] == 120
    assert warm["roasted-hazelnuts"] == 1440


def test_a_step_with_a_limit_can_be_asked() -> None:
    answer = wait(DOME, Wait(part="assembly-4", time=240.0))
    assert answer.reply is Reply.NO and "3 min" in answer.says


@pytest.mark.parametrize(
    "asked",
    [
        Wait(part="filled", time=1.0, until=NOW),
        Wait(part="filled", where="table"),
        Wait(part="filled", until=datetime(2026, 11, 1, tzinfo=ROME), now=NOW),
    ],
)
def test_what_contradicts_itself_is_refused(asked: Wait) -> None:
    with pytest.raises(QuantityError):
        wait(DOME, asked)


def test_unknown_parts_and_places_are_refused() -> None:
    with pytest.raises(UnknownName, match="vanilla-insert"):
        wait(DOME, Wait(part="vanilla-insrt"))
    with pytest.raises(UnknownName, match="fridge"):
        wait(DOME, Wait(part="filled", where="frige"))


def test_the_thaw_is_computed_by_the_use_case() -> None:
    answer = ask_of_text(demo_texts()["blackcurrant-vanilla-dome"], Wait(part="The filled mould"))
    told = next(fact for fact in answer.facts if fact.text.startswith("From the freezer"))
    assert "heat conduction" in told.because and told.source
