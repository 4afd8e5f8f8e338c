"""The label under `with speaking("fr")`."""

from __future__ import annotations

import json

import pytest

from entremetry.cli.label_view import as_json, as_text, list_text
from entremetry.labels import Label, Rules
from entremetry.labels.emphasis import named, spans
from entremetry.labels.ingredient_list import quantity_text
from entremetry.labels.naming import listed_name, made_of
from entremetry.labels.quantity_due import IN_NAME, due_words, has_word
from entremetry.larder import Ingredient
from entremetry.store.larder_file import open_larder
from entremetry.usecases.labelling import Prices, label_of_text
from entremetry.words import speaking

LARDER = open_larder()
DOCUMENT = """entremetry: 1
id: pot
name: {name}
pieces: 4
mould: glass-straight
ingredients: {own}
components:
  only:
    name: Only
    kind: mousse
    formula: {formula}
    method:
      - {{step: mix, left_behind: 0 %}}
placement:
  - {{component: only, as: layer, height: 30 mm}}
"""
PRICES = """entremetry_prices: 1
currency: EUR
labour_per_hour: 26
energy_per_kwh: 0.3
margin: 65 %
prices: {cream-35: {pack: 1 l, price: 5.40}}
"""


def drafted(
    formula: str, *, name: str = "Pot", own: str = "{}", rules: str = "eu", priced: bool = False
) -> Label:
    text = DOCUMENT.format(formula=formula, name=name, own=own)
    with speaking("fr"):
        return label_of_text(text, rules=rules, prices=Prices(text=PRICES) if priced else None)


def printed(label: Label) -> str:
    with speaking("fr"):
        return list_text(label.ingredients, label.rules, strong=str.upper)


def text(label: Label) -> str:
    with speaking("fr"):
        return as_text(label)


def test_the_list_is_headed_ordered_and_emphasised_in_french() -> None:
    found = drafted("{almond-ground: 40 g, egg-yolk: 30 g, cream-35: 60 g, plain-flour: 20 g}")
    assert printed(found) == (
        "Ingrédients : crème (LAIT), poudre d’AMANDE, jaune d’ŒUF, farine de BLÉ."
    )


def test_a_compound_is_opened_in_french() -> None:
    assert printed(drafted("{couverture-milk-40: 100 g}")) == (
        "Ingrédients : chocolat au LAIT (sucre, beurre de cacao, pâte de cacao, LAIT écrémé en "
        "poudre, matière grasse laitière anhydre (LAIT), émulsifiant : lécithines (SOJA))."
    )


def test_quantities_have_a_decimal_comma() -> None:
    with speaking("fr"):
        assert quantity_text(0.0125) == "1,3 %"
        assert quantity_text(0.125) == "13 %"
        assert quantity_text(1.4) == "(140 g pour 100 g)"
    found = drafted("{raspberry: 6.5 g, pistachio-paste: 93.5 g}", name="Pot aux framboises")
    assert printed(found) == "Ingrédients : pâte de PISTACHE, framboises 6,5 %."


@pytest.mark.parametrize("name", ["Framboise en pot", "Pot aux framboises", "Raspberry pot"])
def test_a_quantity_is_due_whether_the_name_is_french_or_english(name: str) -> None:
    (first, _) = drafted("{raspberry-puree: 60 g, cream-35: 40 g}", name=name).ingredients.entries
    assert first.quantity == pytest.approx(0.6)
    assert "figure dans la dénomination" in first.quantity_because


def test_words_of_a_french_name_that_name_no_ingredient_are_left_out() -> None:
    with speaking("fr"):
        due = due_words("Dôme d’hiver à la crème de marrons et aux noix", [])
        assert due == {"marrons": IN_NAME, "noix": IN_NAME}
        assert has_word("Purée de marrons", "marron")
        assert has_word("Gâteaux", "gateau")
        assert has_word("jus de cassis", "cassis")
        assert not has_word("noisette", "noix")


def test_milk_of_a_plant_and_another_nut_name_no_allergen() -> None:
    with speaking("fr"):
        assert named("lait de coco", {"milk"}) == "lait de coco (lait)"
        assert named("lait d’amande", {"milk"}) == "lait d’amande (lait)"
        assert named("lait demi-écrémé", {"milk"}) == "lait demi-écrémé"
        assert named("lait de chèvre", {"milk"}) == "lait de chèvre"
        assert named("noix de coco", {"nuts:walnut"}) == "noix de coco (noix)"
        assert named("huile de noix", {"nuts:walnut"}) == "huile de noix"
        assert named("beurre noisette", {"nuts:hazelnut"}) == "beurre noisette (noisette)"
        found = spans("lait entier, lait de coco", {"milk"})
    assert [(span.text, span.strong) for span in found] == [
        ("lait", True),
        (" entier, lait de coco", False),
    ]


def test_what_a_cook_wrote_stays_and_is_searched_for_french_words() -> None:
    own = "{mine: {like: speculoos, label_name: biscuits, contains: 'farine de blé, sucre, soja'}}"
    assert printed(drafted("{mine: 100 g}", own=own)) == (
        "Ingrédients : biscuits (farine de BLÉ, sucre, SOJA)."
    )


def test_the_declaration_is_in_french() -> None:
    lines = text(drafted("{cream-35: 60 g, raspberry: 40 g}")).splitlines()
    start = next(i for i, line in enumerate(lines) if line.startswith("Déclaration"))
    assert [line[:26].strip() for line in lines[start : start + 10]] == [
        "Déclaration nutritionnelle",
        "Énergie",
        "",
        "Matières grasses",
        "dont acides gras saturés",
        "Glucides",
        "dont sucres",
        "Fibres alimentaires",
        "Protéines",
        "Sel",
    ]
    assert "1 verrine" in lines[start]
    assert all("." not in line for line in lines[start + 1 : start + 10])
    assert any("," in line for line in lines[start + 1 : start + 10])


def test_quantity_keeping_alcohol_and_caution_are_in_french() -> None:
    found = drafted("{cream-35: 60 g, rum-40: 10 g}")
    whole = text(found)
    assert "Quantité nette : " in whole
    assert "À conserver au réfrigérateur, à 5 °C ou moins." in whole
    assert "À consommer dans les 24 h qui suivent la fabrication." in whole
    assert any(caution.startswith("Contient de l’alcool, ") for caution in found.cautions)
    assert "la loi du lieu de vente, vos emballages et une personne compétente décident" in whole


def test_the_cost_is_in_french() -> None:
    whole = text(drafted("{cream-35: 60 g, raspberry: 40 g}", priced=True))
    assert "Coût de 4 pièces, en EUR" in whole
    assert "Sans prix : Framboises" in whole
    assert "Main-d’œuvre" in whole
    assert "au moins " in whole


def test_an_american_label_stays_english() -> None:
    formula = "{cream-35: 60 g, raspberry-puree: 40 g, salt: 0.5 g}"
    english = label_of_text(
        DOCUMENT.format(formula=formula, name="Pot", own="{}"),
        rules="us",
        prices=Prices(text=PRICES),
    )
    spoken = drafted(formula, rules="us", priced=True)
    assert text(spoken) == as_text(english)
    with speaking("fr"):
        assert json.loads(as_json(spoken)) == json.loads(as_json(english))


@pytest.mark.parametrize("ingredient", LARDER, ids=lambda ingredient: ingredient.id)
def test_every_ingredient_has_a_french_name_and_its_allergens_are_emphasised(
    ingredient: Ingredient,
) -> None:
    codes = ingredient.allergens_eu
    with speaking("fr"):
        name, inner = listed_name(ingredient, Rules.EU), made_of(ingredient, Rules.EU, LARDER)
        whole = named(f"{name} ({inner})" if inner else name, codes)
        assert all(any(s.strong for s in spans(whole, {code})) for code in codes)
    assert name and name == name.strip()
    assert "%" not in whole
    assert whole.count("(") == whole.count(")")
