from .acquisition import CheckLine, acquire, check_instruments, rebuild, verify
from .campaigns import flip_plan, learn_axes, make_plan
from .connecting import instruments, twin_process
from .evaluation import effects, evaluate, evaluate_power, findings, flip_result, known_figures, read_figures
from .processing import addresses, has_phase, process, process_with, processed, states_of, step_cautions
from .reporting import write_report
from .starting import copy_profile, new_campaign, start_campaign
from .views import write_view

__all__ = [
    "CheckLine",
    "acquire",
    "addresses",
    "check_instruments",
    "copy_profile",
    "effects",
    "evaluate",
    "evaluate_power",
    "findings",
    "flip_plan",
    "flip_result",
    "has_phase",
    "instruments",
    "known_figures",
    "learn_axes",
    "make_plan",
    "new_campaign",
    "process",
    "process_with",
    "processed",
    "read_figures",
    "rebuild",
    "start_campaign",
    "states_of",
    "step_cautions",
    "twin_process",
    "verify",
    "write_report",
    "write_view",
]
