"""What a row of a job's stages holds, and what a wait is."""

from dataclasses import dataclass

from calc.text.door import say

ROOM, HOUSE = "room", "house"
"""Where a stage is done: in each room by itself, or once for the whole house."""

YOU, LICENSED, INSPECTOR, LABORATORY, FIRM = "you", "licensed-trade", "inspector", "laboratory", "licensed-contractor"
"""Who does a stage. Only `YOU` takes hours of one's own people; the others are waited for."""


@dataclass(frozen=True)
class Stage:
    """One stage of a job.

    `id` is public and stays; `phase` is the name of its part of the job, `task` says what is done. `where` is ROOM or HOUSE.
    `each_min` are the least and the most minutes of one person's work [min] for one room, or for the house; `per_100_min` are those
    that come on top for each 100 of what `goes_by` names, a calculator and one of its lines. `crew` people work at it together.
    `who` does it. `then` names the wait that follows before the next stage may start, '' where none does. `in_one_go` is not left
    half done over night. `times` names the input that says how often it is done, '' for once. `buys` are ids of materials. `page` is the page that tells how; `more_pages` tell of what differs in some
    houses. `source` is the id of what stands behind the minutes.
    """

    id: str
    phase: str
    task: str
    where: str
    each_min: tuple[int, int]
    page: str
    per_100_min: tuple[int, int] = (0, 0)
    goes_by: str = "takeoff ceiling_area_sqft"
    crew: int = 1
    who: str = YOU
    then: str = ""
    in_one_go: bool = False
    times: str = ""
    buys: tuple[str, ...] = ()
    more_pages: tuple[str, ...] = ()
    source: str = "common-practice"


@dataclass(frozen=True)
class Wait:
    """What has to pass before the next stage: `name` as it is told, and the least and the most hours on the clock [h], nights and
    weekends too; `by` names what gives the hours instead: 'coat', 'fill' and 'joint' go by the drying law, 'laboratory' by the days
    asked for. `call` says whom to call, and `ahead_days` how many days ahead [day], '' and 0 where nobody comes."""

    id: str
    name: str
    least_h: int
    most_h: int
    by: str = ""
    call: str = ""
    ahead_days: int = 0
    source: str = "common-practice"


def phase_told(one: Stage) -> str:
    """Return the name of the stage's part of the job."""
    return say("stage." + one.id + ".phase", one.phase)


def task_told(one: Stage) -> str:
    """Return what is done in the stage."""
    return say("stage." + one.id + ".task", one.task)


def wait_told(one: Wait) -> str:
    """Return the name of the wait."""
    return say("wait." + one.id + ".name", one.name)


def call_told(one: Wait) -> str:
    """Return who is called for the wait; '' where nobody is."""
    return say("wait." + one.id + ".call", one.call) if one.call else ""


def texts(stages: tuple[Stage, ...], waits: tuple[Wait, ...]) -> list[tuple[str, str]]:
    """Return the (key, English) pairs of all stages and waits."""
    found = []
    for stage in stages:
        found += [("stage." + stage.id + ".phase", stage.phase), ("stage." + stage.id + ".task", stage.task)]
    for wait in waits:
        found += [("wait." + wait.id + ".name", wait.name), ("wait." + wait.id + ".call", wait.call)]
    return [(key, english) for key, english in found if english]
