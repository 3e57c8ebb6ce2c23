"""Writes workbooks with openpyxl, one line of JSON for each, and tells what openpyxl reads of them.

Standard input: {"id", "epoch": 1900|1904, "rows": [[cell, ...], ...]}, each cell a text, number, boolean or null,
or {"date": "2024-05-06T10:30:00", "format": "yyyy-mm-dd"}, {"time": "10:05:00"}, {"formula": "=A1"},
{"error": "#N/A"}. Standard output: {"id", "base64", "read": [[text, ...], ...]}; a day or time is read as
ISO 8601.
"""

import base64
import datetime
import io
import json
import sys

import openpyxl
from openpyxl.utils.datetime import CALENDAR_MAC_1904


def put(cell, value):
    if not isinstance(value, dict):
        cell.value = value
        if isinstance(value, str):
            cell.data_type = "s"
    elif "date" in value:
        cell.value = datetime.datetime.fromisoformat(value["date"])
        cell.number_format = value["format"]
    elif "time" in value:
        cell.value = datetime.time.fromisoformat(value["time"])
    elif "formula" in value:
        cell.value = value["formula"]
    else:
        cell.value = value["error"]
        cell.data_type = "e"


def text(value):
    if value is None:
        return ""
    if isinstance(value, bool):
        return "TRUE" if value else "FALSE"
    if isinstance(value, (datetime.datetime, datetime.time)):
        return value.isoformat()
    return str(value)


def answer(request):
    book = openpyxl.Workbook()
    if request["epoch"] == 1904:
        book.epoch = CALENDAR_MAC_1904
    sheet = book.active
    for row, cells in enumerate(request["rows"], 1):
        for column, value in enumerate(cells, 1):
            put(sheet.cell(row, column), value)
    written = io.BytesIO()
    book.save(written)
    read = openpyxl.load_workbook(io.BytesIO(written.getvalue())).active
    return {
        "id": request["id"],
        "base64": base64.b64encode(written.getvalue()).decode("ascii"),
        "read": [[text(cell.value) for cell in row] for row in read.iter_rows()],
    }


for line in sys.stdin:
    print(json.dumps(answer(json.loads(line))), flush=True)
