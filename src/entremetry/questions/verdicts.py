"""What the bench checks say of a dessert before and after a change."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from entremetry.checks.band import Outcome
from entremetry.checks.verdict import Verdict
from entremetry.questions.answer import Fact
from entremetry.words import say, say_later

WORDS = {
    Outcome.PASS: say_later("fine"),
    Outcome.CAUTION: say_later("needs care"),
    Outcome.FAIL: say_later("fails"),
}
WORSE = (Outcome.PASS, Outcome.CAUTION, Outcome.FAIL)


@dataclass(frozen=True, slots=True, kw_only=True)
class Turned:
    """One check that says something else now; nothing before if it did not apply."""

    before: Outcome | None
    after: Verdict

    @property
    def is_worse(self) -> bool:
        """Whether it is worse than it was, or than fine if it did not apply."""
        return WORSE.index(self.after.verdict) > WORSE.index(self.before or Outcome.PASS)

    @property
    def fact(self) -> Fact:
        """The change in one sentence, with the number behind it and who sets the limit."""
        then = say(WORDS[self.before]) if self.before else say("not asked")
        return Fact(
            text=say(
                "{component}, {check}: {after}, {before} before",
                component=self.after.name,
                check=self.after.title,
                after=say(WORDS[self.after.verdict]),
                before=then,
            ),
            because=self.after.because,
            source=self.after.source,
        )


def turned(before: Sequence[Verdict], after: Sequence[Verdict]) -> tuple[Turned, ...]:
    """The checks that say something else after a change, the worst first."""
    was = {(each.id, each.component): each.verdict for each in before}
    found = [
        Turned(before=was.get((each.id, each.component)), after=each)
        for each in after
        if was.get((each.id, each.component), Outcome.PASS) is not each.verdict
    ]
    return tuple(sorted(found, key=lambda each: -WORSE.index(each.after.verdict)))


def newly(found: Sequence[Turned], outcome: Outcome) -> tuple[Turned, ...]:
    """Those that came to an outcome and are worse for it."""
    return tuple(each for each in found if each.is_worse and each.after.verdict is outcome)
