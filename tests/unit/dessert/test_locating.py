"""What goes wrong in the computation is said with the place in the document."""

from __future__ import annotations

from textwrap import dedent

import pytest

from dessert_texts import DOME
from entremetry.dessert import read_dessert
from entremetry.dessert.locating import located
from entremetry.errors import BalanceError, DocumentError, Fault, FitError, OutsideRange

TEXT = dedent(DOME).lstrip()
DOCUMENT, TREE = read_dessert(TEXT, file="dome.yaml")


def line_of(words: str) -> int:
    """Line of the document on which words stand."""
    return TEXT[: TEXT.index(words)].count("\n") + 1


def told(error: Exception) -> str:
    """What is said of an error that comes up inside."""
    with (
        pytest.raises(type(error)) as caught,
        located(DOCUMENT, TREE, file="dome.yaml"),
    ):
        raise error
    return str(caught.value)


def test_parts_that_do_not_fit_are_found_in_the_placement() -> None:
    error = FitError("too large", parts=("Cream insert", "the mould"), missing=0.003)
    line = line_of("- {component: insert")
    assert told(error) == f"dome.yaml, line {line}, placement[2]: too large"


def test_a_fit_error_keeps_its_parts_and_millimetres() -> None:
    with pytest.raises(FitError) as caught, located(DOCUMENT, TREE, file="dome.yaml"):
        raise FitError("too large", parts=("Cream insert", "the mould"), missing=0.003)
    assert caught.value.parts == ("Cream insert", "the mould")
    assert caught.value.missing == 0.003


def test_a_step_is_found_by_component_and_number() -> None:
    error = BalanceError("Fruit mousse, step 3, pour: cannot leave 9 g behind")
    line = line_of("- {step: pour, left_behind: 5 %}")
    assert told(error).startswith(f"dome.yaml, line {line}, components.mousse.method[3]: ")


def test_a_component_is_found_by_its_name() -> None:
    error = OutsideRange("Shortcrust: too dry")
    line = line_of("  base:")
    assert told(error).startswith(f"dome.yaml, line {line}, components.base: ")


def test_what_belongs_to_no_place_still_names_the_file() -> None:
    assert told(BalanceError("out of it")) == "dome.yaml: out of it"


def test_faults_of_a_method_get_file_and_line() -> None:
    fault = Fault(field="components.mousse.method.1.what", found="'x'", accepted="puree")
    line = line_of("- {step: mix")
    error = DocumentError([fault])
    assert told(error).startswith(f"dome.yaml, line {line}, components.mousse.method[2].what: ")
