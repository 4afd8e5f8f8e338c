"""A walk through the kitchen, without a browser."""

from __future__ import annotations

import re
from typing import Any

from entremetry.documents import read_tree
from entremetry.usecases.batch import moulds
from entremetry.usecases.library import kitchen_text
from entremetry.web.walk_stations import stations
from unit.web.conftest import Client

COLD, BENCH, MOULDS, HANDS = 3, 4, 5, 6


def kitchen(client: Client) -> dict[str, Any]:
    text = kitchen_text(client.app.state.workbench.library)
    assert text is not None
    return read_tree(text, file="kitchen").data


def change(client: Client, station: int, **fields: str) -> None:
    """One change as the page sends it."""
    path = f"/kitchen/walk/{station}"
    found = re.search(r'name="started_from" value="(\d+)"', client.get(path).html)
    assert found is not None
    reply = client.post(path, {"started_from": found[1], **fields})
    assert reply.status == 303, reply.words


def test_every_station_shows_what_a_new_kitchen_has(client: Client) -> None:
    for number, station in enumerate(stations(), start=1):
        words = client.get(f"/kitchen/walk/{number}").words
        assert station.title in words
        assert station.why in words
    assert "Freezer" in client.get(f"/kitchen/walk/{COLD}").words


def test_a_field_is_kept_and_the_notes_of_the_text_stay(client: Client) -> None:
    change(client, COLD, **{"set:freezers/#0/temperature": "-20 °C"})
    change(client, COLD, **{"set:freezers/#0/volume": "80 l"})
    assert kitchen(client)["freezers"][0]["temperature"] == "-20 °C"
    assert kitchen(client)["freezers"][0]["volume"] == "80 l"
    text = kitchen_text(client.app.state.workbench.library)
    assert text is not None
    assert "# A mould of your own" in text


def test_things_are_added_and_taken_out(client: Client) -> None:
    new = {"set:mixers/#1/name": "Hand mixer", "set:mixers/#1/bowls": "2"}
    change(client, BENCH, do="add-item", path="mixers", **new)
    assert kitchen(client)["mixers"][1] == {"name": "Hand mixer", "bowls": 2}
    change(client, BENCH, do="knob", knob="take-out mixers/#0")
    assert [mixer["name"] for mixer in kitchen(client)["mixers"]] == ["Hand mixer"]


def test_a_person_gets_hours(client: Client) -> None:
    change(client, HANDS, do="add-item", path="people", **{"set:people/#0/name": "Ada"})
    hours = {"day": "friday", "date": "", "start": "18:00", "end": "22:00"}
    sent = {f"set:people/#0/free/#0/{name}": value for name, value in hours.items()}
    change(client, HANDS, do="add-item", path="people/#0/free", **sent)
    free = kitchen(client)["people"][0]["free"]
    assert free == [{"day": "friday", "start": "18:00", "end": "22:00"}]
    assert "Free hours of Ada" in client.get(f"/kitchen/walk/{HANDS}").words


def test_a_mould_weighed_with_water_can_be_chosen(client: Client) -> None:
    mould = {"name": "Blossom", "holds": "92", "cavities": "6", "like": "hemisphere-70"}
    change(client, MOULDS, do="add-mould", **mould)
    own = [each for each in moulds(kitchen_text(client.app.state.workbench.library))]
    blossom = next(each for each in own if each.id == "blossom")
    assert abs(blossom.solid.volume - 92e-6) < 0.5e-6
    assert blossom.cavities == 6


def test_what_is_wrong_is_refused_and_stays_as_typed(client: Client) -> None:
    path = f"/kitchen/walk/{COLD}"
    reply = client.post(path, {"started_from": "0", "set:freezers/#0/temperature": "icy"})
    assert reply.status == 422
    assert 'value="icy"' in reply.html
    wrong = {"do": "add-mould", "name": "Star", "holds": "a lot", "like": "hemisphere-70"}
    reply = client.post(f"/kitchen/walk/{MOULDS}", {"started_from": "0", **wrong})
    assert reply.status == 422
    assert 'value="a lot"' in reply.html
    assert kitchen_text(client.app.state.workbench.library) is None


def test_a_station_beyond_the_last_is_the_last(client: Client) -> None:
    assert stations()[-1].title in client.get("/kitchen/walk/99").words
