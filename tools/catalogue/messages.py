"""Messages of the code, and how they agree with a catalogue."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from io import BytesIO
from pathlib import Path
from string import Formatter

from babel.messages.catalog import Catalog, Message
from babel.messages.extract import extract_from_dir
from babel.messages.pofile import read_po, write_po

from entremetry.labels.english_names import allergen_names, european_names
from entremetry.larder.spoken_name import CONTEXT
from entremetry.sources.range import QUANTITY
from entremetry.store.larder_file import open_larder

SOURCE = Path(__file__).parents[2] / "src" / "entremetry"
CATALOGUES = SOURCE / "words" / "catalogues"
METHODS = [("**.py", "python"), ("**.html", "jinja2.ext:babel_extract")]
KEYWORDS = {
    "say": None,
    "say_later": None,
    "plainly": None,
    "say_as": ((1, "c"), 2),
    "say_as_later": ((1, "c"), 2),
    "say_count": (1, 2),
    "say_count_later": (1, 2),
}
OPTIONS = {"**.html": {"silent": "false", "trimmed": "true"}}


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """One message that a catalogue lacks or has wrong."""

    catalogue: str
    message: str
    fault: str

    def __str__(self) -> str:
        return f"{self.catalogue}: {self.fault}: {self.message!r}"


@cache
def fresh() -> Catalog:
    """All messages of the code and its data, by the files they stand in."""
    catalogue = Catalog(project="Entremetry", charset="utf-8")
    found = extract_from_dir(SOURCE, METHODS, OPTIONS, KEYWORDS)
    for name, _, message, _, context in sorted(found, key=lambda each: each[0]):
        catalogue.add(message, locations=[(name, 1)], context=context)
    for name, message, context in in_data():
        catalogue.add(message, locations=[(name, 1)], context=context)
    return catalogue


def in_data() -> Iterator[tuple[str, str, str]]:
    """Yield every message that stands in data, with its file and its context."""
    for name, _, message, _, _ in extract_from_dir(SOURCE, METHODS[:1], {}, {"Range": (1,)}):
        yield name, message, QUANTITY
    for ingredient in open_larder():
        yield "store/data/larder.sqlite", ingredient.name, CONTEXT
    for name in european_names():
        yield "labels/english_names.py", name, "list"
    for name in allergen_names():
        yield "labels/english_names.py", name, "allergen"


def kept(path: Path, found: Catalog) -> Catalog:
    """A catalogue with the messages of the code and the translations it has of them."""
    before = read_po(BytesIO(path.read_bytes()), locale=path.stem)
    before.update(found, no_fuzzy_matching=True)
    before.obsolete.clear()
    return before


def written(catalogue: Catalog) -> str:
    """Text of a catalogue: sorted by file, without dates or lines, so that changes are seen."""
    ordered = Catalog(locale=catalogue.locale, fuzzy=False, charset="utf-8")
    for message in sorted(catalogue, key=place):
        if message.id:
            ordered[message.id] = message
    out = BytesIO()
    write_po(out, ordered, width=100, omit_header=True, include_lineno=False)
    header = (
        'msgid ""\nmsgstr ""\n"Content-Type: text/plain; charset=utf-8\\n"\n'
        f'"Language: {catalogue.locale}\\n"\n"Plural-Forms: {catalogue.plural_forms}\\n"\n\n'
    )
    return header + out.getvalue().decode()


def place(message: Message) -> tuple[str, str, str]:
    """Where a message is sorted."""
    first = min((name for name, _ in message.locations), default="")
    return (first, message.context or "", _singular(message))


def slips(catalogue: Catalog, name: str) -> Iterator[Slip]:
    """Yield every message without a translation, or whose translation has other fields."""
    for message in catalogue:
        if not message.id:
            continue
        said = message.string if isinstance(message.string, tuple) else (message.string,)
        if not all(said):
            yield Slip(catalogue=name, message=_singular(message), fault="not translated")
        elif any(not _same_fields(message, each) for each in said):
            yield Slip(catalogue=name, message=_singular(message), fault="other fields")


def _same_fields(message: Message, said: str) -> bool:
    """Whether a translation names fields of its message only, and all that each form must have."""
    forms = message.id if isinstance(message.id, tuple) else (message.id,)
    known = [fields(form) for form in forms]
    wanted = fields(said)
    return wanted <= set().union(*known) and (wanted >= set.intersection(*known))


def fields(text: str) -> set[str]:
    """Names of the fields of a message."""
    return {name for _, name, _, _ in Formatter().parse(text) if name}


def _singular(message: Message) -> str:
    return message.id[0] if isinstance(message.id, tuple) else message.id
