"""Prices in the workbench: typed beside the ingredients, kept for all desserts, never lost."""

from __future__ import annotations

import json

import pytest

from entremetry.store import Kind
from entremetry.usecases.labelling import Prices, label_of_text
from entremetry.usecases.price_list import price_list
from unit.web.conftest import CREAM, Client

PAGE = "/desserts/plain-cream/cost"
FIELDS = {
    "started_from": "0",
    "currency": "EUR",
    "labour_per_hour": "30",
    "energy_per_kwh": "0,40",
    "margin": "60 %",
    "pack:cream-35": "1 l",
    "price:cream-35": "5,20",
    "pack:caster-sugar": "1 kg",
    "price:caster-sugar": "1.50",
}
OTHER = CREAM.replace("id: plain-cream", "id: other-cream").replace("Plain cream", "Other cream")


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def kept(client: Client) -> str:
    return price_list(client.app.state.workbench.library).text


def test_the_page_of_a_dessert_leads_to_it(client: Client) -> None:
    assert f'href="{PAGE}"' in client.get("/desserts/plain-cream").html


def test_without_prices_each_ingredient_has_its_fields(client: Client) -> None:
    reply = client.get(PAGE)
    for name in ("pack:cream-35", "price:cream-35", "pack:caster-sugar"):
        assert f'name="{name}"' in reply.html
    assert "At least 0.00 EUR a piece" in reply.words and "No price yet: " in reply.words


def test_prices_give_the_cost_that_the_command_gives(client: Client) -> None:
    assert client.post(PAGE, FIELDS).status == 303
    cost = label_of_text(CREAM, prices=Prices(text=kept(client))).cost
    words = plain(client.get(PAGE).words)
    assert f"{cost.per_piece:.2f} EUR a piece" in words
    assert f"{cost.price_per_piece:.2f} EUR" in words and "margin of 60 %" in words
    sugar = next(each for each in cost.ingredients if each.id == "caster-sugar")
    assert sugar.cost == pytest.approx(sugar.mass * 1.50)  # 1 kg costs 1.50
    assert cost.labour == pytest.approx(cost.labour_minutes / 60 * 30)
    assert cost.price_per_piece == pytest.approx(cost.per_piece / 0.4)


def test_what_was_typed_stands_there_again(client: Client) -> None:
    client.post(PAGE, FIELDS)
    html = client.get(PAGE).html
    for value in ("1 l", "5.2", "1 kg", "1.5", "60 %", "0.4"):
        assert f'value="{value}"' in html


def test_each_save_is_one_revision_and_can_be_undone(client: Client) -> None:
    library = client.app.state.workbench.library
    client.post(PAGE, FIELDS)
    client.post(PAGE, {**FIELDS, "started_from": "1", "price:cream-35": "6"})
    assert len(library.history(Kind.PRICES, "prices")) == 2
    assert "Undo the last change" in client.get(PAGE).words
    assert client.post(f"{PAGE}/undo", {"started_from": "2"}).status == 303
    assert "price: 5.2" in kept(client)


def test_another_dessert_has_the_same_prices(client: Client) -> None:
    client.app.state.workbench.library.add(Kind.DESSERT, "other-cream", OTHER)
    client.post(PAGE, FIELDS)
    assert 'value="5.2"' in client.get("/desserts/other-cream/cost").html


def test_a_price_of_what_this_dessert_does_not_know_is_left_alone(client: Client) -> None:
    library = client.app.state.workbench.library
    text = (
        "entremetry_prices: 1\ncurrency: EUR\n"
        "prices:\n  my-secret-paste: {pack: 1 kg, price: 9} # of another dessert\n"
    )
    library.add(Kind.PRICES, "prices", text)
    assert client.get(PAGE).status == 200
    assert client.post(PAGE, {**FIELDS, "started_from": "1"}).status == 303
    assert "my-secret-paste: {pack: 1 kg, price: 9} # of another dessert" in kept(client)


@pytest.mark.parametrize(
    ("field", "typed", "words"),
    [
        ("price:cream-35", "dear", "dear"),
        ("price:cream-35", "", "Say what the pack costs."),
        ("pack:cream-35", "", "Say what the pack holds"),
        ("pack:cream-35", "a big one", "a big one"),
        ("labour_per_hour", "much", "much"),
        ("margin", "120 %", "120 %"),
        ("currency", "euros", "EUROS"),
    ],
)
def test_bad_input_is_told_in_place_and_nothing_typed_is_lost(
    client: Client, field: str, typed: str, words: str
) -> None:
    reply = client.post(PAGE, {**FIELDS, field: typed})
    assert reply.status == 422 and words in plain(reply.words)
    assert reply.html.count('aria-invalid="true"') == 1
    for name, value in {**FIELDS, field: typed}.items():
        if name != "started_from":
            assert f'name="{name}"' in reply.html and f'value="{value}"' in reply.html
    assert kept(client) == price_list(client.app.state.workbench.library).text
    assert price_list(client.app.state.workbench.library).revision == 0


def test_what_somebody_saved_meanwhile_is_not_lost(client: Client) -> None:
    client.post(PAGE, FIELDS)
    reply = client.post(PAGE, {**FIELDS, "price:cream-35": "7"})
    assert reply.status == 409 and 'value="7"' in reply.html
    assert "price: 5.2" in kept(client)


def test_a_form_from_elsewhere_keeps_nothing(client: Client) -> None:
    assert client.send(PAGE, FIELDS).status == 403
    assert price_list(client.app.state.workbench.library).revision == 0


def test_hands_can_be_taken_from_a_kept_plan(client: Client) -> None:
    plans = client.app.state.workbench.library.plans
    tasks = [
        {
            "id": "plain-cream/cream/x-1",
            "dessert": "plain-cream",
            "hands_on_min": 40,
            "together": [],
        },
    ]
    served = [{"dessert": "plain-cream", "pieces": 6}]
    mine = plans.keep("Cream for Sunday", json.dumps({"served": served, "tasks": tasks}))
    plans.keep("Of something else", json.dumps({"served": [], "tasks": []}))
    plans.keep("Broken", "{}")
    client.post(PAGE, FIELDS)
    reply = client.get(f"{PAGE}?plan={mine.id}")
    assert "Hands, 40 min in all" in plain(reply.words)
    assert "this dessert's hands-on time in the plan for 6 pieces" in plain(reply.words)
    assert "Cream for Sunday" in reply.words and "Of something else" not in reply.words
    assert "steps of the method" in client.get(PAGE).words
    assert (
        client.post(PAGE, {**FIELDS, "plan": str(mine.id), "started_from": "1"})
        .headers["location"]
        .endswith(f"plan={mine.id}")
    )


@pytest.mark.parametrize("number", ["99", "mine"])
def test_a_plan_that_is_not_there_is_told(client: Client, number: str) -> None:
    assert "This does not work yet" in client.get(f"{PAGE}?plan={number}").words
