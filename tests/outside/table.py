"""Where the tables are kept, and how their numbers are written."""

import json
from pathlib import Path

DATA = Path(__file__).parent.parent / "data"


def rounded(value):
    if isinstance(value, float):
        return float(f"{value:.12g}")
    if isinstance(value, dict):
        return {name: rounded(part) for name, part in value.items()}
    if isinstance(value, (list, tuple)):
        return [rounded(part) for part in value]
    return value


def write(name, content):
    """Twelve digits, a line for each case."""
    parts = []
    for subject, cases in content.items():
        lines = ",\n".join("  " + json.dumps(case) for case in rounded(cases))
        parts.append(f' "{subject}": [\n{lines}\n ]')
    (DATA / name).write_text("{\n" + ",\n".join(parts) + "\n}\n")
