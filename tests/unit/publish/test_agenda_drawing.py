"""The drawing of a plan is well formed, true to its hours, and readable at every width."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import combinations, pairwise
from xml.etree import ElementTree

import pytest

from agendas import AGENDA, IMPOSSIBLE, SESSIONS, TASKS, at, begun, with_a_moment_outside
from entremetry.agenda.agenda import Agenda, State
from entremetry.publish.agenda_axis import PER_MINUTE, axis
from entremetry.publish.agenda_days import waits, works
from entremetry.publish.agenda_drawing import agenda_svg, placed
from entremetry.publish.agenda_panel import Panel, days, panel
from unit.publish.sheets import HOSTILE

SVG = "{http://www.w3.org/2000/svg}"
WIDTHS = (280, 320, 680, 900, 1280)
AGENDAS = {
    "plain": AGENDA,
    "moment": with_a_moment_outside(),
    "begun": begun(),
    "impossible": IMPOSSIBLE,
}
Box = tuple[float, float, float, float]


def tree(agenda: Agenda, width: int | None = None) -> ElementTree.Element:
    return ElementTree.fromstring(agenda_svg(agenda, title="Plan", width_px=width, standalone=True))


def said(element: ElementTree.Element) -> str:
    return "".join(element.itertext()).replace("\u00a0", " ")


def words(root: ElementTree.Element) -> list[str]:
    return [said(text) for text in root.iter(f"{SVG}text")]


def panels(agenda: Agenda, width: float) -> list[Panel]:
    return placed(agenda, width, 2.0)


def lines(root: ElementTree.Element) -> list[Box]:
    """Left, top, right, bottom of each line of words but the key's; letters are 5.4 units wide."""
    found = []
    for text in root.findall(f"{SVG}text"):
        x, y = float(text.attrib["x"]), float(text.attrib["y"])
        rows = [text.text or ""]
        for span in text.iter(f"{SVG}tspan"):
            if "dy" in span.attrib:
                rows.append("")
            rows[-1] += span.text or ""
        found += [
            (x, y + 14.0 * k - 9.0, x + 5.4 * len(row), y + 14.0 * k + 2.0)
            for k, row in enumerate(rows)
        ]
    return found


@pytest.mark.parametrize("name", AGENDAS)
@pytest.mark.parametrize("width", WIDTHS)
def test_a_drawing_is_well_formed_and_refers_only_to_itself(name: str, width: int) -> None:
    text = agenda_svg(AGENDAS[name], title=name, width_px=width, standalone=True)
    ids = re.findall(r'\bid="([^"]+)"', text)
    assert len(ids) == len(set(ids))
    assert set(re.findall(r"url\(#([^)]+)\)", text)) <= set(ids)
    assert not re.search(r"<script|<style|\sstyle=|\son\w+=|href|nan", text)
    assert not re.search(r"(?<!xmlns=\")https?:", text)
    assert ElementTree.fromstring(text).tag == f"{SVG}svg"


@pytest.mark.parametrize("width", WIDTHS)
def test_no_words_cover_others_or_leave_the_drawing(width: int) -> None:
    root = tree(AGENDAS["moment"], width)
    _, _, wide, high = map(float, root.attrib["viewBox"].split())
    boxes = [box for box in lines(root) if box[2] > box[0]]
    assert all(x >= 0 and y >= 0 and a <= wide and b <= high for x, y, a, b in boxes)
    for (x, y, a, b), (u, v, c, d) in combinations(boxes, 2):
        assert not (x < c and u < a and y < d and v < b), (x, y, u, v)


def test_it_has_a_name_and_says_in_words_what_is_drawn() -> None:
    root = tree(AGENDA)
    named = {element.attrib["id"]: element for element in root if "id" in element.attrib}
    title, desc = (named[id_] for id_ in root.attrib["aria-labelledby"].split())
    assert root.attrib["role"] == "img" and title.text == "Plan"
    assert "Session on Friday 27 November" in said(desc) and "Served: Pear dome" in said(desc)


def test_every_go_has_a_solid_block_and_every_wait_a_striped_band() -> None:
    root = tree(AGENDA, 1280)
    rects = [each.attrib for each in root.findall(f"{SVG}rect")]
    solid = [r for r in rects if r.get("rx") == "2" and "fill-opacity" not in r]
    striped = [r for r in rects if "stripes" in r.get("fill", "")]
    lanes = sum(len({(t.dessert, t.component) for t in work.tasks}) for work in works(AGENDA))
    nights = 2  # waits that go on past midnight are drawn on both days
    assert len(solid) == lanes
    assert len(striped) == len(waits(AGENDA)) + nights
    assert max(float(r["width"]) for r in striped) < min(float(r["width"]) for r in solid)


@pytest.mark.parametrize("until", ["28 14:00", "28 15:00"])
@pytest.mark.parametrize("width", WIDTHS)
def test_a_wait_to_or_through_a_later_session_leaves_its_head_free(width: int, until: str) -> None:
    late = replace(TASKS[8], end=at(until))
    root = tree(replace(AGENDA, tasks=(*TASKS[:8], late, *TASKS[9:])), width)
    bands = [
        tuple(float(each.attrib[name]) for name in ("x", "y", "width", "height"))
        for each in root.findall(f"{SVG}rect")
        if "stripes" in each.attrib["fill"]
    ]
    (head,) = [t for t in root.findall(f"{SVG}text") if said(t) == "14:00 to 15:45"]
    x, y = float(head.attrib["x"]), float(head.attrib["y"])
    covering = [b for b in bands if b[1] < y + 12.0 and b[1] + b[3] > y - 9.0 and b[0] >= x - 10.0]
    below = [b for b in covering if b[0] < x + 250.0]
    assert below == []
    behind = 1 if until == "28 15:00" else 0  # one that goes on is drawn before and after
    assert len(bands) == len(waits(AGENDA)) + 2 + behind


def test_time_runs_down_and_is_true_at_the_bench() -> None:
    friday, saturday = panels(AGENDA, 1280.0)
    heights = [friday.axis.y(work.start) for work in friday.works]
    assert heights == sorted(heights)
    pure = axis(
        [at("27 10:00"), at("27 12:00"), at("27 13:00")],
        top=0.0,
        below={},
        above={},
        busy=[(at("27 10:00").timestamp(), at("27 12:00").timestamp())],
    )
    assert pure.y(at("27 11:00")) == pytest.approx(60 * PER_MINUTE)
    assert pure.bottom - pure.y(at("27 12:00")) < 60 * PER_MINUTE / 2
    assert saturday.axis.y(SESSIONS[1].start) > saturday.axis.y(at("28 09:00"))


def test_an_axis_never_runs_back() -> None:
    for width in WIDTHS:
        for each in panels(AGENDAS["moment"], float(width)):
            assert all(a < b for a, b in pairwise(each.axis.heights))


def test_days_stand_side_by_side_where_there_is_room_and_below_each_other_where_not() -> None:
    first, second = panels(AGENDA, 680.0)
    assert second.left > first.left + first.width - 1.0
    first, second = panels(AGENDA, 320.0)
    assert second.left == first.left and second.axis.heights[0] > first.bottom


def test_night_sessions_and_the_hour_of_service_are_marked() -> None:
    friday, saturday = panels(AGENDA, 680.0)
    assert [(a.hour, b.hour) for a, b in friday.nights] == [(22, 0)]
    assert [(a.hour, b.hour) for a, b in saturday.nights] == [(0, 6)]
    found = words(tree(AGENDA, 680))
    assert "18:30 to 21:35" in found and "Served Pear dome, 8 pieces" in found
    assert "Friday 27 November" in found and "goes on by itself" in found


def test_a_moment_outside_the_sessions_is_drawn() -> None:
    assert "Place Pear crisps" in words(tree(AGENDAS["moment"], 680))


def test_what_is_done_under_way_or_moved_says_so_in_words() -> None:
    found = words(tree(begun(), 900))
    assert "✓ Cook Pear compote" in found
    assert any(text.startswith("under way") for text in found)
    assert any("25 min later than before" in text for text in found)


def test_what_is_over_is_pale_and_counted_not_a_wait() -> None:
    over = tuple(replace(t, state=State.DONE, hands=(), hands_on=0) for t in TASKS[:2])
    agenda = replace(AGENDA, tasks=(*over, *TASKS[2:]))
    root = tree(agenda, 680)
    pale = [r for r in root.findall(f"{SVG}rect") if r.attrib.get("fill-opacity") == "0.35"]
    assert len(pale) == 2 and "✓ Done 2 steps" in words(root)
    assert len(waits(agenda)) == len(waits(AGENDA))


def test_a_brief_drawing_names_each_component_once_and_keeps_every_block() -> None:
    whole, brief = (
        ElementTree.fromstring(
            agenda_svg(AGENDAS["moment"], title="Plan", width_px=760, standalone=True, brief=each)
        )
        for each in (False, True)
    )
    named = words(brief)
    assert "Cook Pear compote" in named and "Fill Pear compote" not in named
    assert "Place Pear crisps" in named and "18:30 to 21:35" in named
    counts = [len(root.findall(f"{SVG}rect")) for root in (whole, brief)]
    assert counts[0] == counts[1]
    heights = [float(root.attrib["viewBox"].split()[3]) for root in (whole, brief)]
    assert heights[1] < heights[0]


def test_a_day_of_many_lanes_keeps_room_for_words() -> None:
    many = tuple(
        replace(TASKS[0], id=f"t{k}", component=f"c{k}", component_name=f"Part {k}")
        for k in range(12)
    )
    shown = panel(replace(AGENDA, tasks=many), days(AGENDA)[0], left=0.0, top=0.0, width=280.0)
    assert shown.words_at < 150.0 and len(shown.lanes) == 12


def test_the_same_plan_gives_the_same_drawing_and_hostile_names_stay_text() -> None:
    assert agenda_svg(AGENDA, title="x") == agenda_svg(AGENDA, title="x")
    evil = replace(TASKS[0], component_name=HOSTILE, dessert_name=HOSTILE)
    root = tree(replace(AGENDA, tasks=(evil, *TASKS[1:])), 900)
    assert not {e.tag for e in root.iter()} & {f"{SVG}script", f"{SVG}b", f"{SVG}img"}


def test_a_plan_kept_with_fixed_offsets_is_drawn_the_same() -> None:
    from datetime import timedelta, timezone

    fixed = timezone(timedelta(hours=1))
    tasks = tuple(
        replace(
            each,
            start=each.start.astimezone(fixed),
            end=each.end.astimezone(fixed),
            hands=tuple(
                replace(h, start=h.start.astimezone(fixed), end=h.end.astimezone(fixed))
                for h in each.hands
            ),
        )
        for each in TASKS
    )
    one, two = (words(tree(each, 680)) for each in (AGENDA, replace(AGENDA, tasks=tasks)))
    assert one == two
