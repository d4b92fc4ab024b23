"""The bytes of an SVG file in, its text out, known to hold nothing that would be drawn wrong.

What is not drawn here is refused, since a part that is missing shows on the paper only.
"""

import re
import xml.etree.ElementTree as ElementTree

from tagend.layouts.logo.logo import BadLogo

LARGEST = 300_000  # bytes
MOST_ELEMENTS = 3000
LONGEST_SHEET = 20_000  # characters: the library's time grows with their square

_SVG = "{http://www.w3.org/2000/svg}"
_DRAWN = ["svg", "g", "path", "rect", "circle", "ellipse", "line", "polyline", "polygon"]
_SILENT = [
    "title",
    "desc",
    "metadata",
    "defs",
    "style",
    "clipPath",
    "linearGradient",
    "radialGradient",
    "stop",
]
_INSTEAD = {
    "text": "convert its text to paths",
    "image": "save the logo as PNG or PDF",
    "script": "save it as plain SVG",
    "use": "unlink its clones and symbols",
}
_VIEW = re.compile(r"\s*[-+.\deE]+([\s,]+[-+.\deE]+){3}\s*")
# The library knows these selectors, and takes no notice of any other.
_SELECTOR = re.compile(r"\*|[.#]?[\w-]+|[\w-]+\.[\w-]+")
_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)


def svg_source(data: bytes) -> str:
    """Return the file's text, with elements that are not SVG's own left out.

    Its size is that of its view box, where it has one. Raises BadLogo.
    """
    root = _parsed(data)
    if root.tag != f"{_SVG}svg":
        raise BadLogo("this is no SVG file", "give a PNG, JPEG, SVG or PDF file")
    for element in list(root.iter()):
        for child in [child for child in element if not _is_svg(child)]:
            element.remove(child)
    sheets = list(root.iter(f"{_SVG}style"))
    elements = list(root.iter())
    if len(elements) > MOST_ELEMENTS:
        raise BadLogo(
            f"this SVG has {len(elements):,} elements", "simplify it, or save it as PNG or PDF"
        )
    for element in elements:
        _check(element, is_root=element is root)
    if _VIEW.fullmatch(root.get("viewBox", "")):
        for key in ("x", "y", "width", "height"):
            root.attrib.pop(key, None)
    elif not {"width", "height"} <= root.attrib.keys():
        raise BadLogo("this SVG says no size", "give it a viewBox")
    root[:0] = sheets  # the library follows a style sheet from there on only
    return ElementTree.tostring(root, encoding="unicode")


def _parsed(data: bytes) -> ElementTree.Element:
    if len(data) > LARGEST:
        raise BadLogo(f"this SVG has {len(data):,} bytes", "simplify it, or save it as PNG or PDF")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise BadLogo("this SVG is not UTF-8 text", "save it again as plain SVG") from None
    if "<!ENTITY" in text:  # may name other files, or grow without end
        raise BadLogo("this SVG has entities", "save it again as plain SVG")
    try:
        return ElementTree.fromstring(text)
    except ElementTree.ParseError as fault:
        line, _ = fault.position
        raise BadLogo(f"this SVG is damaged or cut off at line {line}", "save it again") from None


def _is_svg(element: ElementTree.Element) -> bool:
    return isinstance(element.tag, str) and element.tag.startswith(_SVG)


def _check(element: ElementTree.Element, *, is_root: bool) -> None:
    name = element.tag.removeprefix(_SVG)
    if name not in (*_DRAWN, *_SILENT) or (name == "svg" and not is_root):
        instead = _INSTEAD.get(name, "save it as plain SVG without, or as PNG or PDF")
        raise BadLogo(f"this SVG has a part <{name[:40]}>, which is not drawn here", instead)
    if name == "style":
        _check_styles("".join(element.itertext()))


def _check_styles(sheet: str) -> None:
    if len(sheet) > LONGEST_SHEET:
        raise BadLogo("its style sheet is too long", "save it with the styles as attributes")
    sheet = _COMMENT.sub("", sheet)
    *rules, rest = sheet.split("}")
    listed = [part.strip() for rule in rules for part in rule.partition("{")[0].split(",")]
    odd = next((part for part in listed if not _SELECTOR.fullmatch(part)), rest)
    if odd.strip():
        raise BadLogo(
            f"its style sheet says {odd.strip()[:40]!r}, which is not followed here",
            "save it with the styles as attributes",
        )
