"""All calculators, in the order the job goes, and the one way to ask any of them.

Each calculator is the module of its own name in the folder of its topic, brought in when it is first asked for: a page that shows one of them
must not wait on a slow phone until all the others are read.
"""

from calc.core.answer import Answer, Calculator
from calc.core.fields import Fault, InputFault, read
from calc.numbers.words import cut, listed, quoted
from calc.text.door import say

FOLDERS = (
    ("decision", "decision"), ("takeoff", "site"), ("samples", "hazards"), ("lead", "hazards"), ("fixtures", "site"), ("reach", "site"),
    ("sheeting", "protect"), ("airflow", "protect"), ("wetting", "protect"), ("debris", "protect"), ("skim", "finish"), ("carry", "carry"),
    ("board", "board"), ("panels", "cover"), ("taping", "finish"), ("drying", "drying"), ("humidity", "drying"), ("paint", "finish"),
    ("plan", "job"), ("compare", "job"), ("shopping", "job"), ("offer", "job"),
)  # fmt: skip
NAMES = tuple([name for name, _ in FOLDERS])


def find(name: str) -> Calculator | None:
    """Return the calculator of that public name, or None."""
    folder = dict(FOLDERS).get(name)
    if folder is None:
        return None
    found: Calculator = __import__("calc." + folder + "." + name, None, None, ("CALCULATOR",)).CALCULATOR
    return found


def every() -> tuple[Calculator, ...]:
    """Return all calculators in order."""
    return tuple([one for one in [find(name) for name in NAMES] if one is not None])


def work_out(name: str, given: dict[str, str]) -> tuple[Answer | None, tuple[Fault, ...]]:
    """Return the answer of calculator `name` for the texts in `given`, or None with every fault found."""
    calculator = find(name)
    if calculator is None:
        message = say(
            "fault.calculator", "There is no calculator called {name}. Use {names}.",
            name=quoted(name), names=listed(NAMES, "or"),
        )  # fmt: skip
        return None, (Fault("calculator", cut(name), message, NAMES[0]),)
    values, faults = read(calculator.fields, given, calculator.one_of)
    if faults:
        return None, faults
    try:
        return calculator.work_out(values), ()
    except InputFault as fault:
        return None, fault.faults
