from __future__ import annotations

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from entremetry.dessert.batch_sheet import Section
from entremetry.publish import section_svg
from unit.publish.sections import SECTIONS, dome, glass
from unit.publish.sheets import HOSTILE

SVG = "{http://www.w3.org/2000/svg}"


def tree(section: Section, **options: object) -> ElementTree.Element:
    known = {"title": "One piece", "labelled": True, "standalone": True, **options}
    return ElementTree.fromstring(section_svg(section, **known))  # type: ignore[arg-type]


@pytest.mark.parametrize("name", SECTIONS)
@pytest.mark.parametrize("labelled", [True, False])
def test_a_drawing_is_well_formed_and_refers_only_to_itself(name: str, labelled: bool) -> None:
    text = section_svg(SECTIONS[name](), title=name, labelled=labelled, standalone=True)
    ids = re.findall(r'\bid="([^"]+)"', text)
    assert len(ids) == len(set(ids))
    assert set(re.findall(r"url\(#([^)]+)\)", text)) <= set(ids)
    assert ElementTree.fromstring(text).tag == f"{SVG}svg"
    assert not re.search(r"<script|<style|\sstyle=|\son\w+=|href", text)
    assert not re.search(r"(?<!xmlns=\")https?:", text)


@pytest.mark.parametrize("name", SECTIONS)
def test_lengths_are_printed_to_a_hundredth_of_a_millimetre(name: str) -> None:
    paths = re.findall(r' d="([^"]+)"', section_svg(SECTIONS[name](), title=name))
    assert paths
    assert not any(re.search(r"\.\d{3}", path) for path in paths)
    assert "nan" not in "".join(paths)


def test_the_picture_is_to_scale() -> None:
    root = tree(dome())
    group = next(g for g in root.iter(f"{SVG}g") if "scale" in g.get("transform", ""))
    scale = float(re.search(r"scale\(([\d.]+)\)", group.get("transform", ""))[1])  # type: ignore[index]
    cavity = root.find(f".//{SVG}clipPath/{SVG}path")
    assert cavity is not None
    across = [
        float(pair.split()[0]) for pair in re.findall(r"-?[\d.]+ -?[\d.]+", cavity.get("d", ""))
    ]
    assert max(across) - min(across) == pytest.approx(70.0)
    ruler = next(t for t in root.iter(f"{SVG}text") if (t.text or "").endswith("cm"))
    centimetres = float((ruler.text or "").split("\u00a0")[0])
    assert float(ruler.get("x", "0")) - 6.0 - 10.0 == pytest.approx(
        10 * centimetres * scale, abs=0.02
    )


def test_two_drawings_on_one_page_share_no_id() -> None:
    first = set(re.findall(r'\bid="([^"]+)"', section_svg(dome(), title="a")))
    assert first.isdisjoint(re.findall(r'\bid="([^"]+)"', section_svg(glass(), title="a")))
    assert first.isdisjoint(
        re.findall(r'\bid="([^"]+)"', section_svg(dome(), title="a", id_prefix="n"))
    )


def test_the_drawing_is_told_in_words() -> None:
    root = tree(dome())
    words = root.findtext(f"{SVG}desc") or ""
    assert root.findtext(f"{SVG}title") == "One piece"
    for part in dome().parts:
        assert part.name in words
    assert "70\u00a0mm wide and 35\u00a0mm high" in words
    order = [words.index(part.name) for part in glass().parts if part.name in words]
    assert order == sorted(order)


def test_a_thumbnail_has_no_words() -> None:
    assert not list(tree(dome(), labelled=False).iter(f"{SVG}text"))


def test_a_file_of_its_own_brings_its_paper_and_a_page_does_not() -> None:
    assert tree(dome()).find(f"{SVG}rect") is not None
    assert "<rect" not in section_svg(dome(), title="a", standalone=False)


def test_width_in_pixels_keeps_the_proportions() -> None:
    root = tree(dome(), width_px=640)
    _, _, width, height = (float(word) for word in root.get("viewBox", "").split())
    assert root.get("width") == "640"
    assert float(root.get("height", "0")) == pytest.approx(640 * height / width, abs=0.02)


def test_hostile_names_are_shown_as_text() -> None:
    section = dome()
    bad = replace(section, parts=(replace(section.parts[0], name=HOSTILE), *section.parts[1:]))
    root = ElementTree.fromstring(section_svg(bad, title=HOSTILE, standalone=True))
    assert not list(root.iter(f"{SVG}script"))
    assert root.findtext(f"{SVG}title") == HOSTILE.replace("\x07", "")


def test_a_section_without_parts_is_still_drawn() -> None:
    assert (
        ElementTree.fromstring(
            section_svg(replace(dome(), parts=()), title="Empty", standalone=True)
        )
        is not None
    )
