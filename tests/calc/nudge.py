"""Each number that the calculators stand on, nudged, and the printed figures that notice.

    PYTHONPATH=.:scripts python tests/calc/nudge.py [module …] [-module.NAME …]

A number is a literal in an upper-case name at the top of a module of `calc`. It is made larger and smaller by a fiftieth
(a whole number by one), the whole package is read anew with it, and the vectors of every calculator that stands on that
module are worked out until one of them no longer agrees. What no vector notices is listed. A name after a dash is left out.
"""

import ast
import functools
import importlib
import importlib.abc
import importlib.util
import json
import signal
import sys
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
CALC = ROOT / "calc"
# words, layout and the book's own data: no number of the trade stands in them
LEFT_OUT = ("words", "drawing", "fields", "answer", "sources", "published", "catalogue", "browser", "__main__", "__init__")  # fmt: skip
SECONDS = (
    15  # of own work for one row, however busy the machine: a nudge that stops an answer from ending is noticed too
)
SLOW = {
    "board": 9,
    "taping": 8,
    "carry": 7,
    "humidity": 6,
    "decision": 5,
    "sheeting": 4,
    "shopping": 10,
    "plan": 11,
    "offer": 12,
    "compare": 13,
}  # asked last


@dataclass(frozen=True)
class Number:
    """A literal: the module and the name it stands in, which of the literals there it is, and its text."""

    module: str
    name: str
    at: int
    text: str
    line: int

    @property
    def name_in_list(self) -> str:
        return f"{self.module}.{self.name}"

    @property
    def id(self) -> str:
        return self.name_in_list + (f"[{self.at}]" if self.at else "")


def numbers() -> list[Number]:
    """Every number of every module, in the order of the files."""
    found = []
    for path in sorted(CALC.rglob("*.py")):
        module = ".".join(path.relative_to(CALC).with_suffix("").parts)
        if module.startswith("render.") or module.split(".")[-1] in LEFT_OUT:
            continue
        for name, leaves in _constants(ast.parse(path.read_text(encoding="utf-8"))):
            found += [Number(module, name, at, str(leaf.value), leaf.lineno) for at, leaf in enumerate(leaves)]
    return found


def _constants(tree):
    for node in tree.body:
        if isinstance(node, ast.AnnAssign) and node.value is not None:
            targets = [node.target]
        elif isinstance(node, ast.Assign):
            targets = node.targets
        else:
            continue
        names = [one.id for target in targets for one in ast.walk(target) if isinstance(one, ast.Name)]
        if names and all(name.lstrip("_").isupper() for name in names):
            leaves = list(_leaves(node.value))
            if leaves:
                yield names[0], leaves


def _leaves(node):
    """Number literals of a value; of a fraction only what is divided, so that each number is nudged once."""
    if isinstance(node, ast.Constant):
        if isinstance(node.value, int) and not isinstance(node.value, bool):
            yield node
    elif isinstance(node, ast.Call):
        name = node.func.id if isinstance(node.func, ast.Name) else ""
        if name in ("Fraction", "fact") and node.args:
            yield from _leaves(node.args[0])
        elif name in ("ratio", "inches", "dict", "tuple", "list"):
            for one in node.args:
                yield from _leaves(one)
    elif isinstance(node, (ast.Tuple, ast.List)):
        for one in node.elts:
            yield from _leaves(one)
    elif isinstance(node, ast.BinOp):
        yield from _leaves(node.left)
        if not isinstance(node.op, ast.Pow):
            yield from _leaves(node.right)
    elif isinstance(node, ast.UnaryOp):
        yield from _leaves(node.operand)


class _Nudged(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Brings one module in with one literal replaced."""

    def __init__(self, number: Number, value: Fraction) -> None:
        self.number, self.value = number, value

    def find_spec(self, name, path=None, target=None):
        if name != "calc." + self.number.module:
            return None
        file = CALC.joinpath(*self.number.module.split(".")).with_suffix(".py")
        return importlib.util.spec_from_file_location(name, file, loader=self)

    def create_module(self, spec):
        return None

    def exec_module(self, module):
        tree = ast.parse(Path(module.__file__).read_text(encoding="utf-8"))
        for name, leaves in _constants(tree):
            if name == self.number.name and len(leaves) > self.number.at:
                leaf = leaves[self.number.at]
                if str(leaf.value) == self.number.text and leaf.lineno == self.number.line:
                    _replace(tree, leaf, self.value)
        exec(compile(ast.fix_missing_locations(tree), module.__file__, "exec"), module.__dict__)


def _replace(tree, leaf, value):
    fresh = (
        ast.Constant(int(value))
        if value.denominator == 1
        else ast.Call(
            ast.Name("__nudged__", ast.Load()), [ast.Constant(value.numerator), ast.Constant(value.denominator)], []
        )
    )

    class Put(ast.NodeTransformer):
        def visit_Constant(self, node):
            return ast.copy_location(fresh, node) if node is leaf else node

    Put().visit(tree)
    if isinstance(fresh, ast.Call):
        tree.body.insert(_after_docstring(tree), ast.parse("from fractions import Fraction as __nudged__").body[0])


def _after_docstring(tree):
    return 1 if tree.body and isinstance(tree.body[0], ast.Expr) else 0


def nudges(number: Number) -> tuple[Fraction, ...]:
    """The values to try in its place."""
    value = Fraction(number.text)
    return (value + 1, value - 1) if abs(value) < 50 else (value * Fraction(51, 50), value * Fraction(49, 50))


def users() -> dict[str, set[str]]:
    """Module -> the calculators that stand on it, by following imports."""
    imports = {}
    for path in CALC.rglob("*.py"):
        module = ".".join(path.relative_to(CALC).with_suffix("").parts)
        found = set()
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ImportFrom) and node.module and node.module.split(".")[0] == "calc":
                found.add(node.module.removeprefix("calc").lstrip("."))
                found |= {
                    f"{node.module.removeprefix('calc').lstrip('.')}.{one.name}".lstrip(".") for one in node.names
                }
        imports[module] = found & {
            ".".join(one.relative_to(CALC).with_suffix("").parts) for one in CALC.rglob("*.py")
        } | {one for one in found if (CALC / f"{one.replace('.', '/')}.py").exists()}
    _fresh()
    from calc import catalogue

    by = {module: set() for module in imports}
    for one in catalogue.every():
        module = type_module(one)
        seen, queue = set(), [module]
        while queue:
            here = queue.pop()
            if here not in seen:
                seen.add(here)
                queue += imports.get(here, ())
        for used in seen:
            by.setdefault(used, set()).add(one.name)
    return by


def _too_long(*_) -> None:
    raise TimeoutError("no answer any more")


def type_module(calculator) -> str:
    """The module that a calculator is declared in."""
    return calculator.work_out.__module__.removeprefix("calc.")


def _fresh() -> None:
    """What has read the old number, or keeps what was answered with it, is forgotten."""
    for name in [one for one in sys.modules if one.split(".")[0] in ("calc", "handbook")]:
        del sys.modules[name]


def noticed(number: Number, calculators: set[str], value: Fraction) -> str:
    """The first vector that turns red, is refused or breaks with this number nudged; '' where none does."""
    _fresh()
    finder = _Nudged(number, value)
    sys.meta_path.insert(0, finder)
    signal.signal(signal.SIGVTALRM, _too_long)
    try:
        signal.setitimer(signal.ITIMER_VIRTUAL, SECONDS)
        evidence = importlib.import_module("handbook.evidence.check_table")

        for calculator in sorted(calculators, key=lambda name: SLOW.get(name, 0)):
            for vector in _vectors(calculator):
                signal.setitimer(signal.ITIMER_VIRTUAL, SECONDS)
                try:
                    if not all(one.agrees for one in evidence.checks(calculator, vector)):
                        return f"{calculator} {vector['id']}"
                except Exception:
                    return f"{calculator} {vector['id']} (refused)"
        return ""
    except Exception:
        return "the module itself"
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        sys.meta_path.remove(finder)
        _fresh()


@functools.cache
def _vectors(calculator: str) -> list:
    return json.loads((ROOT / "docs" / "evidence" / "figures" / f"{calculator}.json").read_text(encoding="utf-8"))


def held(number: Number, by: dict[str, set[str]]) -> str:
    """What notices this number when it is nudged one way or the other; '' where nothing does."""
    for value in nudges(number):
        found = noticed(number, by.get(number.module, set()), value)
        if found:
            return found
    return ""


def main(told: list[str]) -> int:
    by = users()
    loose = []
    modules = [one for one in told if not one.startswith("-")]
    for number in numbers():
        if (modules and number.module not in modules) or "-" + number.name_in_list in told:
            continue
        found = held(number, by)
        print(f"{'held ' if found else 'LOOSE'} {number.id} = {number.text}  {found}", flush=True)
        if not found:
            loose.append(number)
    print(f"{len(loose)} held by no printed figure")
    return 0


if __name__ == "__main__":
    sys.path[:0] = [str(ROOT), str(ROOT / "scripts")]
    sys.exit(main(sys.argv[1:]))
