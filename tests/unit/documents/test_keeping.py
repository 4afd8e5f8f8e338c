"""What was read of a text is kept, and what is refused is not."""

from __future__ import annotations

import pytest

from entremetry.documents import kept
from entremetry.documents.keeping import KEPT, LONGEST_KEPT
from entremetry.errors import DocumentError, Fault

TEXT = "one two"


class Counting:
    """A reader that tells what it was given to read, and refuses what has a fault."""

    def __init__(self) -> None:
        self.read: list[str] = []

    def __call__(self, text: str, file: str) -> list[str]:
        self.read.append(text)
        if "fault" in text:
            raise DocumentError([Fault(file=file, field="name", found=text, accepted="a name")])
        return text.split()


def test_a_text_is_read_once_whatever_its_file_is_called() -> None:
    reader = Counting()
    reading = kept(reader)
    assert reading(TEXT, file="one") is reading(TEXT, file="other")
    assert reader.read == [TEXT]


def test_a_fault_names_the_file_that_was_asked_for_each_time() -> None:
    reader = Counting()
    reading = kept(reader)
    for file in ("one", "other"):
        with pytest.raises(DocumentError, match=f"^{file}, name: found a fault"):
            reading("a fault", file=file)
    assert reader.read == ["a fault", "a fault"]


def test_only_the_last_texts_are_kept_and_none_that_is_long() -> None:
    reader = Counting()
    reading = kept(reader)
    for number in (*range(KEPT + 1), 0):
        reading(str(number), file="document")
    assert reader.read.count("0") == 2
    long = "x" * (LONGEST_KEPT + 1)
    assert reading(long, file="document") is not reading(long, file="document")
