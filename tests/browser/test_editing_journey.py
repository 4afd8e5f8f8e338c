"""A fault is told at its line and mended; two tabs cannot overwrite each other unawares."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

Keep = Callable[[Page, str], Path]

RING = "desserts/coffee-praline-ring"
BARS = "desserts/raspberry-pistachio-bars"


@pytest.fixture
def editor(context: BrowserContext, workbench: str) -> Iterator[Page]:
    """A page that may be refused; a browser notes each refusal in its console."""
    page = context.new_page()
    page.goto(workbench)
    yield page


def text_of(page: Page) -> str:
    """Text in the editor."""
    return page.get_by_label("Document").input_value()


def test_a_fault_is_found_at_its_line_and_mended(
    editor: Page, workbench: str, keep_screen: Keep
) -> None:
    editor.goto(f"{workbench}{RING}/edit")
    good = text_of(editor)
    line = next(n for n, text in enumerate(good.split("\n"), 1) if text.startswith("pieces:"))
    bad = good.replace("\npieces: ", "\npieces: some ", 1)
    editor.get_by_label("Document").fill(bad)
    editor.get_by_role("button", name="Save").click()

    expect(editor.get_by_role("heading", name="Not saved yet")).to_be_visible()
    faults = editor.get_by_role("region", name="Faults")
    expect(faults).to_contain_text("pieces")
    keep_screen(editor, "editing-a-fault")
    faults.get_by_role("button", name=f"Line {line}").click()
    chosen = editor.evaluate(
        "(() => { const a = document.getElementById('text');"
        " return a.value.slice(a.selectionStart, a.selectionEnd); })()"
    )
    assert chosen.startswith("pieces: some")
    assert text_of(editor) == bad

    editor.get_by_label("Document").fill(good + "# looked through\n")
    editor.get_by_role("button", name="Save").click()
    expect(editor.get_by_role("heading", level=1)).to_have_text("Coffee and praline ring")

    editor.goto(f"{workbench}{RING}/edit")
    editor.get_by_role("button", name="Undo the last change").click()
    assert text_of(editor) == good


def test_a_faulty_text_waits_as_a_draft(editor: Page, workbench: str) -> None:
    editor.goto(f"{workbench}{RING}/edit")
    good = text_of(editor)
    editor.get_by_label("Document").fill(good + "colour: brown\n")
    editor.get_by_role("button", name="Save").click()
    expect(editor.get_by_role("heading", name="Not saved yet")).to_be_visible()
    editor.once("dialog", lambda dialog: dialog.accept())
    editor.goto(f"{workbench}{RING}")
    expect(editor.get_by_role("status")).to_contain_text("to make")
    editor.goto(f"{workbench}{RING}/edit")
    expect(editor.get_by_role("region", name="Draft")).to_contain_text("This is your draft")
    assert text_of(editor).endswith("colour: brown\n")
    editor.get_by_role("button", name="Throw the draft away").click()
    assert text_of(editor) == good


def test_two_tabs_cannot_overwrite_each_other(
    editor: Page, context: BrowserContext, workbench: str, keep_screen: Keep
) -> None:
    other = context.new_page()
    for tab in (editor, other):
        tab.goto(f"{workbench}{BARS}/edit")
    good = text_of(editor)
    editor.get_by_label("Document").fill(good + "# from the first tab\n")
    editor.get_by_role("button", name="Save").click()
    expect(editor.get_by_role("status")).to_contain_text("to make")

    other.get_by_label("Document").fill(good + "# from the second tab\n")
    other.get_by_role("button", name="Save").click()
    expect(other.get_by_role("heading", name="It was changed meanwhile")).to_be_visible()
    assert text_of(other) == good + "# from the second tab\n"
    expect(other.get_by_text("# from the first tab")).to_be_visible()
    keep_screen(other, "editing-a-conflict")

    other.get_by_role("button", name="Save").click()
    expect(other.get_by_role("status")).to_contain_text("to make")
    other.goto(f"{workbench}{BARS}/edit")
    for expected in ("# from the first tab\n", ""):
        other.get_by_role("button", name="Undo the last change").click()
        assert text_of(other) == good + expected


def test_leaving_with_unsaved_changes_asks_first(editor: Page, workbench: str) -> None:
    editor.goto(f"{workbench}{RING}/edit")
    editor.get_by_label("Document").press_sequentially("# a thought")
    asked: list[str] = []
    editor.once("dialog", lambda dialog: (asked.append(dialog.type), dialog.accept()))
    editor.get_by_role("link", name="Back to the dessert").click()
    expect(editor.get_by_role("status")).to_contain_text("to make")
    assert asked == ["beforeunload"]
