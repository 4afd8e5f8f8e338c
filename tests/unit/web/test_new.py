"""What pasted lines leave open is asked, and ends in a saved dessert."""

from __future__ import annotations

import re
from html import unescape
from typing import Any

from entremetry.store import Kind
from entremetry.web.draft_answers import lines_by_key

Client = Any
LINES = "240 g blackcurrant purée\n2 leaves gelatine\n200 g 35 % cream\n1 1/2 tbsp corn starch\n"
FORM = {"name": "Dark test", "pieces": "4", "mould": "hemisphere-70", "text": LINES}


def asked(html: str) -> dict[str, list[str]]:
    """Keys of the questions on a page with the values to choose from."""
    keys = re.findall(
        r'name="asked:([^"]+)" value="[^"]*">\s*(?:<div class="choices"|<div class="field answer)',
        html,
    )
    return {
        key: [
            unescape(v)
            for v in re.findall(rf'name="answer:{re.escape(key)}" value="([^"]*)"', html)
        ]
        for key in keys
    }


def answered_through(client: Client, form: dict[str, str]) -> Any:
    """Answer whatever is asked, by its first choice or its example, until nothing is."""
    for _ in range(12):
        reply = client.post("/new", form)
        if reply.status != 200:
            return reply
        for key, values in asked(reply.html).items():
            form[f"answer:{key}"] = values[0] if values else "2 g"
            form[f"asked:{key}"] = key
        form |= {"text_then": form["text"], "name_then": form["name"]}
    return reply


def test_ambiguous_lines_come_back_as_questions(client: Client) -> None:
    reply = client.post("/new", FORM)
    assert reply.status == 200
    assert "2 leaves gelatine" in reply.words
    assert "gelatine-sheet-gold" in reply.html
    assert "Whose cups and spoons" in reply.words
    assert client.app.state.workbench.library.documents(Kind.DESSERT)[0].id == "plain-cream"


def test_nothing_is_chosen_beforehand(client: Client) -> None:
    html = client.post("/new", FORM).html
    answers = re.findall(r'<input type="radio" name="answer:[^>]*>', html)
    assert answers and not any("checked" in each for each in answers)


def test_what_was_typed_is_still_there(client: Client) -> None:
    html = unescape(client.post("/new", FORM).html)
    assert 'value="Dark test"' in html and "240 g blackcurrant purée" in html
    assert re.search(r'value="hemisphere-70" checked', html)


def test_answers_lead_to_a_saved_dessert_and_its_sheet(client: Client) -> None:
    reply = answered_through(client, dict(FORM))
    assert (reply.status, reply.headers["location"]) == (303, "/desserts/dark-test")
    assert "4 pieces in Half-sphere 70" in client.get("/desserts/dark-test").words.replace(
        "\u00a0", " "
    )


def test_mould_weighed_with_water_holds_what_was_said(client: Client) -> None:
    form = FORM | {"mould": "weighed", "holds": "75", "like": "hemisphere-70"}
    reply = answered_through(client, dict(form))
    assert reply.status == 303
    words = client.get("/desserts/dark-test").words.replace("\u00a0", " ")
    assert "A cavity holds 75 ml" in words


def test_own_words_win_over_a_choice(client: Client) -> None:
    form = FORM | {
        "answer:dark-test-2-ingredient": "gelatine-sheet-gold",
        "typed:dark-test-2-ingredient": "gelatine-sheet-silver",
        "asked:dark-test-2-ingredient": "which",
        "text_then": LINES,
        "name_then": "Dark test",
    }
    assert 'value="gelatine-sheet-silver">' in client.post("/new", form).html


def test_answer_about_a_line_that_changed_is_asked_again(client: Client) -> None:
    key = "dark-test-2-ingredient"
    form = FORM | {
        f"answer:{key}": "gelatine-sheet-gold",
        f"asked:{key}": "which",
        "text_then": LINES,
        "name_then": "Dark test",
    }
    assert key not in asked(client.post("/new", form).html)
    changed = form | {"text": "10 g caster sugar\n" + LINES}
    html = client.post("/new", changed).html
    assert "dark-test-3-ingredient" in asked(html)
    assert f'name="answer:{key}" value="gelatine-sheet-gold"' not in html


def test_answer_can_be_asked_again(client: Client) -> None:
    key = "dark-test-2-ingredient"
    form = FORM | {
        f"answer:{key}": "gelatine-sheet-gold",
        f"asked:{key}": "which",
        "text_then": LINES,
        "name_then": "Dark test",
        "forget": key,
    }
    assert key in asked(client.post("/new", form).html)


def test_missing_parts_are_named_and_nothing_is_lost(client: Client) -> None:
    for missing, told in (
        ({"name": ""}, "a name for the dessert"),
        ({"pieces": "0"}, "a whole number from 1"),
        ({"mould": ""}, "no mould"),
        ({"mould": "hemisphere-7"}, "did you mean"),
        ({"mould": "weighed", "holds": "much"}, "found"),
        ({"text": ""}, "one ingredient a line"),
    ):
        reply = client.post("/new", FORM | missing)
        assert reply.status == 422, missing
        assert told in reply.words.replace("\u00a0", " "), missing


def test_taken_name_is_told_and_the_other_dessert_stays(client: Client) -> None:
    before = client.app.state.workbench.library.document(Kind.DESSERT, "plain-cream")
    reply = answered_through(client, FORM | {"name": "Plain cream"})
    assert reply.status == 422
    assert "choose another" in reply.words
    assert client.app.state.workbench.library.document(Kind.DESSERT, "plain-cream") == before


def test_lines_are_keyed_as_the_draft_keys_them() -> None:
    text = "Dark mousse:\n240 g purée\n\nBase:\n100 g flour\n80 g butter\n"
    assert lines_by_key(text, "Name") == {
        "dark-mousse-1": "240 g purée",
        "base-1": "100 g flour",
        "base-2": "80 g butter",
    }
