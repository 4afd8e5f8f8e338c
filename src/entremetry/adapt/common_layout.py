"""What every layout does alike: coatings, soaks and garnishes."""

from __future__ import annotations

from entremetry.adapt.build import Build, Part
from entremetry.adapt.form import Form
from entremetry.adapt.layout import Layout, Wanted
from entremetry.adapt.written import mass
from entremetry.dessert.needs import coated_area
from entremetry.dessert.placement import CoatingPlacement, GarnishPlacement, SoakPlacement
from entremetry.quantities import format_area
from entremetry.quantities.parsing import parse_mass
from entremetry.words import decimal, say

POURED = 2.5  # times what stays on a piece is poured over it: common_practice
CAUGHT = "80 %"
GRAM = 1e-3


def coat(layout: Layout, wanted: Wanted, part: Part) -> None:
    """A glaze over a piece that is released: all of it, or the top of what is cut into bars."""
    build, placement = wanted.build, part.placement
    assert isinstance(placement, CoatingPlacement)
    on_top = wanted.form is Form.FRAME
    raw = {k: v for k, v in part.raw.items() if k not in ("where", "pour", "caught")}
    if on_top:
        layout.entries.append({**raw, "where": "top"})
        if placement.where != "top" and build.form is not Form.FRAME:
            layout.tell(
                part.id,
                say("only the top is glazed"),
                say("bars are cut after glazing, so their sides stay bare and nothing runs off"),
            )
        return
    now = placement.model_copy(update={"where": None})
    area = coated_area(now, wanted.mould, in_portions=False)
    pour = _pour(wanted, part, placement, area)
    entry = {**raw, "pour": pour, "caught": part.raw.get("caught", CAUGHT)}
    layout.entries.append({k: part.raw[k] if part.raw.get(k) == v else v for k, v in entry.items()})
    layout.tell(
        part.id,
        say("{mass} poured over each, on {area}", mass=decimal(pour), area=format_area(area)),
        say(
            "the pour follows the coated area, {area} before",
            area=format_area(build.coated(part)),
        ),
    )


def _pour(wanted: Wanted, part: Part, placement: CoatingPlacement, area: float) -> str:
    """As much more as there is more to coat; 2.5 times what stays if none was stated."""
    if placement.pour is not None:
        pour = placement.pour * area / wanted.build.coated(part)
    elif placement.film is not None:
        pour = POURED * area * placement.film * wanted.build.reckoning.density[part.id]
    else:
        pour = POURED * area * (placement.per_area or 0.0)
    step = (5.0 if pour < 0.1 else 10.0) * GRAM
    return mass(max(round(pour / step), 1) * step)


def garnish(layout: Layout, wanted: Wanted, part: Part) -> None:
    """As much on each piece as it has more to serve."""
    placement = part.placement
    assert isinstance(placement, GarnishPlacement)
    factor = wanted.servings.serves / wanted.build.servings.serves
    amount = mass(round(placement.mass * factor / (0.5 * GRAM)) * 0.5 * GRAM)
    if factor == 1.0 or parse_mass(amount, zero=True) <= 0.0:
        layout.entries.append(dict(part.raw))
        return
    layout.entries.append({**part.raw, "mass": amount})
    layout.tell(
        part.id,
        say("{mass} on each piece, {before} before", mass=decimal(amount), before=part.raw["mass"]),
        say(
            "one piece serves {number}, {before} before",
            number=wanted.servings.serves,
            before=wanted.build.servings.serves,
        ),
    )


def soak(layout: Layout, wanted: Wanted, part: Part, area_factor: float) -> None:
    """Syrup by area as before; a mass follows the area of the base."""
    placement = part.placement
    assert isinstance(placement, SoakPlacement)
    if placement.mass is None:
        layout.entries.append(dict(part.raw))
        return
    amount = mass(round(placement.mass * area_factor / (0.1 * GRAM)) * 0.1 * GRAM)
    layout.entries.append({**part.raw, "mass": amount})
    told = say("{mass} brushed on each base", mass=decimal(amount))
    layout.tell(part.id, told, say("the syrup follows the base's area"))


def tail(layout: Layout, wanted: Wanted, build: Build, area_factors: dict[str, float]) -> None:
    """Soaks and garnishes, after everything they lie on."""
    kept = {entry["component"] for entry in layout.entries if entry.get("as") == "base"}
    for part in build.parts:
        if isinstance(part.placement, SoakPlacement):
            if part.placement.on in kept:
                soak(layout, wanted, part, area_factors.get(part.placement.on, 1.0))
            else:
                layout.left_out.append(part.id)
                because = say("the base that it soaked is not there any more")
                layout.tell(part.id, say("left out"), because)
        elif isinstance(part.placement, GarnishPlacement):
            garnish(layout, wanted, part)
