"""What a reader of PDF finds in a sheet."""

from __future__ import annotations

import re
from io import BytesIO

from pypdf import PdfReader

GAPS = re.compile(r"[\s\u200b\u00a0\u00ad\u202f\u202a-\u202e\u2066-\u2069]+")


def pdf_text(pdf: bytes) -> str:
    """All text of all pages without its gaps, which differ from reader to reader."""
    return squeezed("".join(page.extract_text() for page in PdfReader(BytesIO(pdf)).pages))


def squeezed(text: str) -> str:
    """Text without gaps, and without the hyphens that a line may end in."""
    return GAPS.sub("", text).replace("-", "").replace("\u2010", "")
