"""`python -I run_told.py FOLDER`: what the calculators in a folder say beside their answers, for the questions from standard input.

Out comes one line of JSON a question: the answer or the faults as the command line tells them; then one for each calculator
that was asked: its help, and its section of a page.
"""

import json
import sys

sys.path.insert(0, sys.argv[1])

from calc import __main__ as command
from calc import catalogue
from calc.render import form, text

sys.stdin.reconfigure(encoding="utf-8")
sys.stdout.reconfigure(encoding="utf-8")
asked = {}
for line in sys.stdin:
    name, given = json.loads(line)
    asked[name] = catalogue.find(name)
    answer, faults = catalogue.work_out(name, json.loads(given))
    print(json.dumps(text.faults(faults) if answer is None else text.answer(answer)))
for one in asked.values():
    answer, _ = catalogue.work_out(one.name, dict(one.example))
    print(json.dumps(command._help(one)))
    print(json.dumps(form.section(one, one.example, answer)))
