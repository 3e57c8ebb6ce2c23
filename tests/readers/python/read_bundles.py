"""Reads bundles with fhir.resources and writes them again, one line of JSON for each.

Standard input: {"id", "version": "R4"|"R4B"|"R5", "text"}; standard output: {"id", "text"} with what
the models write, or {"id", "error"} where they do not take the bundle. R4 needs release 6.4 of
fhir.resources, R4B and R5 need release 8: each has an environment of its own.
"""

import importlib
import json
import sys

# The package that holds the models of a version, in the release that has it.
PACKAGES = {"R4": "fhir.resources", "R4B": "fhir.resources.R4B", "R5": "fhir.resources"}
NUMBERS = {"R4": "4.0.1", "R4B": "4.3.0", "R5": "5.0.0"}


def model(version):
    package = importlib.import_module(PACKAGES[version])
    if package.__fhir_version__ != NUMBERS[version]:
        raise SystemExit(f"this environment reads {package.__fhir_version__}, not {version}")
    return importlib.import_module(f"{PACKAGES[version]}.bundle").Bundle


def read_and_write(version, text):
    bundle = model(version)
    if hasattr(bundle, "model_validate_json"):
        return bundle.model_validate_json(text).model_dump_json()
    return bundle.parse_raw(text).json()


for line in sys.stdin:
    request = json.loads(line)
    answer = {"id": request["id"]}
    try:
        answer["text"] = read_and_write(request["version"], request["text"])
    except ValueError as error:  # the errors of both releases of pydantic are of this kind
        answer["error"] = str(error)[:2000]
    print(json.dumps(answer), flush=True)
