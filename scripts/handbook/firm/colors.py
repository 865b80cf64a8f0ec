"""Colors of a firm: their contrast as WCAG 2 counts it, the nearest one that can be read, and what is too near to a signal word."""

import colorsys

LEAST = 4.5  # contrast of text by WCAG 2.2, success criterion 1.4.3
PAPER = {"accent_light": "#fbfaf7", "accent_dark": "#14161a"}  # --paper of docs/styles/paper.css
SIGNALS = {
    "DANGER": "#b3121d",
    "WARNING": "#f58220",
    "CAUTION": "#ffd100",
}  # as above; NOTICE is about things, and many firms are blue
NEAR_HUE, NEAR_LIGHTNESS, STRONG = 15 / 360, 0.15, 0.5  # practice: what the eye takes for the same color beside it

RGB = tuple[float, float, float]


def contrast(one: str, other: str) -> float:
    """Return the contrast of two colors, 1 to 21, as WCAG 2 defines it."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def luminance(color: str) -> float:
    """Return the relative luminance of a color, 0 to 1, as WCAG 2 defines it."""
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts(color))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def nearest(color: str, paper: str) -> str:
    """Return `color` where it can be read on `paper`, else the nearest of the same hue and saturation that can."""
    if contrast(color, paper) >= LEAST:
        return color
    hue, lightness, saturation = colorsys.rgb_to_hls(*parts(color))
    end = 0.0 if luminance(paper) > 0.5 else 1.0
    steps = 1000
    for step in range(1, steps + 1):
        tried = written(colorsys.hls_to_rgb(hue, lightness + (end - lightness) * step / steps, saturation))
        if contrast(tried, paper) >= LEAST:
            return tried
    raise ValueError(f"no color can be read on {paper}")  # paper that is neither light nor dark


def like_signal(color: str) -> str:
    """Return the signal word whose color `color` would be taken for, '' for none."""
    hue, lightness, saturation = colorsys.rgb_to_hls(*parts(color))
    for word, signal in SIGNALS.items():
        other, its_lightness, _ = colorsys.rgb_to_hls(*parts(signal))
        apart = min(abs(hue - other), 1 - abs(hue - other))
        if apart < NEAR_HUE and abs(lightness - its_lightness) < NEAR_LIGHTNESS and saturation > STRONG:
            return word
    return ""


def parts(color: str) -> RGB:
    """Return '#1f5a54' as red, green and blue, 0 to 1 each."""
    return int(color[1:3], 16) / 255, int(color[3:5], 16) / 255, int(color[5:7], 16) / 255


def written(color: RGB) -> str:
    return "#" + "".join(f"{round(part * 255):02x}" for part in color)
