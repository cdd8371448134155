from .batch import Item, Result, find_items, run_batch, write_table
from .notebook import Figures, OpenCampaign, Pattern, Record, Run, demo_campaign, open_campaign
from .scale_out import process_large

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
