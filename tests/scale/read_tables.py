"""Writes the tables of the Spark example as lines of JSON in the order of the records."""

import json
import os
import sys

from pyspark.sql import SparkSession

folder, out = sys.argv[1:]
spark = SparkSession.builder.master("local[1]").config("spark.ui.enabled", "false").getOrCreate()
spark.sparkContext.setLogLevel("ERROR")
for name, order in (
    ("exams", ["id"]),
    ("resources", ["id", "pos"]),
    ("statements", ["id", "pos"]),
    ("kept_back", ["id"]),
):
    table = spark.read.parquet(os.path.join(folder, name)).orderBy(*order)
    with open(os.path.join(out, name), "w", encoding="utf-8") as file:
        for row in table.toLocalIterator():
            file.write(json.dumps(list(row), ensure_ascii=False) + "\n")
spark.stop()
