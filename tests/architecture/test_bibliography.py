"""A source key is a checked object: it exists, it is used, it reads author_year or body_number."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from entremetry.errors import UnknownName
from entremetry.sources import BIBLIOGRAPHY, Source, Standing, cite
from entremetry.sources.bibliography.collection import ROOMS, joined

SOURCE_TREE = Path(__file__).parents[2] / "src" / "entremetry"
TEST_TREE = Path(__file__).parents[1]
ENTRIES = SOURCE_TREE / "sources" / "bibliography"
WELL_FORMED = re.compile(r"[a-z][a-z0-9]*(_[a-z0-9]+)+")
KEYWORDS = frozenset({"source", "sources", "density_source", "reason_source"})
WITH_A_RIGHT_TO_STAND_UNUSED = frozenset({"from_memory", "our_own"})


def python_files() -> list[Path]:
    """Every module of the program, but the bibliography itself."""
    return sorted(p for p in SOURCE_TREE.rglob("*.py") if ENTRIES not in p.parents)


def texts_of(path: Path) -> Iterator[str]:
    """Yield every text written in a module."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.value


def words_of_other_files() -> str:
    """Data files, theory pages and checks against published values, which cite by key as well."""
    data = [p for p in SOURCE_TREE.rglob("*") if p.suffix in {".csv", ".yaml", ".json", ".sql"}]
    docs = (TEST_TREE.parent / "docs" / "theory").glob("*.md")
    published = (TEST_TREE / "published").iterdir()
    tools = (TEST_TREE.parent / "tools").rglob("*.py")
    files = [*data, *docs, *(p for p in published if p.suffix in {".csv", ".py"}), *tools]
    return "\n".join(f"{p.stem}\n{p.read_text(encoding='utf-8')}" for p in files)


def cited_by_keyword(path: Path) -> Iterator[str]:
    """Yield the texts handed over as `source=` or `sources=` in a module."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.keyword) and node.arg in KEYWORDS:
            for inner in ast.walk(node.value):
                if isinstance(inner, ast.Constant) and isinstance(inner.value, str):
                    yield inner.value


def test_every_key_that_the_code_cites_exists() -> None:
    unknown = {
        f"{path.relative_to(SOURCE_TREE)}: {key}"
        for path in python_files()
        for key in cited_by_keyword(path)
        if WELL_FORMED.fullmatch(key) and key not in BIBLIOGRAPHY
    }
    assert not unknown


def test_no_source_stands_unused() -> None:
    texts = {text for path in python_files() for text in texts_of(path)}
    everything = "\n".join(texts) + words_of_other_files()
    used = {key for key in BIBLIOGRAPHY if re.search(rf"\b{re.escape(key)}\b", everything)}
    assert set(BIBLIOGRAPHY) - used - WITH_A_RIGHT_TO_STAND_UNUSED == set()


@pytest.mark.parametrize("key", sorted(BIBLIOGRAPHY))
def test_a_key_is_well_formed_and_its_text_says_something(key: str) -> None:
    assert WELL_FORMED.fullmatch(key)
    assert len(cite(key).text) > 20


def test_a_year_in_a_key_stands_in_its_text() -> None:
    for key, source in BIBLIOGRAPHY.items():
        for year in re.findall(r"(?:^|_)((?:18|19|20)\d\d)(?:_|$)", key):
            assert year in source.text, key


def test_every_file_of_entries_is_joined() -> None:
    named = {module.__name__.rpartition(".")[2] for module in ROOMS}
    files = {path.stem for path in ENTRIES.glob("*.py")} - {"__init__", "collection"}
    assert named == files


def test_an_unknown_key_is_answered_with_the_nearest() -> None:
    with pytest.raises(UnknownName, match="choi_okos_1986"):
        cite("choi_okos_1968")


def test_two_sources_with_one_key_are_refused() -> None:
    twice = Source(key="a_1", text="Somebody, 1", standing=Standing.PUBLISHED)
    with pytest.raises(ValueError, match="a_1"):
        joined([twice, twice])


def test_every_published_table_is_named_by_its_source() -> None:
    tables = [path.stem for path in (TEST_TREE / "published").glob("*.csv")]
    assert [name for name in tables if not name.startswith(tuple(BIBLIOGRAPHY))] == []
