"""The command that publishes tells the language, and what of the author's it lacks."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from typer.testing import CliRunner

from entremetry.cli.app import app, main
from entremetry.store.demo import demo_texts

RUNNER = CliRunner()


@pytest.fixture
def glass(tmp_path: Path) -> Path:
    """A demo dessert in a file, with one French text taken out."""
    text = demo_texts()["mango-coconut-lime-glass"]
    path = tmp_path / "glass.yaml"
    path.write_text(text.replace('    "Mango dice": "Dés de mangue"\n', ""), encoding="utf-8")
    return path


def asked(glass: Path, *more: str) -> list[str]:
    return ["publish", str(glass), "--to", str(glass.parent), "--form", "text", *more]


def test_json_names_the_language_and_what_is_not_translated(glass: Path) -> None:
    result = RUNNER.invoke(app, asked(glass, "--language", "fr", "--json"))
    told = json.loads(result.stdout)
    assert result.exit_code == 0
    assert (told["language"], told["untranslated"]) == ("fr", ["Mango dice"])
    assert "1 text of yours is not under 'translations: fr'" in result.stderr
    assert "'Mango dice'" in result.stderr


def test_english_is_usual_and_lacks_nothing(glass: Path) -> None:
    result = RUNNER.invoke(app, asked(glass, "--json"))
    assert json.loads(result.stdout)["language"] == "en"
    assert result.stderr == ""


def test_a_language_there_is_none_of_ends_with_2_and_says_which_there_are(
    glass: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("sys.argv", ["entremetry", *asked(glass, "--language", "xx")])
    with pytest.raises(SystemExit) as ended:
        main()
    assert ended.value.code == 2
    assert "the language 'xx'; accepted: one of: en, fr" in capsys.readouterr().err
