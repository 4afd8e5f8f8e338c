"""Every page is reachable, every link leads somewhere, every example runs."""

from __future__ import annotations

import doctest
import re
import shlex
from pathlib import Path

import pytest
import yaml

from command_line import entremetry
from entremetry.dessert.document import DessertDocument
from entremetry.larder.own import own_ingredients
from entremetry.store.larder_file import open_larder

ROOT = Path(__file__).parents[2]
DOCS = ROOT / "docs"
TOCTREE = re.compile(r"^```\{toctree\}\n(.*?)^```", re.DOTALL | re.MULTILINE)
FENCE = re.compile(r"^```(\S[^\n]*)\n(.*?)^```", re.DOTALL | re.MULTILINE)
LINK = re.compile(r"\]\((?!https?:|#|mailto:)([^)#\s]+)")
CAPTION = re.compile(r"^:caption: (\S+)\n+", re.MULTILINE)
SMALLEST = {
    "entremetry": 1,
    "id": "ice",
    "name": "Ice",
    "pieces": 1,
    "mould": "hemisphere-70",
    "components": {"ice": {"name": "Ice", "kind": "mousse", "formula": {"water": "10 g"}}},
    "placement": [{"component": "ice", "as": "filling"}],
}
PAGES = sorted(
    path
    for path in [*ROOT.glob("*.md"), *DOCS.rglob("*.md")]
    if not {"_build", "vocabulary.d"} & set(path.parts)
)
NAMES = [str(path.relative_to(ROOT)) for path in PAGES]


def blocks(path: Path) -> list[tuple[str, str]]:
    """Language and text of every fenced block of a page, in order."""
    return FENCE.findall(path.read_text(encoding="utf-8"))


def reachable(page: Path) -> set[Path]:
    """A page and all pages that its tables of contents lead to."""
    found = {page}
    for listing in TOCTREE.findall(page.read_text(encoding="utf-8")):
        names = [line for line in listing.splitlines() if line and not line.startswith(":")]
        for name in names:
            for path in page.parent.glob(f"{name}.md"):
                found |= reachable(path)
    return found


def test_every_picture_is_shown() -> None:
    text = "\n".join(page.read_text(encoding="utf-8") for page in PAGES)
    kept = [path.relative_to(DOCS).as_posix() for path in (DOCS / "images").rglob("*.*")]
    assert kept and [name for name in kept if name not in text] == []


def test_every_page_is_reachable_from_the_index() -> None:
    of_the_documentation = {path for path in PAGES if DOCS in path.parents}
    assert of_the_documentation == reachable(DOCS / "index.md")


@pytest.mark.parametrize("name", NAMES)
def test_every_link_leads_to_a_file(name: str) -> None:
    page = ROOT / name
    targets = LINK.findall(page.read_text(encoding="utf-8"))
    assert [target for target in targets if not (page.parent / target).exists()] == []


@pytest.mark.parametrize("name", NAMES)
def test_no_page_needs_a_formula_renderer(name: str) -> None:
    text = (ROOT / name).read_text(encoding="utf-8")
    assert "$$" not in text and "{math}" not in text


@pytest.mark.parametrize("name", [n for n in NAMES if "```python" in (ROOT / n).read_text("utf-8")])
def test_every_python_example_runs(name: str) -> None:
    names: dict[str, object] = {}
    for language, text in blocks(ROOT / name):
        if language == "python" and ">>>" in text:
            test = doctest.DocTestParser().get_doctest(text, names, name, name, 0)
            assert doctest.DocTestRunner().run(test, clear_globs=False).failed == 0
            names = test.globs
        elif language == "python":
            exec(compile(text, name, "exec"), names)


def written_parts() -> list[tuple[str, str]]:
    """Pieces of documents that the pages show, each with the page it stands on."""
    shown = [(name, block) for name in NAMES for block in blocks(ROOT / name)]
    return [(name, text) for name, (language, text) in shown if language == "yaml"]


@pytest.mark.parametrize(("name", "text"), written_parts())
def test_every_piece_of_a_document_would_be_accepted(name: str, text: str) -> None:
    document = DessertDocument.model_validate({**SMALLEST, **yaml.safe_load(text)})
    assert len(own_ingredients(document.ingredients, open_larder())) == len(document.ingredients)


def with_commands(name: str) -> bool:
    """Tell whether a page shows commands of ours in a terminal."""
    shown = [text for language, text in blocks(ROOT / name) if language == "console"]
    return any("$ entremetry" in text for text in shown)


@pytest.mark.parametrize("name", [n for n in NAMES if with_commands(n)])
def test_every_command_shown_works(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Captioned files of the page are written down, then its commands run in order."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("ENTREMETRY_HOME", str(tmp_path / "home"))
    monkeypatch.setenv("COLUMNS", "100")
    for language, text in blocks(ROOT / name):
        if caption := CAPTION.search(text):
            (tmp_path / caption.group(1)).write_text(CAPTION.sub("", text), encoding="utf-8")
        if language == "console":
            run_all(text, tmp_path)


def run_all(text: str, folder: Path) -> None:
    """Run each of our commands in a terminal block; what is printed must be what is shown."""
    for part in re.split(r"^\$ ", text.replace("\\\n", ""), flags=re.MULTILINE)[1:]:
        command, _, shown = part.partition("\n")
        if command.startswith("entremetry") and not command.startswith("entremetry serve"):
            printed = output_of(command, folder)
            assert all(line.strip() in printed for line in shown.splitlines()), printed


def output_of(command: str, folder: Path) -> str:
    """What a command prints, once it has ended well; '>' keeps it in a file as well."""
    command, _, kept = command.partition(" > ")
    done = entremetry(*shlex.split(command)[1:])
    assert done.status == 0, f"{command}\n{done.out}{done.err}"
    if kept:
        (folder / kept.strip()).write_text(done.out, encoding="utf-8")
    return done.out + done.err
