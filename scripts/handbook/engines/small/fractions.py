"""Exact fractions for the small engine, which has no `fractions` module. The part of the library that `calc` uses."""


def _gcd(a, b):
    while b:
        a, b = b, a % b
    return a


class Fraction:
    """A fraction in lowest terms with a positive denominator."""

    __slots__ = ("denominator", "numerator")

    def __init__(self, numerator=0, denominator=1):
        if isinstance(numerator, Fraction) or isinstance(denominator, Fraction):
            quotient = _of(numerator) / _of(denominator)
            numerator, denominator = quotient.numerator, quotient.denominator
        elif not isinstance(numerator, int) or not isinstance(denominator, int):
            raise TypeError("whole numbers only")
        if denominator == 0:
            raise ZeroDivisionError("a fraction over 0")
        if denominator < 0:
            numerator, denominator = -numerator, -denominator
        common = _gcd(numerator if numerator >= 0 else -numerator, denominator)
        if common > 1:
            numerator //= common
            denominator //= common
        self.numerator = numerator
        self.denominator = denominator

    def __add__(self, other):
        other = _of(other)
        return Fraction(
            self.numerator * other.denominator + other.numerator * self.denominator,
            self.denominator * other.denominator,
        )

    __radd__ = __add__

    def __neg__(self):
        return Fraction(-self.numerator, self.denominator)

    def __sub__(self, other):
        other = _of(other)
        return Fraction(
            self.numerator * other.denominator - other.numerator * self.denominator,
            self.denominator * other.denominator,
        )

    def __rsub__(self, other):
        return _of(other) - self

    def __mul__(self, other):
        other = _of(other)
        return Fraction(self.numerator * other.numerator, self.denominator * other.denominator)

    __rmul__ = __mul__

    def __truediv__(self, other):
        other = _of(other)
        return Fraction(self.numerator * other.denominator, self.denominator * other.numerator)

    def __rtruediv__(self, other):
        return _of(other) / self

    def __floordiv__(self, other):
        quotient = self / other
        return quotient.numerator // quotient.denominator

    def __pow__(self, power):
        if power < 0:
            return Fraction(self.denominator ** (-power), self.numerator ** (-power))
        return Fraction(self.numerator**power, self.denominator**power)

    def __abs__(self):
        return -self if self.numerator < 0 else self

    def __eq__(self, other):
        if not isinstance(other, (int, Fraction)):
            return False
        other = _of(other)
        return self.numerator == other.numerator and self.denominator == other.denominator

    def __ne__(self, other):
        return not self == other

    def __lt__(self, other):
        other = _of(other)
        return self.numerator * other.denominator < other.numerator * self.denominator

    def __le__(self, other):
        other = _of(other)
        return self.numerator * other.denominator <= other.numerator * self.denominator

    def __gt__(self, other):
        return not self <= other

    def __ge__(self, other):
        return not self < other

    def __bool__(self):
        return self.numerator != 0

    def __hash__(self):
        return hash(self.numerator) if self.denominator == 1 else hash((self.numerator, self.denominator))

    def __int__(self):
        whole = abs(self).numerator // self.denominator
        return whole if self.numerator >= 0 else -whole

    def __repr__(self):
        return "Fraction(" + str(self.numerator) + ", " + str(self.denominator) + ")"


def _of(value):
    if isinstance(value, Fraction):
        return value
    if isinstance(value, int):
        return Fraction(value)
    raise TypeError("a fraction works with whole numbers and fractions")
