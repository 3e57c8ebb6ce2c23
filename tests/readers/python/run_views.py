"""Rows of ViewDefinitions by fhir4ds, which makes each view into SQL for DuckDB.

Standard input: {"id", "view", "file"}, a view as JSON and a file of NDJSON with resources of its type;
standard output: {"id", "rows"}.
"""

import json
import sys

import fhir4ds

loaded = {}


def connection(file):
    """A database with the resources of a file, in the table that the generated SQL reads."""
    if file not in loaded:
        found = fhir4ds.create_connection()
        found.execute(
            "create table resources(id varchar, resourceType varchar, resource json, patient_ref varchar)"
        )
        with open(file, encoding="utf-8") as lines:
            rows = [(json.loads(line), line) for line in lines]
        found.executemany(
            "insert into resources values (?, ?, ?, ?)",
            [
                (one["id"], one["resourceType"], line, one.get("subject", {}).get("reference"))
                for one, line in rows
            ],
        )
        loaded[file] = found
    return loaded[file]


for line in sys.stdin:
    request = json.loads(line)
    view = request["view"]
    # It takes the canonical URL of the type, or none.
    view.pop("resourceType")
    result = connection(request["file"]).execute(fhir4ds.generate_view_sql(view))
    names = [column[0] for column in result.description]
    rows = [dict(zip(names, row)) for row in result.fetchall()]
    # Decimals and times have no form of their own in JSON.
    print(json.dumps({"id": request["id"], "rows": rows}, default=str), flush=True)
