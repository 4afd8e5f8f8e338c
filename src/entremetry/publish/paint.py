"""How each part of the section is painted."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from entremetry.publish.colour import Colour, darker, hex_colour, lighter
from entremetry.publish.glassware import glass
from entremetry.publish.markup import element, path_data
from entremetry.publish.outline import refined
from entremetry.publish.palette import colours
from entremetry.publish.stage import Shape, Stage
from entremetry.publish.texture import pattern, texture
from entremetry.shapes.solid import Floats


@dataclass(frozen=True, slots=True, kw_only=True)
class Paint:
    """What painting needs to know: the stage, units to the mm, and the start of every id."""

    stage: Stage
    scale: float
    prefix: str

    def unit(self, length: float) -> float:
        """Millimetres of a length given in units of the drawing."""
        return length / self.scale

    def ref(self, name: str) -> str:
        """Reference to something defined in this drawing."""
        return f"url(#{self.prefix}-{name})"


def painted(paint: Paint) -> tuple[str, str]:
    """Definitions and picture, both in mm."""
    stage = paint.stage
    tones = colours([shape.part for shape in stage.shapes])
    definitions = [clip(paint, "cavity", "".join(path_data(o) for o in stage.cavity))]
    definitions += coat_clip(paint)
    layers: list[str] = []
    for k, (shape, tone) in enumerate(zip(stage.shapes, tones, strict=True)):
        definitions += fills(paint, k, shape, tone)
        layers.append(picture(paint, k, shape, tone))
    if stage.is_vessel:
        layers.append(glass(stage, paint.unit(1.0)))
    else:
        layers += gleam(paint)
    return "".join(definitions), "".join(layers)


def clip(paint: Paint, name: str, data: str) -> str:
    """Clip path from path data."""
    return element(
        "clipPath", element("path", d=data, clip_rule="evenodd"), id=f"{paint.prefix}-{name}"
    )


def coat_clip(paint: Paint) -> list[str]:
    """Window for the coating: all but the face the piece stands on."""
    stage = paint.stage
    margin = 2.0
    left, right = stage.left - margin, stage.right + margin
    low, high = (stage.top - margin, stage.rim) if stage.upside_down else (stage.rim, stage.bottom)
    window = np.array([[left, low], [right, low], [right, high], [left, high]])
    return [clip(paint, "coat", path_data(window))]


def fills(paint: Paint, k: int, shape: Shape, tone: Colour) -> list[str]:
    """Shaded ground and texture of one part."""
    shade = element(
        "linearGradient",
        element("stop", offset=0.0, stop_color=hex_colour(lighter(tone, 0.16))),
        element("stop", offset=1.0, stop_color=hex_colour(darker(tone, 0.06))),
        id=f"{paint.prefix}-shade{k}",
        x1=0.0,
        y1=0.0,
        x2=0.0,
        y2=1.0,
    )
    grain = texture(shape.part)
    marks = pattern(grain, tone, id_=f"{paint.prefix}-grain{k}", scale=paint.scale)
    return [shade] if grain == "smooth" else [shade, marks]


def picture(paint: Paint, k: int, shape: Shape, tone: Colour) -> str:
    """One part: ground, texture and edge."""
    if shape.around:
        return coat(paint, k, shape, tone)
    data = "".join(path_data(outline) for outline in shape.outlines)
    edge = hex_colour(darker(tone, 0.45))
    marks = [element("path", d=data, fill=paint.ref(f"shade{k}"))]
    if texture(shape.part) != "smooth":
        marks.append(element("path", d=data, fill=paint.ref(f"grain{k}")))
    marks.append(element("path", d=data, fill="none", stroke=edge, stroke_width=paint.unit(0.9)))
    window = paint.ref("cavity") if shape.inside else None
    return element("g", *marks, clip_path=window)


def coat(paint: Paint, k: int, shape: Shape, tone: Colour) -> str:
    """Even band around the outline, seen from outside the cavity."""
    data = "".join(path_data(outline) for outline in paint.stage.cavity)
    film = max(shape.part.thickness * 1e3, paint.unit(1.6))
    edge = hex_colour(darker(tone, 0.4))
    rim = 2.0 * (film + paint.unit(0.7))
    return element(
        "g",
        *(
            element(
                "path",
                d=data,
                fill=colour,
                stroke=colour,
                stroke_width=width,
                stroke_linejoin="round",
            )
            for colour, width in ((edge, rim), (hex_colour(tone), 2.0 * film))
        ),
        clip_path=paint.ref("coat"),
    )


def gleam(paint: Paint) -> Iterator[str]:
    """Light from the upper left on the outermost surface."""
    films = [s.part.thickness * 1e3 for s in paint.stage.shapes if s.around]
    shift = -max(films) / 2.0 if films else paint.unit(3.2)
    for outline in paint.stage.cavity:
        run = lit(outline, paint.stage)
        if len(run) > 1:
            yield element(
                "path",
                d=path_data(run + shift * inward(run), closed=False),
                fill="none",
                stroke="#fffdf8",
                stroke_opacity=0.75 if films else 0.4,
                stroke_width=min(max(films), paint.unit(2.6)) * 0.5 if films else paint.unit(2.2),
                stroke_linecap="round",
                stroke_linejoin="round",
            )


def lit(outline: Floats, stage: Stage) -> Floats:
    """Run of points of the upper left of an outline."""
    points = refined(outline)
    left, right = float(points[:, 0].min()), float(points[:, 0].max())
    top = float(points[:, 1].min())
    x = (points[:, 0] - left) / max(right - left, 1e-9)
    y = (points[:, 1] - top) / max(stage.height, 1e-9)
    upper = (y < 0.5) & (x > 0.04) & (x < 0.36)
    chosen = points[upper]
    return chosen[np.argsort(chosen[:, 0], kind="stable")]


def inward(run: Floats) -> Floats:
    """Unit vectors at right angles to a run from left to right, pointing down or right."""
    along = np.gradient(run, axis=0)
    length = np.maximum(np.hypot(along[:, 0], along[:, 1]), 1e-12)
    return np.column_stack([-along[:, 1], along[:, 0]]) / length[:, np.newaxis]
