from __future__ import annotations

from dataclasses import replace
from datetime import date
from io import BytesIO

import pytest
from pypdf import PdfReader

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.publish.print_sheet import NOTHING_FOUND, print_sheet
from entremetry.publish.typesetting import Paper, printed
from entremetry.publish.typography import grams
from entremetry.publish.wall_sheet import wall_sheet
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import batch_of_text
from unit.publish.foreign import TEXTS, foreign
from unit.publish.papers import pdf_text, squeezed
from unit.publish.sheets import SHEET

SIZES = {Paper.A4: (595.3, 841.9), Paper.LETTER: (612.0, 792.0)}  # points
DAY = date(2026, 3, 1)


@pytest.fixture(scope="module", params=["blackcurrant-vanilla-dome", "mango-coconut-lime-glass"])
def demo(request: pytest.FixtureRequest) -> BatchSheet:
    return batch_of_text(demo_texts()[request.param])


def expected(sheet: BatchSheet) -> list[str]:
    """What both sheets of paper have to say."""
    lines = [each for component in sheet.components for each in component.lines]
    return [
        sheet.name,
        *(component.name for component in sheet.components),
        *(grams(component.mass.value) for component in sheet.components),
        *(grams(each.mass) + each.name for each in lines),
        *(each.note for each in lines),
        *(each.household for each in lines),
        *sheet.cautions,
    ]


def test_all_of_a_recipe_can_be_read_in_its_print_sheet(demo: BatchSheet) -> None:
    text = pdf_text(print_sheet(demo, allergens=("milk", "eggs"), date_published=DAY))
    steps = [sentence for component in demo.components for sentence in component.method]
    more = [*steps, *demo.assembly, *demo.assumptions, "Contains milk, eggs.", "1 March 2026"]
    more += [demo.about, *(step.text for step in demo.fill_steps)]
    more += [item.name for item in demo.shopping]
    for words in [*expected(demo), *more]:
        assert squeezed(printed(words)) in text, words


def test_all_masses_and_cautions_can_be_read_in_the_wall_sheet(demo: BatchSheet) -> None:
    text = pdf_text(wall_sheet(demo))
    for words in expected(demo):
        assert squeezed(printed(words)) in text, words


@pytest.mark.parametrize("paper", Paper)
def test_a_sheet_has_the_size_of_its_paper_a_title_and_its_fonts_inside(paper: Paper) -> None:
    for pdf in (print_sheet(SHEET, paper=paper), wall_sheet(SHEET, paper=paper)):
        reader = PdfReader(BytesIO(pdf))
        for page in reader.pages:
            assert tuple(map(float, page.mediabox[2:])) == pytest.approx(SIZES[paper], abs=0.1)
            fonts = page["/Resources"]["/Font"]  # type: ignore[index]
            for font in fonts.values():
                (inner,) = font.get_object()["/DescendantFonts"]
                descriptor = inner.get_object()["/FontDescriptor"]
                assert {"/FontFile2", "/FontFile3"} & set(descriptor)
        assert (reader.metadata or {})["/Title"].startswith(SHEET.name)
        root = reader.trailer["/Root"]
        assert root["/MarkInfo"]["/Marked"] and root["/Lang"].startswith("en")
        assert "/Image" not in {
            item.get_object()["/Subtype"]
            for page in reader.pages
            for item in page["/Resources"].get("/XObject", {}).values()  # type: ignore[index]
        }


def test_the_same_sheet_gives_the_same_bytes() -> None:
    assert print_sheet(SHEET, date_published=DAY) == print_sheet(SHEET, date_published=DAY)
    assert wall_sheet(SHEET, on=DAY) == wall_sheet(SHEET, on=DAY)


def test_a_long_method_runs_over_pages_and_loses_no_step() -> None:
    steps = tuple(f"Step {k} of many: stir for {k} minutes and wait." for k in range(1, 151))
    long = replace(SHEET.components[0], method=steps)
    for paper in Paper:
        pdf = print_sheet(replace(SHEET, components=(long,)), paper=paper)
        assert len(PdfReader(BytesIO(pdf)).pages) > 2
        text = pdf_text(pdf)
        assert all(squeezed(step) in text for step in steps)


def test_nothing_to_warn_of_still_defers_to_the_rules_of_the_place() -> None:
    bare = replace(SHEET, cautions=())
    for pdf in (print_sheet(bare), wall_sheet(bare)):
        assert squeezed(NOTHING_FOUND) in pdf_text(pdf)


SHORT_ENOUGH = [name for name, text in TEXTS.items() if len(text) < 1000]


@pytest.mark.parametrize("name", SHORT_ENOUGH)
def test_hostile_text_is_printed_as_text(name: str) -> None:
    sheet = foreign(TEXTS[name])
    words = squeezed(printed(TEXTS[name]))
    for pdf in (print_sheet(sheet, allergens=(TEXTS[name],)), wall_sheet(sheet)):
        text = pdf_text(pdf)
        assert squeezed("190 g") in text
        if name not in {"turned", "emoji"}:  # a reader finds them in the order of the eye
            assert text.count(words) >= 5
        assert "\x07" not in text


def test_ten_thousand_letters_everywhere_leave_no_part_out() -> None:
    sheet = foreign(TEXTS["long"])
    pages = PdfReader(BytesIO(print_sheet(sheet))).pages
    assert len(pages) > 10
    last_of_all = sheet.components[-1].changes[-1].mass
    assert squeezed(grams(last_of_all)) in squeezed(pages[-1].extract_text())


def test_a_name_cannot_turn_the_numbers_behind_it() -> None:
    assert "\u202e" not in printed(TEXTS["turned"]) and "\u2067" not in printed(TEXTS["turned"])
