"""What a program imports: its page of examples holds, and nothing is loaded before its time."""

import ast
import doctest
import subprocess
import sys
from importlib import import_module
from pathlib import Path

import pytest

from tagend import cards

SOURCE = Path(str(cards.__file__)).read_text("utf-8")


def test_the_page_of_examples_holds() -> None:
    tried = doctest.testmod(cards)
    assert tried.attempted > 10
    assert tried.failed == 0


def test_types_are_told_of_the_same_names_from_the_same_modules() -> None:
    told = {
        alias.asname: node.module
        for node in ast.walk(ast.parse(SOURCE))
        if isinstance(node, ast.ImportFrom) and node.level == 0
        for alias in node.names
        if alias.asname
    }
    assert told == {name: cards._MODULES[name] for name in cards.__all__}
    for name, module in cards._MODULES.items():
        assert getattr(cards, name) is getattr(import_module(module), name)


def test_a_name_that_is_not_there_is_refused() -> None:
    with pytest.raises(AttributeError, match="recipes_of"):
        cards.__getattr__("recipes_of")


def test_nothing_is_loaded_before_it_is_asked_for() -> None:
    code = (
        "import sys, tagend.cards;"
        "assert not [name for name in sys.modules if name.startswith('tagend.cards.')];"
        "from tagend.cards import read_recipe;"
        "assert 'reportlab' not in sys.modules and 'qrcode' not in sys.modules"
    )
    subprocess.run([sys.executable, "-c", code], check=True)
