"""Every refusal says what, where and how to mend it, and knows its exit status."""

from __future__ import annotations

import pytest

from entremetry import errors
from entremetry.errors import DocumentError, EntremetryError, Fault, UnknownName, did_you_mean


def all_errors() -> list[type[EntremetryError]]:
    """Every class of the tree."""
    named = (getattr(errors, name) for name in dir(errors))
    return [e for e in named if isinstance(e, type) and issubclass(e, EntremetryError)]


@pytest.mark.parametrize("error", all_errors(), ids=lambda error: error.__name__)
def test_the_tree_on_the_page_names_every_error_and_its_status(
    error: type[EntremetryError],
) -> None:
    page = errors.__doc__ or ""
    assert error.__name__ in page
    if error is not EntremetryError:
        line = next(line for line in page.splitlines() if error.__name__ in line)
        assert line.endswith(f"exit {error.exit_status}")


def test_a_fault_says_file_line_field_found_and_accepted() -> None:
    fault = Fault(
        file="dome.yaml",
        line=7,
        field="mould",
        found="'hemisfere-70'",
        accepted="a mould",
        nearest=("hemisphere-70",),
    )
    assert str(fault) == (
        "dome.yaml, line 7, mould: found 'hemisfere-70'; accepted: a mould; "
        "did you mean hemisphere-70?"
    )


def test_a_document_error_shows_all_its_faults() -> None:
    faults = [Fault(field=name, found="nothing", accepted="a name") for name in ("id", "name")]
    assert str(DocumentError(faults)).count("found nothing") == 2


def test_an_unknown_name_offers_at_most_three() -> None:
    known = ["cream-35", "cream-30", "cream-40", "cream-18", "salt"]
    assert len(UnknownName("ingredient", "creme-35", known).nearest) == 3


def test_nothing_near_means_no_offer() -> None:
    assert UnknownName("ingredient", "xyzzy", ["salt"]).nearest == ()
    assert did_you_mean([]) == ""


def test_the_last_offer_is_joined_by_or() -> None:
    assert did_you_mean(["a", "b", "c"]).endswith("a, b or c?")
