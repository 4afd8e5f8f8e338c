"""What is asked of a demo dessert, and what the answer comes to."""

from __future__ import annotations

import re

import pytest

from entremetry.errors import QuantityError, UnknownName
from entremetry.physics.gelatine import BloomRule
from entremetry.questions import (
    Answer,
    Contains,
    Instead,
    OtherMould,
    Question,
    Reply,
    WentWrong,
    Without,
)
from entremetry.questions.own_mould import shaped
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import batch_of_text
from entremetry.usecases.questions import ask_of_text, choices_of_text, kept_as_new

DOME = demo_texts()["blackcurrant-vanilla-dome"]
BARS = demo_texts()["raspberry-pistachio-bars"]
GLASS = demo_texts()["mango-coconut-lime-glass"]


def ask(question: Question, text: str = DOME) -> Answer:
    return ask_of_text(text, question)


def facts(answer: Answer) -> str:
    return " ".join(fact.text for fact in answer.facts)


def test_leaving_out_an_insert_lets_the_mousse_take_its_room() -> None:
    answer = ask(Without(name="vanilla-insert"))
    assert answer.reply is Reply.YES and answer.document
    before, after = (batch_of_text(text).components for text in (DOME, answer.document))
    grown = after[0].factor / next(c for c in before if c.id == "blackcurrant-mousse").factor
    assert f"Blackcurrant mousse: {100 * (grown - 1):.0f} % more" in facts(answer)
    assert "no longer contains egg" in facts(answer)


def test_the_only_gelling_agent_cannot_be_left_out_and_the_check_says_why() -> None:
    answer = ask(Without(name="blackcurrant-mousse/gelatine-sheet-gold"))
    assert answer.reply is Reply.NO and not answer.document
    assert "sets" in answer.checks
    assert "times the least that holds" in answer.facts[0].because
    assert answer.facts[0].source == "common_practice"


def test_the_mousse_itself_cannot_be_left_out() -> None:
    answer = ask(Without(name="Blackcurrant mousse"))
    assert answer.reply is Reply.NO and "takes all the room" in answer.says


def test_a_mousse_without_its_cream_is_no_foam_any_more() -> None:
    answer = ask(Without(name="blackcurrant-mousse/cream-35"))
    assert answer.reply is Reply.DEPENDS
    assert "nothing is whipped any more" in facts(answer)


def test_cream_alone_is_not_trusted_to_set_without_an_agent() -> None:
    text = DOME.replace("cream-35: {amount: 155 g", "cream-35: {amount: 755 g")
    answer = ask(Without(name="blackcurrant-mousse/gelatine-sheet-gold"), text)
    assert answer.reply is Reply.DEPENDS and "no setting agent is left" in facts(answer)


def test_flour_binds_what_is_baked() -> None:
    answer = ask(Without(name="plain-flour"))
    assert answer.reply is Reply.DEPENDS and "no flour is left" in facts(answer)


def test_most_of_a_component_is_not_left_out_lightly() -> None:
    answer = ask(Without(name="raspberry-jelly/raspberry-puree"), BARS)
    assert answer.reply is not Reply.YES and "of it goes" in facts(answer)


def test_milk_does_not_whip_in_the_place_of_cream() -> None:
    answer = ask(Instead(old="blackcurrant-mousse/cream-35", have="whole-milk"))
    assert answer.reply is Reply.DEPENDS and "nothing that whips is left" in answer.says


def test_a_line_in_several_formulas_is_asked_about() -> None:
    with pytest.raises(QuantityError, match="vanilla-insert/caster-sugar"):
        ask(Without(name="caster-sugar"))


def test_the_nearest_names_are_offered() -> None:
    with pytest.raises(UnknownName, match="vanilla-bean"):
        ask(Without(name="vanila-bean"))


def test_another_gelatine_weighs_more_by_either_rule() -> None:
    line = "blackcurrant-mousse/gelatine-sheet-gold"
    linear = ask(Instead(old=line, have="gelatine-sheet-silver"))
    root = ask(Instead(old=line, have="gelatine-sheet-silver", rule=BloomRule.SQUARE_ROOT))
    assert linear.reply is Reply.CHANGED and "silver 160 Bloom: 5.0 g" in facts(linear)
    assert "silver 160 Bloom: 4.4" in facts(root) or "silver 160 Bloom: 4.5" in facts(root)
    assert "gelatine-sheet-silver" in linear.document
    assert linear.question.startswith("Can I take Gelatine sheet silver")


def test_agar_only_if_what_fails_is_mended() -> None:
    answer = ask(Instead(old="blackcurrant-mousse/gelatine-sheet-gold", have="agar-powder"))
    assert answer.reply is Reply.DEPENDS
    assert {"agar-boiled", "weeping"} <= set(answer.checks)


def test_an_ingredient_is_taken_in_every_formula_that_holds_it() -> None:
    answer = ask(Instead(old="gelatine-sheet-gold", have="gelatine-powder-200"))
    assert "gelatine-sheet-gold" not in answer.document
    assert answer.document.count("gelatine-powder-200") > DOME.count("gelatine-powder-200")


def test_a_glass_of_ones_own_is_written_into_the_document() -> None:
    own = shaped("glass", "65 × 70 mm")
    answer = ask(OtherMould(own=own))
    assert answer.reply is Reply.CHANGED and "232 ml" in answer.question
    sheet = batch_of_text(answer.document)
    assert sheet.mould.is_vessel and sheet.mould.cavity_volume.value * 1e6 == pytest.approx(
        232, 1e-2
    )


def test_a_weighed_mould_is_like_that_of_the_dessert() -> None:
    answer = ask(OtherMould(holds="75 ml", cavities=6))
    sheet = batch_of_text(answer.document)
    assert sheet.mould.cavity_volume.value * 1e6 == pytest.approx(75.0)
    assert sheet.mould.cavities_per_tray == 6
    assert "Vanilla cream insert" in facts(answer)


def test_a_mould_too_small_is_refused_with_what_would_do() -> None:
    answer = ask(OtherMould(own=shaped("dome", "20 mm")))
    assert answer.reply is Reply.NO and "the nearest that would do" in answer.facts[0].text


def test_its_own_mould_changes_nothing() -> None:
    answer = ask(OtherMould(known="hemisphere-70"))
    assert answer.reply is Reply.YES and not answer.document


def test_an_unknown_mould_is_refused() -> None:
    with pytest.raises(UnknownName, match="hemisphere-70"):
        ask(OtherMould(known="hemisphere-71"))
    with pytest.raises(UnknownName, match="ring-180"):
        ask(OtherMould(holds="75 ml", like="ring-181"))


def test_a_mishap_leads_to_causes_with_their_checks() -> None:
    answer = ask(WentWrong(symptom="stuck"))
    assert answer.reply is Reply.DEPENDS and answer.facts
    shares = [int(re.findall(r"(\d+) %", fact.text)[0]) for fact in answer.facts]
    assert shares == sorted(shares, reverse=True)
    with pytest.raises(UnknownName):
        ask(WentWrong(symptom="exploded"))


def test_an_allergen_is_found_by_its_group() -> None:
    nuts = ask(Contains(name="nuts"))
    assert nuts.reply is Reply.YES and "Ground hazelnuts" in facts(nuts)
    assert ask(Contains(name="peanuts")).reply is Reply.NO
    assert ask(Contains(name="cream-35")).reply is Reply.YES
    with pytest.raises(UnknownName, match="hazelnut"):
        ask(Contains(name="hazlenut"))


def test_everything_offered_can_be_asked() -> None:
    found = choices_of_text(GLASS)
    for choice in found.without:
        assert ask(Without(name=choice.value), GLASS).says
    values = {each.value for each in found.instead}
    assert "coconut-cream/gelatine-sheet-gold" in values
    near = next(each for each in found.instead if each.value.endswith("gelatine-sheet-gold"))
    assert "gelatine-powder-200" in {each.value for each in near.alike}


def test_it_is_kept_under_an_id_of_its_own() -> None:
    kept = kept_as_new(DOME, "Dome anew", ("blackcurrant-vanilla-dome", "other"))
    assert "id: blackcurrant-vanilla-dome-2\n" in kept and "name: Dome anew\n" in kept
