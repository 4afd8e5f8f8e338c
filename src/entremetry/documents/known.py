"""Which keys a model knows at a place: for 'did you mean'."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from types import UnionType
from typing import TYPE_CHECKING, Annotated, Any, Literal, Union, get_args, get_origin

if TYPE_CHECKING:
    from pydantic import BaseModel

Part = str | int


def known_keys(model: type[BaseModel], place: Sequence[Part], data: Any) -> tuple[str, ...]:
    """Return the keys which may stand beside the last part of `place`."""
    candidates: list[Any] = [model]
    for part in place[:-1]:
        inside = _inside(data, part)
        if inside is _NOT_THERE:
            candidates = _branch(candidates, part)
        else:
            data = inside
            candidates = [t for each in candidates for t in _children(each, part)]
    models = [each for each in candidates if _is_model(each)]
    return tuple(dict.fromkeys(key for each in models for key in _keys(each)))


_NOT_THERE = object()


def _inside(data: Any, part: Part) -> Any:
    """Return the part of a mapping or list, or the mark that it is not there."""
    if isinstance(data, dict) and part in data:
        return data[part]
    if isinstance(data, list) and isinstance(part, int) and part < len(data):
        return data[part]
    return _NOT_THERE


def _keys(model: type[BaseModel]) -> Iterator[str]:
    """Yield the names of a model's fields as a document writes them."""
    for name, info in model.model_fields.items():
        yield info.alias or name


def _is_model(annotation: Any) -> bool:
    """Tell whether a type is a model, without loading what models are made with."""
    return isinstance(annotation, type) and hasattr(annotation, "model_fields")


def _children(annotation: Any, part: Part) -> list[Any]:
    """Return the types that may stand at `part` inside a type."""
    if _is_model(annotation):
        for name, info in annotation.model_fields.items():
            if part in {name, info.alias}:
                return list(_flat(info.annotation))
        return []
    arguments = get_args(annotation)
    origin = get_origin(annotation)
    if not isinstance(origin, type) or not arguments:
        return []
    if issubclass(origin, Mapping):
        return list(_flat(arguments[1]))
    return list(_flat(arguments[0])) if issubclass(origin, Sequence) else []


def _flat(annotation: Any) -> Iterator[Any]:
    """Yield the types of a union, without aliases and annotations around them."""
    value = getattr(annotation, "__value__", None)
    if value is not None:
        yield from _flat(value)
    elif get_origin(annotation) is Annotated:
        yield from _flat(get_args(annotation)[0])
    elif get_origin(annotation) in {Union, UnionType}:
        for argument in get_args(annotation):
            yield from _flat(argument)
    else:
        yield annotation


def _branch(candidates: list[Any], tag: Part) -> list[Any]:
    """Keep the branch of a union that bears the tag, or all if none is known to."""
    return [each for each in candidates if _bears(each, tag)] or candidates


def _bears(annotation: Any, tag: Part) -> bool:
    """Tell whether a model is called by the tag, or has a field that must hold it."""
    if not _is_model(annotation):
        return False
    literals = (info.annotation for info in annotation.model_fields.values())
    return annotation.__name__ == tag or any(
        get_origin(each) is Literal and tag in get_args(each) for each in literals
    )
