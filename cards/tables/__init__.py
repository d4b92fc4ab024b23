"""The bytes of a spreadsheet's table in; recipes or rows of a log out, and back."""
