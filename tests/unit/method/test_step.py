"""Steps are read from what people write, and refused with a reason."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import TypeAdapter, ValidationError

from entremetry.method import KINDS, AnyStep, Part, Step, scaled_steps
from entremetry.method.cooking import CookTo, Simmer, Soak, Whip

ONE: TypeAdapter[AnyStep] = TypeAdapter(Step)
NEEDED: dict[str, dict[str, Any]] = {
    "soak": {"what": ["gelatine"]},
    "cook-to": {"temperature": "82 °C"},
    "cool-to": {"temperature": "24 °C"},
    "fold": {"what": ["cream"]},
    "roll": {"thickness": "3 mm"},
    "bake": {"at": "170 °C"},
    "freeze-until": {"temperature": "-18 °C"},
    "glaze-at": {"temperature": "32 °C"},
    "thaw-until": {"time": "4 h"},
}
PLANNED = (
    "weigh soak mix melt simmer cook-to cool-to strain whip fold roll cut bake pour place fill "
    "freeze-until unmould glaze-at thaw-until rest hold serve"
)


def read(kind: str, **fields: Any) -> AnyStep:
    return ONE.validate_python({"step": kind, **NEEDED.get(kind, {}), **fields})


def test_the_kinds_are_those_of_the_format() -> None:
    assert set(KINDS) == set(PLANNED.split())


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_takes_the_common_fields(kind: str) -> None:
    common = {"id": "a", "what": ["x"], "bowl": "b", "note": "N.", "left_behind": "4 %"}
    step = read(kind, **common, time="1 h 30 min", hands_on="5 min", within="3 min")
    assert step.step == kind
    assert (step.time, step.hands_on, step.within) == (5400.0, 300.0, 180.0)
    assert step.left_behind == Part(fraction=pytest.approx(0.04))


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_refuses_a_field_it_does_not_know(kind: str) -> None:
    with pytest.raises(ValidationError, match="Extra inputs are not permitted"):
        read(kind, tempreature="82 °C")


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_is_frozen(kind: str) -> None:
    with pytest.raises(ValidationError, match="frozen"):
        read(kind).note = "changed"


@pytest.mark.parametrize("kind", sorted(NEEDED))
def test_what_a_kind_needs_is_asked_for(kind: str) -> None:
    with pytest.raises(ValidationError):
        ONE.validate_python({"step": kind})


def test_temperatures_and_masses_are_si_inside() -> None:
    step = read("cook-to", temperature="180 °F", evaporates="12 g")
    assert isinstance(step, CookTo)
    assert step.temperature == pytest.approx(355.372, abs=1e-3)
    assert step.evaporates == Part(mass=pytest.approx(0.012))


@pytest.mark.parametrize("written", [65, 65.0, "65", "65 °Brix", "65 brix"])
def test_brix_is_read_with_or_without_its_unit(written: object) -> None:
    step = read("simmer", to_brix=written)
    assert isinstance(step, Simmer)
    assert step.to_brix == 65.0


@pytest.mark.parametrize("written", [0, -1, 88.5, "nan", "thick", True, "inf"])
def test_a_brix_that_no_pan_reaches_is_refused(written: object) -> None:
    with pytest.raises(ValidationError, match="degrees Brix above 0, up to 88"):
        read("simmer", to_brix=written)


@pytest.mark.parametrize(
    ("kind", "fields"),
    [
        ("simmer", {"to_brix": 65, "to_mass": "180 g"}),
        ("simmer", {"evaporates": "10 %", "to_mass": "180 g"}),
        ("cook-to", {"evaporates": "10 %", "to_mass": "180 g"}),
        ("whip", {"overrun": "90 %", "density": "0.5 g/ml"}),
    ],
)
def test_two_ends_are_one_too_many(kind: str, fields: dict[str, Any]) -> None:
    with pytest.raises(ValidationError, match="give only one of"):
        read(kind, **fields)


@pytest.mark.parametrize("kind", ["freeze-until", "thaw-until"])
def test_a_wait_without_an_end_is_refused(kind: str) -> None:
    with pytest.raises(ValidationError, match="say until when"):
        ONE.validate_python({"step": kind})


@pytest.mark.parametrize(
    ("kind", "fields"),
    [
        ("bake", {"loss": "100 %"}),
        ("cut", {"trim": "120 %"}),
        ("fold", {"kept": "101 %"}),
        ("pour", {"left_behind": "4"}),
        ("pour", {"left_behind": 4}),
        ("pour", {"left_behind": "4 ml"}),
        ("whip", {"overrun": 0.9}),
        ("fold", {"what": []}),
    ],
)
def test_an_impossible_share_says_what_is_accepted(kind: str, fields: dict[str, Any]) -> None:
    with pytest.raises(ValidationError, match="accepted: "):
        read(kind, **fields)


def test_an_unknown_kind_is_answered_with_the_known() -> None:
    with pytest.raises(ValidationError, match="'simmer'"):
        ONE.validate_python({"step": "simmr"})


def test_scaling_multiplies_masses_and_leaves_shares_and_temperatures() -> None:
    steps = (
        read("soak", water="20 g"),
        read("cook-to", evaporates="10 %", left_behind="5 g"),
        read("simmer", to_mass="180 g"),
        read("whip", overrun="90 %"),
    )
    soak, cook, simmer, whip = scaled_steps(steps, 2.5)
    assert isinstance(soak, Soak) and soak.water == pytest.approx(0.05)
    assert isinstance(cook, CookTo) and cook.evaporates == Part(fraction=pytest.approx(0.1))
    assert cook.left_behind == Part(mass=pytest.approx(0.0125))
    assert isinstance(simmer, Simmer) and simmer.to_mass == pytest.approx(0.45)
    assert isinstance(whip, Whip) and whip.overrun == pytest.approx(0.9)


def test_a_part_is_a_mass_or_a_share_of_the_whole() -> None:
    assert Part(mass=0.02).of(0.5) == 0.02
    assert Part(fraction=0.1).of(0.5) == pytest.approx(0.05)
    assert Part().of(0.5) == 0.0


def test_the_schema_tells_the_kinds_apart_by_step() -> None:
    schema = ONE.json_schema()
    assert schema["discriminator"]["propertyName"] == "step"
    assert set(schema["discriminator"]["mapping"]) == set(KINDS)
