"""Plain data into a model; every fault with its field, its line and what is accepted."""

from __future__ import annotations

from typing import Annotated, Literal

import pytest
from pydantic import BaseModel, ConfigDict, Field

from entremetry.documents import read_tree, validate
from entremetry.errors import DocumentError, Fault
from entremetry.quantities.fields import AmountText, Mass, Temperature


class Strict(BaseModel):
    """Refuses keys it does not know."""

    model_config = ConfigDict(extra="forbid")


class Soak(Strict):
    """A step."""

    step: Literal["soak"]
    what: list[str] = []
    water: Mass


class Bake(Strict):
    """Another step."""

    step: Literal["bake"]
    at: Temperature
    fan: bool = False


class Line(Strict):
    """A line of a formula."""

    ingredient: str
    amount: AmountText


class Component(Strict):
    """A part."""

    kind: Literal["mousse", "insert"]
    formula: dict[str, AmountText | Line]
    method: list[Annotated[Soak | Bake, Field(discriminator="step")]] = []


class Dessert(Strict):
    """A document."""

    name: str
    pieces: int = Field(default=6, gt=0)
    on: str | None = None
    components: dict[str, Component]


GOOD = """\
name: Pear log
components:
  mousse:
    kind: mousse
    formula:
      cream: 240 g
      egg: {ingredient: whole-egg, amount: 2 yolks}
    method:
      - {step: soak, what: [cream], water: 20 g}
      - {step: bake, at: 180 °C}
"""


def faults(old: str, new: str) -> dict[str, Fault]:
    assert old in GOOD
    with pytest.raises(DocumentError) as caught:
        validate(Dessert, read_tree(GOOD.replace(old, new), file="p.yaml"), file="p.yaml")
    return {fault.field: fault for fault in caught.value.faults}


def test_a_good_document_becomes_the_model() -> None:
    dessert = validate(Dessert, read_tree(GOOD, file="p.yaml"), file="p.yaml")
    step = dessert.components["mousse"].method[0]
    assert isinstance(step, Soak) and step.water == pytest.approx(0.02)


def test_a_quantity_is_explained_at_its_field_and_line() -> None:
    fault = faults("240 g", "240")["components.mousse.formula.cream"]
    assert (fault.line, fault.file) == (6, "p.yaml")
    assert fault.found == "240 without a unit" and "say the unit" in fault.accepted


def test_a_quantity_keeps_its_nearest_units() -> None:
    fault = faults("240 g", "2 tbps")["components.mousse.formula.cream"]
    assert "tbsp" in fault.nearest


def test_an_unknown_key_offers_the_nearest_known() -> None:
    fault = faults("name:", "nmae:")["nmae"]
    assert fault.nearest == ("name",) and "components" in fault.accepted


def test_an_unknown_key_in_a_branch_of_a_union_knows_that_branch() -> None:
    found = faults("water:", "watr:")
    fault = found["components.mousse.method[1].watr"]
    assert "water" in fault.nearest and "fan" not in fault.accepted
    assert found["components.mousse.method[1].water"].found == "nothing"


def test_a_mapping_that_is_nearly_right_is_not_called_no_text() -> None:
    found = faults("amount:", "amont:")
    assert set(found) == {
        "components.mousse.formula.egg.amount",
        "components.mousse.formula.egg.amont",
    }
    assert "amount" in found["components.mousse.formula.egg.amont"].nearest


def test_a_word_out_of_a_choice_offers_the_nearest() -> None:
    fault = faults("kind: mousse", "kind: mouse")["components.mousse.kind"]
    assert fault.nearest == ("mousse",) and fault.accepted == "one of mousse, insert"


def test_an_unknown_kind_of_step_offers_the_nearest() -> None:
    fault = faults("step: soak", "step: sock")["components.mousse.method[1]"]
    assert fault.found == "step 'sock'" and fault.nearest == ("soak",)


def test_a_step_without_a_kind() -> None:
    fault = faults("step: bake, ", "")["components.mousse.method[2]"]
    assert fault.found == "no 'step'"


@pytest.mark.parametrize(
    ("old", "new", "field", "accepted"),
    [
        ("[cream]", "cream", "components.mousse.method[1].what", "a list"),
        ("at: 180 °C", "at: 180 °C, fan: perhaps", "components.mousse.method[2].fan", "true or"),
        ("Pear log", "[a]", "name", "a text"),
        ("Pear log", "Pear\npieces: 0", "pieces", "more than 0"),
        ("Pear log", "Pear\npieces: many", "pieces", "a whole number"),
        ("Pear log", "Pear\npieces: 1.5", "pieces", "a whole number"),
        ("  mousse:\n", "  more: text\n  mousse:\n", "components.more", "a mapping"),
    ],
)
def test_other_faults_say_what_is_accepted(old: str, new: str, field: str, accepted: str) -> None:
    assert accepted in faults(old, new)[field].accepted


def test_all_faults_come_at_once_in_the_order_of_lines() -> None:
    text = GOOD.replace("240 g", "240").replace("180 °C", "hot").replace("name", "nmae")
    with pytest.raises(DocumentError) as caught:
        validate(Dessert, read_tree(text, file="p.yaml"), file="p.yaml")
    lines = [fault.line or 0 for fault in caught.value.faults]
    assert len(lines) == 4 and lines == sorted(lines)
