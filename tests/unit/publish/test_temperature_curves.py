"""The drawing of temperature over time is well formed, true to its numbers, and readable."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import combinations
from xml.etree import ElementTree

import numpy as np
import pytest

from entremetry.publish.colour import Colour, contrast
from entremetry.publish.temperature_curves import curves_svg
from entremetry.publish.temperature_frame import framed
from entremetry.publish.temperature_palette import LINES
from entremetry.timings.step_temperatures import Curve, Mark
from unit.publish.sheets import HOSTILE
from unit.publish.step_results import HOUR, RESULTS, ZERO, freezing_dome, never_frozen

SVG = "{http://www.w3.org/2000/svg}"
WIDTHS = (280, 320, 700)
GROUNDS: dict[str, Colour] = {
    "light card": (255, 253, 248),
    "dark card": (38, 27, 31),
    "plate in the dark": (239, 228, 208),
    "print": (255, 255, 255),
}
Box = tuple[float, float, float, float]


def tree(name: str, width: int | None = None) -> ElementTree.Element:
    text = curves_svg(RESULTS[name](), title=name, width_px=width, standalone=True)
    return ElementTree.fromstring(text)


def words(root: ElementTree.Element) -> list[str]:
    return ["".join(text.itertext()).replace("\u00a0", " ") for text in root.iter(f"{SVG}text")]


def box(text: ElementTree.Element) -> Box:
    """Left, top, right, bottom of a text, its letters taken as 5.6 units wide."""
    wide = 5.6 * len("".join(text.itertext()))
    x, y = float(text.attrib["x"]), float(text.attrib["y"])
    left = x - {"end": wide, "middle": wide / 2.0}.get(text.attrib.get("text-anchor", ""), 0.0)
    return left, y - 9.0, left + wide, y + 2.0


@pytest.mark.parametrize("name", RESULTS)
@pytest.mark.parametrize("width", WIDTHS)
def test_a_drawing_is_well_formed_and_refers_only_to_itself(name: str, width: int) -> None:
    text = curves_svg(RESULTS[name](), title=name, width_px=width, standalone=True)
    ids = re.findall(r'\bid="([^"]+)"', text)
    assert len(ids) == len(set(ids))
    assert not re.search(r"<script|<style|\sstyle=|\son\w+=|href|nan", text)
    assert not re.search(r"(?<!xmlns=\")https?:", text)
    assert ElementTree.fromstring(text).tag == f"{SVG}svg"


@pytest.mark.parametrize("name", RESULTS)
@pytest.mark.parametrize("width", WIDTHS)
def test_no_word_covers_another_and_none_leaves_the_drawing(name: str, width: int) -> None:
    root = tree(name, width)
    boxes = [box(text) for text in root.iter(f"{SVG}text")]
    for one, two in combinations(boxes, 2):
        apart = one[2] <= two[0] or two[2] <= one[0] or one[3] <= two[1] or two[3] <= one[1]
        assert apart, (one, two)
    wide, high = (float(each) for each in root.attrib["viewBox"].split()[2:])
    assert all(left >= 0 and right <= wide for left, _, right, _ in boxes)
    assert all(top >= 0 and bottom <= high for _, top, _, bottom in boxes)


def test_every_point_the_target_and_both_scales_are_named() -> None:
    said = " ".join(words(tree("freezing dome")))
    for wanted in ("heart", "vanilla insert", "edge", "target −18 °C", "20 °C", "68 °F", "4 h"):
        assert wanted in said
    assert "−18 °C after about 5 h 10 min" in said
    assert "as written: 6 h" in said


def test_the_text_alternative_tells_answer_interval_and_courses() -> None:
    root = tree("freezing dome")
    told = (root.findtext(f"{SVG}desc") or "").replace("\u00a0", " ")
    assert "About 5 h 10 min to −18 °C, between 4 h and 6 h 40 min, mostly the airflow" in told
    assert "Heart: 22 °C at first" in told
    assert "the mousse is set" in told


def test_what_is_never_reached_is_said_with_its_reason_and_has_no_window() -> None:
    root = tree("never frozen")
    told = (root.findtext(f"{SVG}desc") or "").replace("\u00a0", " ")
    assert told.startswith("It never gets there: The air of the freezer has -12 °C")
    assert not [rect for rect in root.iter(f"{SVG}rect") if "fill-opacity" in rect.attrib]


def test_the_window_spans_the_interval_on_the_axis_of_time() -> None:
    frame = framed(freezing_dome(), 700.0)
    window = next(
        r for r in tree("freezing dome", 700).iter(f"{SVG}rect") if "fill-opacity" in r.attrib
    )
    left, wide = float(window.attrib["x"]), float(window.attrib["width"])
    per_second = (frame.right - frame.left) / frame.end
    assert left == pytest.approx(frame.left + 4 * HOUR * per_second, abs=0.02)
    assert wide == pytest.approx(2.6667 * HOUR * per_second, abs=0.05)


def test_an_open_end_is_drawn_and_told() -> None:
    result = replace(freezing_dome(), high=None)
    text = curves_svg(result, title="open").replace("\u00a0", " ")
    assert "at least 4 h, and at worst it never gets there" in text


def test_lines_differ_by_dashes_and_not_by_colour_alone() -> None:
    root = tree("freezing dome")
    thick = [p for p in root.iter(f"{SVG}path") if p.attrib.get("stroke-width") == "2.4"]
    assert len({p.attrib.get("stroke-dasharray") for p in thick}) == len(thick) == 3


@pytest.mark.parametrize("ground", GROUNDS)
@pytest.mark.parametrize("colour", LINES)
def test_lines_stand_out_from_every_ground(ground: str, colour: Colour) -> None:
    assert contrast(colour, GROUNDS[ground]) >= 3.0 - 0.005


def test_foreign_words_are_shown_as_they_stand() -> None:
    times = np.linspace(0.0, HOUR, 5)
    curve = Curve(name=HOSTILE, times=times, temperatures=np.full(5, ZERO))
    result = replace(
        freezing_dome(), curves=(curve,), marks=(Mark(time=60.0, text=HOSTILE),), mostly=HOSTILE
    )
    assert ElementTree.fromstring(curves_svg(result, title=HOSTILE, standalone=True)) is not None


def test_values_that_are_no_numbers_are_left_out() -> None:
    result = never_frozen()
    holes = result.curves[0].temperatures.copy()
    holes[5:9] = np.nan
    curve = replace(result.curves[0], temperatures=holes)
    assert "nan" not in curves_svg(replace(result, curves=(curve,)), title="holes")


def test_a_step_without_curves_still_shows_its_interval() -> None:
    root = ElementTree.fromstring(
        curves_svg(replace(freezing_dome(), curves=()), title="bare", standalone=True)
    )
    assert "−18 °C after about 5 h 10 min" in words(root)
