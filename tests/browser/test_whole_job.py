"""The whole job as one person does it: by keyboard in English, by touch in French."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from entremetry.words import say, speaking

Keep = Callable[[Page, str], Path]

PATIENCE = 240_000.0  # ms, for a first computation on a busy machine
NAME = "Pear and tonka dome"
LINES = """\
Pear mousse:
240 g pear purée
4 g gelatine-powder-200
20 g water
60 g caster sugar
200 g cream 35 %
Method:
Heat the purée to 60 °C.
Freeze overnight.
"""


@dataclass(frozen=True)
class Person:
    """Somebody before a page: what they read by, and whether they type or touch."""

    page: Page
    workbench: str
    code: str
    touches: bool

    def says(self, message: str, /, **fields: object) -> str:
        """What the page says in this person's language, with plain blanks."""
        with speaking(self.code):
            return say(message, **fields)

    def words(self, message: str, /, **fields: object) -> re.Pattern[str]:
        """The same as a pattern for what is shown: any kind of blank where there is one."""
        return re.compile(r"\s?".join(map(re.escape, self.says(message, **fields).split())))

    def use(self, what: Locator) -> None:
        """Press something: with a finger, or with the Enter key."""
        if self.touches:
            what.tap()
            return
        what.focus()
        self.page.keyboard.press("Enter")

    def pick(self, what: Locator) -> None:
        """Choose a box or a circle: with a finger, or with the space bar."""
        if self.touches:
            what.locator("xpath=ancestor::label").tap()
            return
        what.focus()
        self.page.keyboard.press("Space")

    def follow(self, message: str) -> None:
        """Follow a link by what it says."""
        self.use(self.page.get_by_role("link", name=self.words(message)).first)

    def press(self, message: str, **fields: object) -> None:
        """Press a button by what it says."""
        self.use(self.page.get_by_role("button", name=self.words(message, **fields)).first)

    def press_and_wait(self, message: str) -> None:
        """The same for a button that leads to another page."""
        with self.page.expect_navigation(timeout=PATIENCE):
            self.press(message)

    def sees(self, message: str, **fields: object) -> None:
        """Wait until the page says something."""
        expect(self.page.get_by_text(self.words(message, **fields)).first).to_be_visible(
            timeout=PATIENCE
        )

    def open(self, path: str) -> None:
        """Go to an address of the workbench."""
        self.page.goto(self.workbench + path)


PEOPLE = {
    "keyboard, English": {"locale": "en-GB", "viewport": {"width": 1280, "height": 900}},
    "touch, French": {
        "locale": "fr-FR",
        "viewport": {"width": 820, "height": 1180},
        "has_touch": True,
        "is_mobile": True,
    },
}


@pytest.fixture(params=PEOPLE)
def person(request: pytest.FixtureRequest, browser: Browser, workbench: str) -> Iterator[Person]:
    """One who does the whole job in one window."""
    visitor = browser.new_context(**PEOPLE[request.param])
    yield Person(
        page=visitor.new_page(),
        workbench=workbench,
        code=PEOPLE[request.param]["locale"][:2],
        touches="has_touch" in PEOPLE[request.param],
    )
    visitor.close()


def from_pasted_lines_to_a_batch_sheet(person: Person, keep_screen: Keep) -> None:
    """Lines from paper, what they leave open, and how much of everything."""
    page = person.page
    person.open("")
    expect(page.locator("html")).to_have_attribute("lang", re.compile(f"^{person.code}"))
    person.follow("Write a new dessert")
    page.get_by_label(person.words("Name"), exact=False).first.fill(f"{NAME} {person.code}")
    page.locator("#text").fill(LINES)
    person.pick(page.locator('input[name="mould"][value="hemisphere-70"]'))
    person.press_and_wait("Work it out")
    for _ in range(6):
        if not page.locator("fieldset.question").count():
            break
        for question in page.locator("fieldset.question").all():
            if question.get_by_role("radio").count():
                person.pick(question.get_by_role("radio").first)
            else:
                question.get_by_role("textbox").fill("6 h")
        keep_screen(page, f"whole-job-questions-{person.code}")
        person.press_and_wait("Go on")
    expect(page.get_by_role("heading", level=1)).to_have_text(f"{NAME} {person.code}")
    expect(page.locator("#sheet")).to_contain_text(re.compile(r"\d+\sg"))
    keep_screen(page, f"whole-job-sheet-{person.code}")


def it_is_built_upon_and_nothing_is_lost(person: Person, keep_screen: Keep) -> None:
    """A number changed, reloaded, undone, redone; a step more."""
    page = person.page
    person.follow("Build")
    amount = page.locator('input[name$="/formula/caster-sugar/amount"]')
    expect(amount).to_have_value("60 g")
    amount.fill("75 g")
    amount.press("Tab")
    expect(page.locator("#status")).to_have_text(person.words("Kept."))
    page.reload()
    expect(amount).to_have_value("75 g")
    person.press("Undo")
    expect(amount).to_have_value("60 g")
    person.press("Redo")
    expect(amount).to_have_value("75 g")
    page.locator("#add-assembly").select_option("unmould")
    person.use(page.locator("form:has(#add-assembly) button"))
    person.press("Add the step")
    expect(page.locator('[id^="step-assembly-"]')).to_have_count(1)
    keep_screen(page, f"whole-job-build-{person.code}")
    person.follow("To the sheet")
    expect(page.locator("#sheet")).to_contain_text(re.compile(r"\d+\sg"))


def it_is_looked_at_whether_and_how_long(person: Person, keep_screen: Keep) -> None:
    """The checks with where a number comes from, and the cold over time."""
    page = person.page
    person.open("desserts/blackcurrant-vanilla-dome")
    person.sees("Bench checks")
    fine = page.locator("#checks-fine")
    expect(page.locator(".checks-tally")).to_be_visible(timeout=PATIENCE)
    expect(page.locator(".checks-waiting")).to_have_count(0, timeout=PATIENCE)
    person.use(fine)
    first = page.locator(".checks-groups details.fine summary").first
    expect(first).to_be_visible(timeout=PATIENCE)
    person.use(first)
    person.sees("Who sets the limit:")
    person.follow("Temperatures")
    expect(page.locator("#verdict-title")).to_be_visible(timeout=PATIENCE)
    slider = page.get_by_role("slider")
    slider.focus()
    page.keyboard.press("ArrowRight")
    keep_screen(page, f"whole-job-temperatures-{person.code}")


def it_is_adapted_and_shown_before_it_is_published(person: Person, keep_screen: Keep) -> None:
    """Another mould kept as a new dessert, and the page in its frame."""
    page = person.page
    person.open("desserts/mango-coconut-lime-glass")
    person.follow("Adapt")
    page.locator('select[name="own"]').select_option("glass")
    page.locator('input[name="diameter"]').fill("80")
    page.locator('input[name="height"]').fill("60")
    person.press_and_wait("Show what changes")
    keep_screen(page, f"whole-job-adapt-{person.code}")
    page.locator("#new_name").fill(f"Mango in a wide glass {person.code}")
    person.press_and_wait("Keep it as a new dessert")
    expect(page.get_by_role("heading", level=1)).to_have_text(
        f"Mango in a wide glass {person.code}"
    )
    person.open("desserts/mango-coconut-lime-glass/publish")
    frame = page.frame_locator("iframe.preview")
    expect(frame.get_by_role("heading", level=1)).to_be_visible(timeout=PATIENCE)
    keep_screen(page, f"whole-job-publish-{person.code}")


def it_is_planned_and_made_at_the_bench(person: Person, keep_screen: Keep) -> None:
    """From an hour of service to the first step begun."""
    page = person.page
    person.follow("Plans")
    person.use(page.locator('a[href="/plans/new"]').first)
    expect(page.locator("#menu")).to_be_visible()
    if page.locator("#find").count():  # a library of more than fits at once is looked through
        page.locator("#find").press_sequentially(f"tonka {person.code}")
    person.pick(page.get_by_role("checkbox", name=f"{NAME} {person.code}"))
    page.locator("#serve").fill("2031-11-29T19:00")
    person.press("Make the plan")
    expect(page).to_have_url(re.compile(r"/plans/\d+$"), timeout=PATIENCE)
    keep_screen(page, f"whole-job-plan-{person.code}")
    person.use(page.locator('a[href$="/bench"]').first)
    expect(page.locator("#main-knob")).to_be_enabled()
    person.use(page.locator("#main-knob"))
    keep_screen(page, f"whole-job-bench-{person.code}")


def its_history_brings_it_back(person: Person, keep_screen: Keep) -> None:
    """What was changed is undone another day."""
    page = person.page
    person.open("")
    person.use(page.get_by_role("link", name=f"{NAME} {person.code}"))
    person.follow("Edit")
    expect(page.locator("textarea.document")).to_have_value(re.compile("75 g"))
    person.press("Undo")
    expect(page.locator("textarea.document")).to_have_value(re.compile("60 g"))
    keep_screen(page, f"whole-job-history-{person.code}")


def test_the_whole_job(person: Person, keep_screen: Keep) -> None:
    from_pasted_lines_to_a_batch_sheet(person, keep_screen)
    it_is_built_upon_and_nothing_is_lost(person, keep_screen)
    it_is_looked_at_whether_and_how_long(person, keep_screen)
    it_is_adapted_and_shown_before_it_is_published(person, keep_screen)
    it_is_planned_and_made_at_the_bench(person, keep_screen)
    its_history_brings_it_back(person, keep_screen)
