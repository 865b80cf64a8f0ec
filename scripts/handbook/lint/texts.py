"""Every text of `calc` that people read and that passes the door for text, with its key and its place.

`python -m handbook.lint.texts` prints `key<TAB>English`. What is said is found in the source; what is declared (fields,
cautions, calculators) by walking the declarations. A key that is no literal, a key of two texts and slots that do not
match are faults.
"""

import ast
import importlib
import sys
from dataclasses import dataclass
from pathlib import Path

from calc import catalogue
from calc.core.fields import texts as texts_of_field
from calc.core.fields import unit_texts
from calc.decision.told import texts as texts_of_decision
from calc.evidence import cautions, limits
from calc.job.materials import texts as texts_of_materials
from calc.job.prices import texts as texts_of_prices
from calc.job.sides import SIDES
from calc.job.sides import texts as texts_of_sides
from calc.job.stage import texts as texts_of_stages
from calc.job.stages import STAGES
from calc.job.waits import WAITS
from calc.site.fixture_kinds import texts as texts_of_fixtures
from handbook.content.faults import ContentFault, ContentFaults

ROOT = Path(__file__).resolve().parents[3]
CODE = "TEXT"
# The door itself, and what hands declared texts to it under keys made of names: those are walked, not read.
MACHINERY = ("calc/text/door.py",)
MADE_BY: dict[str, tuple[str, ...]] = {
    "calc/core/answer.py": ("__init__",),
    "calc/core/fields.py": ("told", "unit_told"),
    "calc/core/lines.py": ("add",),
    "calc/decision/told.py": (
        "way_told", "way_within_told", "state_told", "action_told", "rule_told", "unknown_told", "label_told", "why_told",
        "choice_told", "answer_told",
    ),
    "calc/evidence/cautions.py": ("caution", "word"),
    "calc/evidence/limits.py": ("place_told", "says_told", "ask_told"),
    "calc/job/materials.py": ("material_told", "aisle_told", "count_told"),
    "calc/job/prices.py": ("by_told",),
    "calc/job/sides.py": ("short_told", "lowers_told", "refit_told", "see_told", "why_told"),
    "calc/job/stage.py": ("phase_told", "task_told", "wait_told", "call_told"),
    "calc/site/fixture_kinds.py": ("kind_told", "means_told"),
    "calc/numbers/words.py": ("plural", "listed"),
}  # fmt: skip


@dataclass(frozen=True, order=True)
class Text:
    """One text: its key, its English, and where it stands (`line` and `column` from 1; 0 for what is declared)."""

    key: str
    english: str
    path: str
    line: int
    column: int


def slots(text: str) -> tuple[str, ...]:
    """Return the names of the slots in `text`, each once, in order of the alphabet."""
    return tuple(sorted({part.partition("}")[0] for part in text.split("{")[1:]}))


def every_text(root: Path = ROOT) -> list[Text]:
    """Return all texts in order of their keys, each once; raises ContentFaults with every fault found."""
    found, faults = said(root)
    found += declared()
    faults += doubled(found)
    if faults:
        raise ContentFaults(faults)
    first: dict[str, Text] = {}
    for one in found:
        first.setdefault(one.key, one)
    return [first[key] for key in sorted(first)]


def declared() -> list[Text]:
    """Return the texts of fields and their units, cautions, limits, calculators, the choice of way, the stages of a job, what it
    takes and is paid by, and the things at a ceiling."""
    found = []
    for calculator in catalogue.every():
        path = f"calc/{dict(catalogue.FOLDERS)[calculator.name]}/{calculator.name}.py"
        rows = list(calculator.texts())
        for field in calculator.fields:
            rows += texts_of_field(calculator.name, field)
        found += [Text(key, english, path, 1, 1) for key, english in rows]
    found += [Text(key, english, "calc/core/fields.py", 1, 1) for key, english in unit_texts()]
    found += [Text(key, english, "calc/decision/told.py", 1, 1) for key, english in texts_of_decision()]
    found += [Text(key, english, "calc/job/stages.py", 1, 1) for key, english in texts_of_stages(STAGES, WAITS)]
    found += [Text(key, english, "calc/job/materials.py", 1, 1) for key, english in texts_of_materials()]
    found += [Text(key, english, "calc/job/prices.py", 1, 1) for key, english in texts_of_prices()]
    found += [Text(key, english, "calc/job/sides.py", 1, 1) for key, english in texts_of_sides(SIDES)]
    found += [Text(key, english, "calc/site/fixture_kinds.py", 1, 1) for key, english in texts_of_fixtures()]
    found += [Text(key, english, "calc/evidence/limits.py", 1, 1) for key, english in limits.texts()]
    rows = cautions.texts()
    return found + [Text(key, english, "calc/evidence/cautions.py", 1, 1) for key, english in rows]


def doubled(found: list[Text]) -> list[ContentFault]:
    """Return a fault for every key that stands for two different texts."""
    first: dict[str, Text] = {}
    faults = []
    for one in found:
        before = first.setdefault(one.key, one)
        if before.english != one.english:
            message = f"{one.key} has another text in {before.path}:{before.line}; a key stands for one"
            faults.append(ContentFault(one.path, one.line, one.column, CODE, message))
    return faults


def said(root: Path = ROOT) -> tuple[list[Text], list[ContentFault]]:
    """Return the texts that are said in the source of `root`/calc, and what is wrong with them."""
    modules = []
    for path in sorted((root / "calc").rglob("*.py")):
        shown = path.relative_to(root).as_posix()
        if shown not in MACHINERY:
            modules.append(Module(shown, ast.parse(path.read_text(encoding="utf-8"), shown)))
    callers = _callers(modules)
    for one in modules:
        one.look(callers)
    return [text for one in modules for text in one.found], [fault for one in modules for fault in one.faults]


class Module:
    """One module and what it says."""

    def __init__(self, path: str, tree: ast.Module) -> None:
        self.path = path
        self.tree = tree
        self.found: list[Text] = []
        self.faults: list[ContentFault] = []
        self.functions = [one for one in ast.walk(tree) if isinstance(one, ast.FunctionDef)]
        self.owners = [one for one in map(_lines_of, ast.walk(tree)) if one]

    def look(self, callers: dict[str, list[str]]) -> None:
        """Find what is said at the top and in every function."""
        inner = {id(node) for function in self.functions for node in ast.walk(function)}
        for node in ast.walk(self.tree):
            if isinstance(node, ast.Call) and id(node) not in inner:
                self._call(node, None, [])
        for function in self.functions:
            if function.name in MADE_BY.get(self.path, ()):
                continue
            owners = [one for one in map(_lines_of, ast.walk(function)) if one]
            owners = owners or callers.get(function.name, []) or sorted(set(self.owners))
            for node in ast.walk(function):
                if isinstance(node, ast.Call):
                    self._call(node, function, owners)

    def _call(self, node: ast.Call, function: ast.FunctionDef | None, owners: list[str]) -> None:
        called = node.func
        given = {one.arg: one.value for one in node.keywords if one.arg}
        if isinstance(called, ast.Name) and called.id == "say":
            if len(node.args) != 2:
                self._refuse(node, "say() takes a key and its English")
                return
            keys = self.texts(node.args[0], function, True)
            if keys is None:
                self._refuse(node, "the key is no literal")
            else:
                self._keep(node, keys, node.args[1], function, tuple(sorted(given)))
        elif _name_of(called) in ("plural", "rounded_up"):
            self._plural(node, function)
        elif _name_of(called) == "listed":
            joint = self.texts(node.args[1], function) if len(node.args) > 1 else ["and"]
            for one in joint or ():
                self.found.append(Text(f"joint.{one}", one, self.path, node.lineno, node.col_offset + 1))
        elif isinstance(called, ast.Attribute) and called.attr == "add" and {"name", "label", "rule"} <= set(given):
            names = self.texts(given["name"], function, True)
            if names is None or not owners:
                self._refuse(node, "the name of the line is no literal, or nobody owns the line")
                return
            extra = tuple(sorted(set(given) - {"name", "label", "amount", "unit", "places", "rule"}))
            for owner in sorted(set(owners)):
                for part in ("label", "rule"):
                    if not _is_said(given[part], function):
                        keys = [f"{owner}.{name}.{part}" for name in names]
                        self._keep(node, keys, given[part], function, extra, all_used=False)

    def _plural(self, node: ast.Call, function: ast.FunctionDef | None) -> None:
        nouns = [self.texts(one, function) for one in node.args[1:3]]
        if not nouns or nouns[0] is None or (len(nouns) > 1 and nouns[1] is None):
            return  # the noun came from where another literal is
        ones = nouns[0]
        many = nouns[1] if len(nouns) > 1 and nouns[1] is not None else [one + "s" for one in ones]
        for one, more in zip(ones, many, strict=False):
            self.found.append(Text(f"noun.{one}.one", one, self.path, node.lineno, node.col_offset + 1))
            self.found.append(Text(f"noun.{one}.many", more, self.path, node.lineno, node.col_offset + 1))

    def _keep(
        self, node: ast.Call, keys: list[str], text: ast.expr, function: ast.FunctionDef | None,
        given: tuple[str, ...], all_used: bool = True,
    ) -> None:  # fmt: skip
        english = self.texts(text, function, len(keys) > 1)
        if english is None:
            self._refuse(node, f"the English of {keys[0]} is no literal")
            return
        if len(english) == 1:
            english = english * len(keys)
        if len(english) != len(keys):
            self._refuse(node, f"{keys[0]} has more than one text; a key stands for one")
            return
        for key, one in zip(keys, english, strict=True):
            wanted = slots(one)
            if not set(wanted) <= set(given) or (all_used and set(given) != set(wanted)):
                self._refuse(node, f"{key} has the slots {', '.join(wanted)}; given are {', '.join(given)}")
            self.found.append(Text(key, one, self.path, node.lineno, node.col_offset + 1))

    def _refuse(self, node: ast.AST, message: str) -> None:
        line, column = getattr(node, "lineno", 1), getattr(node, "col_offset", 0) + 1
        self.faults.append(ContentFault(self.path, line, column, CODE, message))

    def texts(self, node: ast.expr, function: ast.FunctionDef | None, every: bool = False) -> list[str] | None:
        """Return the texts that `node` can be, or None where that does not stand in the source. A name is what it was
        bound to last before; with `every`, each that it is bound to."""
        if isinstance(node, ast.Constant):
            return [node.value] if isinstance(node.value, str) else None
        if isinstance(node, ast.IfExp):
            return _both(self.texts(node.body, function, every), self.texts(node.orelse, function, every))
        if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add):
            left, right = self.texts(node.left, function, every), self.texts(node.right, function, every)
            return None if left is None or right is None else [one + other for one in left for other in right]
        if isinstance(node, ast.Name):
            return self._named(node, function, every)
        return None

    def _named(self, node: ast.Name, function: ast.FunctionDef | None, every: bool) -> list[str] | None:
        bound: list[tuple[int, ast.expr]] = []
        for one in ast.walk(function) if function else ():
            if isinstance(one, ast.AugAssign) and getattr(one.target, "id", "") == node.id:
                return None  # made up of pieces
            if isinstance(one, ast.Assign) and one.lineno < node.lineno:
                for target in one.targets:
                    value = _bound(target, one.value, node.id)
                    if value is not None:
                        bound.append((one.lineno, value))
            if isinstance(one, ast.For) and (rows := self._column(one, node.id)) is not None:
                return rows
        bound.sort(key=lambda one: one[0])
        if bound:
            found: list[str] = []
            for _, value in bound if every else bound[-1:]:
                texts = self.texts(value, function, every)
                if texts is None:
                    return None
                found += texts
            return found
        if function and node.id in [one.arg for one in function.args.args + function.args.kwonlyargs]:
            return None
        value = getattr(importlib.import_module(_module_name(self.path)), node.id, None)
        return [value] if isinstance(value, str) else None

    def _column(self, loop: ast.For, name: str) -> list[str] | None:
        """Return what `name` is in turn in a loop over a table of the module."""
        target, table = loop.target, loop.iter
        if (
            isinstance(table, ast.Call)
            and getattr(table.func, "id", "") == "enumerate"
            and isinstance(target, ast.Tuple)
        ):
            target, table = target.elts[1], table.args[0]
        names = [getattr(one, "id", "") for one in target.elts] if isinstance(target, ast.Tuple) else []
        if isinstance(table, ast.Tuple) and name in names:
            cells = [one.elts[names.index(name)] for one in table.elts if isinstance(one, ast.Tuple)]
            return [one.value for one in cells if isinstance(one, ast.Constant) and isinstance(one.value, str)]
        if not isinstance(table, ast.Name):
            return None
        rows = getattr(importlib.import_module(_module_name(self.path)), table.id, None)
        if name not in names or not isinstance(rows, tuple):
            return None
        return [row[names.index(name)] for row in rows]


def _callers(modules: list[Module]) -> dict[str, list[str]]:
    """Return, for every function that takes `lines`, the calculators whose lines it is given."""
    helpers = [
        one.name
        for module in modules
        for one in module.functions
        if any(getattr(argument.annotation, "id", "") == "Lines" for argument in one.args.args)
    ]
    found: dict[str, list[str]] = {}
    for module in modules:
        for node in ast.walk(module.tree):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") in helpers:
                found.setdefault(getattr(node.func, "id", ""), []).extend(module.owners)
    return found


def _name_of(called: ast.expr) -> str:
    return called.attr if isinstance(called, ast.Attribute) else getattr(called, "id", "")


def _lines_of(node: ast.AST) -> str:
    """Return the calculator of `Lines("calculator", …)`, or ''."""
    if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Lines" and node.args:
        first = node.args[0]
        if isinstance(first, ast.Constant) and isinstance(first.value, str):
            return first.value
    return ""


def _bound(target: ast.expr, value: ast.expr, name: str) -> ast.expr | None:
    if isinstance(target, ast.Name) and target.id == name:
        return value
    if isinstance(target, ast.Tuple) and isinstance(value, ast.Tuple):
        for at, one in enumerate(target.elts):
            if isinstance(one, ast.Name) and one.id == name:
                return value.elts[at]
    return None


def _is_said(node: ast.expr, function: ast.FunctionDef | None) -> bool:
    """Return whether `node` is what say() gave, or was made elsewhere, where it is looked at in its own place."""
    if isinstance(node, ast.Call):
        return True
    if isinstance(node, ast.IfExp):
        return _is_said(node.body, function) and _is_said(node.orelse, function)
    if isinstance(node, ast.Name) and function is not None:
        values = [
            value
            for one in ast.walk(function)
            if isinstance(one, ast.Assign)
            for target in one.targets
            if (value := _bound(target, one.value, node.id)) is not None
        ]
        return bool(values) and all(_is_said(value, None) for value in values)
    return False


def _both(one: list[str] | None, other: list[str] | None) -> list[str] | None:
    return None if one is None or other is None else one + other


def _module_name(path: str) -> str:
    return path.removesuffix(".py").replace("/", ".")


def main() -> int:
    try:
        for one in every_text():
            print(f"{one.key}\t{one.english}")
    except ContentFaults as faults:
        print(faults, file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
