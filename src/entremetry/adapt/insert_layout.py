"""Inserts of another mould: as large a share as before, near the base, with a wall all round."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product

from entremetry.adapt.build import USUAL_GAP, Part
from entremetry.adapt.form import Form
from entremetry.adapt.insert_fit import GOOD_PART, FittedInsert, Nest, fitted_insert
from entremetry.adapt.layout import Entry, Layout, Wanted
from entremetry.adapt.shape_words import shape_spoken
from entremetry.adapt.written import length, millimetres
from entremetry.errors import FitError
from entremetry.quantities import format_fraction
from entremetry.words import decimal, say, say_later

MOST_INSERT = 0.35  # of the cavity; 20 to 30 % is usual: common_practice
WALLS = (1.0, 0.8, 0.65)
"""Shares of the usual wall, thinner where a shallow mould leaves an insert no room; our own."""
INSERT = say_later("frozen as an insert: {shape}")
INSERT_NOT_LAYER = say_later("frozen as an insert: {shape}, a layer before")
LEAST_GAP = 0.003  # m; less and the insert lies on the base


def inserts(layout: Layout, wanted: Wanted, parts: Sequence[Part], base: float) -> list[Entry]:
    if not parts:
        return []
    fitted = _fitted(wanted, parts, base)
    cavity, build = wanted.mould.solid, wanted.build
    entries = []
    share, before = fitted.volume / cavity.volume, _share(wanted, parts)
    for part, shape, start in zip(parts, fitted.shapes, fitted.from_base, strict=True):
        depth = "from_closed_end" if wanted.upright else "below_rim"
        entry: Entry = {
            "component": part.id,
            "as": "insert",
            "shape": shape,
            depth: length(millimetres(start)),
        }
        if wanted.upright and shape["kind"] in ("hemisphere", "log"):
            entry["turned"] = True
        entries.append(entry)
        layout.frozen[part.id] = shape
        as_insert = INSERT if part.placement.role == "insert" else INSERT_NOT_LAYER
        layout.tell(
            part.id,
            say(as_insert, shape=shape_spoken(shape)),
            say(
                "with {wall} of mousse around it; {share} of the mould, {before} before",
                wall=decimal(length(millimetres(fitted.wall))),
                share=format_fraction(share),
                before=format_fraction(before),
            ),
        )
    if build.form.is_vessel:
        layout.tell(
            parts[0].id,
            say("what was in the glass as a layer goes inside the mousse"),
            say("out of a mould its edge would weep and slump"),
            kind="method",
        )
    return entries


def _share(wanted: Wanted, parts: Sequence[Part]) -> float:
    """Share of all inside that the inserts were before."""
    build = wanted.build
    whole = build.soft_volume + sum(p.volume for p in build.bases if _is_inside(p))
    return sum(p.volume for p in parts) / whole


def _is_inside(part: Part) -> bool:
    return getattr(part.placement, "sits", "inside") == "inside"


def _fitted(wanted: Wanted, parts: Sequence[Part], base: float) -> FittedInsert:
    cavity, build = wanted.mould.solid, wanted.build
    share = min(_share(wanted, parts), MOST_INSERT)
    whole = sum(p.volume for p in parts)
    volumes = [share * cavity.volume * p.volume / whole for p in parts]
    scale = cavity.height / build.reckoning.dessert.mould.solid.height
    usual = USUAL_GAP if build.form.is_vessel or build.form is Form.FRAME else build.gap * scale
    gap = min(max(millimetres(usual), LEAST_GAP), 2.0 * USUAL_GAP)
    found: list[FittedInsert] = []
    refusal: FitError | None = None
    for share, tried in product(WALLS, dict.fromkeys((gap, LEAST_GAP, 0.0))):
        nest = Nest(cavity=cavity, base=base, gap=tried, turned=wanted.upright, share=share)
        try:
            fitted = fitted_insert(
                nest, volumes, name=parts[0].component.name, mould=wanted.mould.name
            )
        except FitError as error:
            refusal = refusal or error
            continue
        if fitted.volume >= GOOD_PART * sum(volumes):
            return fitted
        found.append(fitted)
    if found:
        return max(found, key=lambda each: each.volume)
    assert refusal is not None  # each try either fits or refuses
    raise refusal
