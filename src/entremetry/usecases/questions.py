"""Ask a dessert something and get an answer of computed facts, with what it ends in."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from tzlocal import get_localzone_name

from entremetry.adapt.asking import Asked
from entremetry.adapt.rebalanced import Adapted
from entremetry.adapt.rebalancing import rebalanced_text
from entremetry.adapt.swap import read_swap
from entremetry.checks.diagnosis import find_symptom
from entremetry.dessert.reckoning import Reckoning
from entremetry.dessert.translating import settled
from entremetry.documents import edited, read_tree
from entremetry.errors import EntremetryError, FitError, UnknownName
from entremetry.kitchen.water_weighing import water_volume
from entremetry.method.waiting import FreezeUntil, ThawUntil
from entremetry.questions.answer import Answer
from entremetry.questions.choices import Choices
from entremetry.questions.choices import choices as choices_of
from entremetry.questions.containing import contained
from entremetry.questions.keeping import FILLED, FINISHED, waiting_named
from entremetry.questions.other_mould import fitted, misfit
from entremetry.questions.own_mould import measured
from entremetry.questions.question import (
    Contains,
    Instead,
    OtherMould,
    Question,
    Wait,
    WentWrong,
    Without,
)
from entremetry.questions.reckoned import Reckon, state
from entremetry.questions.replacing import replaced
from entremetry.questions.waiting import Thaw, wait
from entremetry.questions.went_wrong import diagnosed
from entremetry.questions.without import without
from entremetry.store.files import read_text
from entremetry.store.kernel_cache import require_fresh_kernels
from entremetry.store.shelf import built_in_shapes
from entremetry.timings.answer import answer as temperatures
from entremetry.timings.timed_step import timed_steps
from entremetry.usecases.adapting import Adaptation, adapted, consistent
from entremetry.usecases.batch import Surroundings, reckoned, surroundings, surroundings_of
from entremetry.usecases.checking import checked_in
from entremetry.usecases.diagnosing import diagnosed as cause_of
from entremetry.usecases.own_mould import bare_shape, made_mould, written_mould
from entremetry.usecases.rebalancing import opener
from entremetry.words import say, say_later


@dataclass(frozen=True, slots=True, kw_only=True)
class _Asking:
    """A text with what it is read against."""

    text: str
    file: str
    around: Surroundings

    @property
    def reckon(self) -> Reckon:
        """How a text is reckoned, each once."""

        @lru_cache(maxsize=16)
        def reckon_(text: str) -> Reckoning:
            return reckoned(text, self.file, self.around)

        return reckon_


def ask(path: Path, question: Question, *, kitchen: Path | None = None) -> Answer:
    """Ask a document in a file.

    Raises
    ------
    EntremetryError
        If the document is refused, or the question names what is not there.
    """
    text = read_text(path, what=say_later("dessert document"))
    return _asked(
        _Asking(text=text, file=str(path), around=surroundings_of(path, kitchen)), question
    )


def ask_of_text(
    text: str, question: Question, *, file: str = "document", kitchen_text: str | None = None
) -> Answer:
    """Ask a document at hand as text; see `ask`."""
    around = surroundings(kitchen_text, "kitchen")
    return _asked(_Asking(text=text, file=file, around=around), question)


def zone(kitchen: Path | None) -> ZoneInfo:
    """The time zone of a kitchen in a file, or of this machine."""
    text = None if kitchen is None else read_text(kitchen, what=say_later("kitchen document"))
    return zone_of_text(text)


def zone_of_text(kitchen_text: str | None) -> ZoneInfo:
    """The time zone of a kitchen at hand as text, or of this machine."""
    kitchen = surroundings(kitchen_text, "kitchen").kitchen
    return ZoneInfo((kitchen and kitchen.time_zone) or get_localzone_name())


def choices(path: Path, *, kitchen: Path | None = None) -> Choices:
    """What a document in a file can be asked."""
    text = read_text(path, what=say_later("dessert document"))
    return choices_of(reckoned(text, str(path), surroundings_of(path, kitchen)).dessert)


def choices_of_text(
    text: str, *, file: str = "document", kitchen_text: str | None = None
) -> Choices:
    """What a document at hand as text can be asked."""
    return choices_of(reckoned(text, file, surroundings(kitchen_text, "kitchen")).dessert)


def kept_as_new(text: str, name: str, taken: tuple[str, ...]) -> str:
    """An adapted document under an id that is free, and under a name that tells what it is."""
    from entremetry.dessert.reading import read_dessert

    document, _ = read_dessert(text, file="document")
    number = 2
    new = document.id
    while new in taken:
        new, number = f"{document.id[:74].rstrip('-')}-{number}", number + 1
    text = edited(text, ("id",), new)
    return settled(edited(text, ("name",), name) if name else text)


def _asked(asking: _Asking, question: Question) -> Answer:
    require_fresh_kernels()
    match question:
        case Instead():
            return _instead(asking, question)
        case OtherMould():
            return _mould(asking, question)
        case Wait():
            return _wait(asking, question)
        case Without():
            reckon = asking.reckon
            answer = without(asking.text, question.name, reckon, asking.around.kitchen)
            return replace(answer, document=settled(answer.document))
        case WentWrong():
            return _went_wrong(asking, question)
        case Contains():
            return contained(asking.reckon(asking.text).dessert, question.name)


def _instead(asking: _Asking, question: Instead) -> Answer:
    component, slash, line = question.old.partition("/")
    old = line if slash else question.old
    swap = read_swap(f"{old}={question.have}")
    if slash:
        wish = Asked(component=component, swaps=(swap,), rule=question.rule)
        done = rebalanced_text(asking.text, wish, opener(asking.file, asking.around))
        whole = Adapted(text=done.text, changes=done.changes, components=(done,))
        result = consistent(whole)
    else:
        wanted = Adaptation(swaps=(swap,), rule=question.rule)
        result = adapted(asking.text, wanted, asking.file, asking.around)
    reckon, kitchen = asking.reckon, asking.around.kitchen
    before = state(asking.text, reckon, kitchen)
    return replaced(question, result, before, state(result.text, reckon, kitchen))


def _mould(asking: _Asking, question: OtherMould) -> Answer:
    reckon, kitchen = asking.reckon, asking.around.kitchen
    before = state(asking.text, reckon, kitchen)
    written = _own_mould(asking, question, before.reckoning)
    own = None if written is None else made_mould(written)
    around = asking.around if own is None else replace(asking.around, own=(own,))
    named = own.id if own else question.known
    chosen = around.moulds.get(named, before.reckoning.dessert.mould)
    if named and named not in {*around.moulds, before.reckoning.dessert.mould.id}:
        raise UnknownName("mould or vessel", named, around.moulds)
    wanted = Adaptation(
        mould=named if named and not chosen.vessel else None,
        vessel=named if named and chosen.vessel else None,
        pieces=question.pieces,
    )
    try:
        result = adapted(asking.text, wanted, asking.file, around)
    except FitError as error:
        return misfit(chosen, error)
    if written is not None and result.changes:
        result = replace(result, text=edited(result.text, ("mould",), written))
    return fitted(chosen, result, before, state(result.text, reckon, kitchen))


def _own_mould(
    asking: _Asking, question: OtherMould, reckoning: Reckoning
) -> dict[str, Any] | None:
    """A mould of the asker's own as a document writes it; None if it is a known one."""
    if question.own is not None:
        return dict(question.own)
    if not question.holds:
        return None
    water_volume(question.holds)
    shape = _shape_like(asking, question.like)
    own = reckoning.dessert.mould
    more: dict[str, Any] = {"vessel": True} if own.vessel and not question.like else {}
    if not own.fills_upside_down and not own.vessel and not question.like:
        more = {"fills": "upright"}
    return measured(question.holds, shape, more, cavities=question.cavities)


def _shape_like(asking: _Asking, like: str) -> dict[str, Any]:
    """The shape of a known mould, or of the dessert's own, as a document writes it."""
    data = read_tree(asking.text, file=asking.file).data
    own = data["mould"]
    shapes = {key: dict(shape) for key, shape in built_in_shapes().items()}
    kitchen = asking.around.kitchen
    for each in kitchen.moulds if kitchen else ():
        shapes.setdefault(each.id, written_mould(each))
    if not like and isinstance(own, dict):
        return bare_shape(dict(own["shape"]))
    name = like or str(own)
    if name not in shapes:
        raise UnknownName("mould", name, shapes)
    return bare_shape(shapes[name])


def _wait(asking: _Asking, question: Wait) -> Answer:
    reckoning = asking.reckon(asking.text)
    return wait(reckoning.dessert, question, _thaw(asking, reckoning, question))


def _thaw(asking: _Asking, reckoning: Reckoning, question: Wait) -> Thaw | None:
    """What follows once the filled mould leaves the freezer: the bench, then the thaw computed."""
    steps = reckoning.dessert.document.assembly
    frozen = [n for n, step in enumerate(steps) if isinstance(step, FreezeUntil)]
    part = waiting_named(reckoning.dessert, question.part).id
    if not frozen or part not in (FILLED, FINISHED):
        return None
    rest = steps[frozen[-1] + 1 :]
    hands = sum(s.hands_on or s.time or 0.0 for s in rest if not isinstance(s, ThawUntil))
    thaws = [t for t in timed_steps(reckoning.dessert) if isinstance(t.step, ThawUntil)]
    if not thaws:
        return Thaw(time=hands, because=say("as the steps of the assembly state"))
    last = thaws[-1]
    try:
        found = temperatures(reckoning, last.id, asking.around.kitchen, load=False)
    except EntremetryError as error:
        return Thaw(
            time=hands + (last.step.time or 0.0), because=say("not computed: {error}", error=error)
        )
    if found.high is None:
        return Thaw(time=hands + (last.step.time or 0.0), because=found.reason)
    return Thaw(
        time=hands + max(found.high, 0.0),
        because=say("{because}; the upper end counts", because=found.because),
        sources=found.sources,
    )


def _went_wrong(asking: _Asking, question: WentWrong) -> Answer:
    symptom = find_symptom(question.symptom)
    checked = checked_in(asking.text, asking.file, asking.around)
    return diagnosed(cause_of(checked, symptom, question.component).diagnosis)
