// node pack_full.mjs PYODIDE_DIR CALC_WHEEL QUESTIONS_JSON OUT
// Trims the full engine: starts the stock one, asks it every question, and keeps of the standard library only
// what was imported, as bytecode of the engine's own Python, stored and not deflated so that Brotli can work on it.
// The calculators' wheel is byte-compiled in the same way.
import fs from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';

const [dir, wheel, questions, out] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(path.join(dir, 'pyodide.mjs')).href);
const engine = await loadPyodide({ indexURL: dir + path.sep });
engine.FS.writeFile('/calc.whl', fs.readFileSync(wheel));
engine.globals.set('questions', fs.readFileSync(questions, 'utf8'));
engine.runPython(`
import importlib.util, io, json, sys, zipfile

sys.path.insert(0, "/calc.whl")
from calc.browser import answer

for calculator, inputs in json.loads(questions):
    answer(calculator, json.dumps(inputs))

LIBRARY = "/lib/python314.zip"
# Not imported by a question, but needed when something fails and must be told in words.
SPARE = ("encodings.ascii", "encodings.latin_1")


def entry(name, source, is_package):
    path = name.replace(".", "/") + ("/__init__" if is_package else "")
    code = compile(source, path + ".py", "exec", dont_inherit=True, optimize=2)
    return path + ".pyc", importlib._bootstrap_external._code_to_timestamp_pyc(code, 0, 0)


def packed(entries):
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", zipfile.ZIP_STORED) as archive:
        for path, data in sorted(entries):
            archive.writestr(zipfile.ZipInfo(path, (1980, 1, 1, 0, 0, 0)), data)
    return held.getvalue()


library = []
for name in sorted({*sys.modules, *SPARE}):
    spec = importlib.util.find_spec(name) if name in SPARE else getattr(sys.modules[name], "__spec__", None)
    if spec is None or not spec.origin or not spec.origin.startswith(LIBRARY) or spec.name != name:
        continue
    library.append(entry(name, spec.loader.get_source(name), spec.submodule_search_locations is not None))

with zipfile.ZipFile("/calc.whl") as archive:
    calculators = []
    for path in archive.namelist():
        if path.endswith(".py"):
            name = path[:-3].replace("/", ".")
            is_package = name.endswith(".__init__")
            calculators.append(entry(name.removesuffix(".__init__"), archive.read(path), is_package))
        else:
            calculators.append((path, archive.read(path)))

for target, entries in (("/library.zip", library), ("/packed.whl", calculators)):
    with open(target, "wb") as file:
        file.write(packed(entries))
`);
fs.mkdirSync(out, { recursive: true });
fs.writeFileSync(path.join(out, 'python_stdlib.zip'), engine.FS.readFile('/library.zip'));
fs.writeFileSync(path.join(out, 'calc.whl'), engine.FS.readFile('/packed.whl'));
const lock = JSON.parse(fs.readFileSync(path.join(dir, 'pyodide-lock.json'), 'utf8'));
fs.writeFileSync(path.join(out, 'pyodide-lock.json'), JSON.stringify({ info: lock.info, packages: {} }));
for (const file of ['pyodide.mjs', 'pyodide.asm.mjs', 'pyodide.asm.wasm']) {
  fs.copyFileSync(path.join(dir, file), path.join(out, file));
}
