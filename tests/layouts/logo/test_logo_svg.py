"""An SVG file is drawn as an unrelated renderer draws it, or refused."""

from io import BytesIO

import pytest
import resvg_py
from PIL import Image, ImageChops, ImageStat

from tagend.layouts.logo.logo import BadLogo
from tagend.layouts.logo.logo_svg import read_svg
from tagend.layouts.paper.face import Face, Picture
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.sheet import Placed, Sheet
from tests.layouts.drawn import is_grey_only, page_colours

SIDE = 100  # points
PIXELS = 800


def svg(inside: str, attributes: str = 'viewBox="0 0 100 100"') -> bytes:
    return f'<svg xmlns="http://www.w3.org/2000/svg" {attributes}>{inside}</svg>'.encode()


def page_of(data: bytes) -> bytes:
    """Return a PDF of one page that the logo fills."""
    logo = read_svg(data)
    face = Face("face", SIDE, SIDE, (Picture(0, 0, SIDE, SIDE, logo),))
    return write_pdf([Sheet(SIDE, SIDE, (Placed(face, 0, 0),))], title="", creator="")


def by_resvg(data: bytes) -> Image.Image:
    picture = resvg_py.svg_to_bytes(
        svg_string=data.decode(), width=PIXELS, height=PIXELS, background="white"
    )
    return Image.open(BytesIO(picture)).convert("RGB")


def difference(data: bytes) -> float:
    """Return how far two renderings are from each other, 0 to 255, in the mean of their pixels."""
    apart = ImageChops.difference(page_colours(page_of(data), 576), by_resvg(data))
    return max(ImageStat.Stat(apart).mean)


DRAWN = {
    "a path of lines": '<path d="M10 10h60v20L40 90z"/>',
    "curves and their smooth followers": '<path d="M10 50C10 10 50 10 50 50S90 90 90 50"/>',
    "quadratic curves": (
        '<path d="M5 50q20 -40 40 0t40 0" fill="none" stroke="#000" stroke-width="6"/>'
    ),
    "arcs": '<path d="M20 50a30 20 30 1 1 40 30A10 10 0 0 0 20 50z"/>',
    "a ring by the even-odd rule": (
        '<path fill-rule="evenodd" d="M10 10h80v80h-80zM30 30h40v40h-40z"/>'
    ),
    "overlaps by the other rule": '<path d="M10 10h80v80h-80zM30 30h40v40h-40z"/>',
    "a round rectangle": '<rect x="10" y="20" width="70" height="50" rx="12" ry="20"/>',
    "a circle and an ellipse": (
        '<circle cx="30" cy="30" r="20"/><ellipse cx="60" cy="70" rx="30" ry="12"/>'
    ),
    "a line with its cap": (
        '<line x1="20" y1="20" x2="80" y2="70" stroke="black" stroke-width="12"'
        ' stroke-linecap="round"/>'
    ),
    "joins": (
        '<polyline points="10,80 30,20 50,80 70,20 90,80" fill="none" stroke="#000"'
        ' stroke-width="8" stroke-linejoin="bevel"/>'
    ),
    "a sharp join over its limit": (
        '<polyline points="10,90 15,10 20,90" fill="none" stroke="#000" stroke-width="4"/>'
        '<polyline points="50,90 60,30 70,90" fill="none" stroke="#000" stroke-width="4"'
        ' stroke-miterlimit="20"/>'
    ),
    "a polygon of two colours": (
        '<polygon points="50,5 95,95 5,95" fill="#c33" stroke="navy" stroke-width="5"/>'
    ),
    "dashes": (
        '<path d="M5 20H95" stroke="#000" stroke-width="6" stroke-dasharray="12 5 3"/>'
        '<path d="M5 50H95" stroke="#000" stroke-width="6" stroke-dasharray="9,4"'
        ' stroke-dashoffset="-5"/>'
    ),
    "transforms in transforms": (
        '<g transform="translate(50 50) rotate(30)"><g transform="scale(1.5 .7) skewX(20)">'
        '<rect x="-20" y="-20" width="40" height="40" fill="#888" stroke="#000" stroke-width="5"/>'
        "</g></g>"
    ),
    "classes of a style sheet": (
        "<style>/* two */ .a, .b { fill: #246; } .b{stroke:red;stroke-width:4px}</style>"
        '<rect class="a" width="40" height="40"/><rect class="b" x="50" y="50" width="40"'
        ' height="40"/>'
    ),
    "a style sheet at the end": (
        '<rect class="a" width="40" height="40"/><g><style>.a{fill:red}</style></g>'
    ),
    "a style over an attribute": (
        '<rect width="60" height="60" fill="red" style="fill:rgb(0, 128, 0);stroke:none"/>'
    ),
    "the current colour": (
        '<g color="teal"><circle cx="50" cy="50" r="40" fill="currentColor"/></g>'
    ),
    "what is hidden": (
        '<rect width="50" height="50"/><rect x="50" width="50" height="50" display="none"/>'
        '<rect y="50" width="50" height="50" visibility="hidden"/>'
        '<rect x="50" y="50" width="50" height="50" fill-opacity="0"/>'
    ),
    "what other programs add": (
        '<metadata/><x:view xmlns:x="urn:x"><x:text>no</x:text></x:view><rect width="50"'
        ' height="80"/><defs><linearGradient id="unused"/></defs>'
    ),
    "a clip that cuts nothing": (
        '<g clip-path="url(#a)"><circle cx="50" cy="50" r="45"/></g>'
        '<defs><clipPath id="a"><rect width="100" height="100" fill="white"/></clipPath></defs>'
    ),
    "what leaves the view": '<circle cx="90" cy="90" r="60"/>',
    "a part of a percentage": '<rect x="10%" y="20%" width="50%" height="25%"/>',
}


@pytest.mark.parametrize("inside", DRAWN.values(), ids=DRAWN.keys())
def test_shapes_are_drawn_as_elsewhere(inside: str) -> None:
    # Two renderers smooth their edges differently. A line 10 units long and 1 wide that is missing
    # in 100 by 100 is 0.25.
    assert difference(svg(inside)) < 0.1


@pytest.mark.parametrize(
    ("attributes", "size"),
    [
        ('viewBox="10 -20 100 50"', (100, 50)),
        ('viewBox="10 -20 100 50" width="100%" height="7cm"', (100, 50)),
        ('width="1in" height="24pt"', (96, 32)),  # CSS: 96 units an inch
    ],
)
def test_its_proportion_is_that_of_its_view(attributes: str, size: tuple[float, float]) -> None:
    logo = read_svg(svg('<rect width="50" height="20"/>', attributes))
    assert (logo.width, logo.height) == pytest.approx(size)


def test_the_view_box_begins_where_it_says() -> None:
    moved = svg('<rect x="-40" y="30" width="50" height="50"/>', 'viewBox="-50 20 100 100"')
    assert difference(moved) < 0.1


def test_greys_are_black_ink_alone() -> None:
    grey = '<rect width="50" height="50" fill="#777" stroke="black"/>'
    assert is_grey_only(page_of(svg(grey)))
    assert not is_grey_only(page_of(svg('<rect width="50" height="50" fill="#778"/>')))


REFUSED = {
    "<text>Wrack</text>": (
        "this SVG has a part <text>, which is not drawn here; convert its text to paths"
    ),
    '<image href="http://example.org/a.png"/>': (
        "this SVG has a part <image>, which is not drawn here; save the logo as PNG or PDF"
    ),
    "<script>0</script>": (
        "this SVG has a part <script>, which is not drawn here; save it as plain SVG"
    ),
    '<g id="a"/><use href="#a"/>': (
        "this SVG has a part <use>, which is not drawn here; unlink its clones and symbols"
    ),
    "<mask/>": (
        "this SVG has a part <mask>, which is not drawn here; save it as plain SVG without, or "
        "as PNG or PDF"
    ),
    "<style>@import url(a.css);</style>": (
        "its style sheet says '@import url(a.css);', which is not followed here; save it with the "
        "styles as attributes"
    ),
    "<style>g .a {fill: red}</style>": (
        "its style sheet says 'g .a', which is not followed here; save it with the styles as "
        "attributes"
    ),
    f"<style>{'/*' * 10_001}</style>": (
        "its style sheet is too long; save it with the styles as attributes"
    ),
    "<style>.a {fill: red</style>": (
        "its style sheet says '.a {fill: red', which is not followed here; save it with the "
        "styles as attributes"
    ),
    '<rect width="9" height="9" fill="url(#a)"/>': (
        "this SVG has 'fill: url(#a)', which is not drawn here; use plain colours, or save it as "
        "PDF"
    ),
    '<rect width="9" height="9" stroke="lightwrack"/>': (
        "this SVG has 'stroke: lightwrack', which is not drawn here; use plain colours, or save it "
        "as PDF"
    ),
    '<g opacity=".5"><rect width="9" height="9"/></g>': (
        "this SVG has 'opacity: .5', which is not drawn here; use plain colours, or save it as PDF"
    ),
    '<rect width="9" height="9" fill="rgba(0,0,0,.5)"/>': (
        "this SVG has 'a see-through fill', which is not drawn here; use plain colours, or save it "
        "as PDF"
    ),
    '<rect width="9" height="9" stroke="red" stroke-opacity="50%"/>': (
        "this SVG has 'a see-through stroke', which is not drawn here; use plain colours, or save "
        "it as PDF"
    ),
    '<rect width="9" height="9" style="filter:blur(2px)"/>': (
        "this SVG has 'filter: blur(2px)', which is not drawn here; use plain colours, or save it "
        "as PDF"
    ),
    '<clipPath id="a"><rect width="50" height="50"/></clipPath>'
    '<circle cx="50" cy="50" r="20" clip-path="url(#a)"/>': (
        "this SVG has 'clip-path', which is not drawn here; use plain colours, or save it as PDF"
    ),
    "<g/>": "this SVG has nothing to draw; give one that shows something",
    '<rect x="200" width="9" height="9"/>': (
        "this SVG has nothing to draw; give one that shows something"
    ),
    '<rect width="9" height="9" fill="none"/>': (
        "this SVG has nothing to draw; give one that shows something"
    ),
    '<rect width="9" height="9" fill="white"/>': (
        "it is all white; give a version that is dark on white paper"
    ),
    '<path d="M1e300 0L5 5 9 9z"/>': (
        "this SVG has a number that is too large; give it another viewBox"
    ),
    '<path d="M0 0 C"/>': "this SVG cannot be read; save it again as plain SVG",
    "<g/>" * 3000: "this SVG has 3,001 elements; simplify it, or save it as PNG or PDF",
}


@pytest.mark.parametrize(("inside", "told"), REFUSED.items(), ids=range(len(REFUSED)))
def test_what_would_be_drawn_wrong_is_refused(inside: str, told: str) -> None:
    with pytest.raises(BadLogo) as refusal:
        read_svg(svg(inside))
    assert str(refusal.value) == told


WHOLE_FILES = {
    b"<html/>": "this is no SVG file; give a PNG, JPEG, SVG or PDF file",
    b'<svg xmlns="http://www.w3.org/2000/svg">\n<g>': (
        "this SVG is damaged or cut off at line 2; save it again"
    ),
    b'<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/hostname">]><svg/>': (
        "this SVG has entities; save it again as plain SVG"
    ),
    b"<svg>\xff</svg>": "this SVG is not UTF-8 text; save it again as plain SVG",
    b"<svg>" + b" " * 300_000: (
        "this SVG has 300,005 bytes; simplify it, or save it as PNG or PDF"
    ),
    svg("<g/>", ""): "this SVG says no size; give it a viewBox",
    svg("<g/>", 'viewBox="0 0 0 5"'): "this SVG is 0 × 5 units; give it another viewBox",
    svg("<g/>", 'viewBox="0 0 5"'): "this SVG says no size; give it a viewBox",
    svg("<g>" * 2500 + "</g>" * 2500): "this SVG cannot be read; save it again as plain SVG",
}


@pytest.mark.parametrize(("data", "told"), WHOLE_FILES.items(), ids=range(len(WHOLE_FILES)))
def test_a_file_that_is_no_whole_svg_is_refused(data: bytes, told: str) -> None:
    with pytest.raises(BadLogo) as refusal:
        read_svg(data)
    assert str(refusal.value) == told
