"""The built-in shelf of moulds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from importlib.resources import files
from typing import Any

from entremetry.documents import read_tree
from entremetry.errors import StoreError
from entremetry.kitchen.mould import Mould
from entremetry.kitchen.reading import moulds_of, read_kitchen
from entremetry.store.shelf_names import shelf_name
from entremetry.words import current, say, speaking

FILE = "moulds.yaml"


def built_in_moulds() -> Mapping[str, Mould]:
    """Moulds that everybody can name without describing them, by id; in the language spoken."""
    return _built_in(current().code)


@cache
def _built_in(code: str) -> Mapping[str, Mould]:
    """They are kept for each language: names and sizes are words."""
    with speaking(code):
        found = moulds_of(read_kitchen(_text(), file=FILE), file=FILE, read_mesh=no_mesh)
        return {key: replace(mould, name=shelf_name(mould.name)) for key, mould in found.items()}


def no_mesh(name: str) -> bytes:
    """Refuse a mesh where there is no folder to read it from."""
    raise StoreError(
        say(
            "the mesh '{name}' cannot be read here: keep the document in a folder with its STL "
            "file and use the command line",
            name=name,
        )
    )


@cache
def built_in_shapes() -> Mapping[str, Mapping[str, Any]]:
    """Shapes of the built-in moulds as a document writes them, by id."""
    tree = read_tree(_text(), file=FILE)
    return {mould["id"]: mould["shape"] for mould in tree.data["moulds"]}


def _text() -> str:
    return files("entremetry.store").joinpath("data", FILE).read_text(encoding="utf-8")
