"""Put the place in the document to what goes wrong while it is computed."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace

from entremetry.dessert.document import ComponentDocument, DessertDocument
from entremetry.documents.tree import Path, Tree, field_text
from entremetry.errors import BalanceError, DocumentError, Fault, FitError, OutsideRange
from entremetry.method.step_names import step_name
from entremetry.words import say


@contextmanager
def located(document: DessertDocument, tree: Tree, *, file: str) -> Iterator[None]:
    """Raise what comes up inside again, with file, line and field where they can be known."""
    try:
        yield
    except DocumentError as error:
        raise DocumentError(refiled(fault, tree, file) for fault in error.faults) from None
    except FitError as error:
        place = _place(tree, file, _placement(document, error.parts))
        message = _told(place, error)
        raise FitError(message, parts=error.parts, missing=error.missing) from error
    except (BalanceError, OutsideRange) as error:
        place = _place(tree, file, _component(document, str(error)))
        raise type(error)(_told(place, error)) from error


def _told(place: str, error: Exception) -> str:
    return say("{place}: {problem}", place=place, problem=error)


def refiled(fault: Fault, tree: Tree, file: str) -> Fault:
    """Give a fault such as one of 'components.mousse.method.0.what' its file and line."""
    if fault.file is not None:
        return fault
    path = tuple(int(part) if part.isdecimal() else part for part in fault.field.split("."))
    return replace(fault, file=file, line=tree.line(path), field=field_text(path))


def _place(tree: Tree, file: str, path: Path) -> str:
    line = tree.line(path) if path else None
    words = [file, say("line {number}", number=line) if line else "", field_text(path)]
    return ", ".join(word for word in words if word)


def _placement(document: DessertDocument, parts: tuple[str, str]) -> Path:
    """Where the first of the parts that do not fit is placed."""
    for part in parts:
        for index, placement in enumerate(document.placement):
            if document.components[placement.component].name == part:
                return ("placement", index)
    return ("portions",) if document.portions is not None else ()


def _component(document: DessertDocument, message: str) -> Path:
    """Which component, and which of its steps, a message begins with."""
    for component_id, component in document.components.items():
        if message.startswith((f"{component.name}, ", *_headed(component.name))):
            return ("components", component_id, *_step(component, message))
    return ()


def _step(component: ComponentDocument, message: str) -> Path:
    for index, step in enumerate(component.method):
        if message.startswith(_headed(f"{component.name}, {step_name(step, index + 1)}")):
            return ("method", index)
    return ()


def _headed(name: str) -> tuple[str, str]:
    """How a message about something begins, with or without a space before the colon."""
    return f"{name}: ", f"{name} : "
