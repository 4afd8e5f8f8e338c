"""The label of a dessert: all that is printed on it, and all that is behind it."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.dessert.reckoning import Reckoning
from entremetry.kitchen.mould import Mould
from entremetry.labels.allergen_statement import AllergenEntry, allergens, contains_statement
from entremetry.labels.content import Content, piece_contents, together
from entremetry.labels.cost import Cost
from entremetry.labels.english import ALCOHOL, CAUTION
from entremetry.labels.ingredient_list import IngredientList, ingredient_list
from entremetry.labels.keeping_advice import KeepingAdvice, keeping_advice
from entremetry.labels.naming import Rules
from entremetry.labels.panel import Row, eu_rows, us_rows
from entremetry.labels.serving import Serving, metric_mass, serving
from entremetry.quantities import format_fraction, unit_named
from entremetry.quantities.rounding import fixed
from entremetry.sources.figure import Figure
from entremetry.words import say, say_as, speaking

ALCOHOL_WORTH_A_WORD = 0.001  # share of the mass: our_own
PIECE_ERROR = 0.05  # as the batch sheet states for the mass of a piece


@dataclass(frozen=True, slots=True, kw_only=True)
class PartOfPiece:
    """A component, its mass in a piece [kg] and its share of it."""

    id: str
    name: str
    mass: float
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """A draft label by the rules of one jurisdiction, for one piece of the finished dessert."""

    id: str
    name: str
    rules: Rules
    pieces: int
    piece_mass: Figure
    parts: tuple[PartOfPiece, ...]
    serving: Serving
    rows: tuple[Row, ...]
    ingredients: IngredientList
    allergens: tuple[AllergenEntry, ...]
    contains: str
    net_quantity: str
    keeping: KeepingAdvice
    cautions: tuple[str, ...]
    cost: Cost | None = None


def label(reckoning: Reckoning, *, pieces: int, rules: Rules, cost: Cost | None = None) -> Label:
    """The label of one piece; `pieces` and `cost` are of the batch."""
    with speaking(rules.language):
        return _label(reckoning, pieces, rules, cost)


def _label(reckoning: Reckoning, pieces: int, rules: Rules, cost: Cost | None) -> Label:
    dessert, document = reckoning.dessert, reckoning.dessert.document
    parts = piece_contents(reckoning)
    piece = together(document.id, document.name, parts)
    eaten = serving(piece.mass, document.serves, one=_one(dessert.mould))
    portion, portions = (
        piece.times(1 / document.serves),
        tuple(part.times(1 / document.serves) for part in parts),
    )
    rows = (eu_rows if rules is Rules.EU else us_rows)(portion, portions)
    found = allergens(piece, rules)
    return Label(
        id=document.id,
        name=document.name,
        rules=rules,
        pieces=pieces,
        piece_mass=_piece_mass(piece),
        parts=tuple(
            PartOfPiece(id=p.id, name=p.name, mass=p.mass, share=p.mass / piece.mass) for p in parts
        ),
        serving=eaten,
        rows=rows,
        ingredients=ingredient_list(
            piece,
            parts,
            name=document.name,
            keywords=document.keywords,
            rules=rules,
            larder=dessert.larder,
        ),
        allergens=found,
        contains=contains_statement(found) if rules is Rules.US else "",
        net_quantity=_net_quantity(piece.mass, rules),
        keeping=keeping_advice(dessert),
        cautions=_cautions(piece, eaten),
        cost=cost,
    )


def _one(mould: Mould) -> str:
    if not mould.vessel:
        return say_as("serving", "piece")
    if mould.material == "glass":
        return say_as("serving", "glass")
    return say_as("serving", "vessel")


def _piece_mass(piece: Content) -> Figure:
    return Figure(
        value=piece.mass,
        unit="kg",
        because=say("what one piece holds of each component, after all that is lost on the way"),
        relative_error=PIECE_ERROR,
    )


def _net_quantity(mass: float, rules: Rules) -> str:
    grams = metric_mass(mass)
    if rules is Rules.EU:
        return grams
    return f"Net Wt {fixed(unit_named('oz').from_si(mass), 1)} oz ({grams})"


def _cautions(piece: Content, eaten: Serving) -> tuple[str, ...]:
    share = piece.constituents.alcohol / piece.mass
    alcohol = say(ALCOHOL, share=format_fraction(share))
    found = [say(CAUTION), alcohol if share >= ALCOHOL_WORTH_A_WORD else "", eaten.note]
    return tuple(text for text in found if text)
