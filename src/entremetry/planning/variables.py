"""Makes the variables of a plan model, one method for each kind of task."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from entremetry.planning import wish
from entremetry.planning.plan_model import MOST_LATE, PlanModel, hand_parts
from entremetry.planning.task import Merge, Part, Side, Task
from entremetry.planning.task_times import Hand, TaskTimes

if TYPE_CHECKING:
    from entremetry.planning.linear import Linear, Truth


@dataclass(frozen=True, slots=True)
class Variables:
    """Adds the variables of all tasks to a model."""

    model: PlanModel

    def make(self) -> None:
        """Make the variables of every task, then those of the hands in them."""
        members = {name for merge in self.model.problem.merges for name in merge.tasks}
        for merge in self.model.problem.merges:
            self.merge(merge)
        for task in self.model.problem.tasks:
            if task.id not in members:
                self.model.times[task.id] = self.times(task, None)
        for times in self.model.times.values():
            if not times.absent and not times.is_done:
                self.hands(times)

    def merge(self, merge: Merge) -> None:
        """Choose between one task for several and each for itself, unless it has begun."""
        known = self.known()
        together = merge.together.id
        if together in known:
            times = self.times(merge.together, None)
            self.model.times[together] = times
            for name in merge.tasks:
                self.model.times[name] = self.shadow(self.model.problem.task(name), times)
        elif known & set(merge.tasks):
            for name in merge.tasks:
                self.model.times[name] = self.times(self.model.problem.task(name), None)
            now = self.model.now
            self.model.times[together] = TaskTimes(
                task=merge.together, start=now, end=now, wait=0, absent=True
            )
        else:
            self.choice(merge)

    def known(self) -> set[str]:
        """Tasks that history tells of."""
        return set() if self.model.history is None else set(self.model.history.told)

    def choice(self, merge: Merge) -> None:
        """Let the solver choose whether to merge."""
        cp = self.model.cp
        merged = cp.new_bool_var("merged")
        self.model.merged[merge.together.id] = merged
        one = self.model.times[merge.together.id] = self.times(merge.together, merged)
        cp.add(one.start == self.model.now).only_enforce_if(~merged)
        for name in merge.tasks:
            each = self.times(self.model.problem.task(name), ~merged)
            cp.add(each.start == one.start).only_enforce_if(merged)
            cp.add(each.end == one.end).only_enforce_if(merged)
            self.model.times[name] = each

    def shadow(self, task: Task, one: TaskTimes) -> TaskTimes:
        """Return the times of a task that another has begun to do for it."""
        return TaskTimes(
            task=task, start=one.start, end=one.end, wait=0, fixed=one.fixed, absent=True
        )

    def times(self, task: Task, present: Truth | None) -> TaskTimes:
        """Return start, end and wait of a task, as far as they have not happened."""
        history = self.model.history
        if history and (done := history.done_task(task.id)):
            wait = max(0, done.end - done.start - task.hands_on - task.closing)
            sides = frozenset(Side)
            return TaskTimes(task=task, start=done.start, end=done.end, wait=wait, fixed=sides)
        if history and (running := history.running_task(task.id)):
            return self.running(task, running.start)
        return self.open(task, present)

    def running(self, task: Task, start: int) -> TaskTimes:
        """Return the times of a task that has begun: its end is open, from now on."""
        gone = max(0, self.model.now - start - task.hands_on)
        shortest, longest = max(gone, task.waiting), max(gone, task.longest_wait)
        wait = self.wait(task, shortest, longest, MOST_LATE, known=False)
        end = start + task.hands_on + wait + task.closing
        fixed = frozenset({Side.START})
        return TaskTimes(task=task, start=start, end=end, wait=wait, fixed=fixed)

    def open(self, task: Task, present: Truth | None) -> TaskTimes:
        """Return the times of a task that is still to come."""
        start = self.model.cp.new_int_var(self.model.now, self.model.end, f"{task.id} starts")
        late = MOST_LATE if task.elastic else 0
        wait = self.wait(task, task.waiting, task.longest_wait, late)
        length = wait + task.hands_on + task.closing
        if present is None and isinstance(length, int):
            return TaskTimes(task=task, start=start, end=start + length, wait=wait)
        end = self.model.cp.new_int_var(self.model.now, self.model.end, f"{task.id} ends")
        when = [] if present is None else [present]
        self.model.cp.add(end == start + length).only_enforce_if(*when)
        return TaskTimes(task=task, start=start, end=end, wait=wait, present=present)

    def wait(
        self, task: Task, shortest: int, longest: int, late: int, *, known: bool = True
    ) -> Linear:
        """Return the minutes of waiting; a number if there is only one, and it may be one."""
        fact = wish.wait_most(task)
        extra = self.model.leeway.extra(fact, 0 if task.firm else late, WAIT_WEIGHT)
        needed = self.model.leeway.needs(fact) if task.elastic else []
        if known and shortest == longest and isinstance(extra, int) and not needed:
            return shortest
        reach = self.model.end - self.model.problem.start
        wait = self.model.cp.new_int_var(shortest, max(shortest, reach), f"{task.id} waits")
        self.model.cp.add(wait <= longest + extra).only_enforce_if(*needed)
        return wait

    def hands(self, times: TaskTimes) -> None:
        """Note the hands that a task still needs, and who may lend them."""
        for part, minutes in hand_parts(times.task):
            if part is Part.OPENING and times.is_running:
                continue
            people = self.model.problem.hands_for(times.task)
            only = len(people) == 1
            choice: dict[str, Truth | None] = {
                one.id: None if only else self.model.cp.new_bool_var(f"{one.id} {times.task.id}")
                for one in people
            }
            hand = Hand(
                task=times.task.id,
                part=part,
                start=times.stretch(part)[0],
                minutes=minutes,
                people=choice,
                present=times.present,
            )
            self.model.hands.append(hand)


WAIT_WEIGHT = 4
"""Price of a wait that lasts longer than it should, as for any other delay."""
