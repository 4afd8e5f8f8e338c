"""What the commands print: text to read, or one JSON object with its units in the keys."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from pypdf import PdfReader

from command_line import Answer, entremetry, numbers
from entremetry.cli.publish_command import FormName, PaperSize
from entremetry.publish.typesetting import Paper
from entremetry.store.demo import demo_texts
from entremetry.usecases.publication_files import Form

UNITS = ("_g", "_mg", "_ml", "_mm", "_cm2", "_percent", "_g_per_ml")
COUNTS = frozenset(
    {"pieces", "serves", "factor", "cavities", "pieces_per_cavity", "trays", "fillings"}
    | {"count", "per_sheet", "at_most", "sheets", "amount", "owned"}
)


@pytest.fixture(params=sorted(demo_texts()))
def demo(request: pytest.FixtureRequest, tmp_path: Path) -> Path:
    """Each demo dessert in a file."""
    path = tmp_path / f"{request.param}.yaml"
    path.write_text(demo_texts()[request.param], encoding="utf-8")
    return path


def test_batch_prints_one_object_with_the_keys_that_scripts_rely_on(demo: Path) -> None:
    answer = entremetry("batch", demo, "--json")
    sheet = json.loads(answer.out)
    assert (answer.status, answer.err) == (0, "")
    assert {"pieces", "mould", "components", "fill_steps", "shopping"} <= set(sheet)
    for component in sheet["components"]:
        wanted = "id name mass_g volume_ml per_piece_g loss_percent ingredients"
        assert set(wanted.split()) <= set(component)
        for line in component["ingredients"]:
            assert {"id", "name", "mass_g", "household"} <= set(line)


def test_every_number_says_its_unit_last_or_is_a_count(demo: Path) -> None:
    for key in numbers(json.loads(entremetry("batch", demo, "--json").out)):
        assert key in COUNTS or key.endswith(UNITS), key


def test_the_text_says_what_the_object_says(demo: Path) -> None:
    sheet = json.loads(entremetry("batch", demo, "--json").out)
    text = entremetry("batch", demo).out
    for component in sheet["components"]:
        assert component["name"] in text
    for step in sheet["fill_steps"]:
        assert step["text"] in text
    for purchase in sheet["shopping"]:
        assert f"{purchase['name']}: {purchase['buy']}" in text


@pytest.fixture(scope="module")
def published(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Answer]:
    """What the command says of each demo, all published into one folder."""
    place = tmp_path_factory.mktemp("published")
    for name, text in demo_texts().items():
        (place / f"{name}.yaml").write_text(text, encoding="utf-8")
    return {
        name: entremetry("publish", place / f"{name}.yaml", "--to", place / "p", "--json")
        for name in demo_texts()
    }


@pytest.mark.parametrize("name", sorted(demo_texts()))
def test_publish_writes_a_page_with_the_drawing_it_names(
    name: str, published: dict[str, Answer]
) -> None:
    files = [Path(file) for file in json.loads(published[name].out)["files"]]
    assert [path.suffix for path in files[:3]] == [".html", ".jsonld", ".svg"]
    recipe = json.loads(files[1].read_text("utf-8"))
    assert recipe["image"] == [files[2].name]
    assert all(path.read_bytes() for path in files)


def test_a_page_alone_is_three_files(tmp_path: Path) -> None:
    demo, folder = tmp_path / "bars.yaml", tmp_path / "pages"
    demo.write_text(demo_texts()["raspberry-pistachio-bars"], encoding="utf-8")
    answer = entremetry("publish", demo, "--to", folder, "--form", "page", "--json")
    files = {Path(name) for name in json.loads(answer.out)["files"]}
    assert {path.suffix for path in files} == {".html", ".jsonld", ".svg"}
    assert files == set(folder.iterdir())


def test_desserts_can_be_published_into_one_folder(published: dict[str, Answer]) -> None:
    assert {answer.status for answer in published.values()} == {0}
    files = {Path(f) for answer in published.values() for f in json.loads(answer.out)["files"]}
    (folder,) = {path.parent for path in files}
    assert set(folder.iterdir()) == files
    assert len(files) == 12 * len(demo_texts())


def test_publish_takes_forms_paper_and_a_limit(demo: Path) -> None:
    folder = demo.parent / "some"
    options = ("--form", "paper", "--form", "text", "--paper", "letter", "--limit", "700")
    assert entremetry("publish", demo, "--to", folder, *options).status == 0
    text = next(folder.glob("*-description.txt")).read_text("utf-8")
    assert len(text) <= 700
    for sheet in folder.glob("*.pdf"):
        assert round(float(PdfReader(sheet).pages[0].mediabox.width)) == 612
    assert len(list(folder.iterdir())) == 4
    refused = entremetry("publish", demo, "--to", folder, "--limit", "20")
    assert refused.status == 2
    assert "a limit of 20 letters" in refused.err


def test_what_the_command_offers_is_what_there_is() -> None:
    assert [*FormName] == [*Form]
    assert [*PaperSize] == [*Paper]


def test_own_ingredients_show_in_the_text_and_in_the_object(demo: Path) -> None:
    kitchen = demo.parent / "kitchen.yaml"
    kitchen.write_text(
        "entremetry_kitchen: 1\nname: Mine\ningredients:\n"
        "  caster-sugar: {density: 0.9 g/ml, source: weighed}\n",
        encoding="utf-8",
    )
    answer = entremetry("batch", demo, "--kitchen", kitchen, "--json")
    own = json.loads(answer.out)["own_ingredients"]
    uses_it = "caster-sugar" in demo.read_text("utf-8")
    assert ("caster-sugar" in {each["id"] for each in own}) is uses_it
    text = entremetry("batch", demo, "--kitchen", kitchen).out
    assert ("Caster sugar: own density" in text) is uses_it


def test_what_there_is_decides_how_many(tmp_path: Path) -> None:
    path = tmp_path / "dome.yaml"
    path.write_text(demo_texts()["blackcurrant-vanilla-dome"], encoding="utf-8")
    six = json.loads(entremetry("batch", path, "--pieces", 6, "--json").out)
    puree = sum(
        line["mass_g"]
        for component in six["components"]
        for line in component["ingredients"]
        if line["id"] == "blackcurrant-puree"
    )
    have = f"blackcurrant-puree={puree * 2.02:.1f} g"
    assert json.loads(entremetry("batch", path, "--have", have, "--json").out)["pieces"] == 12


@pytest.mark.parametrize(
    ("words", "found"), [("cream-35", "cream-35"), ("Gold gelatine", "gelatine-sheet-gold")]
)
def test_larder_gives_one_ingredient_in_full(words: str, found: str) -> None:
    (ingredient,) = json.loads(entremetry("larder", *words.split(), "--json").out)["ingredients"]
    assert ingredient["id"] == found
    assert set(numbers(ingredient)) <= {
        key for key in numbers(ingredient) if key in COUNTS or key.endswith(UNITS)
    }
    text = entremetry("larder", words).out
    assert ingredient["name"] in text and "source: " in text


def test_larder_tells_what_a_label_needs_and_what_a_compound_is_made_of() -> None:
    words = ("larder", "couverture-dark-70")
    (found,) = json.loads(entremetry(*words, "--json").out)["ingredients"]
    assert found["nutrients_per_100g"]["cholesterol_mg"] == 0.0
    assert {part["id"] for part in found["parts"]} == {"caster-sugar", "cocoa-butter", "cocoa-mass"}
    text = entremetry(*words).out
    assert "made of: " in text and "cholesterol none" in text
    assert "saturates not reported" in entremetry("larder", "vanilla-bean").out


def test_a_schema_is_of_one_document() -> None:
    answer = entremetry("schema", "--kitchen", "--price")
    assert answer.status == 2 and "one of the two" in answer.err


def test_larder_lists_all_whose_names_hold_the_words() -> None:
    listed = entremetry("larder", "gelatine", "sheet").out.splitlines()
    assert {line.split()[0] for line in listed} >= {
        f"gelatine-sheet-{grade}" for grade in ("bronze", "silver", "gold", "platinum")
    }


def test_moulds_lists_the_shelf_and_those_of_a_kitchen(tmp_path: Path) -> None:
    kitchen = tmp_path / "kitchen.yaml"
    kitchen.write_text(
        "entremetry_kitchen: 1\nname: Mine\nmoulds:\n"
        "  - {id: pebble, name: Pebble, cavities: 8, shape: {kind: measured, holds: 75 ml,"
        " like: {kind: hemisphere, diameter: 70 mm}}}\n",
        encoding="utf-8",
    )
    moulds = json.loads(entremetry("moulds", "--kitchen", kitchen, "--json").out)["moulds"]
    by_id = {mould["id"]: mould for mould in moulds}
    assert by_id["pebble"]["cavity_volume_ml"] == pytest.approx(75.0, abs=0.01)
    assert "hemisphere-70" in by_id
    assert "pebble" in entremetry("moulds", "--kitchen", kitchen).out


@pytest.mark.parametrize("option", [(), ("--kitchen",), ("--price",)])
def test_schema_prints_one_object(option: tuple[str, ...]) -> None:
    answer = entremetry("schema", *option)
    assert json.loads(answer.out)["$schema"].endswith("2020-12/schema")


def test_version_and_help_answer_on_standard_output() -> None:
    assert entremetry("--version").out.startswith("entremetry ")
    for command in ("batch", "publish", "import", "schema", "larder", "moulds", "serve"):
        assert entremetry(command, "--help").out.startswith(f"Usage: entremetry {command}")
