"""Reads bundles with fhir.resources and writes them again, one line of JSON for each.

Standard input: {"id", "version": "R4"|"R4B"|"R5", "text"}; standard output: {"id", "text"} with what
the models write, or {"id", "error"} where they do not take the bundle. R4 needs release 6.4 of
fhir.resources, R4B and R5 need release 8: each has an environment of its own.
"""

import importlib
import importlib.util
import json
import re
import sys
from decimal import Decimal

# The package that holds the models of a version, in the release that has it.
PACKAGES = {"R4": "fhir.resources", "R4B": "fhir.resources.R4B", "R5": "fhir.resources"}
NUMBERS = {"R4": "4.0.1", "R4B": "4.3.0", "R5": "5.0.0"}


def model(version):
    package = importlib.import_module(PACKAGES[version])
    if package.__fhir_version__ != NUMBERS[version]:
        raise SystemExit(f"this environment reads {package.__fhir_version__}, not {version}")
    return importlib.import_module(f"{PACKAGES[version]}.bundle").Bundle


# Around the digits of a decimal, since no writer of JSON here takes one as it is.
MARK = "\ue000"


def plain(value):
    """What JSON has no type for, as a text; a decimal with the digits that the model holds."""
    if isinstance(value, Decimal):
        return f"{MARK}{value:f}{MARK}"
    if isinstance(value, bytes):
        return value.decode("ascii")
    return value.isoformat()


def keep_decimals():
    """Release 8 writes the decimals that its models hold as binary numbers; here they stay as they are."""
    base = importlib.import_module("fhir_core.fhirabstractmodel").FHIRAbstractModel
    theirs = base._serialize_primitive_value

    def ours(self, value, field_info):
        return value if isinstance(value, Decimal) else theirs(self, value, field_info)

    base._serialize_primitive_value = ours


def read_and_write(version, text):
    bundle = model(version)
    # The parsers and writers that come with the models turn decimals into binary numbers.
    values = json.loads(text, parse_float=Decimal)
    if hasattr(bundle, "model_validate"):
        written = bundle.model_validate(values).model_dump()
    else:
        written = bundle.parse_obj(values).dict()
    marked = json.dumps(written, default=plain, ensure_ascii=False)
    return re.sub(f'"{MARK}([^"]*){MARK}"', r"\1", marked)


if importlib.util.find_spec("fhir_core"):
    keep_decimals()
for line in sys.stdin:
    request = json.loads(line)
    answer = {"id": request["id"]}
    try:
        answer["text"] = read_and_write(request["version"], request["text"])
    except ValueError as error:  # the errors of both releases of pydantic are of this kind
        answer["error"] = str(error)[:2000]
    print(json.dumps(answer), flush=True)
