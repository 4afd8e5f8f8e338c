"""Cost by component, with waste and whole packs; what has no price is named."""

from __future__ import annotations

import pytest

from entremetry.errors import DocumentError
from entremetry.labels import Cost
from entremetry.store.larder_file import open_larder
from entremetry.usecases.labelling import Prices, label_of_text

DOCUMENT = """entremetry: 1
id: pot
name: Pot
pieces: 4
mould: glass-straight
components:
  cream:
    name: Cream
    kind: mousse
    formula: {cream-35: 100 g, caster-sugar: 25 g, vanilla-bean: 1 pod}
    method:
      - {step: cook-to, temperature: 60 °C, hands_on: 10 min}
      - {step: strain, removes: [vanilla-bean]}
      - {step: pour, left_behind: 20 %, hands_on: 2 min}
placement:
  - {component: cream, as: layer, height: 30 mm}
"""
PRICES = """entremetry_prices: 1
currency: CHF
prices:
  cream-35: {pack: 500 g, price: 5}
  caster sugar: {pack: 1 kg, price: 2}
  vanilla-bean: {pack: 10 pods, price: 30}
"""


def cost(prices: str = PRICES, pieces: int = 4) -> Cost:
    found = label_of_text(DOCUMENT, pieces=pieces, prices=Prices(text=prices)).cost
    assert found is not None
    return found


def test_ingredients_cost_what_is_weighed() -> None:
    found = cost()
    by_id = {each.id: each for each in found.ingredients}
    assert by_id["cream-35"].cost == pytest.approx(by_id["cream-35"].mass * 10.0)
    assert found.ingredients_total == pytest.approx(sum(each.cost or 0 for each in by_id.values()))
    assert not found.missing


def test_waste_is_what_stays_behind_and_what_is_strained_out() -> None:
    found = cost()
    by_id = {each.id: each.cost or 0.0 for each in found.ingredients}
    assert found.waste.taken_out == pytest.approx(by_id["vanilla-bean"])
    rest = by_id["cream-35"] + by_id["caster-sugar"]
    assert found.waste.left_behind == pytest.approx(0.2 * rest, rel=1e-9)
    assert found.waste.in_pieces == pytest.approx(0.8 * rest, rel=1e-9)
    assert found.waste.spare == pytest.approx(0.0, abs=1e-9)


def test_whole_packs_are_what_has_to_be_bought() -> None:
    by_id = {each.id: each for each in cost().ingredients}
    assert by_id["cream-35"].packs == 1
    assert by_id["cream-35"].packs_cost == pytest.approx(5.0)


def test_a_missing_price_is_named_and_makes_the_total_a_least() -> None:
    found = cost(PRICES.replace("  caster sugar: {pack: 1 kg, price: 2}\n", ""))
    assert found.missing == ("Caster sugar",)
    assert [each.complete for each in found.components] == [False]
    assert found.total < cost().total


def test_hands_are_paid_by_the_hour() -> None:
    found = cost(PRICES + "labour_per_hour: 30\n")
    assert found.labour == pytest.approx(found.labour_minutes / 2)
    # 12 min stated, and a minute or two that are usual for straining
    assert found.labour_minutes == pytest.approx(14.0)


def test_energy_is_left_out_without_a_price() -> None:
    assert cost().energy is None
    assert cost(PRICES + "energy_per_kwh: 0.5\n").energy == pytest.approx(cost().energy_kwh / 2)


def test_the_price_for_a_margin_leaves_that_margin() -> None:
    found = cost(PRICES + "margin: 60 %\n")
    assert found.price_per_piece is not None
    assert (found.price_per_piece - found.per_piece) / found.price_per_piece == pytest.approx(0.6)


def test_drivers_are_sorted_and_add_up() -> None:
    drivers = cost(PRICES + "labour_per_hour: 30\nenergy_per_kwh: 0.3\n").drivers
    assert [d.cost for d in drivers] == sorted((d.cost for d in drivers), reverse=True)
    assert sum(d.share for d in drivers) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("cream-35:", "creem-35:", "line 4, prices.creem-35: found 'creem-35'"),
        ("500 g", "5 buckets", "line 4, prices.cream-35.pack: found 'bucket'"),
        ("price: 5", "prise: 5", "found the unknown key 'prise'"),
        ("CHF", "francs", "currency"),
        ("caster sugar", "cream 35%", "a second price of Cream 35 %"),
        ("price: 30", "price: -1", "0 or more"),
    ],
)
def test_what_is_wrong_in_a_price_document_is_told(old: str, new: str, says: str) -> None:
    with pytest.raises(DocumentError) as refused:
        cost(PRICES.replace(old, new))
    assert says in str(refused.value)


def test_all_faults_are_told_at_once() -> None:
    wrong = PRICES.replace("cream-35:", "creem-35:").replace("10 pods", "10 crates")
    with pytest.raises(DocumentError) as refused:
        cost(wrong)
    assert len(refused.value.faults) == 2


def test_those_asked_for_bear_the_cost_of_what_comes_of_whole_frames() -> None:
    text = DOCUMENT.replace("glass-straight", "frame-400").replace(
        "placement:", "portions: {length: 90 mm, width: 30 mm, trim: 10 mm}\nplacement:"
    )
    found = label_of_text(text, pieces=40, prices=Prices(text=PRICES)).cost
    assert found is not None
    assert (found.pieces, found.pieces_made) == (40, 72)
    assert found.waste.spare > found.waste.left_behind
    assert found.per_piece == pytest.approx(found.total / 40)


def test_what_of_a_pack_cannot_be_used_is_paid_as_well() -> None:
    whole = cost()
    peeled = cost(PRICES.replace("price: 2}", "price: 2, usable: 80 %}"))
    by_id = {each.id: each.cost or 0.0 for each in whole.ingredients}
    after = {each.id: each.cost or 0.0 for each in peeled.ingredients}
    assert after["caster-sugar"] == pytest.approx(by_id["caster-sugar"] / 0.8)
    assert after["cream-35"] == pytest.approx(by_id["cream-35"])


def test_a_volume_is_weighed_by_the_density_of_the_ingredient() -> None:
    by_id = {each.id: each for each in cost(PRICES.replace("500 g", "0.5 l")).ingredients}
    cream = by_id["cream-35"]
    density = open_larder().find("cream-35").density
    assert cream.cost == pytest.approx(cream.mass * 5.0 / (0.0005 * density))
