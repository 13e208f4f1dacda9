"""Files as makers write them: TOML and CSV with the line of every value, and choices."""

from drafting.reading.choices import read_choices, read_values
from drafting.reading.given import Given, Origin
from drafting.reading.table import Row, read_table
from drafting.reading.toml import TomlFile, read_toml

__all__ = ["Given", "Origin", "Row", "TomlFile", "read_choices", "read_table", "read_toml", "read_values"]
