"""Draws the icons of the installed workbench from its mark; run it after the mark has changed."""

from __future__ import annotations

from pathlib import Path

from resvg_py import svg_to_bytes

STATIC = Path(__file__).parents[1] / "src" / "entremetry" / "web" / "static"
SIZES = (192, 512)
INNER = 'transform="translate(24 24) scale(0.72) translate(-24 -28.5)"'


def to_the_edges(mark: str) -> str:
    """The mark on a ground without corners, inside the circle that every system leaves of it."""
    start, ground, rest = mark.partition("/>")
    square = start.replace(' rx="10"', "")
    return f"{square}{ground}<g {INNER}>{rest.replace('</svg>', '</g></svg>')}"


def main() -> None:
    """Write an icon of each size, and one that a system may cut to its own shape."""
    mark = (STATIC / "mark.svg").read_text(encoding="utf-8")
    drawn = {f"icon-{size}.png": (mark, size) for size in SIZES}
    drawn["icon-cut-512.png"] = (to_the_edges(mark), 512)
    for name, (svg, size) in drawn.items():
        (STATIC / name).write_bytes(bytes(svg_to_bytes(svg_string=svg, width=size, height=size)))
        print(f"wrote {name}")


if __name__ == "__main__":
    main()
