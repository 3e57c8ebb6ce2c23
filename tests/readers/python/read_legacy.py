"""Reads exports in legacy formats with readers that others wrote, one line of JSON for each.

Standard input: {"id", "format": "csv"|"hl7v2"|"xml"|"cda", "text"}; standard output: {"id", "items"},
each item {"code", "value", "unit", "region", "side", "note"} with the texts that stand there, or
{"id", "error"}. CSV is read by Python's own csv, HL7 v2 by python-hl7, XML and CDA by lxml.
"""

import csv
import io
import json
import sys

import hl7
from lxml import etree

V3 = "{urn:hl7-org:v3}"
TYPE = "{http://www.w3.org/2001/XMLSchema-instance}type"
PARTS = ("code", "value", "unit", "region", "side", "note")


def item(*values):
    return dict(zip(PARTS, (value or "" for value in values)))


def read_csv(text):
    rows = csv.DictReader(io.StringIO(text, newline=""), strict=True)
    names = ("item", "value", "unit", "region", "side", "note")
    return [item(*(row[name] for name in names)) for row in rows if row["item"]]


def field(message, segment, at, component=1):
    """A component of a field, with its escapes resolved; empty where it is not there."""
    if len(segment) <= at or not str(segment[at]):
        return ""
    repetition = segment[at][0]
    if isinstance(repetition, str):
        return message.unescape(repetition) if component == 1 else ""
    if len(repetition) < component:
        return ""
    return message.unescape(str(repetition[component - 1]))


def read_hl7v2(text):
    message = hl7.parse(text)
    found = []
    for segment in message:
        name = str(segment[0])
        if name == "OBX":
            value = field(message, segment, 5)
            if field(message, segment, 2) == "SN":
                value += field(message, segment, 5, 2)
            unit, region = field(message, segment, 6), field(message, segment, 20)
            side = field(message, segment, 20, 4)
            found.append(item(field(message, segment, 3), value, unit, region, side, ""))
        elif name == "NTE":
            found[-1]["note"] = field(message, segment, 3)
    return found


def parsed(text):
    parser = etree.XMLParser(resolve_entities=False, no_network=True)
    return etree.fromstring(text.encode("utf-8"), parser)


def attribute(element, path, name):
    """The attribute of the one element at a path; empty where it is not there."""
    found = element.findall(path)
    if len(found) > 1:
        raise ValueError(f"{len(found)} elements at {path}")
    return found[0].get(name, "") if found else ""


def read_cda(text):
    found = []
    for one in parsed(text).iter(f"{V3}observation"):
        value = one.find(f"{V3}value")
        kind = value.get(TYPE)
        said = value.text if kind == "ST" else value.get("code" if kind == "CD" else "value")
        site = f"{V3}targetSiteCode"
        found.append(
            item(
                attribute(one, f"{V3}code", "code"),
                said,
                value.get("unit"),
                attribute(one, site, "code"),
                attribute(one, f"{site}/{V3}qualifier/{V3}value", "code"),
                one.findtext(f"{V3}text"),
            )
        )
    return found


def read_xml(text):
    return [
        item(
            one.get("code"),
            one.findtext("value"),
            one.get("unit"),
            one.get("region"),
            one.get("side"),
            one.findtext("note"),
        )
        for one in parsed(text).iter("item")
    ]


READERS = {"csv": read_csv, "hl7v2": read_hl7v2, "xml": read_xml, "cda": read_cda}

for line in sys.stdin:
    request = json.loads(line)
    answer = {"id": request["id"]}
    try:
        answer["items"] = READERS[request["format"]](request["text"])
    except (ValueError, csv.Error, etree.XMLSyntaxError, hl7.exceptions.HL7Exception) as error:
        answer["error"] = str(error)[:2000]
    print(json.dumps(answer), flush=True)
