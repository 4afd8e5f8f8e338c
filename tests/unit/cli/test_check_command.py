"""`check` and `diagnose` as scripts and cooks read them."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from bench_texts import DOME, changed, text_of
from command_line import entremetry
from entremetry.checks import SYMPTOMS

KEYS = ("id", "component", "verdict", "value", "unit", "limit", "because", "source", "advice")
FAILING = {"components/mousse/formula/gelatine-sheet-gold": "0.1 g"}
DOUBTFUL = {"assembly/3/within": "8 min"}


@pytest.fixture
def write(tmp_path: Path):  # type: ignore[no-untyped-def]
    """Write a dessert with changes into a file."""

    def written(changes: dict[str, object]) -> Path:
        path = tmp_path / "dome.yaml"
        path.write_text(text_of(changed(DOME, changes)), encoding="utf-8")
        return path

    return written


def test_the_keys_of_the_contract(write) -> None:  # type: ignore[no-untyped-def]
    answer = entremetry("check", write(DOUBTFUL), "--json", "--no-times")
    told = json.loads(answer.out)
    assert answer.status == 0 and answer.err == ""
    assert all(set(KEYS) <= set(each) for each in told["checks"])
    first = told["checks"][0]
    assert (first["id"], first["verdict"]) == ("glaze-at-once", "caution")
    assert (first["value"], first["unit"], first["limit"]) == (8.0, "min", 5.0)
    assert first["advice"] and first["source"] == "common_practice"
    assert told["fails"] + told["cautions"] + told["passes"] == len(told["checks"])


def test_an_open_end_is_null(write) -> None:  # type: ignore[no-untyped-def]
    told = json.loads(entremetry("check", write({}), "--json", "--no-times").out)
    (sets,) = [c for c in told["checks"] if c["id"] == "sets" and c["component"] == "mousse"]
    assert sets["good_from"] == 1.0 and sets["good_to"] is None and sets["fails_below"] == 0.6


def test_the_status_is_one_if_a_check_fails(write) -> None:  # type: ignore[no-untyped-def]
    answer = entremetry("check", write(FAILING), "--no-times")
    assert answer.status == 1
    assert "FAILS  Berry mousse: It sets" in answer.out and "Do: Take more gelatine" in answer.out


def test_what_is_fine_is_quiet_unless_asked_for(write) -> None:  # type: ignore[no-untyped-def]
    path = write(DOUBTFUL)
    quiet = entremetry("check", path, "--no-times").out
    loud = entremetry("check", path, "--no-times", "--all").out
    assert "checks are fine" in quiet and "fine   " not in quiet
    assert loud.count("fine   ") > 20
    assert "Not computed: the times of" in quiet


def test_no_promise_is_made(write) -> None:  # type: ignore[no-untyped-def]
    out = entremetry("check", write({}), "--no-times", "--all").out
    assert "No promise" in out and "safe" not in out.casefold()


def test_the_times_are_looked_at_as_well(write) -> None:  # type: ignore[no-untyped-def]
    short = write({"assembly/1/time": "20 min"})
    told = json.loads(entremetry("check", short, "--json").out)
    (late,) = [
        c for c in told["checks"] if c["id"] == "freezing-time" and c["component"] == "dessert"
    ]
    assert late["verdict"] == "fail" and late["interval_low"] < late["value"] < late["limit"]
    assert told["untimed_steps"] == []


def test_another_mould_can_be_checked(write) -> None:  # type: ignore[no-untyped-def]
    told = json.loads(
        entremetry("check", write({}), "--mould", "hemisphere-80", "--json", "--no-times").out
    )
    walls = [c["value"] for c in told["checks"] if c["id"] == "mousse-wall"]
    assert walls and walls[0] > 10.0


def test_a_bad_document_is_refused_in_one_message(tmp_path: Path) -> None:
    path = tmp_path / "bad.yaml"
    path.write_text("entremetry: 1\n", encoding="utf-8")
    answer = entremetry("check", path)
    assert answer.status == 2 and "bad.yaml" in answer.err and "Traceback" not in answer.err


def test_a_diagnosis_ranks_causes_for_this_dessert(write) -> None:  # type: ignore[no-untyped-def]
    answer = entremetry(
        "diagnose", write(FAILING), "--symptom", "collapsed", "--no-times", "--json"
    )
    told = json.loads(answer.out)
    assert answer.status == 0 and told["symptom"] == "collapsed"
    first = told["causes"][0]
    assert first["check"]["id"] == "sets" and first["check"]["verdict"] == "fail"
    assert first["margin"] < -1.0 and first["measure"]
    assert sum(c["likelihood_percent"] for c in told["causes"]) == pytest.approx(100.0, abs=0.1)


def test_a_diagnosis_in_words_says_what_to_measure(write) -> None:  # type: ignore[no-untyped-def]
    out = entremetry("diagnose", write({}), "--symptom", "soggy", "--no-times").out
    assert "the base is soggy" in out and "Measure:" in out and "common practice" in out


def test_without_a_symptom_they_are_listed(write) -> None:  # type: ignore[no-untyped-def]
    answer = entremetry("diagnose", write({}))
    assert answer.status == 2 and answer.out == ""
    assert all(symptom.id in answer.err for symptom in SYMPTOMS)


@pytest.mark.parametrize(
    ("option", "name", "nearest"),
    [("--symptom", "weepin", "weeping"), ("--component", "mouse", "mousse")],
)
def test_an_unknown_name_is_answered_with_the_nearest(  # type: ignore[no-untyped-def]
    write, option: str, name: str, nearest: str
) -> None:
    words = {"--symptom": "soggy", option: name}
    answer = entremetry("diagnose", write({}), "--no-times", *sum(words.items(), ()))
    assert answer.status == 2 and nearest in answer.err
