"""Rebalancing and swapping from the command line."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from command_line import entremetry
from unit.adapt.mousse_texts import COMPONENT, MOUSSE, formula_of


@pytest.fixture
def document(tmp_path: Path) -> Path:
    path = tmp_path / "glass.yaml"
    path.write_text(MOUSSE, encoding="utf-8")
    return path


def test_the_keys_of_the_contract(document: Path) -> None:
    answer = entremetry(
        "rebalance", document, "--component", COMPONENT, "--target", "sugars=-20%", "--json"
    )
    assert (answer.status, answer.err) == (0, "")
    told = json.loads(answer.out)
    assert told["feasible"] is True and told["conflicts"] == []
    assert {line["line"]: line["mass_g"] for line in told["formula"]} == pytest.approx(
        formula_of(told["document"])
    )
    before, after = told["metrics_before"], told["metrics_after"]
    assert after["sugars_percent"] == pytest.approx(0.8 * before["sugars_percent"], rel=0.031)
    assert set(before) == set(after)
    assert {"freezing_point_c", "gelatine_percent", "yield_g", "brix_percent"} <= set(before)
    assert before["sweetness_low_percent"] < before["sweetness_percent"]
    assert told["gave_way"] and all(change["text"] for change in told["changes"])
    metric = next(each for each in told["metrics"] if each["name"] == "sugars")
    assert metric["wish"] == "asked" and metric["low"] <= metric["after"] <= metric["high"]


def test_the_text_shows_lines_and_measures_before_and_after(document: Path) -> None:
    answer = entremetry("rebalance", document, "--component", COMPONENT, "--target", "sugars=-20%")
    assert answer.status == 0
    assert "before" in answer.out and "gave way" in answer.out
    assert any(line.split()[:1] == ["caster-sugar"] for line in answer.out.splitlines())


def test_pins_bounds_keeps_and_the_rule_are_heard(document: Path) -> None:
    answer = entremetry(
        *("rebalance", document, "--component", COMPONENT, "--json"),
        *("--swap", "gelatine-sheet-gold=gelatine-sheet-silver", "--bloom-rule", "square-root"),
        *("--pin", "cream-35", "--bound", "caster-sugar=45..60 g", "--keep", "sweetness"),
    )
    assert answer.status == 0, answer.err
    made = formula_of(json.loads(answer.out)["document"])
    assert made["cream-35"] == 300.0 and 45.0 <= made["caster-sugar"] <= 60.0
    assert made["gelatine-sheet-silver"] == pytest.approx(8.94, rel=0.02)


def test_what_cannot_be_is_said_with_status_two(document: Path) -> None:
    wanted = ("rebalance", document, "--component", COMPONENT, "--target", "fat=50 %")
    answer = entremetry(*wanted)
    assert (answer.status, answer.out) == (2, "")
    assert "No formula of these ingredients can do this" in answer.err
    assert "fat between 49 and 51 %" in answer.err
    told = json.loads(entremetry(*wanted, "--json").out)
    assert told["feasible"] is False and told["proved_infeasible"] is True
    assert told["conflicts"] == ["fat between 49 and 51 %"]
    assert told["document"] == MOUSSE


def test_a_conflict_of_several_is_listed(document: Path) -> None:
    answer = entremetry(
        *("rebalance", document, "--component", COMPONENT, "--target", "fat=25 %"),
        *("--pin", "raspberry-puree", "--target", "yield=500 g"),
    )
    assert answer.status == 2
    assert "these exclude each other; loosen one of them:\n  - " in answer.err
    assert "raspberry-puree pinned at 350 g" in answer.err


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (("--target", "fatt=3"), "did you mean fat"),
        (("--component", "mousse"), "raspberry-mousse"),
        (("--swap", "cream-35"), "OLD=NEW"),
        (("--bloom-rule", "cubic"), "linear or square-root"),
    ],
)
def test_what_is_not_understood_is_one_message(
    document: Path, options: tuple[str, str], said: str
) -> None:
    answer = entremetry("rebalance", document, "--component", COMPONENT, *options)
    assert (answer.status, answer.out) == (2, "")
    assert said in answer.err and "Traceback" not in answer.err


def test_adapt_prints_the_new_document_and_tells_what_changed(document: Path) -> None:
    answer = entremetry("adapt", document, "--swap", "cream-35=cream-48+whole-milk")
    assert answer.status == 0
    assert {"cream-48", "whole-milk"} <= set(formula_of(answer.out))
    assert "for 300 g of Cream 35 %" in answer.err


def test_adapt_as_json(document: Path) -> None:
    answer = entremetry("adapt", document, "--swap", "gelatine-sheet-gold=agar-powder", "--json")
    told = json.loads(answer.out)
    assert "agar-powder" in formula_of(told["document"])
    kinds = {change["kind"] for change in told["changes"]}
    assert {"swap", "caution", "mass"} <= kinds
    assert told["components"][0]["component"] == COMPONENT


def test_adapt_names_what_gave_way(document: Path) -> None:
    assert "gave way" in entremetry("adapt", document, "--swap", "cream-35=whole-milk").err


def test_adapt_wants_something_to_adapt_to(document: Path) -> None:
    answer = entremetry("adapt", document)
    assert answer.status == 2 and "--swap A=B" in answer.err


def test_a_swap_of_nothing_that_is_there_is_refused(document: Path) -> None:
    answer = entremetry("adapt", document, "--swap", "cream-36=cream-30")
    assert answer.status == 2 and "cream-35" in answer.err


def test_a_new_document_makes_a_batch(document: Path, tmp_path: Path) -> None:
    new = tmp_path / "new.yaml"
    new.write_text(entremetry("adapt", document, "--swap", "cream-35=cream-30").out, "utf-8")
    assert entremetry("batch", new).status == 0


def test_adapt_to_a_mould_as_json(document: Path) -> None:
    answer = entremetry("adapt", document, "--mould", "ring-140", "--json")
    found = json.loads(answer.out)
    assert "mould: ring-140" in found["document"]
    assert {"mould", "placement"} <= {change["kind"] for change in found["changes"]}
    assert any(change["because"] for change in found["changes"])


def test_adapt_refuses_a_mould_that_is_none_in_one_message(document: Path) -> None:
    answer = entremetry("adapt", document, "--mould", "ring-141")
    assert answer.status == 2 and "ring-140" in answer.err and "Traceback" not in answer.err
