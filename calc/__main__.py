"""The command line: `python -m calc` lists the calculators, `python -m calc NAME key=value … [--json]` runs one."""

import sys

from calc import catalogue
from calc.browser import fault_list
from calc.core import fields
from calc.core.answer import Calculator, public
from calc.core.fields import Fault
from calc.numbers.words import cut, json_text, mended, quoted
from calc.render import text
from calc.text.door import say

EXIT_OK = 0
EXIT_FAULT = 2
PLAINER = (
    ("−", "-"),
    ("–", "-"),
    ("×", "x"),
    ("÷", "/"),
    ("“", '"'),
    ("”", '"'),
    ("’", "'"),
    ("…", "..."),
    ("√", "root "),
    ("→", "->"),
    ("²", "2"),
    ("³", "3"),
    ("°", " deg "),
    ("µ", "u"),
    ("½", " 1/2"),
    ("¼", " 1/4"),
    ("¾", " 3/4"),
    ("±", "+/-"),
    ("≥", ">="),
    ("≤", "<="),
)  # what stands for a mark that a terminal's code does not have
_TEN_BITS = 10
_FIRST_OF_PAIR, _SECOND_OF_PAIR, _PAIRED_FROM = 0xD800, 0xDC00, 0x10000  # how JSON writes a mark past four digits


def main(arguments: list[str]) -> int:
    """Run the command with `arguments` (the program's name left off); return its exit status, 0 or 2."""
    as_json = "--json" in arguments
    wants_help = "--help" in arguments or "-h" in arguments
    rest = [argument for argument in arguments if argument not in ("--json", "--help", "-h")]
    if not rest:
        _write(_listing())
        return EXIT_OK
    calculator = catalogue.find(rest[0])
    if wants_help and calculator is not None:
        _write(_help(calculator))
        return EXIT_OK
    given, faults = _pairs(rest[1:])
    answer, found = catalogue.work_out(rest[0], given)
    faults = faults + list(found)
    if answer is None or faults:
        if as_json:
            _write(json_text({"faults": fault_list(tuple(faults))}), as_json=True)
        else:
            _write(text.faults(tuple(faults)), failed=True)
        return EXIT_FAULT
    _write(json_text(public(answer)) if as_json else text.answer(answer), as_json)
    return EXIT_OK


def _write(told: str, as_json: bool = False, failed: bool = False) -> None:
    """Print in marks that the terminal or file has; who reads may have gone away, as `head` does."""
    to = sys.stderr if failed else sys.stdout
    encoding = getattr(to, "encoding", None) or "utf-8"
    try:
        print(_in_marks_of(encoding, mended(told), as_json), file=to, flush=True)
    except BrokenPipeError:
        try:
            to.close()  # else the interpreter tries once more to write what is left
        except BrokenPipeError:
            return


def _in_marks_of(encoding: str, told: str, as_json: bool) -> str:
    plainer = dict(PLAINER)
    known = {mark: mark for mark in told if mark.encode(encoding, "ignore")}
    return "".join(
        [known[mark] if mark in known else _json_code(mark) if as_json else plainer.get(mark, "?") for mark in told]
    )


def _json_code(mark: str) -> str:
    code = ord(mark)
    if code < _PAIRED_FROM:
        return "\\u" + hex(code)[2:].rjust(4, "0")
    code -= _PAIRED_FROM
    first, second = _FIRST_OF_PAIR + (code >> _TEN_BITS), _SECOND_OF_PAIR + code % (1 << _TEN_BITS)
    return "\\u" + hex(first)[2:] + "\\u" + hex(second)[2:]


def _pairs(arguments: list[str]) -> tuple[dict[str, str], list[Fault]]:
    given: dict[str, str] = {}
    faults = []
    for argument in arguments:
        name, equals, value = argument.partition("=")
        if not equals or not name:
            message = say(
                "fault.pair", "An input is written {form}, not {text}.", form="name=value", text=quoted(argument)
            )
            faults.append(Fault(cut(name), cut(argument), message, "area_sqft=280"))
        elif name in given:
            message = say("fault.twice", "The input {name} is given twice. Give it once.", name=quoted(name))
            faults.append(Fault(cut(name), cut(value), message, cut(name + "=" + given[name])))
        else:
            given[name] = value
    return given, faults


def _listing() -> str:
    width = max([len(one.name) for one in catalogue.every()]) + 2
    rows = [say("command.calculators", "Calculators:")]
    rows += ["  " + one.name.ljust(width) + one.summary for one in catalogue.every()]
    rows += [
        "",
        say("command.run", "Run one:        {command}", command="python -m calc NAME key=value … [--json]"),
        say("command.help", "See its inputs: {command}", command="python -m calc NAME --help"),
    ]
    return "\n".join(rows)


def _help(calculator: Calculator) -> str:
    rows = [calculator.name + ": " + calculator.summary, "", say("command.inputs", "Inputs:")]
    for field in calculator.fields:
        rows.append("  " + field.name)
        rows.append("      " + field.label + ("" if field.label.endswith("?") else ".") + " " + field.help)
        rows.append(
            "      "
            + fields.allowed(field)
            + (" " + say("command.left_out", "If left out: {usual}.", usual=field.default) if field.default else "")
        )
    if calculator.one_of:
        rows += ["", say("command.one_of", "Give exactly one of: {names}.", names=", ".join(calculator.one_of))]
    typed = " ".join([name + "=" + _shell_quoted(value) for name, value in calculator.example])
    return "\n".join([*rows, "", say("text.example", "Example:"), "  python -m calc " + calculator.name + " " + typed])


def _shell_quoted(value: str) -> str:
    plain = all([mark.isalnum() or mark in "./:" for mark in value])
    return value if plain else '"' + value.replace('"', '\\"') + '"'


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
