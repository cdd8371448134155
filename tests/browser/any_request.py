"""Ask a running control room anything: property-based requests to every door, in a process of their own.

Arguments: address, cookie, token, cases for each door. Prints one line of JSON: how many, and what broke.
"""

from __future__ import annotations

import json
import sys

import httpx
import schemathesis
from hypothesis import HealthCheck, given, settings


def main(base: str, cookie: str, token: str, each: int) -> None:
    """Send `each` requests to every door of the server's own table."""
    headers = {"Cookie": cookie, "Origin": base, "X-Colure-Token": token, "Content-Type": "application/json"}
    schema = schemathesis.openapi.from_url(base + "/api/openapi", headers=headers)
    count, broken, statuses = 0, [], {}
    with httpx.Client(timeout=60, headers=headers) as client:
        for found in schema.get_all_operations():
            operation = found.ok()

            @settings(
                max_examples=each,
                deadline=None,
                suppress_health_check=list(HealthCheck),
                database=None,
                derandomize=True,
            )
            @given(case=operation.as_strategy())
            def ask(case):
                nonlocal count
                sent = case.as_transport_kwargs(base_url=base)
                body = {"json": sent["json"]} if "json" in sent else {}
                answer = client.request(sent["method"], sent["url"], **body)
                count += 1
                statuses[answer.status_code] = statuses.get(answer.status_code, 0) + 1
                if answer.status_code >= 500:
                    broken.append([sent["method"], sent["url"], str(body)[:300], answer.status_code])

            ask()
    print(json.dumps({"count": count, "broken": broken[:5], "statuses": statuses}))


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2], sys.argv[3], int(sys.argv[4]))
