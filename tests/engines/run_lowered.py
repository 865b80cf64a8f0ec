"""`python -I run_lowered.py FOLDER [--text]`: the lowered package answers questions from standard input."""

import hashlib
import json
import sys

folder, *form = sys.argv[1:]
sys.path.insert(0, folder)

from calc import browser  # noqa: E402  (the path has to be set first)

sys.stdin.reconfigure(encoding="utf-8")
sys.stdout.reconfigure(encoding="utf-8")
for line in sys.stdin:
    text = browser.answer(*json.loads(line))
    print(text if form else hashlib.sha256(text.encode()).hexdigest())
