import os
from datetime import date
from pathlib import Path

import pytest
from msgspec.structs import replace
from reportlab.pdfgen.canvas import Canvas

from tagend.cards.code.notation import write_notation
from tagend.cards.leader.naming import all_named
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tests.cards.cli.conftest import Tagend
from tests.leaders import checked
from tests.pictures import beside, code_picture, file_of, pages
from tests.written import PRACTICE, leader

SAMPLES = ("breakwater-ten", "hasty-seven", "millrace-three", "reedbed-six", "sandbar-eight")


def recipe(file: Path) -> Recipe:
    return read_recipe(file.read_bytes(), PRACTICE)


def code(file: Path) -> str:
    return write_notation(recipe(file), PRACTICE.knots, PRACTICE.materials)


@pytest.mark.parametrize("sample", SAMPLES)
def test_a_recipe_comes_back_from_its_codes_text(tagend: Tagend, demo: Path, sample: str) -> None:
    written = demo / f"{sample}.toml"
    run = tagend("read", code(written))
    assert (run.status, run.err) == (0, "")
    # A code is the text of one leader, so its file's variants stay behind.
    assert read_recipe(run.out.encode(), PRACTICE) == replace(recipe(written), variants=())


def test_a_code_may_come_in_a_file_or_on_standard_input(tagend: Tagend, demo: Path) -> None:
    text = code(demo / "sandbar-eight.toml")
    (demo / "code.txt").write_text(f"\n{text}\n")
    from_file = tagend("read", demo / "code.txt")
    from_stdin = tagend("read", "-", stdin=text.lower().encode())
    assert from_file.out == from_stdin.out == tagend("read", text).out


def test_a_long_code_is_no_file_name(tagend: Tagend, demo: Path) -> None:
    long = demo / "long.toml"
    text = (demo / "sandbar-eight.toml").read_text()
    long.write_text(text.replace("Crabs over pale sand", "Crabs over pale sand " * 8))
    assert len(code(long)) > 255
    assert tagend("read", code(long)).status == 0


def test_a_recipe_comes_back_from_the_pdf_of_its_card(tagend: Tagend, demo: Path) -> None:
    pdf, again = demo / "card.pdf", demo / "again.toml"
    assert tagend("cards", demo / "sandbar-eight.toml", "-o", pdf).status == 0
    assert tagend("read", pdf, "-o", again).status == 0
    assert recipe(again) == recipe(demo / "sandbar-eight.toml")


def test_several_recipes_need_a_folder(tagend: Tagend, demo: Path) -> None:
    pdf, folder = demo / "cards.pdf", demo / "back"
    written = [demo / f"{sample}.toml" for sample in ("sandbar-eight", "reedbed-six")]
    # A second leader of the same name must not replace the first.
    other = demo / "other.toml"
    other.write_text(written[0].read_text().replace("46 in", "47 in").replace("11 ft", "133 in"))
    assert tagend("cards", *written, other, "-o", pdf).status == 0
    run = tagend("read", pdf)
    assert run.status == 2
    assert run.faults == [
        f"{pdf}: it holds 3 recipes (sandbar-eight.toml, reedbed-six.toml, sandbar-eight.toml); "
        "give a folder with -o"
    ]
    run = tagend("read", pdf, "-o", other)
    assert run.status == 2
    assert run.faults == [
        f"{other}: this is no folder, and there are several recipes; name a folder"
    ]
    run = tagend("read", pdf, "-o", folder)
    assert (run.status, run.err) == (0, f"wrote 3 recipes into {folder}\n")
    names = ["reedbed-six.toml", "sandbar-eight-2.toml", "sandbar-eight.toml"]
    assert sorted(file.name for file in folder.iterdir()) == names
    assert {recipe(file) for file in folder.iterdir()} == {recipe(f) for f in (*written, other)}


LEFT_OUT = "tied 2026-05-31 left out: a leader tied again has a day of its own"


@pytest.fixture
def labels(tagend: Tagend, demo: Path) -> Path:
    pdf = demo / "labels.pdf"
    run = tagend("labels", demo / "sandbar-eight.toml", "--tied", "2026-05-31", "-o", pdf)
    assert run.status == 0
    return pdf


def test_the_day_a_leader_was_tied_is_left_out_and_told(
    tagend: Tagend, demo: Path, labels: Path
) -> None:
    again = demo / "again.toml"
    run = tagend("read", labels, "-o", again)
    assert run.status == 0
    assert run.err.startswith(LEFT_OUT)
    assert recipe(again) == recipe(demo / "sandbar-eight.toml")
    shown = tagend("read", labels)
    assert shown.err == run.err
    assert read_recipe(shown.out.encode(), PRACTICE) == recipe(again)


def test_the_day_may_be_kept(tagend: Tagend, demo: Path, labels: Path) -> None:
    run = tagend("read", labels, "--keep-tied")
    assert (run.status, run.err) == (0, "")
    assert read_recipe(run.out.encode(), PRACTICE).tied == date(2026, 5, 31)


def test_check_shows_the_day(tagend: Tagend, labels: Path) -> None:
    run = tagend("read", "--check", labels)
    assert (run.out, run.err) == (
        "a file in a PDF: Sandbar eight, 6 sections, tied 2026-05-31\n",
        "",
    )


def test_a_recipe_tied_on_two_days_is_one_without_them(tagend: Tagend, demo: Path) -> None:
    written = (demo / "sandbar-eight.toml").read_text()
    for day in ("2026-05-31", "2026-06-01"):
        (demo / f"{day}.toml").write_text(f"tied = {day}\n{written}")
    pdf, again = demo / "labels.pdf", demo / "again.toml"
    assert tagend("labels", *sorted(demo.glob("2026*.toml")), "-o", pdf).status == 0
    run = tagend("read", pdf, "-o", again)
    assert run.status == 0
    assert [line.split(" left")[0] for line in run.err.splitlines()] == [
        "tied 2026-05-31",
        "tied 2026-06-01",
    ]
    assert recipe(again) == recipe(demo / "sandbar-eight.toml")
    assert tagend("read", pdf, "-o", demo / "kept.toml", "--keep-tied").status == 2


def test_files_that_would_be_lost_in_a_folder_are_all_named_and_none_written(
    tagend: Tagend, demo: Path, tmp_path: Path
) -> None:
    pdf, folder = demo / "cards.pdf", tmp_path / "back"
    written = [
        demo / f"{sample}.toml" for sample in ("sandbar-eight", "reedbed-six", "gravel-five")
    ]
    assert tagend("cards", *written, "-o", pdf).status == 0
    folder.mkdir()
    for file in written[:2]:
        (folder / file.name).write_text("# mine\n")
    os.link(pdf, folder / written[2].name)
    before = {file: file.read_bytes() for file in folder.iterdir()}
    run = tagend("read", pdf, "-o", folder)
    assert run.status == 2
    assert {fault.split(": ")[0] for fault in run.faults} == set(map(str, before))
    assert {file: file.read_bytes() for file in folder.iterdir()} == before
    run = tagend("read", pdf, "-o", folder, "--replace")
    assert run.faults == [
        f"{folder / written[2].name}: this is one of the files that it is made from; name another"
    ]
    (folder / written[2].name).unlink()
    assert tagend("read", pdf, "-o", folder, "--replace").status == 0
    assert tagend("read", pdf, "-o", folder).status == 0
    assert {recipe(file) for file in folder.iterdir()} == set(map(recipe, written))


NO_RECIPE = {
    b"Sandbar eight": "this holds no code's text; ",
    b"\x00\xff\xfe": "this is no text",
    b"%PDF-1.4\nnothing": "it is damaged or cut off; ",
}


@pytest.mark.parametrize("content", NO_RECIPE)
def test_what_holds_no_recipe_is_refused(tagend: Tagend, tmp_path: Path, content: bytes) -> None:
    source, output = tmp_path / "source", tmp_path / "again.toml"
    source.write_bytes(content)
    run = tagend("read", source, "-o", output)
    assert run.status == 2
    (fault,) = run.faults
    assert fault.startswith(f"{source}: {NO_RECIPE[content]}")
    assert not output.exists()


def test_a_pdf_of_other_hands_is_refused(tagend: Tagend, tmp_path: Path) -> None:
    pdf = tmp_path / "other.pdf"
    canvas = Canvas(str(pdf))
    canvas.drawString(72, 72, "Sandbar eight")
    canvas.save()
    run = tagend("read", pdf)
    assert run.status == 2
    (fault,) = run.faults
    assert fault.startswith(f"{pdf}: this PDF carries no recipe")


def test_a_mistyped_code_is_refused(tagend: Tagend, demo: Path) -> None:
    text = code(demo / "reedbed-six.toml").replace("34*21", "43*21")
    run = tagend("read", text)
    assert run.status == 2
    (fault,) = run.faults
    assert fault.startswith("the text and the two check characters at its end do not agree")


def test_a_photo_of_labels_gives_a_file_for_each_leader(tagend: Tagend, demo: Path) -> None:
    written = [demo / f"{sample}.toml" for sample in ("sandbar-eight", "hasty-seven")]
    pdf, photo, folder = demo / "labels.pdf", demo / "labels.jpeg", demo / "back"
    assert tagend("labels", *written, "--anyway", "--count", 15, "-o", pdf).status == 0
    photo.write_bytes(file_of(pages(pdf.read_bytes())[0], "JPEG"))
    folder.mkdir()
    assert tagend("read", photo, "-o", folder).status == 0
    # A code carries no variants: each is a leader of its own.
    assert {recipe(file) for file in folder.iterdir()} == {
        replace(recipe(file), variants=()) for file in written
    }


def test_a_photo_may_come_on_standard_input(tagend: Tagend, demo: Path) -> None:
    text = code(demo / "sandbar-eight.toml")
    run = tagend("read", "-", stdin=file_of(code_picture(text)))
    assert (run.status, run.out) == (0, tagend("read", text).out)


def test_a_strangers_code_beside_ours_is_left_out_and_told(tagend: Tagend, demo: Path) -> None:
    text = code(demo / "sandbar-eight.toml")
    photo = demo / "shelf.png"
    photo.write_bytes(file_of(beside(code_picture(text), code_picture("https://example.org/"))))
    run = tagend("read", photo)
    assert (run.status, run.out) == (0, tagend("read", text).out)
    assert run.err == "left out a code that is not one of a label: 'https://example.org/'\n"


def test_check_says_what_is_there_and_writes_nothing(tagend: Tagend, demo: Path) -> None:
    text = code(demo / "sandbar-eight.toml")
    pdf, photo = demo / "card.pdf", demo / "photo.png"
    recipes = (demo / "sandbar-eight.toml", demo / "hasty-seven.toml")
    assert tagend("cards", *recipes, "--anyway", "-o", pdf).status == 0
    photo.write_bytes(file_of(code_picture(text)))
    before = sorted(demo.iterdir())
    said = "Sandbar eight, 6 sections\n"
    assert tagend("read", "--check", text).out == f"the text of a code: {said}"
    assert tagend("read", "--check", photo).out == f"a code in a picture: {said}"
    run = tagend("read", "--check", pdf)
    assert run.out == f"a file in a PDF: Hasty seven, 4 sections\na file in a PDF: {said}"
    assert (run.status, run.err) == (0, "")
    assert sorted(demo.iterdir()) == before


def test_check_tells_the_fault(tagend: Tagend, demo: Path) -> None:
    run = tagend("read", "--check", code(demo / "sandbar-eight.toml")[:-2] + "00")
    assert run.status == 2
    (fault,) = run.faults
    assert fault.startswith("the text and the two check characters at its end do not agree")


def test_check_takes_no_output(tagend: Tagend, demo: Path) -> None:
    run = tagend("read", "--check", "x", "-o", demo / "again.toml")
    assert run.status == 2
    assert run.faults == [
        "tagend read: --check writes nothing: leave -o out. See 'tagend read --help'."
    ]


def test_a_knot_that_the_rule_would_choose_otherwise_today_is_told(tagend: Tagend) -> None:
    run = tagend("read", checked("PLAIN:BUTT +PL:40*21*N+AL:20*13-B:20*11*FC+%MY HITCH%"))
    assert run.status == 0
    assert "knot" not in run.out.partition("[[section]]")[2].partition("[[section]]")[0]
    joint, fly = run.err.splitlines()
    assert joint.startswith("Plain, below section 1: the label was tied with albright; the rule ")
    assert "my hitch" in fly


def test_a_label_tied_as_the_rule_chooses_today_is_read_without_a_word(
    tagend: Tagend, demo: Path
) -> None:
    of = recipe(demo / "sandbar-eight.toml")
    text = write_notation(of, PRACTICE.knots, PRACTICE.materials, all_named(leader(of)))
    assert "+B" in text
    assert tagend("read", text).err == ""
