"""The form of a dessert document: what each kind of entry must and must not say."""

from __future__ import annotations

from textwrap import dedent

import pytest

from dessert_texts import DOME
from entremetry.dessert import read_dessert
from entremetry.errors import DocumentError

TEXT = dedent(DOME)
FILLING = "{component: mousse, as: filling}"


def fault(old: str, new: str) -> tuple[str, str]:
    """Field and what is accepted, of the one fault that a change makes."""
    assert old in TEXT
    with pytest.raises(DocumentError) as caught:
        read_dessert(TEXT.replace(old, new, 1), file="dome.yaml")
    (found,) = caught.value.faults
    assert found.file == "dome.yaml" and found.line
    return found.field, found.accepted


@pytest.mark.parametrize(
    ("new", "accepted"),
    [
        ("{component: mousse, as: layer}", "exactly one of height, volume and mass"),
        ("{component: mousse, as: layer, height: 3 mm, mass: 4 g}", "exactly one of height"),
        ("{component: mousse, as: coating}", "exactly one of film and per_area"),
        ("{component: mousse, as: soak, 'on': base}", "exactly one of mass and per_area"),
        (
            "{component: mousse, as: insert, below_rim: 1 mm, from_closed_end: 1 mm,"
            " shape: {kind: sphere, diameter: 9 mm}}",
            "below_rim or from_closed_end, not both",
        ),
        (
            "{component: mousse, as: base, thickness: 5 mm,"
            " cut_out: {kind: disc, diameter: 5 cm, hole_diameter: 6 cm}}",
            "a hole_diameter smaller than the diameter",
        ),
        ("{component: mousse}", "a mapping with 'as: ...'"),
        ("{component: mousse, as: garnish, mass: 3 mm}", "a mass with its unit"),
    ],
)
def test_a_placement_says_just_what_it_needs(new: str, accepted: str) -> None:
    field, told = fault(FILLING, new)
    assert field.startswith("placement[1]") and accepted in told


@pytest.mark.parametrize("amount", ["240", "[1]", "true", "", "{ammount: 3 g}"])
def test_a_line_is_an_amount_or_a_mapping_with_one(amount: str) -> None:
    with pytest.raises(DocumentError, match=r"components\.insert\.formula\.cream-35"):
        read_dessert(TEXT.replace("cream-35: 100 g", f"cream-35: {amount}"), file="dome.yaml")


def test_lines_of_faults_are_where_they_stand() -> None:
    document, tree = read_dessert(TEXT, file="dome.yaml")
    assert document.placement[0].role == "filling"
    assert TEXT.splitlines()[(tree.line(("placement", 0)) or 0) - 1].strip() == f"- {FILLING}"


@pytest.mark.parametrize("version", ["0", "'1'", "2", "1.0", "none", ""])
def test_another_version_is_refused(version: str) -> None:
    field, _ = fault("entremetry: 1", f"entremetry: {version}")
    assert field == "entremetry"
