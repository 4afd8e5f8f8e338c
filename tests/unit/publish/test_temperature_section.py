"""The section coloured by temperature is whole, true to the field and readable without colour."""

from __future__ import annotations

import re
from dataclasses import replace
from xml.etree import ElementTree

import numpy as np
import pytest

from entremetry.publish.colour import contrast, hex_colour
from entremetry.publish.temperature_map import section_map
from entremetry.publish.temperature_palette import COLD_TO_WARM, band_colours, ink_on, warmth
from entremetry.publish.temperature_section import section_frame_svg, section_frames
from entremetry.shapes import Floats
from entremetry.timings.step_temperatures import Field, StepTemperatures
from unit.publish.step_results import ZERO, cooling_bowl, dome_field, freezing_dome

SVG = "{http://www.w3.org/2000/svg}"


def parsed(result: StepTemperatures, index: int = 0) -> ElementTree.Element:
    return ElementTree.fromstring(section_frame_svg(result, index, standalone=True))


def words(root: ElementTree.Element) -> list[str]:
    return ["".join(text.itertext()).replace("\u00a0", " ") for text in root.iter(f"{SVG}text")]


def still(field: Field) -> StepTemperatures:
    return replace(freezing_dome(), field=field)


def slab(temperatures: Floats, *, upside_down: bool) -> StepTemperatures:
    """A slab 40 mm wide and 20 mm high with given temperatures, one moment long."""
    return still(
        Field(
            across=np.arange(0.5, 20.0) * 1e-3,
            levels=np.arange(0.5, 20.0) * 1e-3,
            times=np.array([3600.0]),
            temperatures=temperatures[np.newaxis],
            served_upside_down=upside_down,
        )
    )


def test_there_is_a_frame_for_each_kept_moment() -> None:
    frames = section_frames(freezing_dome())
    assert len(frames) == 13
    assert "At the start" in frames[0]
    assert "After 8\u00a0h" in frames[-1]
    assert section_frames(cooling_bowl()) == ()


@pytest.mark.parametrize("index", range(0, 13, 4))
def test_a_frame_is_well_formed_and_refers_only_to_itself(index: int) -> None:
    text = section_frames(freezing_dome())[index]
    ids = re.findall(r'\bid="([^"]+)"', text)
    assert len(ids) == len(set(ids))
    assert set(re.findall(r"url\(#([^)]+)\)", text)) <= set(ids)
    assert not re.search(r"<script|<style|\sstyle=|\son\w+=|href|nan", text)


def test_frames_of_one_page_share_no_id() -> None:
    ids = re.findall(r'\bid="([^"]+)"', "".join(section_frames(freezing_dome())))
    assert len(ids) == len(set(ids))


def test_the_section_is_mirrored_and_as_wide_as_it_is_drawn() -> None:
    mapped = section_map(dome_field())
    (outline,) = mapped.outlines
    assert outline[:, 0].min() == pytest.approx(-outline[:, 0].max())
    assert np.ptp(outline[:, 0]) == pytest.approx(70.0, abs=2.0)
    assert np.ptp(outline[:, 1]) == pytest.approx(35.0, abs=1.0)


def test_the_true_outline_is_taken_where_it_is_known() -> None:
    angles = np.radians(np.linspace(-90.0, 0.0, 31))
    half = np.column_stack([0.035 * np.cos(angles), 0.035 + 0.035 * np.sin(angles)])
    closed = np.concatenate([half, [(0.0, 0.035)]])
    (outline,) = section_map(replace(dome_field(), outline=closed)).outlines
    assert np.ptp(outline[:, 0]) == pytest.approx(70.0)
    assert np.hypot(outline[:, 0], outline[:, 1] - 35.0).max() == pytest.approx(35.0)


def test_a_ring_has_two_outlines() -> None:
    half = np.array([(0.02, 0.0), (0.05, 0.0), (0.05, 0.03), (0.02, 0.03)])
    assert len(section_map(replace(dome_field(), outline=half)).outlines) == 2


@pytest.mark.parametrize(("upside_down", "cold_on_top"), [(True, True), (False, False)])
def test_the_closed_end_is_on_top_when_it_is_served_upside_down(
    upside_down: bool, cold_on_top: bool
) -> None:
    rows = np.linspace(ZERO - 18.0, ZERO + 2.0, 20)  # cold at level 0, the closed end
    root = parsed(slab(np.repeat(rows[:, np.newaxis], 20, axis=1), upside_down=upside_down))
    values = [float(t[:-1].replace("−", "-")) for t in words(root) if t.endswith("°")]
    assert (values[0] < values[-1]) == cold_on_top
    assert {values[0], values[-1]} == {-15.0, -1.0}  # a sixth of the height from either end


def test_temperatures_are_written_on_the_piece_and_under_the_key() -> None:
    said = words(parsed(slab(np.full((20, 20), ZERO + 7.0), upside_down=True)))
    assert said.count("7°") == 4
    assert "After 1 h" in said
    assert any(text.endswith(" °C") for text in said)
    assert any(text in {"1 cm", "5 mm", "2 cm"} for text in said)


def test_the_line_of_zero_lies_where_the_field_passes_zero() -> None:
    across = np.linspace(ZERO - 9.75, ZERO + 9.75, 20)  # zero between the 10th and 11th cell
    root = parsed(slab(np.repeat(across[np.newaxis], 20, axis=0), upside_down=True))
    zero = next(p for p in root.iter(f"{SVG}path") if p.attrib.get("stroke-width") == "1.6")
    places = [float(x) for x, _ in re.findall(r"(-?[\d.]+) (-?[\d.]+)", zero.attrib["d"])]
    # 320 units across, 12 of margin each side, 40 mm of slab: 7.4 units a mm; zero at 10 mm.
    assert min(abs(x - 160.0) for x in places) == pytest.approx(74.0, abs=0.1)


def test_a_moment_that_is_not_there_is_refused() -> None:
    with pytest.raises(IndexError):
        section_frame_svg(freezing_dome(), 13)
    with pytest.raises(IndexError):
        section_frame_svg(cooling_bowl(), 0)


def lightness(colour: tuple[int, int, int]) -> float:
    """Lightness in Oklab (Ottosson, 2020)."""
    red, green, blue = (
        c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4
        for c in (value / 255.0 for value in colour)
    )
    long = 0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue
    middle = 0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue
    short = 0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue
    return float(
        0.2104542553 * np.cbrt(long) + 0.793617785 * np.cbrt(middle) - 0.0040720468 * np.cbrt(short)
    )


def test_each_colour_is_lighter_than_the_colder_one_by_an_even_step() -> None:
    steps = np.diff([lightness(colour) for colour in COLD_TO_WARM])
    assert steps.min() > 0.8 * steps.mean()
    assert steps.max() < 1.2 * steps.mean()


def test_numbers_can_be_read_on_every_colour() -> None:
    for share in np.linspace(0.0, 1.0, 41):
        ground = warmth(float(share))
        assert contrast(ink_on(ground), ground) >= 3.0


def test_the_coldest_and_the_warmest_band_have_the_ends_of_the_palette() -> None:
    first, *_, last = band_colours(7)
    assert (hex_colour(first), hex_colour(last)) == ("#162142", "#fde5b2")
