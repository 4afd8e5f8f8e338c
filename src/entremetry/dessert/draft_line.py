"""One pasted line as a line of a formula, or the questions it raises."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass

from entremetry.dessert.draft_amount import Wanted, amount_of
from entremetry.dessert.draft_ingredient import LEAVE_OUT, ingredient_of
from entremetry.dessert.draft_question import Answers, Question, shortened
from entremetry.dessert.pasted_line import PastedLine
from entremetry.larder.larder import Larder

STAND_IN = "1 g"  # until the question beside it is answered; the document is refused meanwhile


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftedLine:
    """One line of a formula: `key` is the ingredient's id, if it is known."""

    key: str
    amount: str
    note: str = ""
    ask: str = ""

    def written(self, *, again: bool) -> str | dict[str, str]:
        """The line as a document writes it; `again` if the formula has the ingredient already."""
        words = {"note": self.note, "ask": shortened(self.ask)}
        more = {word: text for word, text in words.items() if text}
        named = {"ingredient": self.key} if again else {}
        return {**named, "amount": self.amount, **more} if named or more else self.amount


def identifier(name: str) -> str:
    """Lower-case words joined by hyphens, without accents."""
    spelled = name.replace("œ", "oe").replace("Œ", "oe")
    plain = unicodedata.normalize("NFKD", spelled).encode("ascii", "ignore").decode()
    words = re.findall(r"[a-z0-9]+", plain.casefold())
    return "-".join(words)[:80].strip("-") or "unnamed"


def drafted_line(
    pasted: PastedLine, key: str, answers: Answers, larder: Larder, measures: str | None
) -> tuple[DraftedLine | None, Question | None]:
    """The line as far as it is clear, and what must be asked; no line if it is left out."""
    said = answers.to(f"{key}-ingredient")
    if said == LEAVE_OUT:
        return None, None
    found = ingredient_of(pasted, key, said, larder)
    answer = answers.to(f"{key}-amount")
    if isinstance(found, Question):
        amount = answer or (pasted.amount if pasted.number else STAND_IN)
        return _open(identifier(pasted.name), amount, found), found
    wanted = Wanted(pasted=pasted, key=key, ingredient=found, measures=measures)
    settled = amount_of(wanted, answer)
    if isinstance(settled, Question):
        return _open(found.id, STAND_IN, settled), settled
    return DraftedLine(key=found.id, amount=settled, note=pasted.note), None


def _open(key: str, amount: str, question: Question) -> DraftedLine:
    return DraftedLine(key=key, amount=amount, ask=question.text)
