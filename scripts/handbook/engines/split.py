"""Splits the small engine's modules into parts, so that a page brings only the calculators that it shows.

Modules that the same calculators import travel together: no module is fetched twice, and none without need. The first
part is the base, that any answer needs. What imports what is read from the source; nothing here names a calculator.
"""

import ast
from collections.abc import Mapping
from dataclasses import dataclass

ENTRY = "calc/browser.py"
PACKAGE = "__init__.py"  # a folder's own module, one line each: all are in the base


@dataclass(frozen=True)
class Split:
    """`parts` are paths of modules, the base first; `needs` says by calculator which parts it needs, the base too."""

    parts: tuple[tuple[str, ...], ...]
    needs: dict[str, list[int]]


def split(lowered: Mapping[str, str], calculators: Mapping[str, str]) -> Split:
    """Return the parts of `lowered` {path: source}, for `calculators` {public name: path of its module}.

    A module that no calculator reaches is in no part.
    """
    imports = {path: _imported(lowered, path) for path in lowered}
    base = closure(imports, [ENTRY, *[path for path in lowered if path.endswith(PACKAGE)]])
    reached = {name: closure(imports, [path]) for name, path in calculators.items()}
    base |= set.intersection(*reached.values())
    groups: dict[tuple[str, ...], list[str]] = {(): []}  # by who needs them; the base is nobody's own
    for path in lowered:
        needed_by = tuple(name for name in reached if path in reached[name])
        if path in base:
            groups[()].append(path)
        elif needed_by:
            groups.setdefault(needed_by, []).append(path)
    needs = {name: [at for at, who in enumerate(groups) if not who or name in who] for name in calculators}
    return Split(tuple(tuple(paths) for paths in groups.values()), needs)


def closure(imports: Mapping[str, list[str]], roots: list[str]) -> set[str]:
    """Return `roots` and every module that they lead to by `imports` {path: what it imports, wherever in its text}."""
    found: set[str] = set()
    waiting = list(roots)
    while waiting:
        path = waiting.pop()
        if path not in found:
            found.add(path)
            waiting += imports[path]
    return found


def _imported(lowered: Mapping[str, str], path: str) -> list[str]:
    names = []
    for node in ast.walk(ast.parse(lowered[path], path)):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            if node.level or node.module is None:
                raise ValueError(f"{path}:{node.lineno}: an import names the whole way, from calc on")
            names += [node.module, *[f"{node.module}.{alias.name}" for alias in node.names]]
    paths = [name.replace(".", "/") + ".py" for name in names]
    return [path for path in paths if path in lowered]
