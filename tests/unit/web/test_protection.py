"""Only this machine, only our own pages, nothing large, and nothing changes by asking."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from entremetry.store import Kind
from entremetry.web.page_policy import policy_of_document
from entremetry.web.protection import LARGEST_BODY

Client = Any
EDIT = "/desserts/plain-cream/edit"


def text_of(client: Client) -> str:
    """Newest text of the one dessert."""
    return str(client.app.state.workbench.library.document(Kind.DESSERT, "plain-cream").text)


@pytest.mark.parametrize(
    "host", ["127.0.0.1:4321", "localhost:4321", "[::1]:4321", "LOCALHOST:4321"]
)
def test_own_names_with_the_port_are_answered(client: Client, host: str) -> None:
    assert client.get("/", host=host).status == 200


@pytest.mark.parametrize(
    "host",
    [
        "attacker.example",
        "attacker.example:4321",
        "127.0.0.1",
        "127.0.0.1:80",
        "",
        "localhost:43210",
    ],
)
def test_foreign_hosts_are_refused(client: Client, host: str) -> None:
    reply = client.get("/", host=host)
    assert reply.status == 421
    assert "Plain cream" not in reply.html


def test_forwarded_host_is_not_believed(client: Client) -> None:
    assert client.get("/", host="attacker.example", x_forwarded_host="127.0.0.1:4321").status == 421


@pytest.mark.parametrize("origin", ["http://attacker.example", "null", "https://127.0.0.1:4321"])
def test_foreign_origins_are_refused(client: Client, origin: str) -> None:
    before = text_of(client)
    form = {"text": before + "# changed\n", "started_from": "1"}
    assert client.post(EDIT, form, origin=origin).status == 403
    assert client.get("/", origin=origin).status == 403
    assert text_of(client) == before


def test_own_origin_may_change(client: Client) -> None:
    form = {"text": text_of(client) + "# changed\n", "started_from": "1"}
    assert client.post(EDIT, form, origin="http://127.0.0.1:4321").status == 303


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_forms_sent_from_another_site_are_refused(client: Client, site: str) -> None:
    form = {"text": "stolen", "started_from": "1"}
    assert client.post(EDIT, form, sec_fetch_site=site).status == 403


@pytest.mark.parametrize("token", ["", "wrong", "é"])
def test_form_without_our_token_changes_nothing(client: Client, token: str) -> None:
    before = text_of(client)
    form = {"token": token, "text": before + "# changed\n", "started_from": "1"}
    reply = client.send(EDIT, form)
    assert reply.status == 403
    assert "what you typed is still there" in reply.words
    assert text_of(client) == before


@pytest.mark.parametrize(
    "path",
    [f"{EDIT}/undo", f"{EDIT}/restore", f"{EDIT}/drop-draft", "/kitchen/undo", "/kitchen/restore"],
)
def test_what_changes_something_is_not_done_by_get(client: Client, path: str) -> None:
    assert client.get(path).status == 405


@pytest.mark.parametrize("method", ["PUT", "DELETE", "PATCH", "OPTIONS", "TRACE"])
def test_other_methods_are_refused(client: Client, method: str) -> None:
    assert client.ask(method, "/").status == 405


def test_body_said_to_be_large_is_refused(client: Client) -> None:
    assert client.post(EDIT, {"text": "x" * (LARGEST_BODY + 1)}).status == 413


def test_body_that_goes_on_beyond_its_length_is_refused(client: Client) -> None:
    form = {"text": "x" * (LARGEST_BODY + 1)}
    assert client.post(EDIT, form, content_length="10").status == 413


def test_length_that_is_no_number_is_refused(client: Client) -> None:
    assert client.post(EDIT, {"text": "x"}, content_length="-1").status == 413


def test_other_content_types_are_refused(client: Client) -> None:
    assert client.post(EDIT, {"text": "x"}, content_type="application/json").status == 415


@pytest.mark.parametrize(
    "path", ["/", "/desserts/plain-cream", "/larder", "/absent", "/static/mark.svg"]
)
def test_every_answer_bears_the_headers_of_safety(client: Client, path: str) -> None:
    headers = client.get(path).headers
    policy = headers["content-security-policy"]
    assert "default-src 'self'" in policy
    assert "frame-ancestors 'none'" in policy
    assert "object-src 'none'" in policy and "base-uri 'none'" in policy
    assert "unsafe" not in policy
    assert headers["x-content-type-options"] == "nosniff"
    assert headers["referrer-policy"] == "same-origin"


def test_refusals_bear_the_headers_as_well(client: Client) -> None:
    headers = client.get("/", host="attacker.example").headers
    assert "frame-ancestors 'none'" in headers["content-security-policy"]


def test_every_page_says_its_charset(client: Client) -> None:
    for path in ("/", "/larder", "/kitchen", "/sources", "/new", "/absent"):
        assert client.get(path).headers["content-type"] == "text/html; charset=utf-8"


def test_static_files_cannot_be_climbed_out_of(client: Client) -> None:
    for path in ("/static/../app.py", "/static/..%2fapp.py", "/static/%2e%2e/app.py"):
        assert client.get(path).status == 404


def test_no_page_carries_a_script_or_style_of_its_own(client: Client) -> None:
    for path in ("/", "/desserts/plain-cream", EDIT, "/new", "/larder", "/kitchen", "/sources"):
        html = client.get(path).html
        assert "<style" not in html and " style=" not in html
        assert "<script>" not in html and " onclick=" not in html and "javascript:" not in html


def test_secret_is_for_its_owner_alone_and_survives_a_restart(
    client: Client, tmp_path: Path
) -> None:
    from entremetry.web.secret import token

    place = tmp_path / "workbench-secret"
    assert place.stat().st_mode & 0o777 == 0o600
    assert token(tmp_path) == client.app.state.workbench.token


def test_recipe_page_is_allowed_its_own_styles_and_script_only(client: Client) -> None:
    reply = client.get("/desserts/plain-cream/page")
    assert reply.status == 200
    policy = reply.headers["content-security-policy"]
    assert policy == policy_of_document(reply.html)
    assert "script-src 'sha256-" in policy and "style-src 'sha256-" in policy
    assert "unsafe" not in policy


def test_policy_digest_is_that_of_the_style() -> None:
    # SHA-256 of the empty text: e3b0c442 98fc1c14 ... 7852b855 (FIPS 180-4 example values)
    policy = policy_of_document("<style></style>")
    assert "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='" in policy
