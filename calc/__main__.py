"""The command line: `python -m calc` lists the calculators, `python -m calc NAME key=value … [--json]` runs one."""

import sys

from calc import catalogue, fields
from calc.answer import Calculator, public
from calc.browser import fault_list
from calc.fields import Fault
from calc.render import text
from calc.words import json_text, quoted

EXIT_OK = 0
EXIT_FAULT = 2


def main(arguments: list[str]) -> int:
    """Run the command with `arguments` (the program's name left off); return its exit status, 0 or 2."""
    as_json = "--json" in arguments
    wants_help = "--help" in arguments or "-h" in arguments
    rest = [argument for argument in arguments if argument not in ("--json", "--help", "-h")]
    if not rest:
        print(_listing())
        return EXIT_OK
    calculator = catalogue.find(rest[0])
    if wants_help and calculator is not None:
        print(_help(calculator))
        return EXIT_OK
    given, faults = _pairs(rest[1:])
    answer, found = catalogue.work_out(rest[0], given)
    faults = faults + list(found)
    if answer is None or faults:
        if as_json:
            print(json_text({"faults": fault_list(tuple(faults))}))
        else:
            print(text.faults(tuple(faults)), file=sys.stderr)
        return EXIT_FAULT
    print(json_text(public(answer)) if as_json else text.answer(answer))
    return EXIT_OK


def _pairs(arguments: list[str]) -> tuple[dict[str, str], list[Fault]]:
    given: dict[str, str] = {}
    faults = []
    for argument in arguments:
        name, equals, value = argument.partition("=")
        if not equals or not name:
            message = "An input is written name=value, not " + quoted(argument) + "."
            faults.append(Fault(name, argument, message, "area_sqft=280"))
        elif name in given:
            message = "The input " + quoted(name) + " is given twice. Give it once."
            faults.append(Fault(name, value, message, name + "=" + given[name]))
        else:
            given[name] = value
    return given, faults


def _listing() -> str:
    width = max([len(one.name) for one in catalogue.every()]) + 2
    rows = ["Calculators:"]
    rows += ["  " + one.name.ljust(width) + one.summary for one in catalogue.every()]
    rows += [
        "",
        "Run one:        python -m calc NAME key=value … [--json]",
        "See its inputs: python -m calc NAME --help",
    ]
    return "\n".join(rows)


def _help(calculator: Calculator) -> str:
    rows = [calculator.name + ": " + calculator.summary, "", "Inputs:"]
    for field in calculator.fields:
        rows.append("  " + field.name)
        rows.append("      " + field.label + ". " + field.help)
        rows.append(
            "      " + fields.allowed(field) + (" If left out: " + field.default + "." if field.default else "")
        )
    if calculator.one_of:
        rows += ["", "Give exactly one of: " + ", ".join(calculator.one_of) + "."]
    typed = " ".join([name + "=" + _shell_quoted(value) for name, value in calculator.example])
    return "\n".join([*rows, "", "Example:", "  python -m calc " + calculator.name + " " + typed])


def _shell_quoted(value: str) -> str:
    plain = all([mark.isalnum() or mark in "./:" for mark in value])
    return value if plain else '"' + value.replace('"', '\\"') + '"'


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
