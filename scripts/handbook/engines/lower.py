"""Lowers `calc` for the small engine: the same Python with what that engine lacks written out.

The small engine (MicroPython) has no dataclasses, annotations of generic types, `fractions`, ordered `dict`
or positional-only marks. This pass rewrites them; what it cannot rewrite it refuses, all at once, so that a
calculator never fails first on a visitor's phone. The result is still Python and runs under CPython too.
"""

import ast
from pathlib import Path

from calc.evidence.sources import SOURCES
from handbook.content.faults import ContentFault, ContentFaults

DROPPED_MODULES = ("typing", "collections.abc", "__future__")
LEFT_OUT = ("calc/__main__.py", "calc/render/form.py", "calc/render/text.py")  # no use in a page
MISSING_METHODS = frozenset(
    "ljust rjust zfill removeprefix removesuffix casefold title capitalize translate expandtabs swapcase isalnum "
    "isascii isdecimal isidentifier format_map as_integer_ratio bit_length is_integer".split()
)
MISSING_NAMES = frozenset("vars format ascii breakpoint".split())
NO_CONVERSION = -1  # how the parser marks a slot without !r, !s or !a
KNOWN_MODULES = ("calc", "dataclasses", "fractions", "json", *DROPPED_MODULES)


def lower_package(source: Path, root: Path) -> dict[str, str]:
    """Return {path inside the bundle: lowered source} for the package at `source`; raises ContentFaults."""
    faults: list[ContentFault] = []
    bundle = {}
    for path in sorted(source.rglob("*.py")):
        if path.relative_to(source.parent).as_posix() in LEFT_OUT:
            continue
        shown = path.relative_to(root).as_posix()
        lowering = _Lowering(shown)
        tree = lowering.visit(ast.parse(path.read_text(encoding="utf-8"), shown))
        faults += lowering.faults
        if lowering.ordered:
            tree.body.insert(0, ast.parse("from collections import OrderedDict").body[0])
        bundle[path.relative_to(source.parent).as_posix()] = ast.unparse(ast.fix_missing_locations(tree)) + "\n"
    if faults:
        raise ContentFaults(faults)
    rows = tuple([(one.id, one.title) for one in SOURCES])  # all that an answer shows of a source
    register = _without_docstrings("sources.py")
    if register.count("ROWS = ()\n") != 1:
        raise RuntimeError("small/sources.py has no line for the build to fill")
    bundle["calc/evidence/sources.py"] = register.replace("ROWS = ()\n", f"ROWS = {rows!r}\n")
    bundle["fractions.py"] = _without_docstrings("fractions.py")
    return bundle


def _without_docstrings(name: str) -> str:
    text = (Path(__file__).parent / "small" / name).read_text(encoding="utf-8")
    lowering = _Lowering(name)
    return ast.unparse(ast.fix_missing_locations(lowering.visit(ast.parse(text)))) + "\n"


class _Lowering(ast.NodeTransformer):
    def __init__(self, path: str) -> None:
        self.path = path
        self.faults: list[ContentFault] = []
        self.ordered = False

    def refuse(self, node: ast.AST, message: str) -> None:
        line, column = getattr(node, "lineno", 1), getattr(node, "col_offset", 0) + 1
        self.faults.append(ContentFault(self.path, line, column, "LOWER", message))

    # Annotations, docstrings and imports that only serve the type checker.

    def visit_Module(self, node: ast.Module) -> ast.AST:
        self.generic_visit(node)
        node.body = _no_docstring(node.body)
        return node

    def visit_Import(self, node: ast.Import) -> ast.AST | None:
        for alias in node.names:
            if alias.name.split(".")[0] not in KNOWN_MODULES:
                self.refuse(node, f"the small engine has no module {alias.name}")
        return node

    def visit_ImportFrom(self, node: ast.ImportFrom) -> ast.AST | None:
        module = node.module or ""
        if module in (*DROPPED_MODULES, "dataclasses"):
            return None
        if module.split(".")[0] not in KNOWN_MODULES:
            self.refuse(node, f"the small engine has no module {module}")
        return node

    def visit_AnnAssign(self, node: ast.AnnAssign) -> ast.AST | None:
        if node.value is None:
            return None
        return ast.copy_location(ast.Assign([node.target], self.visit(node.value)), node)

    def visit_FunctionDef(self, node: ast.FunctionDef) -> ast.AST:
        self.generic_visit(node)
        node.returns = None
        every = [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]
        for argument in (*every, node.args.vararg, node.args.kwarg):
            if argument is not None:
                argument.annotation = None
        node.args.args = [*node.args.posonlyargs, *node.args.args]
        node.args.posonlyargs = []
        node.body = _no_docstring(node.body) or [ast.Pass()]
        return node

    def visit_Expr(self, node: ast.Expr) -> ast.AST | None:
        if isinstance(node.value, ast.Constant) and isinstance(node.value.value, str):
            return None  # a docstring of a constant
        return self.generic_visit(node)

    # Frozen dataclasses, written out.

    def visit_ClassDef(self, node: ast.ClassDef) -> ast.AST:
        is_data = any(_is_dataclass(one) for one in node.decorator_list)
        fields = [
            (one.target.id, one.value)
            for one in node.body
            if isinstance(one, ast.AnnAssign) and isinstance(one.target, ast.Name)
        ]
        self.generic_visit(node)
        node.body = _no_docstring(node.body)
        if is_data:
            node.decorator_list = [one for one in node.decorator_list if not _is_dataclass(one)]
            names = [name for name, _ in fields]
            node.body = [one for one in node.body if not (isinstance(one, ast.Assign) and _target(one) in names)]
            node.body = ast.parse(_written_out(node.name, fields)).body + node.body
        if not node.body:
            node.body = [ast.Pass()]
        return node

    # Dictionaries keep their order.

    def visit_Dict(self, node: ast.Dict) -> ast.AST:
        self.generic_visit(node)
        pairs = []
        for key, value in zip(node.keys, node.values, strict=True):
            if key is None:
                self.refuse(node, "the small engine cannot unpack a dictionary into another")
                return node
            pairs.append(ast.Tuple([key, value], ast.Load()))
        return self._ordered(node, [ast.List([*pairs], ast.Load())] if pairs else [])

    def visit_DictComp(self, node: ast.DictComp) -> ast.AST:
        self.generic_visit(node)
        pair = ast.Tuple([node.key, node.value], ast.Load())
        return self._ordered(node, [ast.ListComp(pair, node.generators)])

    def visit_Call(self, node: ast.Call) -> ast.AST:
        self.generic_visit(node)
        function = node.func
        if isinstance(function, ast.Name):
            if function.id == "dict":
                if node.keywords:
                    self.refuse(node, "dict(name=…) does not keep its order in the small engine")
                return self._ordered(node, node.args)
            if function.id == "zip" and node.keywords:
                self.refuse(node, "zip(strict=…) is not in the small engine; count with enumerate")
            if function.id in MISSING_NAMES:
                self.refuse(node, f"the small engine has no {function.id}()")
            if function.id in ("set", "frozenset"):
                self.refuse(node, "a set has no order; use a tuple or a list")
            if function.id in ("float", "round", "complex"):
                self.refuse(
                    node,
                    f"{function.id}() is not the same in every engine; use calc.numbers.exact and calc.numbers.words",
                )
        if isinstance(function, ast.Attribute) and function.attr in MISSING_METHODS:
            self.refuse(node, f"the small engine has no .{function.attr}()")
        return node

    def visit_Compare(self, node: ast.Compare) -> ast.AST:
        """The small engine never asks a fraction on the right to compare itself with an int on the left: turn such
        comparisons round, and write a chain out as its parts."""
        self.generic_visit(node)
        operands = [node.left, *node.comparators]
        if len(operands) > 2 and not all(isinstance(one, _PLAIN) for one in operands[1:-1]):
            self.refuse(node, "the middle of a chained comparison must be a plain name in the small engine")
        parts = []
        for left, operator, right in zip(operands, node.ops, operands[1:], strict=False):
            if type(operator) in _TURNED and _may_be_int(left):
                left, operator, right = right, _TURNED[type(operator)](), left
            parts.append(ast.Compare(left, [operator], [right]))
        whole = parts[0] if len(parts) == 1 else ast.BoolOp(ast.And(), [*parts])
        return ast.copy_location(whole, node)

    def _ordered(self, node: ast.AST, arguments: list[ast.expr]) -> ast.AST:
        self.ordered = True
        return ast.copy_location(ast.Call(ast.Name("OrderedDict", ast.Load()), arguments, []), node)

    # What cannot be lowered.

    def visit_Constant(self, node: ast.Constant) -> ast.AST:
        if isinstance(node.value, float):
            self.refuse(node, "a float is not the same in every engine; use a Fraction")
        return node

    def visit_Set(self, node: ast.Set) -> ast.AST:
        self.refuse(node, "a set has no order; use a tuple or a list")
        return node

    def visit_SetComp(self, node: ast.SetComp) -> ast.AST:
        self.refuse(node, "a set has no order; use a tuple or a list")
        return node

    def visit_Match(self, node: ast.Match) -> ast.AST:
        self.refuse(node, "the small engine has no match statement")
        return node

    def visit_JoinedStr(self, node: ast.JoinedStr) -> ast.AST:
        """An f-string becomes a join, which takes nothing but text: a number in a slot, whose digits could differ by
        engine, raises TypeError there. So a slot may hold what gives text, and no format that makes text of a number."""
        parts = []
        for one in node.values:
            if isinstance(one, ast.FormattedValue):
                if one.format_spec is not None or one.conversion != NO_CONVERSION:
                    self.refuse(one, "numbers become text through calc.numbers.words only, not by an f-string's format")
                elif not isinstance(one.value, (ast.Name, ast.Attribute, ast.Call)):
                    self.refuse(one, "a slot of an f-string holds a name, an attribute or a call that gives text")
                one = one.value
            parts.append(self.visit(one))
        join = ast.Attribute(ast.Constant(""), "join", ast.Load())
        return ast.copy_location(ast.Call(join, [ast.Tuple(parts, ast.Load())], []), node)

    def visit_Tuple(self, node: ast.Tuple) -> ast.AST:
        if isinstance(node.ctx, ast.Load) and any(isinstance(one, ast.Starred) for one in node.elts):
            self.refuse(node, "the small engine cannot unpack into a tuple; add the tuples")
        return self.generic_visit(node)

    def visit_List(self, node: ast.List) -> ast.AST:
        if isinstance(node.ctx, ast.Load) and any(isinstance(one, ast.Starred) for one in node.elts):
            self.refuse(node, "the small engine cannot unpack into a list; add the lists")
        return self.generic_visit(node)

    def visit_Assign(self, node: ast.Assign) -> ast.AST:
        value = node.value
        if (
            isinstance(value, ast.Subscript)
            and isinstance(value.value, ast.Name)
            and value.value.id in ("tuple", "list", "dict")
        ):
            self.refuse(node, "a type has no other name in the small engine; write it out in each annotation")
        return self.generic_visit(node)

    def visit_AsyncFunctionDef(self, node: ast.AsyncFunctionDef) -> ast.AST:
        self.refuse(node, "calculators are plain functions")
        return node


_PLAIN = (ast.Name, ast.Attribute, ast.Constant)
_TURNED = {ast.Lt: ast.Gt, ast.LtE: ast.GtE, ast.Gt: ast.Lt, ast.GtE: ast.LtE, ast.Eq: ast.Eq, ast.NotEq: ast.NotEq}


def _may_be_int(node: ast.expr) -> bool:
    """A whole number written out, or a constant by its capital letters."""
    if isinstance(node, ast.UnaryOp):
        node = node.operand
    if isinstance(node, ast.Constant):
        return isinstance(node.value, int)
    return isinstance(node, ast.Name) and node.id.isupper()


def _no_docstring(body: list[ast.stmt]) -> list[ast.stmt]:
    first = body[0] if body else None
    if isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant) and isinstance(first.value.value, str):
        return body[1:]
    return body


def _is_dataclass(node: ast.expr) -> bool:
    called = node.func if isinstance(node, ast.Call) else node
    return isinstance(called, ast.Name) and called.id == "dataclass"


def _target(node: ast.Assign) -> str:
    first = node.targets[0]
    return first.id if isinstance(first, ast.Name) else ""


def _written_out(name: str, fields: list[tuple[str, ast.expr | None]]) -> str:
    """The methods that a frozen dataclass would get, as source."""
    names = [field for field, _ in fields]
    signature = ", ".join(field if value is None else f"{field}={ast.unparse(value)}" for field, value in fields)
    rows = [f"def __init__(self, {signature}):"]
    rows += [f"    self.{field} = {field}" for field in names]
    rows += ["def _values(self):", "    return (" + "".join(f"self.{field}, " for field in names) + ")"]
    rows += ["def __eq__(self, other):", f"    return isinstance(other, {name}) and self._values() == other._values()"]
    rows += ["def __hash__(self):", "    return hash(self._values())"]
    return "\n".join(rows)
