"""From the library to a dessert; another mould, another number, and the numbers follow."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

Keep = Callable[[Page, str], Path]

DOME = "desserts/blackcurrant-vanilla-dome"


def mass_to_make(page: Page) -> int:
    """Grams to make in all, as the page says."""
    words = page.get_by_role("status").inner_text()
    found = re.search(r"([\d\u202f]+)\u00a0g to make", words)
    assert found, words
    return int(found[1].replace("\u202f", ""))


def weighed(page: Page, component: str, ingredient: str) -> float:
    """Grams of an ingredient in a component's table."""
    article = page.get_by_role("article", name=component)
    row = article.get_by_role("row", name=re.compile(rf"^{re.escape(ingredient)}"))
    words = row.get_by_role("cell").first.inner_text()
    return float(words.replace("\u202f", "").removesuffix("\u00a0g"))


@pytest.fixture
def tablet_page(browser: Browser, workbench: str) -> Iterator[Page]:
    """A tablet on its stand at the bench, touched with a wet finger."""
    visitor = browser.new_context(
        viewport={"width": 820, "height": 1180}, has_touch=True, locale="en-GB"
    )
    page = visitor.new_page()
    page.goto(workbench)
    yield page
    visitor.close()


def test_the_library_leads_to_a_dessert(page: Page, keep_screen: Keep) -> None:
    expect(page.get_by_role("heading", level=1)).to_have_text("Your desserts")
    keep_screen(page, "library")
    page.get_by_role("link", name="Blackcurrant and vanilla dome").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Blackcurrant and vanilla dome")
    expect(page.get_by_role("status")).to_contain_text("6\u00a0pieces in Half-sphere 70\u00a0mm")
    expect(page.get_by_role("img", name=re.compile("cut through the middle"))).to_be_visible()
    keep_screen(page, "dessert-wide")


def test_more_pieces_take_more_of_everything(page: Page, workbench: str) -> None:
    page.goto(workbench + DOME)
    before = mass_to_make(page), weighed(page, "Blackcurrant mousse", "Blackcurrant purée")
    page.get_by_label("Pieces").fill("12")
    expect(page.get_by_role("status")).to_contain_text("12\u00a0pieces")
    after = mass_to_make(page), weighed(page, "Blackcurrant mousse", "Blackcurrant purée")
    assert after[0] == pytest.approx(2 * before[0], rel=0.05)
    assert after[1] == pytest.approx(2 * before[1], rel=0.02)


def test_another_mould_scales_each_part_by_its_own_factor(page: Page, workbench: str) -> None:
    page.goto(workbench + DOME)
    drawing = page.locator("#drawing").inner_html()
    mousse = weighed(page, "Blackcurrant mousse", "Blackcurrant purée")
    page.get_by_text("Choose another").click()
    page.get_by_role("radio", name=re.compile("Half-sphere 80")).check()
    expect(page.get_by_role("status")).to_contain_text("in Half-sphere 80\u00a0mm")
    more = weighed(page, "Blackcurrant mousse", "Blackcurrant purée") / mousse
    # (80/70)**3 = 1.49 for the whole cavity; the insert stays as it is, so the mousse takes more.
    assert 1.5 < more < 2.2
    assert page.locator("#drawing").inner_html() != drawing
    assert "mould=hemisphere-80" in page.url


def test_the_address_keeps_the_choice(page: Page, workbench: str) -> None:
    page.goto(workbench + DOME)
    page.get_by_role("button", name="One piece more").click()
    expect(page.get_by_role("status")).to_contain_text("7\u00a0pieces")
    page.reload()
    expect(page.get_by_label("Pieces")).to_have_value("7")
    expect(page.get_by_role("status")).to_contain_text("7\u00a0pieces")


def test_what_does_not_fit_is_told_with_what_is_missing(page: Page, workbench: str) -> None:
    page.goto(workbench + DOME)
    page.get_by_text("Choose another").click()
    page.get_by_role("radio", name=re.compile("Half-sphere 30")).check()
    trouble = page.get_by_role("region", name="This does not work yet")
    expect(trouble).to_contain_text("Vanilla cream insert")
    expect(trouble).to_contain_text("mm")
    page.get_by_role("radio", name=re.compile("As the document says")).check()
    expect(page.get_by_role("status")).to_contain_text("6\u00a0pieces in Half-sphere 70")


def test_what_i_have_decides_the_pieces(page: Page, workbench: str) -> None:
    page.goto(workbench + DOME)
    one = weighed(page, "Blackcurrant mousse", "Blackcurrant purée") / 6
    page.get_by_label("I have (g)").fill("410")
    page.get_by_label("of", exact=True).select_option(label="Blackcurrant purée 10 % sugar")
    page.get_by_role("button", name="Scale to that").click()
    pieces = int(page.get_by_label("Pieces").input_value())
    assert pieces == pytest.approx(410 / one, abs=1.5)
    assert weighed(page, "Blackcurrant mousse", "Blackcurrant purée") <= 410.5


def test_a_number_opens_to_where_it_comes_from(page: Page, workbench: str) -> None:
    page.goto(workbench + DOME)
    mousse = page.get_by_role("article", name="Blackcurrant mousse")
    mousse.get_by_text("In each piece").click()
    reason = mousse.locator("details[open].figure .reason")
    expect(reason).to_be_visible()
    assert len(reason.inner_text()) > 30


def test_the_recipe_page_opens(page: Page, workbench: str) -> None:
    page.goto(workbench + DOME)
    page.get_by_role("link", name="Recipe page").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Blackcurrant and vanilla dome")


def test_the_keyboard_alone_is_enough(page: Page, workbench: str) -> None:
    page.goto(workbench + DOME)
    press_until(page, "pieces")
    page.keyboard.press("Control+a")
    page.keyboard.type("9")
    expect(page.get_by_role("status")).to_contain_text("9\u00a0pieces")
    for _ in range(2):
        page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    for _ in range(5):
        page.keyboard.press("ArrowDown")
    expect(page.get_by_role("status")).to_contain_text("9\u00a0pieces in Half-sphere 70")
    page.keyboard.press("ArrowDown")
    expect(page.get_by_role("status")).to_contain_text("9\u00a0pieces in Half-sphere 80")


def press_until(page: Page, wanted: str) -> None:
    """Go on with the tabulator until the element of this id is reached."""
    for _ in range(40):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.id") == wanted:
            return
    pytest.fail(f"the keyboard never reached {wanted}")


def test_touch_on_a_tablet_is_enough(tablet_page: Page, keep_screen: Keep) -> None:
    tablet_page.get_by_role("link", name="Blackcurrant and vanilla dome").tap()
    tablet_page.get_by_role("button", name="One piece more").tap()
    tablet_page.get_by_role("button", name="One piece more").tap()
    expect(tablet_page.get_by_role("status")).to_contain_text("8\u00a0pieces")
    tablet_page.get_by_text("Choose another").tap()
    tablet_page.get_by_text("Half-sphere 80\u00a0mm").first.tap()
    expect(tablet_page.get_by_role("status")).to_contain_text("in Half-sphere 80")
    tablet_page.get_by_text("Choose another").tap()
    keep_screen(tablet_page, "dessert-tablet")


def test_a_narrow_screen_and_a_dark_scheme_are_kept_as_pictures(
    browser: Browser, workbench: str, keep_screen: Keep
) -> None:
    for name, width, scheme in (("narrow", 320, "light"), ("dark", 1280, "dark")):
        visitor = browser.new_context(
            viewport={"width": width, "height": 900}, color_scheme=scheme, locale="en-GB"
        )
        page = visitor.new_page()
        page.goto(workbench + DOME)
        expect(page.get_by_role("heading", name="Filling one cavity")).to_be_visible()
        assert keep_screen(page, f"dessert-{name}").stat().st_size > 10_000
        visitor.close()


def test_print_leaves_out_the_controls(page: Page, workbench: str) -> None:
    page.goto(workbench + DOME)
    page.emulate_media(media="print")
    expect(page.get_by_label("Pieces")).to_be_hidden()
    expect(page.get_by_role("navigation", name="Main")).to_be_hidden()
    expect(page.get_by_role("heading", name="Filling one cavity")).to_be_visible()


def test_without_scripts_the_page_still_answers(browser: Browser, workbench: str) -> None:
    visitor = browser.new_context(java_script_enabled=False, locale="en-GB")
    page = visitor.new_page()
    page.goto(workbench + DOME)
    page.get_by_label("Pieces").fill("10")
    page.get_by_role("button", name="Work it out").click()
    expect(page.get_by_role("status")).to_contain_text("10\u00a0pieces")
    visitor.close()
