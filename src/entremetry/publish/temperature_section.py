"""The section coloured by temperature at one moment, as the piece is served."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from entremetry.publish.colour import WHITE, hex_colour
from entremetry.publish.drawing import INK, PAPER, PAPER_INK
from entremetry.publish.markup import element, escaped, number, path_data
from entremetry.publish.page_words import shown
from entremetry.publish.ruler import bar_length, centimetres
from entremetry.publish.temperature_contour import closed_lines
from entremetry.publish.temperature_curves import SANS
from entremetry.publish.temperature_map import SectionMap, section_map
from entremetry.publish.temperature_palette import band_colours, ink_on
from entremetry.publish.temperature_path import simplified
from entremetry.publish.temperature_scale import round_temperatures
from entremetry.publish.temperature_wording import FREEZING_POINT, celsius, roughly
from entremetry.publish.typography import NO_BREAK
from entremetry.shapes import Floats
from entremetry.timings.step_temperatures import Field, StepTemperatures
from entremetry.words import say

WIDTH = 320.0
MARGIN = 12.0
CAPTION = 30.0
TALLEST = 250.0
FOOT = 68.0
MOST_BANDS = 10
SPOTS = (0.16, 0.5, 0.84)  # how far down temperatures are written on the piece


@dataclass(frozen=True, slots=True, kw_only=True)
class Sight:
    """What all moments of one section share: its map, the bands of colour, and the scale.

    `top` is the upper end of the piece [mm].
    """

    map: SectionMap
    limits: tuple[float, ...]
    scale: float
    top: float
    height: float

    def x(self, place: float) -> float:
        """Place on the drawing of a place across [mm]."""
        return WIDTH / 2.0 + place * self.scale

    def y(self, place: float) -> float:
        """Height on the drawing of a place down [mm]."""
        return CAPTION + (place - self.top) * self.scale


def section_frames(result: StepTemperatures) -> tuple[str, ...]:
    """Section at each kept moment; none if the step has no section."""
    if result.field is None:
        return ()
    seen = sight(result.field)
    return tuple(
        _drawing(result.field, seen, index, standalone=False)
        for index in range(len(result.field.times))
    )


def section_frame_svg(result: StepTemperatures, index: int, *, standalone: bool = False) -> str:
    """Section at one kept moment.

    Raises
    ------
    IndexError
        If there is no such moment, or the step has no section.
    """
    if result.field is None:
        raise IndexError("this step has no section")
    return _drawing(result.field, sight(result.field), index, standalone=standalone)


def sight(field: Field) -> Sight:
    """Map, bands and scale for all moments of a field."""
    mapped = section_map(field)
    points = np.concatenate(mapped.outlines)
    wide, high = np.ptp(points, axis=0)
    scale = min((WIDTH - 2.0 * MARGIN) / float(wide), TALLEST / float(high))
    low, top = float(np.nanmin(field.temperatures)), float(np.nanmax(field.temperatures))
    return Sight(
        map=mapped,
        limits=round_temperatures(low, top, most=MOST_BANDS),
        scale=scale,
        top=float(points[:, 1].min()),
        height=CAPTION + float(high) * scale + FOOT,
    )


def _drawing(field: Field, seen: Sight, index: int, *, standalone: bool) -> str:
    values = seen.map.whole(field.temperatures[index])
    caption = _caption(field, index)
    prefix = f"moment-{index}"
    return element(
        "svg",
        element("title", escaped(shown(moment_words(field, index)))),
        *([element("rect", width=WIDTH, height=seen.height, fill=PAPER)] * standalone),
        element(
            "text", escaped(caption), x=MARGIN, y=17.0, font_size=15.0, font_weight="700", fill=INK
        ),
        _piece(seen, values, prefix),
        *_spots(seen, values),
        _ruler(seen),
        *_key(seen),
        xmlns="http://www.w3.org/2000/svg" if standalone else None,
        viewBox=f"0 0 {number(WIDTH)} {number(seen.height)}",
        role="img",
        font_family=SANS,
        font_size=12.5,
        color=PAPER_INK if standalone else None,
    )


def moment_words(field: Field, index: int) -> str:
    """Time of a moment, with the coldest and the warmest place of the piece."""
    values = field.temperatures[index]
    low, high = celsius(float(np.nanmin(values))), celsius(float(np.nanmax(values)))
    caption = _caption(field, index)
    if low == high:
        return say("{moment}: {temperature} everywhere", moment=caption, temperature=low)
    return say("{moment}: from {low} to {high}", moment=caption, low=low, high=high)


def _caption(field: Field, index: int) -> str:
    time = float(field.times[index])
    return say("At the start") if time == 0.0 else say("After {time}", time=roughly(time))


def _piece(seen: Sight, values: Floats, prefix: str) -> str:
    """Bands of colour from the coldest to the warmest, cut off at the outline."""
    outline = "".join(_path(seen, line) for line in seen.map.outlines)
    colours = band_colours(len(seen.limits) - 1)
    bands = [element("path", d=outline, fill=hex_colour(colours[0]))]
    for limit, colour in zip(seen.limits[1:-1], colours[1:], strict=True):
        lines = closed_lines(seen.map.across, seen.map.down, values, limit)
        if lines:
            bands.append(_band("".join(_path(seen, line) for line in lines), limit, colour))
    clip = element("clipPath", element("path", d=outline, clip_rule="evenodd"), id=f"{prefix}-in")
    rim = element("path", d=outline, fill="none", stroke=INK, stroke_width=1.4)
    inside = element("g", *bands, *_parts(seen), clip_path=f"url(#{prefix}-in)")
    return element("defs", clip) + inside + rim


def _parts(seen: Sight) -> list[str]:
    """Edges of what lies in the piece: a dark line with light dashes, seen on any colour."""
    data = "".join(_path(seen, edge) for edge in seen.map.parts)
    if not data:
        return []
    return [
        element("path", d=data, fill="none", stroke=hex_colour(WHITE), stroke_width=1.3),
        element(
            "path",
            d=data,
            fill="none",
            stroke=PAPER_INK,
            stroke_width=1.3,
            stroke_dasharray="4 4",
        ),
    ]


def _band(data: str, limit: float, colour: tuple[int, int, int]) -> str:
    """All that is at least as warm as a limit; the line of 0 °C is the strongest."""
    frozen = abs(limit - FREEZING_POINT) < 1e-6
    return element(
        "path",
        d=data,
        fill=hex_colour(colour),
        fill_rule="evenodd",
        stroke=hex_colour(ink_on(colour)),
        stroke_opacity=0.9 if frozen else 0.45,
        stroke_width=1.6 if frozen else 0.7,
    )


def _path(seen: Sight, line: Floats) -> str:
    """Closed path along a line given in mm."""
    moved = np.column_stack(
        [WIDTH / 2.0 + line[:, 0] * seen.scale, CAPTION + (line[:, 1] - seen.top) * seen.scale]
    )
    return path_data((round(float(x), 1), round(float(y), 1)) for x, y in simplified(moved))


def _spots(seen: Sight, values: Floats) -> list[str]:
    """Temperatures written on the piece: down the middle, and near the side."""
    return [
        _written(seen, values, row, column)
        for row, column in places(seen.map)
        if seen.scale * (seen.map.across[-1] - seen.map.across[0]) > 90.0
    ]


def places(mapped: SectionMap) -> list[tuple[int, int]]:
    """Rows and columns worth a number: three down the middle of the piece, one near its side."""
    rows = np.flatnonzero(mapped.inside.any(axis=1))
    chosen = []
    for share in SPOTS:
        row = round(rows[0] + share * (rows[-1] - rows[0]))
        columns = np.flatnonzero(mapped.inside[row] & (mapped.across > 0.0))
        solid = mapped.across[columns[0]] < mapped.across[-1] / 10.0
        middle = columns[0] if solid else columns[len(columns) // 2]
        chosen.append((row, int(middle)))
        if share == SPOTS[1] and solid:
            chosen.append((row, int(columns[int(0.86 * (len(columns) - 1))])))
    return chosen


def _written(seen: Sight, values: Floats, row: int, column: int) -> str:
    value = float(values[row, column])
    colours = band_colours(len(seen.limits) - 1)
    band = int(np.clip(np.searchsorted(seen.limits, value) - 1, 0, len(colours) - 1))
    solid = seen.map.across[column] < seen.map.across[-1] / 10.0
    return element(
        "text",
        escaped(celsius(value)[:-1].replace(NO_BREAK, "")),
        x=seen.x(0.0 if solid else float(seen.map.across[column])),
        y=seen.y(float(seen.map.down[row])) + 4.0,
        text_anchor="middle",
        font_size=13.5,
        font_weight="700",
        fill=hex_colour(ink_on(colours[band])),
        stroke=hex_colour(colours[band]),
        stroke_width=3.0,
        paint_order="stroke",
        stroke_linejoin="round",
    )


def _ruler(seen: Sight) -> str:
    """Bar of a round length under the piece, at the right."""
    length = bar_length(seen.scale, most=80.0)
    end, y = WIDTH - MARGIN, seen.height - FOOT + 16.0
    start = end - length * seen.scale
    d = f"M{number(start)} {number(y - 3)}v6M{number(start)} {number(y)}H{number(end)}m0 -3v6"
    return element("path", d=d, fill="none", stroke=INK, stroke_width=1.0) + element(
        "text", centimetres(length), x=start - 5.0, y=y + 4.0, text_anchor="end", fill=INK
    )


def _key(seen: Sight) -> list[str]:
    """Bands of colour with the temperatures between them."""
    colours = band_colours(len(seen.limits) - 1)
    wide = (WIDTH - 2.0 * MARGIN - 16.0) / len(colours)
    left, y = MARGIN + 8.0, seen.height - 36.0
    swatches = [
        element(
            "rect",
            x=left + wide * k,
            y=y,
            width=wide,
            height=12.0,
            fill=hex_colour(colour),
            stroke=INK,
            stroke_width=0.5,
        )
        for k, colour in enumerate(colours)
    ]
    return swatches + [
        element(
            "text",
            escaped(_short(limit, last=k == len(colours))),
            x=left + wide * k,
            y=y + 27.0,
            text_anchor="middle",
            fill=INK,
        )
        for k, limit in enumerate(seen.limits)
    ]


def _short(limit: float, *, last: bool) -> str:
    text = celsius(limit)
    return text if last else text.split(NO_BREAK)[0]
