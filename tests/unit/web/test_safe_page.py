"""A backup is looked at first, then put in place; what was here is set aside and named."""

from __future__ import annotations

import re
import sqlite3
import threading
from pathlib import Path
from typing import Any

import pytest

from entremetry.store import Kind
from entremetry.web.protection import LARGEST_AT, LARGEST_BACKUP, LARGEST_BODY, largest_body

Client = Any
EDGE = "-----edge"
FORM = f"multipart/form-data; boundary={EDGE}"
CHANGED = "# changed\n"


def form(token: str, content: bytes) -> bytes:
    """A form with a file, as a browser sends it."""
    return b"".join(
        [
            f'--{EDGE}\r\nContent-Disposition: form-data; name="token"\r\n\r\n{token}\r\n'.encode(),
            f'--{EDGE}\r\nContent-Disposition: form-data; name="backup"; '.encode(),
            b'filename="mine.sqlite"\r\nContent-Type: application/vnd.sqlite3\r\n\r\n',
            content,
            f"\r\n--{EDGE}--\r\n".encode(),
        ]
    )


def sent(client: Client, content: bytes, *, token: str | None = None, **headers: str) -> Any:
    said = client.app.state.workbench.token if token is None else token
    body = form(said, content)
    return client.ask("POST", "/safe/file", body, {"content_type": FORM, **headers})


def edited(client: Client) -> str:
    """Save the one dessert with another text; that text."""
    library = client.app.state.workbench.library
    newest = library.document(Kind.DESSERT, "plain-cream")
    number = newest.revision.number
    library.save(Kind.DESSERT, "plain-cream", newest.text + CHANGED, started_from=number)
    return text_of(client)


def text_of(client: Client) -> str:
    return str(client.app.state.workbench.library.document(Kind.DESSERT, "plain-cream").text)


def files(home: Path) -> list[str]:
    return sorted(place.name for place in (home / "safe-keeping").glob("*"))


def test_backup_is_shown_beside_the_library_and_changes_nothing(
    client: Client, tmp_path: Path
) -> None:
    backup = client.get("/backup").body
    text = edited(client)
    client.app.state.workbench.library.plans.keep("Evening", "{}")
    reply = sent(client, backup)
    assert reply.status == 303
    looked = client.get(reply.headers["location"])
    assert re.search(r"In the backup .*Plans 0 .*Here now .*Plans 1 ", looked.words)
    assert "not alike: the one of the backup would count Plain cream" in looked.words
    assert text_of(client) == text
    assert client.post(f"{reply.headers['location']}/leave", {}).status == 303
    assert text_of(client) == text and files(tmp_path) == []


def test_backup_comes_back_and_so_does_what_it_replaced(client: Client, tmp_path: Path) -> None:
    backup, first = client.get("/backup").body, text_of(client)
    text = edited(client)
    place = sent(client, backup).headers["location"]
    done = client.post(f"{place}/take", {})
    assert done.status == 303 and text_of(client) == first
    (aside,) = files(tmp_path)
    assert client.get(done.headers["location"]).words.count(aside) >= 2
    assert "changed" not in client.get("/desserts/plain-cream/edit").html
    again = client.post("/safe/aside", {"name": aside}).headers["location"]
    assert client.post(f"{again}/take", {}).status == 303
    assert text_of(client) == text
    assert client.post(f"{place}/take", {}).status == 410


def test_pages_are_answered_while_a_backup_is_put_in_place(client: Client) -> None:
    backup = client.get("/backup").body
    edited(client)
    place = sent(client, backup).headers["location"]
    statuses: list[int] = []
    asking = threading.Thread(
        target=lambda: statuses.extend(
            client.get("/desserts/plain-cream/edit").status for _ in "123"
        )
    )
    asking.start()
    assert client.post(f"{place}/take", {}).status == 303
    asking.join()
    assert statuses == [200, 200, 200]


@pytest.mark.parametrize(
    "content", [b"", b"PK\x03\x04 a folder", b"SQLite format 3\x00 not really"]
)
def test_what_is_no_backup_is_told_and_not_kept(
    client: Client, tmp_path: Path, content: bytes
) -> None:
    text = text_of(client)
    reply = sent(client, content)
    assert reply.status == 422
    assert "Nothing was changed mine.sqlite is" in reply.words
    assert text_of(client) == text and files(tmp_path) == []


def test_backup_of_a_newer_version_is_told(client: Client, tmp_path: Path) -> None:
    place = tmp_path / "newer.sqlite"
    place.write_bytes(client.get("/backup").body)
    with sqlite3.connect(place) as connection:
        connection.execute("UPDATE alembic_version SET version_num = '0999'")
    connection.close()
    assert "install that version first" in sent(client, place.read_bytes()).words


def test_form_without_a_file_says_so(client: Client) -> None:
    token = client.app.state.workbench.token
    body = (
        f'--{EDGE}\r\nContent-Disposition: form-data; name="token"\r\n\r\n{token}\r\n--{EDGE}--\r\n'
    )
    reply = client.ask("POST", "/safe/file", body.encode(), {"content_type": FORM})
    assert reply.status == 422 and "Choose a file first." in reply.words


@pytest.mark.parametrize("token", ["", "wrong"])
def test_backup_without_our_token_is_not_read(client: Client, tmp_path: Path, token: str) -> None:
    assert sent(client, client.get("/backup").body, token=token).status == 403
    assert files(tmp_path) == []
    for path in ("/safe/look/x/take", "/safe/look/x/leave", "/safe/aside"):
        assert client.send(path, {"token": token}).status == 403


def test_backup_from_another_site_is_not_read(client: Client, tmp_path: Path) -> None:
    backup = client.get("/backup").body
    assert sent(client, backup, origin="http://attacker.example").status == 403
    assert sent(client, backup, sec_fetch_site="cross-site").status == 403
    assert files(tmp_path) == []


def test_backup_may_be_large_and_nothing_else(client: Client) -> None:
    over = str(LARGEST_BACKUP + 20_000)
    assert sent(client, b"x", content_length=over).status == 413
    assert largest_body({"path": "/safe/file"}) > LARGEST_BACKUP
    assert largest_body({"path": "/safe/file/x"}) == LARGEST_BODY


def test_backup_that_goes_on_beyond_its_length_is_refused(
    client: Client, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(LARGEST_AT, "/safe/file", 20_000)  # type: ignore[arg-type]
    assert sent(client, b"x" * 30_000, content_length="10").status == 413
    assert files(tmp_path) == []


def test_disk_that_is_full_is_told(
    client: Client, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    backup = client.get("/backup").body
    monkeypatch.setattr("entremetry.web.safe_files.shutil.copyfileobj", full)
    reply = sent(client, backup)
    assert reply.status == 422 and "cannot be written: No space left on device" in reply.words
    assert files(tmp_path) == []


@pytest.mark.parametrize("key", ["x", "0" * 32, "..%2flibrary", "0" * 31 + "g"])
def test_keys_that_lead_nowhere_are_refused(client: Client, key: str) -> None:
    assert client.get(f"/safe/look/{key}").status in {404, 410}
    assert client.post(f"/safe/look/{key}/take", {}).status in {404, 410}


@pytest.mark.parametrize("name", ["", "../library.sqlite", "library.sqlite", "library-x.sqlite"])
def test_only_what_was_set_aside_is_looked_at(client: Client, name: str) -> None:
    assert client.post("/safe/aside", {"name": name}).status == 404


def test_library_page_leads_to_safe_keeping(empty: Client) -> None:
    assert 'href="/safe"' in empty.get("/").html
    assert 'href="/backup"' in empty.get("/safe").html
