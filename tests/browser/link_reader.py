"""Another reader of a job's short link, written from its description in Python's whole numbers, so that the form is held by
two readers that share nothing but the table."""

import copy
import functools
import re
from pathlib import Path

ASSETS = Path(__file__).resolve().parents[2] / "docs" / "assets"
TABLE = (ASSETS / "link-table.mjs").read_text(encoding="utf-8")
FIELDS = TABLE.split("FIELDS = `")[1].split("`")[0].split()
DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
CURVE = (1, 2, 4, 6, 10, 17, 27, 45, 74, 121, 194, 311, 488, 747, 1102, 1546, 2048, 2550, 2994, 3349, 3608, 3785, 3902, 3975, 4022, 4051, 4069, 4079, 4086, 4090, 4092, 4094, 4095)  # fmt: skip
WORD = 2**32


def samples():
    """The sample jobs of the table, read without a JavaScript engine."""
    found = []
    for line in TABLE.split("SAMPLES = [")[1].splitlines():
        pairs = re.findall(r'(\w+): "((?:[^"\\]|\\.)*)"', line)
        if pairs:
            found.append({name: text.replace("\\n", "\n").replace('\\"', '"') for name, text in pairs})
    return found


def check(body):
    rest = 0xB704CE
    for byte in body.encode("ascii"):
        rest ^= byte << 16
        for _ in range(8):
            rest = (rest << 1) ^ (0x1864CFB if rest & 0x800000 else 0)
    return "".join(DIGITS[rest >> by & 63] for by in (18, 12, 6, 0))


def odds_of(votes):
    step, over = divmod(max(-2047, min(2047, votes)) + 2048, 128)
    return (CURVE[step] * (128 - over) + CURVE[step + 1] * over + 64) // 128


VOTES = []
for _votes in range(-2047, 2048):
    VOTES += [_votes] * (odds_of(_votes) + 1 - len(VOTES))
VOTES += [2047] * (4096 - len(VOTES))


def signed(number):
    return (number + WORD // 2) % WORD - WORD // 2


def mixed(a, b):
    return ((a ^ a % WORD >> 15) * 0x2C1B3C6D + (b + 1) * 0x297A2D39) % WORD


class Model:
    def __init__(self):
        self.odds, self.times, self.weights = {}, {}, {}

    def bit(self, code, seen, node, given):
        places = [(way, mixed(signed(one), node) >> 15) for way, one in enumerate(seen)]
        votes = [VOTES[self.odds.get(place, 32768) >> 4] for place in places]
        chosen = sum(place in self.times for place in places)
        weights = self.weights.setdefault(chosen, [24_000] * 8)
        guess = max(1, min(4095, odds_of(sum(v * w for v, w in zip(votes, weights)) // 65536)))
        bit = code(guess, given)
        missed = (4096 if bit else 0) - guess
        for way, place in enumerate(places):
            weights[way] += votes[way] * missed // 1024
            held, count = self.odds.get(place, 32768), self.times.get(place, 0)
            self.odds[place] = held + ((65535 if bit else 0) - held) * 2 // (2 * count + 3)
            self.times[place] = min(30, count + 1)
        return bit


class Stream:
    def __init__(self, model, field):
        self.model, self.field = model, field
        self.past, self.whole, self.word, self.shape, self.length = [0, 0, 0, 0], 0, 0, 0, 0

    def byte(self, code, given=None):
        def mix(*numbers):
            value = numbers[0]
            for one in numbers[1:]:
                value = signed(mixed(value, one))
            return value

        last, before, third, fourth = self.past
        seen = (
            mix(self.field, min(self.length, 3)), mix(1, self.field, last), mix(2, last, before), mix(3, last, before, third),
            mix(4, last, before, third, fourth), mix(5, self.field, self.whole), mix(6, self.word, 0), mix(7, self.shape, 0),
        )  # fmt: skip
        node = 1
        for at in range(7, -1, -1):
            node = node * 2 + self.model.bit(code, seen, node, None if given is None else given >> at & 1)
        byte = node - 256
        self.past = [byte, *self.past[:3]]
        letter, digit = chr(byte | 32) in "abcdefghijklmnopqrstuvwxyz", 48 <= byte <= 57
        self.whole = mix(self.whole, byte)
        self.word = mix(self.word, byte | 32) if letter else byte if self.field else mix(self.word, byte)
        self.shape = 0 if byte in (10, 59) else mix(self.shape, 97 if letter else 48 if digit else byte)
        self.length += 1
        return byte


def learn(model, jobs):
    def told(_, given):
        return given

    for job in jobs:
        numbers = Stream(model, 0)
        for number, text in sorted((FIELDS.index(name) + 1, text) for name, text in job.items()):
            for byte in (*[254] * (number // 254), number % 254):
                numbers.byte(told, byte)
            stream = Stream(model, min(number, 255))
            for byte in (*text.encode(), 0):
                stream.byte(told, byte)
        numbers.byte(told, 0)


@functools.cache
def schooled():
    model = Model()
    learn(model, samples())
    return model


def read(link):
    """Return the job of `link`: texts by names, a number for a field that has no name; raises AssertionError for a bad link."""
    found = re.fullmatch(r"#j=(1[\w-]*)([\w-]{4})Z", link, re.ASCII)
    assert found and check(found[1]) == found[2]
    digits = [DIGITS.index(one) for one in found[1][1:]]
    low, high, value, at = 0, 64**5 - 1, 0, 0
    for at in range(5):
        value = value * 64 + (digits[at] if at < len(digits) else 0)
    at = 5

    def code(odds, _):
        nonlocal low, high, value, at
        middle = low + (high - low) * odds // 4096
        bit = int(value <= middle)
        low, high = (low, middle) if bit else (middle + 1, high)
        while low // 64**4 == high // 64**4:
            low, high = low % 64**4 * 64, high % 64**4 * 64 + 63
            value = value % 64**4 * 64 + (digits[at] if at < len(digits) else 0)
            at += 1
        return bit

    model = copy.deepcopy(schooled())
    numbers, job = Stream(model, 0), {}

    def text(field):
        stream, held = Stream(model, field), bytearray()
        while byte := stream.byte(code):
            held.append(byte)
        return bytes(held).replace(b"\xc0\x80", b"\0").decode()

    while True:
        number = byte = numbers.byte(code)
        while byte == 254:
            byte = numbers.byte(code)
            number += byte
        if not number:
            return job
        if byte == 255:
            name = text(10**6)
            job[name] = text(255)
        else:
            key = FIELDS[number - 1] if number <= len(FIELDS) else number
            job[key] = text(min(number, 255))
