"""Checks of shape: walls, inserts, bases, how full a vessel is, and what a soft piece can carry."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.rule import DESSERT, Finding, Rule, Side
from entremetry.checks.saying import amount, given
from entremetry.dessert.placement import BasePlacement, DiscCutOut, FillingPlacement
from entremetry.method.waiting import ThawUntil
from entremetry.physics.gelatine import gel_modulus
from entremetry.physics.sag import sag
from entremetry.words import say, say_as, say_later

CONCERN = "geometry"
UNDER = Band(unit="mm", low=-3.0, high=10.0, fails_below=-15.0, fails_above=25.0)
WALLS = {
    "side": say_later("Towards the side {amount} lie between insert and mould"),
    "closed end": say_later("Towards the closed end {amount} lie between insert and mould"),
    "rim": say_later("Towards the rim {amount} lie between insert and mould"),
}
"""What is said of the thinnest wall, by where it is."""
PAST = say_later("The base ends {amount} past the edge of the piece")
SHORT = say_later("The base ends {amount} short of the edge of the piece")
CHOCOLATE_STANDS = 0.08  # cocoa butter from which chocolate, not gelatine, carries the piece


def _walls(bench: Bench) -> Iterator[Finding]:
    for wall in bench.reckoning.placed.walls:
        value = wall.thinnest * 1e3
        yield Finding(
            component=wall.inclusion.component,
            value=value,
            error=2.0,
            fact=say(WALLS[wall.towards], amount=amount(value, "mm")),
        )


def _insert_share(bench: Bench) -> Iterator[Finding]:
    placed = bench.reckoning.placed
    whole = placed.cavity.volume
    for part in placed.inclusions:
        if part.is_base:
            continue
        value = 100.0 * part.solid.volume / whole
        yield Finding(
            component=part.component,
            value=value,
            fact=say("The insert takes {amount} of the mould", amount=amount(value, "%")),
            inputs=(
                given(say("insert"), part.solid.volume * 1e6, "ml"),
                given(say("mould"), whole * 1e6, "ml"),
            ),
        )


def _base_width(bench: Bench) -> Iterator[Finding]:
    solid = bench.dessert.mould.solid
    for placed in bench.bases:
        length, width = _size(placed)
        pairs = ((length, solid.length), (width, solid.width))
        value = min(((mine - its) / 2.0 * 1e3 for mine, its in pairs), key=lambda mm: -abs(mm))
        yield Finding(
            component=placed.component,
            value=value,
            error=1.0,
            fact=say(PAST if value >= 0.0 else SHORT, amount=amount(abs(value), "mm")),
            band=UNDER if placed.sits == "under" else None,
        )


def _size(placed: BasePlacement) -> tuple[float, float]:
    if isinstance(placed.cut_out, DiscCutOut):
        return placed.cut_out.diameter, placed.cut_out.diameter
    return placed.cut_out.length, placed.cut_out.width


def _filled(bench: Bench) -> Iterator[Finding]:
    placed = bench.reckoning.placed
    if not bench.soft or any(isinstance(p, FillingPlacement) for p in bench.soft):
        return
    value = 100.0 * (1.0 - placed.free_height / placed.cavity.height)
    full = Band(unit="%", low=93.0, high=100.0, fails_below=75.0, fails_above=101.0)
    yield Finding(
        component=DESSERT,
        value=value,
        error=2.0,
        fact=say("What is filled in comes to {amount} of the height", amount=amount(value, "%")),
        band=None if bench.dessert.mould.vessel else full,
        inputs=(given(say_as("input", "free"), placed.free_height * 1e3, "mm"),),
    )


def _slumps(bench: Bench) -> Iterator[Finding]:
    each = bench.outer
    thawed = any(isinstance(step, ThawUntil) for step in bench.assembly)
    if each is None or not thawed or not bench.is_released or each.gelatine <= 0.0:
        return
    if each.share.cocoa_butter >= CHOCOLATE_STANDS:
        return
    in_water = min(each.gelatine / (each.gelatine + each.share.water), 0.10)
    modulus = gel_modulus(200.0, in_water)
    height = bench.reckoning.placed.cavity.height
    value = 100.0 * sag(height, each.made.density.value, modulus)
    yield Finding(
        component=each.id,
        value=value,
        error=0.5 * value,
        fact=say(
            "By its gelatine alone it would sink {amount} of its height when thawed",
            amount=amount(value, "%"),
        ),
        inputs=(
            given(say("gelatine in its water"), 100.0 * in_water, "%"),
            given(say("stiffness of that gel at 10 °C"), modulus, "Pa"),
            given(say("height"), height * 1e3, "mm"),
        ),
    )


RULES = (
    Rule(
        id="mousse-wall",
        title=say_later("Enough around the insert"),
        concern=CONCERN,
        band=Band(unit="mm", low=8.0, fails_below=3.0),
        source="common_practice",
        formula=say_later("shortest way from the insert to the wall of the mould"),
        look=_walls,
        too_low=Side(
            why=say_later("thin enough for the insert to show or to bleed through"),
            advice=say_later("Take a smaller insert, or lay it deeper; 10 mm all round is usual."),
        ),
    ),
    Rule(
        id="insert-share",
        title=say_later("Insert and mousse in proportion"),
        concern=CONCERN,
        band=Band(unit="%", high=45.0, fails_above=65.0),
        source="common_practice",
        formula=say_later("volume of the insert ÷ volume of the mould"),
        look=_insert_share,
        too_high=Side(
            why=say_later("so that little mousse is left to carry it"),
            advice=say_later("Take a smaller or flatter insert; 20 to 30 % is usual."),
        ),
    ),
    Rule(
        id="base-width",
        title=say_later("The base fits the piece"),
        concern=CONCERN,
        band=Band(unit="mm", low=-15.0, high=0.5, fails_below=-30.0, fails_above=3.0),
        source="common_practice",
        formula=say_later("(width of the base - width of the piece) ÷ 2"),
        look=_base_width,
        too_low=Side(
            why=say_later("so the piece overhangs and may tilt or sag at its edge"),
            advice=say_later(
                "Cut it wider: 10 to 12 mm short of the edge inside, flush or wider under."
            ),
        ),
        too_high=Side(
            why=say_later("wider than it can be used neatly"),
            advice=say_later("Cut it smaller."),
        ),
    ),
    Rule(
        id="filled-height",
        title=say_later("The parts add up to the mould"),
        concern=CONCERN,
        band=Band(unit="%", low=50.0, high=98.0, fails_below=30.0, fails_above=101.0),
        source="common_practice",
        formula=say_later("height of all layers ÷ height of the mould"),
        look=_filled,
        too_low=Side(
            why=say_later("so it looks half empty"),
            advice=say_later(
                "Raise a layer, let one part fill what is left, or take a smaller mould."
            ),
        ),
        too_high=Side(
            why=say_later("so it is filled to the very rim"),
            advice=say_later("Lower a layer by some millimetres."),
        ),
    ),
    Rule(
        id="slump",
        title=say_later("It stands when it has thawed"),
        concern=CONCERN,
        band=Band(unit="%", high=18.0, fails_above=35.0),
        source="our_own",
        sources=("ward_courts_1977", "nielsen_2001", "our_own"),
        formula=say_later(
            "sag of a column under its own weight, stiffness as Bloom × concentration squared"
        ),
        look=_slumps,
        too_high=Side(
            why=say_later("so soft that it may slump, if the cream does not hold it"),
            advice=say_later(
                "Take more gelatine or some couverture, keep it cold, or build it lower."
            ),
        ),
    ),
)
