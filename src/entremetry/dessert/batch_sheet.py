"""Everything a batch sheet says: how much, how to fill, what to buy."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from entremetry.larder.constituents import Constituents
from entremetry.larder.ingredient import Ingredient
from entremetry.method.made import Change
from entremetry.shapes.solid import Floats
from entremetry.sources.figure import Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class IngredientAmount:
    """How much of one ingredient to weigh for the batch. Mass in kg."""

    line: str
    id: str
    name: str
    mass: float
    household: str
    household_error: float | None
    written: str
    note: str = ""
    own: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class ComponentBatch:
    """One component, for the whole batch unless said otherwise. SI units.

    `mass` is what to make (all that is weighed), `ready_mass` what is there for the mould,
    `per_piece` what one piece holds; `method` the steps as sentences with this batch's numbers.
    """

    id: str
    name: str
    kind: str
    factor: float
    mass: Figure
    ready_mass: float
    volume: Figure
    per_piece: Figure
    density: Figure
    loss_fraction: float
    changes: tuple[Change, ...]
    lines: tuple[IngredientAmount, ...]
    method: tuple[str, ...]
    constituents: Constituents
    brix: float
    time: float
    hands_on: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FillStep:
    """One step of filling a cavity, in words, with its numbers. SI units."""

    component: str
    text: str
    mass: float | None = None
    below_rim: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """How thick the surrounding component is around an insert. [m]"""

    insert: str
    around: str
    thinnest: float
    place: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CutOuts:
    """How bases come out of a sheet. Lengths in m, masses in kg."""

    component: str
    size: str
    count: int
    per_sheet: int
    sheets: int
    sheet: str
    pattern: str
    at_most: int
    rolled_mass: float
    offcut_mass: float
    offcuts: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Purchase:
    """What to buy of one ingredient. Masses in kg; `left_over` is what rounding up leaves."""

    id: str
    name: str
    mass: float
    buy: str
    bought_mass: float
    left_over: float
    effect: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class MouldUse:
    """The mould or vessel of a batch and how often it is filled. Volumes in m3, areas in m2."""

    id: str
    name: str
    size: str
    is_vessel: bool
    fills_upside_down: bool
    cavity_volume: Figure
    coated_area: Figure
    cavities: int
    pieces_per_cavity: int
    cavities_per_tray: int
    trays: int
    fillings: int


class Position(StrEnum):
    """Where in the section a part is drawn."""

    FILLING = "filling"
    INSERT = "insert"
    BASE = "base"
    COATING = "coating"
    GARNISH = "garnish"


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnPart:
    """One part of the section as it lies in the mould: level 0 is the closed end. [m]

    A filling is drawn as the cavity between two levels; an insert by its own outlines, already
    in place; a base as the rectangle of its width between two levels; a coating by thickness, all
    around or, `top_only`, on what is the top when it is served.
    """

    component: str
    name: str
    kind: str
    position: Position
    low: float = 0.0
    high: float = 0.0
    width: float = 0.0
    thickness: float = 0.0
    top_only: bool = False
    outlines: tuple[Floats, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """The vertical section of one cavity, to scale. [m]

    `served_upside_down`: the closed end is the top of what is served, so draw level 0 on top.
    """

    cavity: tuple[Floats, ...]
    height: float
    served_upside_down: bool
    is_vessel: bool
    parts: tuple[DrawnPart, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """A pair of measures in the author's words that disagree."""

    place: str
    found: str
    right: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Allergens:
    """Allergens of everything weighed, by the list of each jurisdiction."""

    eu: tuple[str, ...]
    us: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchSheet:
    """The answer to 'how much of everything, for this mould and this many'."""

    id: str
    name: str
    about: str
    author: str
    keywords: tuple[str, ...]
    pieces: int
    serves: int
    mould: MouldUse
    components: tuple[ComponentBatch, ...]
    fill_steps: tuple[FillStep, ...]
    assembly: tuple[str, ...]
    walls: tuple[Wall, ...]
    cut_outs: tuple[CutOuts, ...]
    shopping: tuple[Purchase, ...]
    section: Section
    piece_mass: Figure
    time: float
    hands_on: float
    assumptions: tuple[str, ...]
    cautions: tuple[str, ...]
    slips: tuple[Slip, ...]
    allergens: Allergens
    own_ingredients: tuple[Ingredient, ...]
