"""Reads `firm.yml` with every fault of it at once: what was given, what is allowed, and an example that works, by line and column.

Values are taken as they are written: YAML would turn 1/2 into text, 65.50 into 65.5 and 12:30 into 750.
"""

import re
import types
import typing
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import yaml
from pydantic import BaseModel, ValidationError
from pydantic.fields import FieldInfo

from calc.numbers.words import quoted
from handbook.content.faults import ContentFault
from handbook.firm.declared import FirmFile

MOST_BYTES = 200_000
BREAKS = re.compile(r"[\x00-\x1f\x7f-\x9f\u2028\u2029]+")
# In place of what every file needs and this one lacks, while the rest of it is looked into.
STAND_IN = {"business": {"name": "A firm", "phone": "0000", "area": "Here"}, "reviewed": "2026-01-01"}
DEEPEST = 12  # lists and tables in each other; no key needs more than six


@dataclass
class Reading:
    """A file that is being looked at: where its values stand, what is declared of them, and what is wrong."""

    path: Path
    shown: str
    positions: dict[tuple[Any, ...], tuple[int, int]] = field(default_factory=dict)
    faults: list[ContentFault] = field(default_factory=list)
    data: Any = None

    @property
    def folder(self) -> Path:
        """Where the files lie that the firm names."""
        return self.path.parent

    def at(self, *where: Any) -> tuple[int, int]:
        """Return line and column of the value at `where`, or of the nearest thing that holds it."""
        while where and where not in self.positions:
            where = where[:-1]
        return self.positions.get(where, (1, 1))

    def fault(self, where: tuple[Any, ...], code: str, message: str) -> None:
        self.tell(*self.at(*where), code, message)

    def tell(self, line: int, column: int, code: str, message: str) -> None:
        """Note a fault; whatever was given, it is one line."""
        self.faults.append(ContentFault(self.shown, line, column, f"FIRM-{code}", BREAKS.sub(" ", message)))

    def refuse(self, where: tuple[Any, ...], code: str, why: str) -> None:
        """Tell that the value at `where` will not do: which, what was given, why, what is allowed, an example."""
        given = self.data
        for part in where:
            given = given[part]
        self.fault(where, code, f"{dotted(where)}: {quoted(str(given))} will not do, {why}. {allowed(where)}")


def read(path: Path, shown: str) -> tuple[FirmFile | None, Reading]:
    """Return what the file says, with each key of a wrong form left out, or None where there is no such file; its faults stand in
    the reading."""
    reading = Reading(path, shown)
    try:
        raw = path.read_bytes()
        text = raw.decode("utf-8")
    except OSError:
        reading.fault(
            (), "FILE", f"there is no file {shown}. Give the path of a firm.yml: build --firm docs/firm/firm.yml"
        )
        return None, reading
    except UnicodeDecodeError:
        reading.fault((), "FILE", "the file is not in UTF-8. Save it as UTF-8 text")
        return None, reading
    if len(raw) > MOST_BYTES:
        reading.fault((), "FILE", f"{len(raw)} bytes are too many; {MOST_BYTES} at most")
        return None, reading
    if not _composed(reading, text):
        return None, reading
    try:
        return FirmFile.model_validate(reading.data), reading
    except ValidationError as error:
        for one in error.errors():
            _tell(reading, dict(one))
        # What is good is looked into all the same, so that all faults are told at once; nothing is built with a fault.
        wrong = {one["loc"][0] for one in error.errors()}
        good = {name: value for name, value in reading.data.items() if name not in wrong}
        return FirmFile.model_validate({**STAND_IN, **good}), reading


def _composed(reading: Reading, text: str) -> bool:
    """Fill in the data and where it stands; tell what is no YAML, keys given twice, and values that stand for others."""
    try:
        for event in yaml.parse(text, Loader=yaml.BaseLoader):
            if isinstance(event, yaml.AliasEvent) or getattr(event, "anchor", None) or getattr(event, "tag", None):
                message = "a value that stands for another (&, *) or for a type (!) is not taken. Write it out"
                reading.tell(*_place(event.start_mark), "YAML", message)
        if reading.faults:
            return False
        node = yaml.compose(text, Loader=yaml.BaseLoader)
        if not isinstance(node, yaml.MappingNode):
            reading.fault((), "YAML", "the file holds no keys. Begin with: business:")
            return False
        _walk(reading, node, ())
        if not reading.faults:
            reading.data = yaml.load(text, Loader=yaml.BaseLoader)
    except (yaml.MarkedYAMLError, yaml.reader.ReaderError, RecursionError) as error:
        mark = getattr(error, "problem_mark", None)
        problem = getattr(error, "problem", None) or getattr(error, "reason", None) or "it lies too deep"
        reading.tell(*_place(mark), "YAML", f"this is not YAML: {problem}")
    return not reading.faults


def _place(mark: Any) -> tuple[int, int]:
    return (mark.line + 1, mark.column + 1) if mark else (1, 1)


def _walk(reading: Reading, node: yaml.Node, where: tuple[Any, ...]) -> None:
    reading.positions[where] = _place(node.start_mark)
    if len(where) > DEEPEST:
        reading.fault(where, "YAML", "it lies too deep")
        return
    if isinstance(node, yaml.SequenceNode):
        for index, value in enumerate(node.value):
            _walk(reading, value, (*where, index))
    elif isinstance(node, yaml.MappingNode):
        seen = set()
        for key, value in node.value:
            mark = key.start_mark
            if not isinstance(key, yaml.ScalarNode) or key.value in seen:
                message = (
                    "a key is one word"
                    if not isinstance(key, yaml.ScalarNode)
                    else f"{key.value} is given twice. Leave one"
                )
                reading.tell(*_place(mark), "KEY", message)
                continue
            seen.add(key.value)
            _walk(reading, value, (*where, key.value))
            reading.positions[(*where, key.value, "")] = _place(mark)  # of the key itself


def _tell(reading: Reading, one: dict[str, Any]) -> None:
    """One fault of the form, as a person can mend it."""
    where = tuple(part for part in one["loc"] if part != "[key]")
    kind = one["type"]
    if kind == "missing":
        reading.fault(where[:-1], "KEY", f"{dotted(where)} is missing. {allowed(where)}")
    elif kind == "extra_forbidden":
        known = ", ".join(_known(where[:-1]))
        line, column = reading.at(*where, "")
        reading.tell(line, column, "KEY", f"there is no key {dotted(where)}. Use {known}")
    else:
        reason = _REASONS.get(kind) or str(one.get("ctx", {}).get("error") or "")
        given = one["input"]
        if isinstance(given, dict | list) or (given == "" and kind.endswith("_type")):
            reading.fault(
                where,
                "VALUE",
                f"{dotted(where)} holds {'nothing' if given == '' else 'too much or too little'}. {allowed(where)}",
            )
        else:
            reading.refuse(where, "VALUE", reason or "it is not one of these")


_REASONS = {
    "string_too_long": "it is too long", "string_too_short": "it is too short", "string_pattern_mismatch": "it is not written so",
    "literal_error": "it is not one of these", "too_long": "there are too many", "date_from_datetime_parsing": "it is no day",
    "date_parsing": "it is no day", "date_from_datetime_inexact": "it is no day",
}  # fmt: skip


def dotted(where: tuple[Any, ...]) -> str:
    """Return the place of a value as people write it: cautions.1.signal, the first one of a list being 1."""
    return ".".join(str(part + 1) if isinstance(part, int) else part for part in where) or "the file"


def allowed(where: tuple[Any, ...]) -> str:
    """Return what is allowed at `where`, and an example that works."""
    info = _declared(where)
    if info is None:
        return "Use keys that this file knows."
    name = next(part for part in reversed(where) if isinstance(part, str))
    examples = info.examples or ["…"]
    return f"{info.description} Like: {name}: {examples[0]}"


def _declared(where: tuple[Any, ...]) -> FieldInfo | None:
    """The declaration of the value at `where`, or of the nearest thing that holds it."""
    model: type[BaseModel] | None = FirmFile
    found = None
    for part in where:
        if model is None or not isinstance(part, str):
            continue
        info = next((one for name, one in model.model_fields.items() if part in (name, one.alias)), None)
        if info is not None:
            found, model = info, _model_in(info.annotation)
    return found


def _known(where: tuple[Any, ...]) -> list[str]:
    info = _declared(where)
    model = _model_in(info.annotation) if info else FirmFile
    return [one.alias or name for name, one in model.model_fields.items()] if model else []


def _model_in(annotation: Any) -> type[BaseModel] | None:
    """The table inside a list, a mapping or a key that may be left out."""
    if (
        isinstance(annotation, type)
        and not isinstance(annotation, types.GenericAlias)
        and issubclass(annotation, BaseModel)
    ):
        return annotation
    return next((model for one in typing.get_args(annotation) if (model := _model_in(one))), None)
