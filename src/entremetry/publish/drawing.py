"""The drawing to scale of a section, as it is served."""

from __future__ import annotations

from dataclasses import dataclass
from hashlib import sha256

from entremetry.dessert.batch_sheet import Section
from entremetry.publish.callout import Callout, column_height, placed_callouts
from entremetry.publish.description import description
from entremetry.publish.markup import element, escaped, number, path_data
from entremetry.publish.page_words import shown
from entremetry.publish.paint import Paint, painted
from entremetry.publish.ruler import ruler
from entremetry.publish.stage import Stage, stage

WIDTH = 320.0
MARGIN = 10.0
BESIDE_WIDTH = 176.0
WIDE = 2.3
TALLEST = 230.0
INK = "currentColor"
PAPER = "#fbf6ec"
PAPER_INK = "#2e211c"
SERIF = "Iowan Old Style, Palatino Linotype, Palatino, Georgia, serif"


@dataclass(frozen=True, slots=True, kw_only=True)
class Plate:
    """Where the picture stands on the drawing, in its units, and its labels."""

    scale: float
    x: float
    y: float
    width: float
    height: float
    beside: bool = True
    callouts: tuple[Callout, ...] = ()


def section_svg(
    section: Section,
    *,
    title: str,
    width_px: int | None = None,
    labelled: bool = True,
    standalone: bool = False,
    id_prefix: str = "",
    font: str = SERIF,
    laid: tuple[Stage, Plate] | None = None,
) -> str:
    """Drawing of one piece, cut through the middle.

    `labelled` adds names and a scale; `standalone` makes it a file of its own, on paper. Ids
    start with `id_prefix`, by default a word made from all that is drawn. `laid` is the section
    on the stage and laid out, where that was done before.
    """
    scene, plate = laid or on_plate(section, labelled=labelled)
    prefix = id_prefix or "s" + sha256(repr((title, labelled, section)).encode()).hexdigest()[:8]
    words = shown(description(section))
    return element(
        "svg",
        element("title", escaped(title), id=f"{prefix}-title"),
        element("desc", escaped(words), id=f"{prefix}-desc"),
        *sheet(plate, standalone=standalone),
        picture(scene, plate, prefix),
        *(marks(scene, plate) if labelled else []),
        xmlns="http://www.w3.org/2000/svg" if standalone else None,
        viewBox=f"0 0 {number(plate.width)} {number(plate.height)}",
        width=None if width_px is None else str(width_px),
        height=None if width_px is None else number(width_px * plate.height / plate.width),
        role="img",
        aria_labelledby=f"{prefix}-title {prefix}-desc",
        font_family=font,
        color=PAPER_INK if standalone else None,
    )


def sheet(plate: Plate, *, standalone: bool) -> list[str]:
    """Paper under a drawing that stands on its own."""
    if not standalone:
        return []
    return [element("rect", width=plate.width, height=plate.height, fill=PAPER)]


def on_plate(section: Section, *, labelled: bool) -> tuple[Stage, Plate]:
    """A section on the stage, and laid out."""
    scene = stage(section)
    return scene, laid_out(scene, labelled=labelled)


def laid_out(scene: Stage, *, labelled: bool) -> Plate:
    """Picture and labels in place: beside each other, or the labels below a wide picture."""
    across, down = scene.right - scene.left, scene.bottom - scene.top
    if not labelled:
        scale = min((WIDTH - 2 * MARGIN) / across, TALLEST / down)
        return bare(scene, scale)
    if across > WIDE * down:
        scale = (WIDTH - 2 * MARGIN) / across
        callouts, bottom = placed_callouts(scene, scale, (MARGIN, MARGIN), WIDTH, beside=False)
        return Plate(
            scale=scale,
            x=MARGIN,
            y=MARGIN,
            width=WIDTH,
            height=bottom,
            beside=False,
            callouts=callouts,
        )
    scale = min(BESIDE_WIDTH / across, TALLEST / down)
    excess = column_height(scene, MARGIN + across * scale, WIDTH) - down * scale
    y = MARGIN + 6.0 + max(0.0, excess / 2.0 - 8.0)
    callouts, bottom = placed_callouts(scene, scale, (MARGIN, y), WIDTH, beside=True)
    return Plate(scale=scale, x=MARGIN, y=y, width=WIDTH, height=bottom, callouts=callouts)


def bare(scene: Stage, scale: float) -> Plate:
    """Picture alone, with an even margin."""
    return Plate(
        scale=scale,
        x=MARGIN,
        y=MARGIN,
        width=(scene.right - scene.left) * scale + 2 * MARGIN,
        height=(scene.bottom - scene.top) * scale + 2 * MARGIN,
    )


def picture(scene: Stage, plate: Plate, prefix: str) -> str:
    """The section in mm, moved and scaled onto the plate, over the line it stands on."""
    definitions, layers = painted(Paint(stage=scene, scale=plate.scale, prefix=prefix))
    x = plate.x - scene.left * plate.scale
    y = plate.y - scene.top * plate.scale
    body = element(
        "g",
        element("defs", definitions),
        layers,
        transform=f"translate({number(x)} {number(y)}) scale({plate.scale:.5f})",
    )
    return table_line(scene, plate) + body + torn(scene, plate)


def table_line(scene: Stage, plate: Plate) -> str:
    """Line under the piece."""
    y = plate.y + (scene.bottom - scene.top) * plate.scale + 1.2
    right = plate.x + (scene.right - scene.left) * plate.scale
    return element(
        "path",
        d=f"M{number(plate.x - 5)} {number(y)}H{number(right + 5)}",
        stroke=INK,
        stroke_opacity=0.35,
        stroke_width=1.6,
        stroke_linecap="round",
    )


def torn(scene: Stage, plate: Plate) -> str:
    """Two zigzag lines where the middle is left out."""
    if not scene.hidden:
        return ""
    x = plate.x - scene.left * plate.scale
    top, bottom = plate.y - 4, plate.y + (scene.bottom - scene.top) * plate.scale + 4
    count = 6
    step = (bottom - top) / count
    right = [(x + (2.5 if k % 2 else -2.5) + 3.0, top + k * step) for k in range(count + 1)]
    left = [(a - 6.0, b) for a, b in right]
    band = "M" + "L".join(f"{number(a)} {number(b)}" for a, b in [*right, *left[::-1]]) + "Z"
    lines = "".join(
        "M" + "L".join(f"{number(a)} {number(b)}" for a, b in line) for line in (left, right)
    )
    return element("path", d=band, fill="#fffdf8") + element(
        "path", d=lines, fill="none", stroke="#2e211c", stroke_width=0.9
    )


def marks(scene: Stage, plate: Plate) -> list[str]:
    """Labels with their leaders, and the ruler."""
    words = [mark for callout in plate.callouts for mark in labelled(callout)]
    bottom = plate.y + (scene.bottom - scene.top) * plate.scale
    below = bottom + 20.0 if plate.beside else plate.height - 18.0
    return [*words, ruler(scene, plate.scale, x=plate.x, y=below)]


def stroke(data: str, colour: str, width: float, *, opacity: float | None = None) -> str:
    """Plain line."""
    return element(
        "path", d=data, fill="none", stroke=colour, stroke_width=width, stroke_opacity=opacity
    )


def labelled(callout: Callout) -> list[str]:
    """Leader, its dot, and the lines of a label."""
    start = callout.leader[0]
    near = path_data(callout.leader[: callout.on_picture], closed=False)
    far = path_data(callout.leader[callout.on_picture - 1 :], closed=False)
    spans = [
        element("tspan", escaped(words), x=callout.x, dy=None if k == 0 else 13.5)
        for k, words in enumerate(callout.lines)
    ]
    return [
        stroke(near, "#fffdf8", 2.8, opacity=0.65),
        stroke(near, PAPER_INK, 0.9),
        stroke(far, INK, 0.9),
        element(
            "circle",
            cx=start[0],
            cy=start[1],
            r=2.4,
            fill="#fffdf8",
            stroke=PAPER_INK,
            stroke_width=0.9,
        ),
        element(
            "text", *spans, x=callout.x, y=callout.y, font_size=12.5, font_style="italic", fill=INK
        ),
    ]
