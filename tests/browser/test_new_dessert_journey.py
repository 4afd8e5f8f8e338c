"""A formula from paper and a mould weighed with water end in a batch sheet."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect

Keep = Callable[[Page, str], Path]

LINES = """\
240 g blackcurrant purée
60 g caster sugar
2 leaves gelatine
200 g cream 35 %
1 1/2 tbsp corn starch
"""


def answer_all(page: Page) -> list[str]:
    """Answer each question on the page by its first choice or its example; give the questions."""
    asked: list[str] = []
    for group in page.locator("fieldset.question").all():
        asked.append(group.locator("legend").inner_text())
        if group.get_by_role("radio").count():
            group.get_by_role("radio").first.check()
        else:
            hint = group.locator(".hint").inner_text()
            group.get_by_role("textbox").fill(hint.removeprefix("such as "))
    page.get_by_role("button", name="Go on").click()
    return asked


def test_pasted_lines_are_asked_about_and_end_in_a_sheet(
    page: Page, workbench: str, keep_screen: Keep
) -> None:
    page.get_by_role("link", name="Write a new dessert").click()
    page.get_by_label("Name").fill("Grandmother's dark cream")
    page.get_by_label("Pieces").fill("8")
    page.get_by_role("radio", name=re.compile("One of mine, weighed with water")).check()
    page.get_by_label("It holds (ml)").fill("75")
    page.get_by_label(re.compile("One ingredient a line")).fill(LINES)
    keep_screen(page, "new-dessert")
    page.get_by_role("button", name="Work it out").click()

    questions = "\n".join(answer_first(page, keep_screen))
    assert "2 leaves gelatine" in questions
    assert "Whose cups and spoons" in questions

    for _ in range(8):
        if not page.get_by_role("button", name="Go on").count():
            break
        answer_all(page)
    expect(page.get_by_role("heading", level=1)).to_have_text("Grandmother's dark cream")
    expect(page.get_by_role("status")).to_contain_text("8\u00a0pieces")
    expect(page.get_by_text("A cavity holds")).to_be_visible()
    expect(page.locator("#sheet")).to_contain_text("75\u00a0ml")
    page.goto(workbench)
    expect(page.get_by_role("link", name="Grandmother's dark cream")).to_be_visible()


def answer_first(page: Page, keep_screen: Keep) -> list[str]:
    """Look at the first questions: none is answered beforehand; then answer them."""
    heading = page.get_by_role("heading", name=re.compile("before it can be computed"))
    expect(heading).to_be_visible()
    assert page.locator("fieldset.question input:checked").count() == 0
    expect(page.get_by_label(re.compile("One ingredient a line"))).to_have_value(LINES)
    keep_screen(page, "new-dessert-questions")
    return answer_all(page)


def test_a_saved_page_fills_the_form_that_is_then_asked_about(
    page: Page, workbench: str, keep_screen: Keep
) -> None:
    saved = """<html><script type="application/ld+json">{"@type": "Recipe", "name": "Night pear",
    "recipeYield": "6 pieces", "recipeIngredient": ["240 g blackcurrant purée"],
    "recipeInstructions": "Heat the purée to 60 °C. Freeze overnight."}</script></html>"""
    page.get_by_role("link", name="Write a new dessert").click()
    page.get_by_text("From a page you saved").click()
    page.get_by_label("The saved page").set_input_files(
        {"name": "pear.html", "mimeType": "text/html", "buffer": saved.encode()}
    )
    page.get_by_role("button", name="Read the page").click()
    expect(page.get_by_label("Name", exact=True)).to_have_value("Night pear")
    expect(page.get_by_label("Pieces", exact=True)).to_have_value("6")
    keep_screen(page, "new-from-page")
    page.get_by_role("radio", name=re.compile("Half-sphere 70")).check()
    page.get_by_role("button", name="Work it out").click()
    expect(page.get_by_text("How long is 'overnight'?").first).to_be_visible()
