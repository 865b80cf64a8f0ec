"""All calculators, in the order the job goes, and the one way to ask any of them."""

from calc import (
    airflow,
    debris,
    drying,
    fixtures,
    humidity,
    lead,
    paint,
    panels,
    reach,
    samples,
    sheeting,
    skim,
    takeoff,
    taping,
    wetting,
)
from calc.answer import Answer, Calculator
from calc.fields import Fault, InputFault, read
from calc.words import listed, quoted

CALCULATORS = (
    takeoff.CALCULATOR,
    samples.CALCULATOR,
    lead.CALCULATOR,
    fixtures.CALCULATOR,
    reach.CALCULATOR,
    sheeting.CALCULATOR,
    airflow.CALCULATOR,
    wetting.CALCULATOR,
    debris.CALCULATOR,
    skim.CALCULATOR,
    panels.CALCULATOR,
    taping.CALCULATOR,
    drying.CALCULATOR,
    humidity.CALCULATOR,
    paint.CALCULATOR,
)


def find(name: str) -> Calculator | None:
    """Return the calculator of that public name, or None."""
    for one in CALCULATORS:
        if one.name == name:
            return one
    return None


def work_out(name: str, given: dict[str, str]) -> tuple[Answer | None, tuple[Fault, ...]]:
    """Return the answer of calculator `name` for the texts in `given`, or None with every fault found."""
    calculator = find(name)
    if calculator is None:
        names = [one.name for one in CALCULATORS]
        message = "There is no calculator called " + quoted(name) + ". Use " + listed(names, "or") + "."
        return None, (Fault("calculator", name, message, names[0]),)
    values, faults = read(calculator.fields, given, calculator.one_of)
    if faults:
        return None, faults
    try:
        return calculator.work_out(values), ()
    except InputFault as fault:
        return None, fault.faults
