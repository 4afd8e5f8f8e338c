"""How many pieces of another mould feed as many, and how many one of them serves."""

from __future__ import annotations

import math
from dataclasses import dataclass

from entremetry.adapt.form import Form
from entremetry.kitchen.mould import Mould
from entremetry.shapes import bars_in_frame

SLICE = 150e-6  # m3 of a cake for one person, eight from a ring of 18 cm: common_practice
LOG_SLICE = 0.040  # m of a log for one person: common_practice
BAR_LENGTH, BAR_WIDTH, BAR_TRIM = 0.090, 0.030, 0.010  # m: common_practice
MOST_SERVES = 1000


@dataclass(frozen=True, slots=True, kw_only=True)
class Portions:
    """How a frame is cut. Lengths in m."""

    length: float = BAR_LENGTH
    width: float = BAR_WIDTH
    trim: float = BAR_TRIM


@dataclass(frozen=True, slots=True, kw_only=True)
class Servings:
    """Pieces of a dessert, how many each serves, and how many come out of one cavity."""

    pieces: int
    serves: int
    per_cavity: int = 1

    @property
    def cavities(self) -> int:
        """Cavities to fill."""
        return math.ceil(self.pieces / self.per_cavity)

    @property
    def people(self) -> int:
        """How many are fed."""
        return self.pieces * self.serves


def serves(mould: Mould, form: Form, portion: float | None) -> int:
    """How many one cavity serves; `portion` is the author's own volume for one, if known. [m3]"""
    if not form.is_cut:
        return 1
    if portion is None and form is Form.LOG:
        found = mould.solid.length / LOG_SLICE
    else:
        found = mould.solid.volume / (portion or SLICE)
    return min(max(1, round(found)), MOST_SERVES)


def bars(mould: Mould, portions: Portions) -> int:
    """Bars out of a frame; none if it is smaller than one with its trim."""
    solid = mould.solid
    if 2.0 * portions.trim >= min(solid.length, solid.width):
        return 0
    return bars_in_frame(
        solid.length, solid.width, portions.length, portions.width, portions.trim
    ).count


def servings(
    people: int,
    asked: int | None,
    mould: Mould,
    form: Form,
    *,
    portion: float | None,
    cut: Portions,
) -> Servings:
    """Pieces of a mould for so many, whole frames unless a number of pieces is asked for."""
    if form is Form.FRAME:
        per = bars(mould, cut)
        whole = math.ceil(people / max(per, 1)) * per
        return Servings(pieces=asked or whole, serves=1, per_cavity=max(per, 1))
    each = serves(mould, form, portion)
    return Servings(pieces=asked or math.ceil(people / each), serves=each)
