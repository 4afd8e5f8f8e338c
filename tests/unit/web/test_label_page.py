"""The label in the workbench is the one of the command, in both panels."""

from __future__ import annotations

from typing import Any

import pytest

from entremetry.labels.naming import Rules
from entremetry.usecases.labelling import label_of_text
from unit.web.conftest import CREAM, Client

PAGE = "/desserts/plain-cream/label"


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def test_the_page_of_a_dessert_leads_to_it(client: Client) -> None:
    assert f'href="{PAGE}"' in client.get("/desserts/plain-cream").html


@pytest.mark.parametrize("rules", list(Rules))
def test_both_panels_say_what_the_command_says(client: Client, rules: Rules) -> None:
    words = plain(client.get(PAGE).words)
    label: Any = label_of_text(CREAM, rules=rules.value)
    assert label.net_quantity in words and label.keeping.storage in words
    assert all(caution in words for caution in label.cautions)
    for row in label.rows:
        assert str(row.declared_serving).removesuffix(" kcal") in words
        assert plain(row.figure.because) in words


def test_energy_and_fat_are_as_worked_out_by_hand(client: Client) -> None:
    # 500 g of cream at 35 % and 50 g of sugar: 175 g of fat in 550 g, were nothing lost or added;
    # SR28 or the trade row of the larder says how near 35 % the cream is.
    rows = {row.key: row for row in label_of_text(CREAM).rows}
    assert rows["fat_g"].per_100g == pytest.approx(100 * 175 / 550, rel=0.04)
    assert f"{rows['fat_g'].declared_100g}" in plain(client.get(PAGE).words)


def test_allergens_are_set_apart_and_each_says_what_brings_it(client: Client) -> None:
    reply = client.get(PAGE)
    assert "(<strong>milk</strong>), sugar" in reply.html
    assert "Contains: milk" in reply.words
    assert "Allergens, and what brings them" in reply.words


def test_each_number_opens_to_its_reason_and_interval(client: Client) -> None:
    reply = client.get(PAGE)
    rows = sum(len(label_of_text(CREAM, rules=rules.value).rows) for rules in Rules)
    assert reply.html.count("where from?") == rows + 2
    assert "It may lie" in reply.words


def test_another_mould_is_another_piece(client: Client) -> None:
    html = client.get(f"{PAGE}?mould=hemisphere-70&pieces=9").html
    label = label_of_text(CREAM, mould="hemisphere-70", pieces=9)
    assert label.net_quantity in html and 'value="hemisphere-70" selected' in html
    assert 'value="9"' in html


@pytest.mark.parametrize("query", ["pieces=few", "mould=hemisphere-7", "pieces=0"])
def test_what_cannot_be_is_said_in_place(client: Client, query: str) -> None:
    reply = client.get(f"{PAGE}?{query}")
    assert reply.status == 200 and "This does not work yet" in reply.words
    name, _, typed = query.partition("=")
    assert name == "mould" or f'value="{typed}"' in reply.html


def test_an_unknown_dessert_is_not_found(client: Client) -> None:
    assert client.get("/desserts/no/label").status == 404
