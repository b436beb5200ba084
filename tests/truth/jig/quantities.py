"""Lengths and angles as the tape says them, both ways."""

import math
import re
from fractions import Fraction

MM_PER = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "ft": 304.8}


def number(text):
    """`2-1/2`, `15/16`, `31.5` or `-3` as a float."""
    text = text.strip()
    sign = -1.0 if text.startswith("-") else 1.0
    total = sum(float(Fraction(part)) for part in text.lstrip("-").split("-"))
    return sign * total


def length_mm(text):
    """`"812 mm"`, `"2-1/2 in"` or `"3 ft 4-1/2 in"` in millimetres."""
    parts = re.findall(r"(-?[\d./-]+)\s*(mm|cm|m|in|ft)\b", text)
    if not parts:
        raise ValueError(f"not a length: {text}")
    return sum(number(value) * MM_PER[unit] for value, unit in parts)


def angle_rad(text):
    """`"15 deg"` in radians."""
    value, unit = text.split()
    if unit != "deg":
        raise ValueError(f"not an angle: {text}")
    return math.radians(number(value))


def clock_rad(text):
    """`"4:30"` or `"135 deg"` in radians from twelve, clockwise looking downstream."""
    if ":" in text:
        hours, minutes = text.split(":")
        return math.radians((int(hours) % 12) * 30.0 + int(minutes) * 0.5)
    return angle_rad(text)


def say_mm(mm):
    """To the millimetre."""
    return f"{round(mm)} mm"


def say_inches(mm, steps=16):
    """To the sixteenth of an inch, feet from 36 in on, as it is called out in the shop."""
    count = round(abs(mm) / 25.4 * steps)
    feet, rest = divmod(count, 12 * steps) if count >= 36 * steps else (0, count)
    whole, part = divmod(rest, steps)
    inches = str(whole)
    if part:
        fraction = Fraction(part, steps)
        inches = f"{fraction}" if whole == 0 else f"{whole}-{fraction}"
    said = f"{feet} ft {inches} in" if feet else f"{inches} in"
    return f"-{said}" if mm < 0 and count else said


def say_deg(rad):
    """To the tenth of a degree."""
    degrees = round(math.degrees(rad), 1) + 0.0
    return f"{degrees:.1f} deg"


def tyre_mm(marking):
    """Radius and width in mm of a tyre from the marking on its wall, such as `195/65 R15`."""
    width, aspect, rim = map(float, re.match(r"(\d+)/(\d+)\s*Z?R\s*(\d+)", marking).groups())
    return rim * 25.4 / 2.0 + width * aspect / 100.0, width
