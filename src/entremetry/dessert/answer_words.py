"""What the answers to a draft's questions are called, in the language that is spoken."""

from __future__ import annotations

from collections.abc import Mapping

from entremetry.dessert.draft_ingredient import LEAVE_OUT
from entremetry.dessert.draft_method import AS_NOTES, MIXED, NONE
from entremetry.dessert.draft_step import NOTE_ONLY, UNSAID
from entremetry.dessert.draft_words import kind_words, measure_words, step_words
from entremetry.dessert.pasted_components import ASSEMBLY
from entremetry.dessert.placing_answer import PLACES
from entremetry.larder.larder import Larder
from entremetry.larder.spoken_name import ingredient_name
from entremetry.words import say

OF_A_STEP = "step."


def answer_words(key: str, answer: str, larder: Larder) -> str:
    """Words of an answer to the question of this key; what was typed stays as it is."""
    topic = key.replace(".", "-").rpartition("-")[2]
    if topic == "ingredient" and answer in larder:
        return ingredient_name(larder.find(answer))
    if topic == "kind":
        known = step_words() if key.startswith(OF_A_STEP) else kind_words()
    else:
        known = _words().get(topic, {})
    return known.get(answer, answer)


def _words() -> Mapping[str, Mapping[str, str]]:
    unsaid = {UNSAID: say("The text does not say: leave it open")}
    return {
        "measures": measure_words(),
        "place": {place: say(words) for place, words in PLACES},
        "ingredient": {LEAVE_OUT: say("It is no ingredient: leave the line out")},
        "of": {ASSEMBLY: say("Putting together"), NOTE_ONLY: say("A note, no step")},
        "bowl": {"own": say("In a bowl of its own")},
        "it": {MIXED: say("All of it is in one bowl already: it is mixed there")},
        "lines": {NONE: say("None of them enters here")},
        "method": {AS_NOTES: say("Keep the sentences as notes, without steps")},
        "temperature": unsaid,
        "time": unsaid,
    }
