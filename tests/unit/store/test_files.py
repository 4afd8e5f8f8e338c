"""Files are read whole or refused with one clear message, and written whole or not at all."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest

from entremetry.errors import StoreError
from entremetry.store import files, read_text, write_atomically


def test_text_is_read_with_its_accents(tmp_path: Path) -> None:
    place = tmp_path / "dome.yaml"
    place.write_bytes("name: Crème brûlée ½\n".encode())
    assert read_text(place, what="dessert document") == "name: Crème brûlée ½\n"


def test_byte_order_mark_is_no_part_of_the_text(tmp_path: Path) -> None:
    place = tmp_path / "dome.yaml"
    place.write_bytes(b"\xef\xbb\xbfname: Dome\n")
    assert read_text(place, what="dessert document") == "name: Dome\n"


def test_missing_file_is_named(tmp_path: Path) -> None:
    with pytest.raises(StoreError, match=r"there is no file .*absent\.yaml; a dessert document"):
        read_text(tmp_path / "absent.yaml", what="dessert document")


def test_folder_is_refused(tmp_path: Path) -> None:
    with pytest.raises(StoreError, match="is a folder"):
        read_text(tmp_path, what="dessert document")


def test_pipe_is_refused_without_waiting_for_it(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(StoreError, match="not a regular file"):
        read_text(tmp_path / "pipe", what="dessert document")


def test_large_file_is_refused_before_it_is_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    place = tmp_path / "huge.yaml"
    with place.open("wb") as stream:
        stream.truncate(100_000_000)
    monkeypatch.setattr(Path, "open", lambda *_: pytest.fail("it was opened"))
    with pytest.raises(StoreError, match="more than 1 MB"):
        read_text(place, what="dessert document")


def test_file_of_exactly_the_limit_is_read(tmp_path: Path) -> None:
    place = tmp_path / "full.yaml"
    place.write_bytes(b"x" * files.LARGEST)
    assert len(read_text(place, what="dessert document")) == files.LARGEST


def test_invalid_utf8_names_the_byte_and_the_line(tmp_path: Path) -> None:
    place = tmp_path / "latin.yaml"
    place.write_bytes(b"id: dome\nname: Cr\xe8me\n")
    with pytest.raises(StoreError, match=r"byte 18 \(line 2\) is 0xe8"):
        read_text(place, what="dessert document")


def test_binary_junk_names_its_first_nul(tmp_path: Path) -> None:
    place = tmp_path / "photo.yaml"
    place.write_bytes(b"abc\0\xff\xfe")
    with pytest.raises(StoreError, match="not text: byte 4 is NUL"):
        read_text(place, what="dessert document")


def test_written_file_holds_the_content_and_leaves_no_scratch(tmp_path: Path) -> None:
    place = tmp_path / "page.html"
    place.write_bytes(b"old")
    write_atomically(place, b"new")
    assert place.read_bytes() == b"new"
    assert [entry.name for entry in tmp_path.iterdir()] == ["page.html"]


def test_mode_of_a_file_that_is_replaced_is_kept(tmp_path: Path) -> None:
    place = tmp_path / "page.html"
    place.write_bytes(b"old")
    place.chmod(0o600)
    write_atomically(place, b"new")
    assert place.stat().st_mode & 0o777 == 0o600


def test_full_disk_leaves_the_old_file_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_handle: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    place = tmp_path / "page.html"
    place.write_bytes(b"old")
    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(StoreError, match="cannot be written: No space left"):
        write_atomically(place, b"new")
    assert place.read_bytes() == b"old"
    assert [entry.name for entry in tmp_path.iterdir()] == ["page.html"]


def test_missing_folder_is_refused(tmp_path: Path) -> None:
    with pytest.raises(StoreError, match="cannot be written"):
        write_atomically(tmp_path / "absent" / "page.html", b"new")


def test_folder_is_not_overwritten(tmp_path: Path) -> None:
    with pytest.raises(StoreError, match="is a folder"):
        write_atomically(tmp_path, b"new")
