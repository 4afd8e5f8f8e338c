"""Ovens by temperature, hob and mixer, room in the cold and what a freezer freezes in a day."""

from __future__ import annotations

import pytest

from entremetry.agenda.menu import Menu
from entremetry.planning import Limits, Part, Side, Status, plan
from entremetry.usecases.plans import Course
from unit.agenda.menus import HOME, LAYERS, ONE_TRAY, SHORTBREAD, menu, spans, swapped, task

QUICK = Limits(seconds=10.0, explaining=1.0, workers=1)
TWO_OVENS = "ovens: [{name: Upper}, {name: Lower, trays: 3}]\n"
COLD = """freezers: [{name: Chest, temperature: -20 °C, volume: %s, freezes_per_day: %s}]
fridges: [{name: Larder, temperature: 4 °C, volume: %s}]
"""


def needs(found: Menu, name: str) -> list[tuple[str, int, str]]:
    """What a task uses: resource, amount, state."""
    return [(need.resource, need.amount, need.state) for need in task(found, name).needs]


def other(temperature: str) -> str:
    """A second shortbread, baked at a temperature."""
    return swapped(("id: shortbread", "id: other"), ("180 °C", temperature), text=SHORTBREAD)


def test_pan_mixer_and_oven_are_taken_up() -> None:
    found = menu(LAYERS)
    assert needs(found, "custard-1") == needs(found, "glaze-1") == [("hob", 1, "")]
    assert needs(found, "mousse-4") == [("mixer", 1, "")]
    assert needs(found, "crust-2") == [("oven-1", 1, "160 °C")]
    assert needs(found, "mousse-5") == []


def test_each_temperature_has_an_oven_of_its_own_as_long_as_there_are_ovens() -> None:
    three = [SHORTBREAD, other("150 °C"), swapped(("id: other", "id: third"), text=other("200 °C"))]
    found = menu(*three, kitchen=HOME + TWO_OVENS)
    state = {n.state: n.resource for t in found.problem.tasks for n in t.needs}
    assert state == {"150 °C": "oven-1", "180 °C": "oven-2", "200 °C": "oven-1"}
    assert [r.capacity for r in found.problem.resources if r.id.startswith("oven")] == [1, 3]


@pytest.mark.parametrize(
    ("temperature", "trays", "minutes", "enough"),
    [
        ("180 °C", 2, 40, True),
        ("180 °C", 1, 40, False),
        ("180 °C", 1, 55, True),
        ("150 °C", 2, 55, False),
        ("150 °C", 2, 70, True),
    ],
)
def test_an_oven_bakes_two_things_at_once_at_one_temperature_and_on_two_trays(
    temperature: str, trays: int, minutes: int, *, enough: bool
) -> None:
    # 5 min to mix one, 5 for the other, 22 in the oven: 33 at once, 49 one after the other, and
    # 15 more if the oven has to become colder in between
    ovens = f"ovens: [{{name: Oven, trays: {trays}}}]\n"
    begin = f"2026-11-28 {18 + (60 - minutes) // 60:02d}:{(60 - minutes) % 60:02d}"
    found = menu(SHORTBREAD, other(temperature), kitchen=HOME + ovens, begin=begin)
    assert found.problem.end == minutes
    assert (plan(found.problem, limits=QUICK).status is Status.PLANNED) is enough


def cold(freezer: str = "60 l", power: str = "12 kg", fridge: str = "100 l") -> Menu:
    """The layered dessert with some room in the cold."""
    return menu(LAYERS, kitchen=HOME + ONE_TRAY + COLD % (freezer, power, fridge))


def test_room_in_the_freezer_goes_by_the_volume_with_what_lies_around_it() -> None:
    # a half-sphere of 70 mm holds 89.8 ml; six of them 539 ml; 2.5 times that is 13.5 dl
    domes = spans(cold(), "freezer")["assembly-2"]
    assert domes.amount == 14
    assert (domes.last, domes.reaching) == ("layers/assembly-4", Side.START)


def test_hearts_leave_the_freezer_for_the_filling() -> None:
    hearts = spans(cold(), "freezer")["heart-3"]
    assert (hearts.last, hearts.reaching) == ("layers/assembly-1", Side.START)


def test_what_thaws_stays_in_the_fridge_until_it_is_served() -> None:
    thawing = spans(cold(), "fridge")["assembly-6"]
    assert (thawing.last, thawing.reaching) == ("layers/assembly-7", Side.END)


def test_freezing_counts_against_the_power_of_the_freezer_for_a_day() -> None:
    # hearts: six half-spheres of 40 mm, 16.8 ml each, about 0.1 kg: 2 units of 100 g at most
    (load,) = [need for need in task(cold(), "heart-3").needs if need.resource == "freezing"]
    assert load.lasting == 1440
    assert load.amount in (1, 2)
    assert next(r for r in cold().problem.resources if r.id == "freezing").capacity == 120


def test_what_does_not_fit_or_freeze_is_said_and_not_cut_in_silence() -> None:
    assert all("hot" in text for text in cold().cautions)
    told = "\n".join(cold("1 l", "0.3 kg", "1 l").cautions)
    assert "Layers takes about 1400 ml of the freezer, which has 1" in told
    assert "of the fridge" in told
    assert "g to freeze at once, and the freezers freeze" in told


def test_a_component_too_large_for_the_fridge_is_said() -> None:
    rested = (
        "{step: mix, hands_on: 5 min}",
        "{step: mix}\n      - {step: rest, temperature: 4 °C}",
    )
    kitchen = HOME + COLD % ("60 l", "12 kg", "0.1 l")
    assert "Dough takes about" in " ".join(
        menu(swapped(rested, text=SHORTBREAD), kitchen=kitchen).cautions
    )


def test_room_that_nobody_knows_is_not_counted_and_that_is_said() -> None:
    found = menu(LAYERS)
    assert not spans(found, "freezer")
    assert any("room in the freezer is not known" in text for text in found.assumptions)


def test_a_bench_is_taken_while_hands_are_at_it_and_not_without_hands() -> None:
    found = menu(LAYERS, kitchen=HOME + "benches: 1\n")
    assert [(n.resource, n.part) for n in task(found, "assembly-3").needs] == [
        ("bench", Part.OPENING)
    ]
    idle = swapped(("{step: unmould, hands_on: 5 min}", "{step: unmould, hands_on: 0 min}"))
    assert task(menu(idle, kitchen=HOME + "benches: 1\n"), "assembly-3").needs == ()


def test_a_kitchen_without_anything_is_a_small_one_and_says_so() -> None:
    found = menu(LAYERS, kitchen=HOME)
    capacities = {r.id: r.capacity for r in found.problem.resources}
    assert capacities == {"hob": 4, "mixer": 1, "oven-1": 1, "mould hemisphere-70": 1}
    told = " ".join(found.assumptions)
    for word in ("no oven", "no mixer", "hob rings", "free hours"):
        assert word in told


def test_without_a_kitchen_one_of_each_is_assumed() -> None:
    found = menu(LAYERS, kitchen=None)
    assert any("No kitchen is described" in text for text in found.assumptions)


def test_a_large_kitchen_is_taken_as_it_is() -> None:
    big = HOME + "hobs: 100\nbenches: 100\nmixers: [{name: M, bowls: 100}]\n" + TWO_OVENS
    found = menu(Course(text=LAYERS, pieces=60), kitchen=big + COLD % ("900 l", "999 kg", "900 l"))
    capacities = {r.id: r.capacity for r in found.problem.resources}
    assert (capacities["hob"], capacities["mixer"], capacities["bench"]) == (100, 100, 100)
    assert (capacities["freezer"], capacities["freezing"]) == (9000, 9990)
