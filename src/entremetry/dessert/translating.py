"""The author's own texts in another language, as the document gives them under `translations`."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any, TypeVar

from pydantic import BaseModel

from entremetry.dessert.document import DessertDocument
from entremetry.dessert.reading import read_dessert
from entremetry.documents import Tree, field_text, removed
from entremetry.errors import DocumentError, Fault, nearest_names
from entremetry.words import languages, say

M = TypeVar("M", bound=BaseModel)
FIELD = "translations"
TEXTS = frozenset({"name", "about", "keywords", "note", "label_name"})
"""Fields that hold what an author says to readers, wherever in a document they stand."""
Say = Callable[[str], str]


def translated(document: DessertDocument, code: str) -> DessertDocument:
    """The document with its texts in a language; what has no translation stays as written.

    Ids, references and numbers stay, and so does what an own ingredient was called, as a name
    that lines may still use.
    """
    table = _table(document, code)
    if not table:
        return document
    told = _told(document, lambda text: table.get(_key(text), text))
    own = {id_: _as_before(told.ingredients[id_], was) for id_, was in document.ingredients.items()}
    return told.model_copy(update={"ingredients": own})


def bowl_names(document: DessertDocument, code: str) -> dict[str, str]:
    """What bowls are called in a language, by their name in the document."""
    table = _table(document, code)
    return {bowl: table[bowl] for bowl in _bowls(document) if bowl in table}


def untranslated(document: DessertDocument, code: str) -> tuple[str, ...]:
    """Texts that a language lacks, each once, whether the document was translated or not.

    A document that says nothing of a language in which the program writes by itself, English,
    is taken to be written in it.
    """
    if code == languages()[0] and code not in document.translations:
        return ()
    table = _table(document, code)
    known = {*table, *map(_key, table.values())}
    return tuple(text for text in texts(document) if text not in known)


def texts(document: DessertDocument) -> tuple[str, ...]:
    """Everything the author says to readers, on one line each, in the order of the document."""
    return tuple(dict.fromkeys([*map(_key, _said(document)), *_bowls(document)]))


def require_translations(document: DessertDocument, tree: Tree, *, file: str) -> None:
    """Refuse translations into no language there is, and those of what the document does not say.

    Raises
    ------
    DocumentError
        With the line of each, and the nearest text.
    """
    faults = [*_foreign(document, tree, file), *_strangers(document, tree, file)]
    if faults:
        raise DocumentError(faults)


def without_strangers(text: str, document: DessertDocument) -> tuple[str, tuple[str, ...]]:
    """The text of a changed document without translations of what it no longer says, and those."""
    if not document.translations:
        return text, ()
    said, gone = set(texts(document)), []
    for code, table in document.translations.items():
        for each in table:
            if _key(each) not in said:
                text = removed(text, (FIELD, code, each))
                gone.append(each)
    return text, tuple(dict.fromkeys(gone))


def settled(text: str) -> str:
    """A text without translations of what it no longer says; one that is no document stays."""
    try:
        document, _ = read_dessert(text, file="document")
    except DocumentError:
        return text
    return without_strangers(text, document)[0]


def _foreign(document: DessertDocument, tree: Tree, file: str) -> Iterator[Fault]:
    known = languages()
    for code in document.translations:
        if code not in known:
            yield Fault(
                file=file,
                line=tree.line((FIELD, code)),
                field=field_text((FIELD, code)),
                found=say("the language '{code}'", code=code),
                accepted=say("a language there is: {names}", names=", ".join(known)),
            )


def _strangers(document: DessertDocument, tree: Tree, file: str) -> Iterator[Fault]:
    said = texts(document) if document.translations else ()
    for code, table in document.translations.items():
        for each in table:
            if _key(each) not in said:
                yield Fault(
                    file=file,
                    line=tree.line((FIELD, code, each)),
                    field=field_text((FIELD, code)),
                    found=say("'{text}', which the document says nowhere", text=each),
                    accepted=say("a text of this document, as it is written there"),
                    nearest=nearest_names(_key(each), said),
                )


def _table(document: DessertDocument, code: str) -> dict[str, str]:
    return {_key(text): told for text, told in document.translations.get(code, {}).items()}


def _key(text: str) -> str:
    """A text on one line: a document may break it where it likes."""
    return " ".join(text.split())


def _bowls(document: DessertDocument) -> tuple[str, ...]:
    steps = [step for component in document.components.values() for step in component.method]
    return tuple(dict.fromkeys(step.bowl for step in steps if step.bowl))


def _said(value: Any, field: str = "") -> Iterator[str]:
    """Every text of a field for readers, as it is written."""
    if isinstance(value, str):
        if field in TEXTS and value.strip():
            yield value
    elif isinstance(value, BaseModel):
        for name in type(value).model_fields:
            if name != FIELD:
                yield from _said(getattr(value, name), name)
    elif isinstance(value, dict):
        for each in value.values():
            yield from _said(each, field)
    elif isinstance(value, list | tuple):
        for each in value:
            yield from _said(each, field)


def _told(model: M, say: Say) -> M:
    """A model in which every text of a field for readers is said anew."""
    names = (name for name in type(model).model_fields if name != FIELD)
    said = {name: _each(getattr(model, name), say, name) for name in names}
    update = {name: value for name, value in said.items() if value != getattr(model, name)}
    return model.model_copy(update=update)


def _each(value: Any, say: Say, field: str) -> Any:
    if isinstance(value, BaseModel):
        return _told(value, say)
    if isinstance(value, dict):
        return {key: _each(each, say, field) for key, each in value.items()}
    if isinstance(value, list | tuple):
        return type(value)(_each(each, say, field) for each in value)
    return say(value) if field in TEXTS and isinstance(value, str) and value.strip() else value


def _as_before(told: Any, was: Any) -> Any:
    """An own ingredient that is still found under the name it had."""
    if told.name == was.name:
        return told
    return told.model_copy(update={"aliases": [*was.aliases, was.name]})
