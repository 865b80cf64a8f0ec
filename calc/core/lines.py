"""The lines of an answer, each made of one quantity: what it is, how it came about and what stands behind it cannot differ."""

from calc.core.answer import Line
from calc.numbers import measure
from calc.numbers.quantity import Quantity, from_line, sources_of
from calc.numbers.working import working
from calc.text.door import say


class Lines:
    """The lines of one answer of `calculator`, shown in 'customary' or 'metric' units, in the order in which they are added."""

    def __init__(self, calculator: str, show_in: str) -> None:
        self.calculator = calculator
        self.show_in = show_in
        self.found: list[Line] = []

    def add(
        self, *, name: str, label: str, amount: Quantity, unit: str, places: int, rule: str, **slots: str
    ) -> Quantity:
        """Add a line and return its quantity as one number, for the lines that go on from it.

        `name` is the public key and ends in its unit; `amount` becomes value, working and sources; it is shown in `unit` with
        `places` decimals; `rule` says the formula in words, its {slots} filled by `slots`. Label and rule go through the door for
        text under the keys CALCULATOR.NAME.label and CALCULATOR.NAME.rule. Raises UnitFault where `unit` does not fit.
        """
        value = amount.to(unit)
        key = self.calculator + "." + name
        sources = sources_of(amount)
        self.found.append(
            Line(
                name=name,
                label=say(key + ".label", label, **slots),
                value=value,
                unit=unit,
                places=places,
                shown=measure.shown(value, unit, places, self.show_in),
                rule=say(key + ".rule", rule, **slots),
                working=working(amount, unit, self.show_in == "metric"),
                sources=sources,
            )
        )
        return from_line(value, unit, sources)

    def shown(self, name: str) -> str:
        """Return the value of the line called `name` as it is shown. Raises KeyError where there is none."""
        for one in self.found:
            if one.name == name:
                return one.shown
        raise KeyError(name)

    def tuple(self) -> tuple[Line, ...]:
        """Return the lines in their order."""
        return tuple(self.found)
