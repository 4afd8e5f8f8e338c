"""The panel of bench checks is calm, tells what to do, and opens each number."""

from __future__ import annotations

import re
from html import unescape
from typing import Any

import pytest

from bench_texts import DOME, changed, text_of
from entremetry.store import Kind

Client = Any
PANEL = "/desserts/dome/checks"
DIAGNOSIS = "/desserts/dome/diagnosis"


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def keep(client: Client, changes: dict[str, object]) -> Client:
    """Put a dessert with changes into the library."""
    text = text_of(changed(DOME, changes))
    client.app.state.workbench.library.add(Kind.DESSERT, "dome", text)
    return client


@pytest.fixture
def sound(empty: Client) -> Client:
    """A workbench with a dessert that nothing is wrong with."""
    return keep(empty, {})


def panel(client: Client, path: str = PANEL) -> Any:
    return client.get(path, hx_request="true")


def opened(client: Client, reply: Any) -> Any:
    """What is fine in a panel, as it comes when it is opened."""
    asked = re.search(r'hx-get="([^"]+fine=yes[^"]*)"', reply.html)
    assert asked is not None
    return panel(client, unescape(asked.group(1)))


def test_the_page_of_a_dessert_loads_the_panel_by_itself(sound: Client) -> None:
    html = sound.get("/desserts/dome").html
    assert 'id="checks" hx-get="/desserts/dome/checks"' in html
    assert '<a href="/desserts/dome/checks">' in html


def test_what_is_fine_is_quiet(sound: Client) -> None:
    reply = panel(sound)
    words = plain(reply.words)
    assert reply.status == 200 and "<html" not in reply.html
    assert "Nothing needs care" in words
    assert re.search(r"\d+ checks are fine", words)
    assert 'class="care ' not in reply.html


def test_what_needs_care_says_what_to_do(empty: Client) -> None:
    reply = panel(keep(empty, {"assembly/3/within": "8 min"}))
    words = plain(reply.words)
    assert "1 needs care" in words and "Care Glazed straight from the freezer" in words
    assert "Have the glaze ready" in words


def test_what_fails_is_counted_and_named(empty: Client) -> None:
    words = plain(
        panel(keep(empty, {"components/mousse/formula/gelatine-sheet-gold": "0.1 g"})).words
    )
    assert re.search(r"\d checks? fails?", words) and "Fails It sets Berry mousse" in words


def test_each_number_opens_to_inputs_formula_and_source(sound: Client) -> None:
    parts = opened(sound, panel(sound)).html.split("<details")
    about = [part for part in parts if "The piece" not in part and "It sets" in part]
    assert about
    for part in about:
        assert "check-formula" in part and "check-inputs" in part and 'class="sources"' in part


def test_the_times_come_with_a_second_request(sound: Client) -> None:
    first = panel(sound)
    asked = re.search(r'hx-get="([^"]+times[^"]*)"', first.html)
    assert asked is not None and "Time to freeze" not in opened(sound, first).words
    second = panel(sound, asked.group(1))
    assert "Time to freeze" in opened(sound, second).words and "checks-waiting" not in second.html


def test_by_itself_it_is_a_whole_page_with_the_times(sound: Client) -> None:
    reply = sound.get(PANEL)
    assert "<html" in reply.html and "Will it work?" in reply.words
    assert "Time to freeze" in reply.words
    assert reply.headers["vary"] == "HX-Request"


def test_another_mould_is_checked(sound: Client) -> None:
    reply = panel(sound, f"{PANEL}?mould=hemisphere-80")
    assert "mould=hemisphere-80" in reply.html
    assert "Enough around the insert" in opened(sound, reply).words


def test_a_choice_that_does_not_work_says_why(sound: Client) -> None:
    reply = panel(sound, f"{PANEL}?mould=hemisphere-30")
    assert reply.status == 200 and "Nothing to check yet" in reply.words


def test_a_draft_that_is_broken_says_why(empty: Client) -> None:
    words = panel(keep(empty, {"mould": "no-such-mould"})).words
    assert "Nothing to check yet" in words


def test_the_symptoms_are_there_to_choose(sound: Client) -> None:
    reply = sound.get(DIAGNOSIS)
    assert reply.html.count("/desserts/dome/diagnosis?symptom=") >= 10


def test_a_symptom_leads_to_its_suspects_and_measurements(sound: Client) -> None:
    reply = sound.get(f"{DIAGNOSIS}?symptom=soggy")
    words = plain(reply.words)
    assert 'aria-current="page">The base is soggy' in reply.html
    assert words.count("Measure:") >= 3 and "Water moved into it" in words


def test_an_unknown_symptom_is_answered_with_the_nearest(sound: Client) -> None:
    reply = sound.get(f"{DIAGNOSIS}?symptom=sogy")
    assert reply.status == 422 and "soggy" in reply.words


def test_what_a_person_wrote_is_escaped(empty: Client) -> None:
    named = {"components/mousse/name": "Berry <b>mousse</b>"}
    assert "<b>mousse</b>" not in panel(keep(empty, named)).html


def test_the_panel_never_says_safe(sound: Client) -> None:
    assert "safe" not in sound.get(PANEL).words.casefold()
