"""Step 2: the larder file from the tables beside this script.

python build.py [--to PATH]     writes the file (default: where the program reads it)
python build.py --check         exit 1 unless the committed file has the same bytes
"""

from __future__ import annotations

import argparse
import tempfile
from collections import defaultdict
from pathlib import Path

from sqlite_file import write
from sr28_food import sr28_ingredient
from tables import HERE, Row, read
from trade_food import trade_ingredient

from entremetry.larder import Ingredient

TARGET = HERE.parents[1] / "src" / "entremetry" / "store" / "data" / "larder.sqlite"


def by(rows: list[Row], key: str) -> dict[str, list[Row]]:
    """Rows under the value of one column."""
    grouped: dict[str, list[Row]] = defaultdict(list)
    for row in rows:
        grouped[row[key]].append(row)
    return grouped


def ingredients() -> list[Ingredient]:
    """All ingredients: those of SR28 in the order of the selection, then those of the trade."""
    foods = {row["ndb"]: row for row in read("sr28.csv")}
    weights = by(read("sr28_weights.csv"), "ndb")
    extra, additions = by(read("household.csv"), "id"), by(read("additions.csv"), "id")
    larder: dict[str, Ingredient] = {}
    for row in read("selection.csv"):
        name, ndb = row["id"], row["ndb"]
        larder[name] = sr28_ingredient(row, foods[ndb], weights[ndb], extra[name], additions[name])
    waiting = read("trade.csv")
    while waiting:
        ready = [row for row in waiting if parts_known(row, larder)]
        if not ready:
            raise SystemExit(f"made of unknown parts: {[row['id'] for row in waiting]}")
        for row in ready:
            larder[row["id"]] = trade_ingredient(row, extra[row["id"]], larder)
        waiting = [row for row in waiting if row["id"] not in larder]
    order = [row["id"] for row in read("selection.csv") + read("trade.csv")]
    return [larder[name] for name in order if not name.startswith("_")]


def parts_known(row: Row, larder: dict[str, Ingredient]) -> bool:
    """Tell whether all that a row is made of or measured like is there."""
    rule = row["made_of"].split(" until ")[0].split(" dried to ")[0].removesuffix(" without fat")
    named = {part.split(" ")[0] for part in rule.split(" + ") if part}
    return (named | {row["measures_from"]} - {""}) <= set(larder) | {""}


def main() -> None:
    """Write the file, or compare it."""
    parser = argparse.ArgumentParser(description="Build the larder file.")
    parser.add_argument("--to", type=Path, default=TARGET)
    parser.add_argument("--check", action="store_true")
    chosen = parser.parse_args()
    if chosen.check:
        with tempfile.TemporaryDirectory() as folder:
            fresh = Path(folder) / "larder.sqlite"
            write(fresh, ingredients())
            if fresh.read_bytes() != TARGET.read_bytes():
                raise SystemExit("the committed larder file differs from what the tables give")
        return
    chosen.to.parent.mkdir(parents=True, exist_ok=True)
    made = ingredients()
    write(chosen.to, made)
    print(f"{len(made)} ingredients")


if __name__ == "__main__":
    main()
