"""A pasted text split at its headings: components with their lines, and the steps after them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field

from entremetry.dessert.pasted_facts import Fact, fact_of
from entremetry.dessert.pasted_line import pasted_line
from entremetry.dessert.pasted_words import is_blank, unbulleted
from entremetry.dessert.step_words import begins_with_work, clauses

_FOR_THE = re.compile(r"^(?:for\s+(?:the\s+)?|pour\s+(?:l[ae]s?\s+|l['’]\s*))(?=\S)", re.IGNORECASE)
_METHOD = re.compile(
    r"(?:the )?(?:method|steps|instructions|directions|preparation|what to do|procedure|"
    r"préparation|réalisation|étapes|procédé|progression)",
    re.IGNORECASE,
)
_ASSEMBLY = re.compile(
    r"(?:the )?(?:assembly|to assemble|assembling|put(?:ting)? (?:it )?together|to finish|"
    r"finishing|fill the (?:mould|glass)|to serve|serving|montage|finition|dressage)(?: .{0,40})?",
    re.IGNORECASE,
)
_INGREDIENTS = re.compile(r"(?:the )?(?:ingredients|ingrédients)", re.IGNORECASE)
_NUMBERED = re.compile(r"^\s*(?:step\s*)?\d{1,2}[.):]\s+", re.IGNORECASE)
LONGEST_NAME = 120
ASSEMBLY = "assembly"
FEWEST_WORDS = 6  # of a line without a full stop that is taken for an instruction


@dataclass(frozen=True, slots=True, kw_only=True)
class PastedComponent:
    """A heading and the lines under it."""

    name: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PastedStep:
    """One piece of work; `owner` is the place of its component, 'assembly', or None if open."""

    text: str
    owner: int | str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PastedText:
    """All that a pasted text holds."""

    components: tuple[PastedComponent, ...]
    steps: tuple[PastedStep, ...] = ()
    facts: tuple[Fact, ...] = ()


def pasted_components(text: str, name: str) -> tuple[PastedComponent, ...]:
    """The components of a pasted text; see `pasted_text`."""
    return pasted_text(text, name).components


def pasted_text(text: str, name: str) -> PastedText:
    """Split a text at its headings: lines that end in a colon or start with '#'.

    Without any, all lines are one component that bears `name`. Steps stand under a heading such
    as 'Method:', or are sentences that begin with a word for work.
    """
    lines = [line for line in text.splitlines() if not is_blank(line)]
    sorting = _Sorting(parts=[_Part(name=name)])
    for index, line in enumerate(lines):
        sorting.take(line, lines[index + 1 :])
    return sorting.done()


@dataclass(slots=True, kw_only=True)
class _Part:
    name: str
    lines: list[str] = field(default_factory=list)


@dataclass(slots=True, kw_only=True)
class _Sorting:
    """Goes through the lines once; `owner` is the part that steps belong to."""

    parts: list[_Part]
    told: bool = False  # steps are being told, not lines
    owner: _Part | str | None = None
    fresh: list[_Part] = field(default_factory=list)  # parts whose method has not been told yet
    steps: list[tuple[str, _Part | str | None]] = field(default_factory=list)
    facts: list[Fact] = field(default_factory=list)

    def take(self, line: str, following: Sequence[str]) -> None:
        """Put a line where it belongs."""
        if fact := fact_of(line):
            self.facts.append(fact)
        elif heading := _heading(line):
            self._open(heading, following)
        elif self.told:
            self._tell(line, self.owner)
        elif _is_instruction(line):
            self._tell(line, self.parts[-1])
        else:
            self._add(line)

    def done(self) -> PastedText:
        """What has been sorted; a part without lines is none."""
        kept = [part for part in self.parts if part.lines]
        place = {id(part): index for index, part in enumerate(kept)}
        alone = 0 if len(kept) == 1 else None
        steps = [
            PastedStep(text=text, owner=owner if isinstance(owner, str) else place.get(id(owner)))
            for text, owner in self.steps
        ]
        return PastedText(
            components=tuple(PastedComponent(name=p.name, lines=tuple(p.lines)) for p in kept),
            steps=tuple(
                PastedStep(text=step.text, owner=alone) if step.owner is None else step
                for step in steps
            ),
            facts=tuple(self.facts),
        )

    def _open(self, heading: str, following: Sequence[str]) -> None:
        steps_follow = _steps_follow(following, told=self.told)
        known = self._named(heading) if steps_follow else None
        if _INGREDIENTS.fullmatch(heading):
            self.told = False
        elif _METHOD.fullmatch(heading):
            self.told, self.owner = True, self.fresh[0] if len(self.fresh) == 1 else None
            self.fresh = []
        elif steps_follow and _ASSEMBLY.fullmatch(heading):
            self.told, self.owner = True, ASSEMBLY
        elif known is not None:
            self.told, self.owner = True, known
        elif steps_follow and self.told:
            self.owner = None
        else:
            self.told = False
            self.parts.append(_Part(name=heading))

    def _named(self, heading: str) -> _Part | None:
        words = heading.casefold()
        same = [part for part in self.parts if part.lines and part.name.casefold() == words]
        parts = same or [p for p in self.parts if p.lines and _shares(words, p.name.casefold())]
        return parts[0] if len(parts) == 1 else None

    def _add(self, line: str) -> None:
        part = self.parts[-1]
        part.lines.append(line)
        if not any(part is other for other in self.fresh):
            self.fresh.append(part)

    def _tell(self, line: str, owner: _Part | str | None) -> None:
        bare = _NUMBERED.sub("", unbulleted(line)).strip()
        self.steps.extend((clause, owner) for clause in clauses(bare))


def _shares(one: str, other: str) -> bool:
    """Tell whether one name ends as the other does: 'mousse' and 'plum mousse'."""
    return f" {one}".endswith(f" {other}") or f" {other}".endswith(f" {one}")


def _steps_follow(following: Sequence[str], *, told: bool) -> bool:
    for line in following:
        if _heading(line) or fact_of(line):
            return False
        found = pasted_line(line)
        plain = not found.number and not found.either
        return _is_instruction(line) or (told and plain and len(line.split()) >= FEWEST_WORDS)
    return False


def _is_instruction(line: str) -> bool:
    bare = _NUMBERED.sub("", unbulleted(line)).strip()
    if not begins_with_work(bare):
        return False
    return bare.endswith((".", "!")) or len(bare.split()) >= FEWEST_WORDS


def _heading(line: str) -> str:
    """The words of a heading; nothing if the line is none."""
    bare = line.strip().strip("*_ ")
    if not (bare.endswith(":") or bare.startswith("#")):
        return ""
    words = _FOR_THE.sub("", bare.strip("#*:_ ").strip())
    return (words[:1].upper() + words[1:])[:LONGEST_NAME]
