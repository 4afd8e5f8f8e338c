"""A batch sheet whose every text is hostile in one way."""

from __future__ import annotations

from dataclasses import replace

from entremetry.dessert.batch_sheet import Allergens, BatchSheet, FillStep, Slip
from unit.publish.sheets import MOUSSE, SHEET

TEXTS = {
    "markup": "</p><script>alert(1)</script> & #pagebreak() $x$ *b* `c` \\u{202e} [d] @e {f} \x07",
    "formula": '=HYPERLINK("file:x")',
    "plus": "+1+1",
    "minus": "-2+3",
    "at": "@SUM(A1)",
    "turned": "\u202eabc\u202c \u2067def\u2069 \u200fשלום\u200f 12 g",
    "emoji": "🍓🧁 crème brûlée 👩\u200d🍳",
    "long": "x" * 10_000,
    "long-words": "sugar 240 g and " * 625,
    "digits": "9" * 10_000,
    "lines": "one\r\ntwo\n\n\tthree\u2028four",
    "nothing": "",
}


def foreign(text: str) -> BatchSheet:
    """The sheet with one text everywhere."""
    line = replace(MOUSSE.lines[0], name=text, household=text, note=text)
    change = replace(MOUSSE.changes[0], reason=text)
    bad = replace(MOUSSE, name=text, lines=(line,), method=(text, text), changes=(change,))
    part = replace(SHEET.section.parts[0], name=text)
    return replace(
        SHEET,
        name=text,
        about=text,
        author=text,
        keywords=(text,),
        components=(bad,),
        mould=replace(SHEET.mould, name=text, size=text),
        fill_steps=(FillStep(component="mousse", text=text, mass=0.038),),
        assembly=(f"{text} ",),
        walls=(replace(SHEET.walls[0], insert=text, around=text),),
        cut_outs=(replace(SHEET.cut_outs[0], size=text, sheet=text, pattern=text, offcuts=text),),
        shopping=(replace(SHEET.shopping[0], name=text, buy=text, effect=text),),
        section=replace(SHEET.section, parts=(part,)),
        assumptions=(text,),
        cautions=(text,),
        slips=(Slip(place=text, found=text, right=text),),
        allergens=Allergens(eu=(), us=()),
    )
