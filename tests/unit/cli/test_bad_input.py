"""Whatever is handed over: exit status 2, one clear message, nothing printed, nothing written."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from command_line import entremetry

DOCUMENT = """entremetry: 1
id: plum-dome
name: Plum dome
measures: us
pieces: 6
mould: hemisphere-70
components:
  mousse:
    name: Plum mousse
    kind: mousse
    density: 0.6 g/ml
    formula:
      plum: 240 g
      cream-35: 200 g
      gelatine-sheet-gold: 4 sheets
      corn-starch: 1 tbsp
    method:
      - {step: pour, left_behind: 4 %}
placement:
  - {component: mousse, as: filling}
"""
FILLING = "  - {component: mousse, as: filling}\n"
WRITTEN_OUT = "mould: {id: x, name: X, shape: {SHAPE}}"


def written(folder: Path, old: str = "", new: str = "") -> Path:
    """The document with one thing changed, in a file of its own."""
    assert old in DOCUMENT
    path = folder / "plum.yaml"
    path.write_text(DOCUMENT.replace(old, new, 1) if old else DOCUMENT, encoding="utf-8")
    return path


def test_the_document_itself_is_in_order(tmp_path: Path) -> None:
    answer = entremetry("batch", written(tmp_path))
    assert (answer.status, answer.err) == (0, "")


@pytest.mark.parametrize(
    ("old", "new", "line", "says"),
    [
        ("pieces: 6", "pieces: 0", 5, "pieces: found 0; accepted: 1 or more"),
        ("pieces: 6", "pieces: -3", 5, "pieces: found -3"),
        ("pieces: 6", "pieces: 2.5", 5, "found 2.5; accepted: a whole number"),
        ("pieces: 6", "pieces: 100000", 5, "at most 10000"),
        ("pieces: 6", "pieces: .nan", 5, "no finite number"),
        ("pieces: 6", "pieces: true", 5, "found true"),
        ("pieces: 6", "pieces:", 5, "found nothing"),
        ("pieces: 6", "peices: 6", 5, "did you mean pieces"),
        ("pieces: 6", "pieces: 6\npieces: 7", 6, "a second time (first on line 5)"),
        ("name: Plum dome", "name: &a Plum", 3, "the anchor '&a'"),
        ("name: Plum dome", "name: " + "P" * 200, 3, "at most 120 characters"),
        ("id: plum-dome", "id: Plum Dome", 2, "lower-case letters and digits"),
        ("entremetry: 1", "entremetry: 9", 1, "made by a newer program"),
        ("hemisphere-70", "hemisfere-70", 6, "did you mean hemisphere-70"),
        ("kind: mousse", "kind: mouse", 10, "did you mean mousse?"),
        ("plum: 240 g", "plum: 240", 13, "an amount with its unit"),
        ("plum: 240 g", "plum: -240 g", 13, "which is negative"),
        ("plum: 240 g", "plum: 0 g", 13, "out of bounds"),
        ("plum: 240 g", "plum: nan g", 13, "not a finite number"),
        ("plum: 240 g", "plum: 240 mm", 13, "which is a length"),
        ("plum: 240 g", "plum: 9999999 kg", 13, "out of bounds"),
        ("cream-35: 200 g", "cream-35: 2 pods", 14, "a mass or a volume"),
        ("1 tbsp", "1 tpsb", 16, "did you mean"),
        ("measures: us\n", "", 15, "'tbsp' without whose it is"),
        ("gelatine-sheet-gold: 4", "gelatine: 4", 15, "gelatine-sheet-bronze"),
        ("density: 0.6 g/ml", "density: 60 g/ml", 11, "out of bounds"),
        ("step: pour", "step: poor", 18, "did you mean pour?"),
        ("left_behind: 4 %", "left_behnd: 4 %", 18, "did you mean left_behind?"),
        ("{step: pour, left_behind: 4 %}", "{step: mix, what: [cream]}", 18, "found 'cream'"),
        ("left_behind: 4 %", "left_behind: 4 kg", 18, "there are only"),
        ("as: filling", "as: filing", 20, "did you mean filling?"),
        ("{component: mousse, as", "{component: moose, as", 20, "did you mean mousse?"),
        ("as: filling", "as: layer, height: 50 mm", 20, "15.0 mm are missing"),
        ("as: filling", "as: layer, mass: 500 g", 20, "ml too much"),
        (FILLING, FILLING * 2, 21, "a second filling"),
        ("as: filling", 'as: soak, "on": mousse, mass: 3 g', 20, "none is placed"),
        (
            FILLING,
            "  - {component: mousse, as: insert, shape: {kind: hemisphere, diameter: 90 mm}}\n",
            20,
            "10.0 mm too large towards the rim",
        ),
        (
            FILLING,
            "  - {component: mousse, as: insert, shape: {kind: cap, diameter: 4cm, height: 6cm}}\n",
            20,
            "placement[1].shape: found height of the cap: 60 mm; accepted: at most 20 mm",
        ),
        (
            "mould: hemisphere-70",
            "mould: {id: x, name: X, shape: {kind: pyramid, height: 5 cm}}",
            6,
            "one of hemisphere, cap",
        ),
        (
            "mould: hemisphere-70",
            "mould: {id: x, name: X, shape: {kind: mesh, file: ../../plum.stl}}",
            6,
            "in the folder of its document",
        ),
        ("corn-starch: 1 tbsp", "again: {component: mousse, amount: 1 g}", 12, "a circle"),
        ("placement:", "ask: [How deep is it?]\nplacement:", 19, "How deep is it?"),
        (
            "cream-35: 200 g",
            "cream: {amount: 200 g, ask: Which cream?}",
            14,
            "Which cream?; accepted: the answer written into this line",
        ),
        ("placement:", "portions: {length: 90 cm, width: 9 cm}\nplacement:", 19, "not one portion"),
        (
            FILLING,
            "  - {component: mousse, as: base, cut_out: {kind: disc, diameter: 5 cm},"
            " thickness: 5 mm, sits: under, sheet: {length: 4 cm, width: 3 cm}}\n",
            20,
            "not one Plum mousse fits on its sheet of 40 mm × 30 mm: 20.0 mm are missing",
        ),
        ("plum: 240 g", "plum: [", 15, "no YAML"),
    ],
)
def test_a_fault_names_file_line_and_what_is_accepted(
    tmp_path: Path, old: str, new: str, line: int, says: str
) -> None:
    path = written(tmp_path, old, new)
    answer = entremetry("batch", path, "--json")
    assert (answer.status, answer.out) == (2, "")
    assert f"{path}, line {line}" in answer.err
    assert says in answer.err
    assert "Traceback" not in answer.err


def test_an_unknown_ingredient_comes_with_three_others(tmp_path: Path) -> None:
    answer = entremetry("batch", written(tmp_path, "cream-35", "creamm-35"))
    nearest = answer.err.partition("did you mean ")[2].rstrip("?\n")
    assert len(set(nearest.replace(" or ", ", ").split(", "))) == 3
    assert nearest.startswith("cream-35,")


def test_all_faults_are_said_at_once_in_the_order_of_their_lines(tmp_path: Path) -> None:
    path = tmp_path / "many.yaml"
    changed = DOCUMENT.replace("plum: 240 g", "plumm: 240 g").replace("e-70", "e-71")
    path.write_text(changed.replace("{component: mousse", "{component: moose"), encoding="utf-8")
    told = entremetry("batch", path).err.splitlines()
    assert [text.split(", ")[1] for text in told] == ["line 6", "line 13", "line 20"]


BYTES = {
    "empty": b"",
    "blank": b" \n\n",
    "binary": bytes(range(256)) * 8,
    "utf-16": DOCUMENT.encode("utf-16"),
    "latin-1": DOCUMENT.replace("Plum dome", "Crème").encode("latin-1"),
    "bell": DOCUMENT.replace("Plum dome", "Plum\x07").encode(),
    "list": b"- a\n- b\n",
    "deep": b"entremetry: 1\nx: " + b"[" * 5000 + b"]" * 5000,
    "bomb": b"a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n",
    "page": b"<html><body>Plum</body></html>",
    "kitchen": b"entremetry_kitchen: 1\nname: Mine\n",
    "no version": DOCUMENT.replace("entremetry: 1\n", "").encode(),
}


@pytest.mark.parametrize("content", BYTES.values(), ids=BYTES)
@pytest.mark.parametrize(
    "command", [("batch",), ("publish", "--to", "page"), ("moulds", "--kitchen")], ids="-".join
)
def test_what_is_no_document_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, content: bytes, command: tuple[str, ...]
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("junk.yaml").write_bytes(content)
    if command == ("moulds", "--kitchen") and content == BYTES["kitchen"]:
        Path("junk.yaml").write_text(DOCUMENT, encoding="utf-8")
    answer = entremetry(*command, "junk.yaml")
    assert (answer.status, answer.out) == (2, "")
    assert answer.err.startswith("junk.yaml") and "Traceback" not in answer.err
    assert [path.name for path in tmp_path.iterdir()] == ["junk.yaml"]


@pytest.mark.parametrize("command", ["batch", "import", "publish"])
def test_what_is_no_file_is_refused(tmp_path: Path, command: str) -> None:
    more = {
        "import": ("--name", "X", "--pieces", 1, "--mould", "cap-80"),
        "publish": ("--to", tmp_path / "page"),
        "batch": (),
    }[command]
    missing = entremetry(command, tmp_path / "none.yaml", *more)
    folder = entremetry(command, tmp_path, *more)
    huge = tmp_path / "huge.yaml"
    with huge.open("wb") as stream:
        stream.truncate(100_000_000)
    large = entremetry(command, huge, *more)
    assert [a.status for a in (missing, folder, large)] == [2, 2, 2]
    assert "there is no file" in missing.err
    assert "is a folder" in folder.err
    assert f"more than {5 if command == 'import' else 1} MB" in large.err
    assert "".join(a.out for a in (missing, folder, large)) == ""
    assert not (tmp_path / "page").exists()


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (("--pieces", 0), "1 to 10000 pieces"),
        (("--pieces", -2), "1 to 10000 pieces"),
        (("--pieces", 10**25), "1 to 10000 pieces"),
        (("--pieces", "2.5"), "--pieces"),
        (("--mould", "hemisfere-70"), "did you mean hemisphere-70"),
        (("--mould", ""), "no mould is called ''"),
        (("--kitchen", "none.yaml"), "there is no file none.yaml"),
        (("--have", "plum"), "NAME=VALUE"),
        (("--have", "plum=3"), "without a unit"),
        (("--have", "plumb=410 g"), "did you mean plum"),
        (("--have", "plum=2 g"), "not enough for one piece"),
        (("--have", "plum=410 g", "--pieces", 3), "one of the two"),
    ],
)
def test_an_option_that_makes_no_sense_is_refused(
    tmp_path: Path, options: tuple[object, ...], says: str
) -> None:
    answer = entremetry("batch", written(tmp_path), *options)
    assert (answer.status, answer.out) == (2, "")
    assert says in answer.err


def test_a_kitchen_is_refused_with_its_lines(tmp_path: Path) -> None:
    kitchen = tmp_path / "kitchen.yaml"
    kitchen.write_text(
        "entremetry_kitchen: 1\nname: Mine\nmoulds:\n"
        "  - {id: a, name: A, shape: {kind: cap, diameter: 40 mm, height: 90 mm}}\n"
        "  - {id: b, name: B, shape: {kind: hemisphere, diameter: 40 mm}}\n"
        "  - {id: b, name: B, shape: {kind: hemisphere, diameter: 40 mm}}\n",
        encoding="utf-8",
    )
    told = entremetry("batch", written(tmp_path), "--kitchen", kitchen).err.splitlines()
    assert told[0].startswith(f"{kitchen}, line 4, moulds[1].shape: found height of the cap: 90 mm")
    assert told[1].startswith(f"{kitchen}, line 6, moulds[3].id: found the id 'b' a second time")


def test_own_ingredients_of_a_kitchen_are_refused_with_their_lines(tmp_path: Path) -> None:
    kitchen = tmp_path / "kitchen.yaml"
    kitchen.write_text(
        "entremetry_kitchen: 1\nname: Mine\ningredients:\n  jam: {like: strawbery}\n",
        encoding="utf-8",
    )
    answer = entremetry("batch", written(tmp_path), "--kitchen", kitchen)
    assert answer.err.startswith(f"{kitchen}, line 4, ingredients.jam.like: found 'strawbery'")


def test_a_publication_that_cannot_be_finished_leaves_nothing(tmp_path: Path) -> None:
    in_the_way = tmp_path / "page" / "plum-dome-section.svg"
    in_the_way.mkdir(parents=True)
    answer = entremetry("publish", written(tmp_path), "--to", tmp_path / "page")
    assert answer.status == 2 and "is a folder" in answer.err
    assert list((tmp_path / "page").iterdir()) == [in_the_way]


def test_a_refused_document_makes_no_folder(tmp_path: Path) -> None:
    path = written(tmp_path, "pieces: 6", "pieces: 0")
    assert entremetry("publish", path, "--to", tmp_path / "page").status == 2
    assert not (tmp_path / "page").exists()


def test_a_folder_that_cannot_be_made_is_said(tmp_path: Path) -> None:
    path = written(tmp_path)
    answer = entremetry("publish", path, "--to", path / "page")
    assert answer.status == 2 and "cannot be made" in answer.err


@pytest.mark.parametrize(
    "arguments",
    [("larder", ""), ("larder", "xqzxqz"), ("nonsense",), ("batch",), ("serve", "--port", 70000)],
)
def test_usage_that_makes_no_sense_is_refused(arguments: tuple[object, ...]) -> None:
    answer = entremetry(*arguments)
    assert (answer.status, answer.out) == (2, "") and answer.err


WITHOUT_ROOM = """
import resource, sys
resource.setrlimit(resource.RLIMIT_FSIZE, (0, 0))
sys.argv = ["entremetry", *sys.argv[1:]]
from entremetry.cli.app import main
main()
"""


def without_room(folder: Path, *arguments: object) -> subprocess.CompletedProcess[str]:
    """Run the command where no file can grow, its output into a file."""
    with (folder / "out.txt").open("w", encoding="utf-8") as out:
        return subprocess.run(
            [sys.executable, "-B", "-c", WITHOUT_ROOM, *map(str, arguments)],
            stdout=out,
            stderr=subprocess.PIPE,
            text=True,
            check=False,
        )


def test_an_output_that_takes_nothing_is_said(tmp_path: Path) -> None:
    done = without_room(tmp_path, "batch", written(tmp_path))
    assert (done.returncode, done.stderr) == (2, "the answer cannot be written: File too large\n")


def test_a_full_disk_leaves_nothing_half_written(tmp_path: Path) -> None:
    path = written(tmp_path)
    done = without_room(tmp_path, "publish", path, "--to", tmp_path / "new" / "page")
    assert done.returncode == 2 and "cannot be written: File too large" in done.stderr
    assert {each.name for each in tmp_path.iterdir()} == {"plum.yaml", "out.txt"}
