"""The day sheet stands alone, has a page for each session, and shows foreign text as text."""

from __future__ import annotations

import re
from dataclasses import replace

from agendas import AGENDA, SERVED, SESSIONS, TASKS, at, begun, with_a_moment_outside
from entremetry.agenda.agenda import Agenda
from entremetry.publish.agenda_sheet import day_sheet, session_page
from unit.publish.sheets import HOSTILE
from unit.publish.test_recipe_page import FETCHING, Reading


def read(agenda: Agenda) -> Reading:
    reading = Reading(day_sheet(agenda))
    assert reading.open_ == []
    return reading


def said(agenda: Agenda) -> str:
    return read(agenda).text.replace("\u00a0", " ")


def test_the_sheet_is_whole_has_no_script_and_asks_nothing_of_the_network() -> None:
    page = day_sheet(with_a_moment_outside())
    reading = read(with_a_moment_outside())
    assert not [a for a in reading.attributes if a[1] in FETCHING]
    assert not [a for a in reading.attributes if a[1] == "style" or a[1].startswith("on")]
    assert not re.search(r"@import|url\((?!#)", page)
    assert {"script", "link", "img", "iframe", "form"}.isdisjoint(reading.tags)
    assert ("html", "lang", "en-GB") in reading.attributes
    assert "default-src 'none'" in page


def test_ids_are_there_once_and_every_label_and_heading_is_found() -> None:
    reading = read(with_a_moment_outside())
    ids = [value for _, name, value in reading.attributes if name == "id"]
    assert len(ids) == len(set(ids))
    pointed = [
        word
        for _, name, value in reading.attributes
        if name in {"for", "aria-labelledby"}
        for word in str(value).split()
    ]
    assert pointed and set(pointed) <= set(ids)


def test_each_session_begins_a_page_of_any_size() -> None:
    page = day_sheet(AGENDA)
    assert page.count('<section class="session"') == len(SESSIONS)
    printed = page[page.index("@media print", page.index(".plan")) :]
    assert ".session { break-before: page;" in printed
    assert not re.search(r"@page[^}]*size", page)


def test_every_go_has_a_box_its_hour_its_amounts_and_its_place() -> None:
    reading, text = read(AGENDA), said(AGENDA)
    boxes = [a for a in reading.attributes if a[1:] == ("type", "checkbox")]
    assert len(boxes) == sum(len(session_page(AGENDA, s).goes) for s in SESSIONS) == 17
    assert "18:30 20 min Cook · Pear compote" in text
    assert "260 g pear 42 g caster sugar 5.2 g pectin NH" in text
    assert "hob, small pan" in text and "Freeze until the middle is at −15 °C." in text
    assert "Back to: Bake · Almond base, 2 of 2" in text


def test_a_wait_says_until_when_and_why() -> None:
    assert "Then 2 h 8 min by itself, to 21:10. computed: about 1 h 50 min" in said(AGENDA)


def test_what_runs_already_stands_at_the_head_of_a_session() -> None:
    late = replace(TASKS[8], end=at("28 14:30"))
    agenda = replace(AGENDA, tasks=(*TASKS[:8], late, *TASKS[9:]))
    (running,) = session_page(agenda, SESSIONS[1]).running
    assert running.task.component == "cream"
    assert "Freeze · Hazelnut cream: to 14:30" in said(agenda)


def test_moments_outside_the_sessions_have_a_place_of_their_own() -> None:
    text = said(with_a_moment_outside())
    assert "Between the sessions Saturday 28 November 18:50 8 min Place · Pear crisps" in text
    assert "Between the sessions" not in said(AGENDA)


def test_what_is_done_is_ticked() -> None:
    ticked = [a for a in read(begun()).attributes if a[1] == "checked"]
    assert len(ticked) == 1


def test_notes_are_shown_if_there_are_any() -> None:
    text = said(replace(AGENDA, changes=("the fridge holds 9 l more",)))
    assert "What had to give the fridge holds 9 l more" in text
    assert "How good this plan is 2 sessions" in text and "Take care" in text
    assert "What had to give" not in said(AGENDA)


def test_hostile_text_is_text() -> None:
    evil = replace(
        TASKS[0],
        text=HOSTILE,
        component_name=HOSTILE,
        dessert_name=HOSTILE,
        amounts=(HOSTILE,),
        uses=(HOSTILE,),
        because=HOSTILE,
    )
    agenda = replace(
        AGENDA,
        tasks=(evil, *TASKS[1:]),
        served=tuple(replace(each, name=HOSTILE) for each in SERVED),
        assumptions=(HOSTILE,),
    )
    reading = read(agenda)
    assert {"script", "img"}.isdisjoint(reading.tags)
    assert "alert(1)" in reading.text and "\x07" not in reading.text
