from .campaign import Campaign
from .chamber import Chamber, SimulatedChamber
from .device import Device
from .evaluation import Evaluation
from .exchange import read_csv, write_csv
from .figure import BudgetRow, Figure, format_value
from .files import history, open_dataset, save_dataset
from .goal import Goal, Want
from .lazy import lay_out, open_lazily, read_rows
from .loading import InputError
from .pattern import build_pattern, field_of
from .plan import Plan, Role, ScanGrid
from .recipe import Recipe, Step
from .record import Flag, build_record, of_role, of_state
from .specification import Limit, Mask, Specification, load_specification

__all__ = [
    "BudgetRow",
    "Campaign",
    "Chamber",
    "Device",
    "Evaluation",
    "Figure",
    "Flag",
    "Goal",
    "InputError",
    "Limit",
    "Mask",
    "Plan",
    "Recipe",
    "Role",
    "ScanGrid",
    "SimulatedChamber",
    "Specification",
    "Step",
    "Want",
    "build_pattern",
    "build_record",
    "field_of",
    "format_value",
    "history",
    "lay_out",
    "load_specification",
    "of_role",
    "of_state",
    "open_dataset",
    "open_lazily",
    "read_csv",
    "read_rows",
    "save_dataset",
    "write_csv",
]
