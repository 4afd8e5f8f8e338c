"""Paper, texts, tables, card, plan: what is published in French says its own words in French."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import UTC, datetime
from datetime import date as day_of
from io import BytesIO
from zipfile import ZipFile

import pytest
from icalendar import Calendar
from openpyxl import load_workbook
from pypdf import PdfReader

from agendas import AGENDA
from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.publish.agenda_calendar import calendar
from entremetry.publish.agenda_drawing import agenda_svg
from entremetry.publish.agenda_sheet import day_sheet
from entremetry.publish.agenda_wording import VERBS, verb
from entremetry.publish.description_text import by_hand, description_text
from entremetry.publish.open_document import ods
from entremetry.publish.picture import card_svg, section_png
from entremetry.publish.print_sheet import print_sheet
from entremetry.publish.shortening import short
from entremetry.publish.tables import tables
from entremetry.publish.typesetting import Paper, printed
from entremetry.publish.wall_sheet import wall_sheet
from entremetry.publish.workbook import xlsx
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import batch_of_text
from entremetry.words import speaking
from unit.publish.papers import pdf_text, squeezed
from unit.publish.sheets import SHEET

DAY = day_of(2026, 5, 1)


@pytest.fixture(autouse=True)
def french() -> Iterator[None]:
    with speaking("fr"):
        yield


@pytest.fixture(scope="module", params=sorted(demo_texts()))
def demo(request: pytest.FixtureRequest) -> BatchSheet:
    with speaking("fr"):
        return batch_of_text(demo_texts()[request.param])


@pytest.mark.parametrize("paper", Paper)
def test_a_print_sheet_has_its_headings_its_day_and_its_language_in_french(paper: Paper) -> None:
    pdf = print_sheet(SHEET, paper=paper, allergens=("lait", "œuf"), date_published=DAY)
    text = pdf_text(pdf)
    for words in (
        *("Contient : lait, œuf.", "1er mai 2026", "À acheter", "Précautions", "Une pièce"),
        *("D’où viennent les chiffres", "Garnir le moule", "Montage", "calculé avec Entremetry"),
    ):
        assert squeezed(printed(words)) in text, words
    assert PdfReader(BytesIO(pdf)).trailer["/Root"]["/Lang"] == "fr"


@pytest.mark.parametrize("paper", Paper)
def test_no_component_is_broken_over_pages_in_french_either(paper: Paper, demo: BatchSheet) -> None:
    pages = PdfReader(BytesIO(print_sheet(demo, paper=paper))).pages
    texts = [squeezed(page.extract_text()) for page in pages]
    assert 2 <= len(texts) <= 6
    for component in demo.components:
        heads = [squeezed(printed(each.name)) for each in (component, *component.lines)]
        assert any(all(head in text for head in heads) for text in texts), component.name


def test_a_wall_sheet_keeps_every_mass_and_caution(demo: BatchSheet) -> None:
    pdf = wall_sheet(demo)
    text = pdf_text(pdf)
    assert squeezed("la fiche imprimée les donne en entier") in text
    for words in (*(each.name for each in demo.components), *demo.cautions):
        assert squeezed(printed(words)) in text, words
    assert (PdfReader(BytesIO(pdf)).metadata or {})["/Title"].endswith("fournée")


@pytest.mark.parametrize("limit", range(320, 3000, 211))
def test_a_description_keeps_its_limit_its_name_and_its_safety_line(
    limit: int, demo: BatchSheet
) -> None:
    text = description_text(demo, allergens=("lait",), limit=limit)
    assert len(text) <= limit
    assert text.startswith(f"{demo.name} : ")
    assert text.endswith(
        "Contient : lait. Les règles d’hygiène en vigueur chez vous, votre thermomètre et vos sens "
        "décident ; dans le doute, jetez.\n"
    )
    assert "\u00a0" not in text and "\u202f" not in text


def test_a_measure_by_hand_does_not_repeat_the_scales() -> None:
    assert by_hand("2 feuilles (peser : 4,0 g)") == "2 feuilles"
    assert by_hand("¼ c. à c. (5 % de moins)") == "¼ c. à c. (5 % de moins)"


def test_headings_of_a_spreadsheet_are_french_and_its_numbers_numbers() -> None:
    made = tables(SHEET)
    assert [table.name for table in made] == [
        *("Quantités", "Achats", "Garnissage", "Méthode", "Précautions"),
    ]
    book = load_workbook(BytesIO(xlsx(made, title=SHEET.name, on=DAY)))
    masses = [cell.value for cell in book["Quantités"]["C"]]
    assert masses[0] == "Masse (g)"
    assert masses[1:] == [row[2] for row in made[0].rows]
    assert all(isinstance(mass, int | float) for mass in masses[1:])
    with ZipFile(BytesIO(ods(made, title=SHEET.name, on=DAY))) as archive:
        assert b"<dc:language>fr</dc:language>" in archive.read("meta.xml")
        assert re.findall(rb'office:value="[^"]*,', archive.read("content.xml")) == []


def test_a_card_and_a_section_differ_from_the_english_ones() -> None:
    card, section = card_svg(SHEET), section_png(SHEET.section)
    with speaking("en"):
        assert card_svg(SHEET) != card
    assert section.startswith(b"\x89PNG")


def test_a_sentence_is_cut_short_at_its_end_and_not_in_an_abbreviation() -> None:
    assert short("Ajouter 1 c. à s. de sucre. Bien mélanger.") == "Ajouter 1 c. à s. de sucre."
    assert short("Congeler. Filmer. Se garde 14 jours.") == "Congeler. Se garde 14 jours."


def test_every_step_of_a_plan_has_a_word() -> None:
    assert len({word() for word in VERBS.values()}) == len(VERBS)
    assert verb(AGENDA.tasks[0]) in {word() for word in VERBS.values()}


def test_a_calendar_says_days_waits_and_services_in_french() -> None:
    read = Calendar.from_ical(calendar(AGENDA, stamp=datetime(2026, 11, 1, tzinfo=UTC)))
    assert str(read["prodid"]).endswith("//FR")
    told = "\n".join(
        f"{event['summary']}\n{event['description']}" for event in read.walk("VEVENT")
    ).replace("\u00a0", " ")
    assert "Au plan de travail : " in told and "18:30 Cuire · " in told
    assert "puis 11 h 25 min sans y toucher, jusqu’à sam. 09:00" in told
    assert "Service : " in told and "samedi 28 novembre" in told
    assert re.search(r"\b(then|Served|by itself|Saturday|of work)\b", told) is None


def test_a_day_sheet_and_a_drawing_say_their_words_in_french() -> None:
    page = day_sheet(AGENDA)
    assert '<html lang="fr">' in page and "Plan pour " in page
    for words in (
        "Séance 1 sur 2",
        "Ce qui est supposé",
        "mains à l’œuvre",
        "vendredi 27 novembre",
    ):
        assert words in page.replace("\u00a0", " "), words
    drawing = agenda_svg(AGENDA, title="Plan", standalone=True)
    assert "hands at work" not in drawing and "Séance du" in drawing
