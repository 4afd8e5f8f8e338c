from xml.etree import ElementTree

import pytest

from entremetry.publish.markup import element, escaped, number, path_data, plain


@pytest.mark.parametrize(
    ("value", "text"), [(1.0, "1"), (1.237, "1.24"), (-0.001, "0"), (10.5, "10.5"), (100.0, "100")]
)
def test_numbers_have_two_places_and_no_idle_zeros(value: float, text: str) -> None:
    assert number(value) == text


def test_foreign_text_cannot_leave_its_attribute_or_element() -> None:
    text = "\"'<&>\x00\x1b"
    tree = ElementTree.fromstring(element("a", escaped(text), title=text))
    assert tree.text == plain(text) == "\"'<&>"
    assert tree.get("title") == plain(text)


def test_none_leaves_an_attribute_out_and_underscores_become_hyphens() -> None:
    assert element("g", clip_path=None, stroke_width=2.0) == '<g stroke-width="2"/>'


def test_a_path_does_not_repeat_points_that_print_alike() -> None:
    assert path_data([(0.0, 0.0), (0.001, 0.0), (1.0, 2.005)]) == "M0 0L1 2.00Z".replace(
        "2.00", number(2.005)
    )
