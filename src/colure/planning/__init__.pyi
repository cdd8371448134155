from .aim import Aim, Bearing, aims, bearing_at, bearing_from
from .choose import Proposal, propose
from .exposure import Exposure, assess_exposure
from .flip import flip_plan
from .level import LinkBudget, free_space_loss_db, link_budget
from .preflight import make_plan
from .reach import Reach, assess, distance_for_edge_phase
from .sampling import order_for, power_grids, step_for
from .schemes import Choice

__all__ = [
    "Aim",
    "Bearing",
    "Choice",
    "Exposure",
    "LinkBudget",
    "Proposal",
    "Reach",
    "aims",
    "assess",
    "assess_exposure",
    "bearing_at",
    "bearing_from",
    "distance_for_edge_phase",
    "flip_plan",
    "free_space_loss_db",
    "link_budget",
    "make_plan",
    "order_for",
    "power_grids",
    "propose",
    "step_for",
]
