from .notebook import OpenCampaign, Pattern, Record, Run, demo_campaign, open_campaign
from .scale.batch import Item, Result, find_items, run_batch, write_table
from .scale.pieces import process_large
from .services.figure_table import Figures

__all__ = [
    "Figures",
    "Item",
    "OpenCampaign",
    "Pattern",
    "Record",
    "Result",
    "Run",
    "demo_campaign",
    "find_items",
    "open_campaign",
    "process_large",
    "run_batch",
    "write_table",
]
