"""Converts records with Apache Spark and writes Parquet: exams, resources, statements, kept_back.

    python convert.py INPUT --mapping MAPPING.json --out FOLDER [--program "node dist/cli/bin.js"]

INPUT is a table as CSV, a line a row and no line break in cells, or records a line as JSON (.ndjson),
as the guide to scale has them. Master and memory are Spark's own settings: spark-submit, or --master.
"""

import argparse
import itertools
import json
import os
import sys

from pyspark import StorageLevel
from pyspark.sql import SparkSession
from pyspark.sql import functions as f

BATCH = 500
# Columns of a statement, in the order of `face-neck-fhir flat --columns`.
COLUMNS = (
    "exam version status patient date protocol statement part kind section region region_display side "
    "place table code display state said usual answer answer_display value comparator unit readings "
    "methods reason reason_text attributes except tracking about seen examiner instruments carried note"
).split()


def main():
    options = parsed()
    spark = (
        SparkSession.builder.master(options.master)
        .appName("face-neck-fhir")
        .config("spark.ui.enabled", "false")
        .config("spark.sql.files.maxPartitionBytes", options.partition_bytes)
        .config("spark.driver.memory", options.memory)
        .getOrCreate()
    )
    here = os.path.dirname(os.path.abspath(__file__))
    spark.sparkContext.addPyFile(os.path.join(here, "line_worker.py"))
    spark.sparkContext.setLogLevel("ERROR")
    # No shuffle and no sort: parts follow one another as in the file.
    records = numbered(spark, options.input).mapPartitions(work(options))
    columns = "converted string, exported string, flattened string"
    # The answer to a record is the same at any time, so a part that is lost can be made again.
    answers = spark.createDataFrame(records, columns).persist(StorageLevel.DISK_ONLY)
    tables = tables_of(answers)
    for name, table in tables.items():
        table.write.mode("overwrite").parquet(os.path.join(options.out, name))
    counts = {name: spark.read.parquet(os.path.join(options.out, name)).count() for name in tables}
    read = answers.count()
    spark.stop()
    print(json.dumps({"records": read, **counts}))
    if counts["exams"] + counts["kept_back"] != read:
        sys.exit("records were lost: %d read" % read)


def parsed():
    parser = argparse.ArgumentParser()
    parser.add_argument("input")
    parser.add_argument("--mapping", required=True)
    parser.add_argument("--out", required=True)
    parser.add_argument("--program", default="npx face-neck-fhir")
    parser.add_argument("--delimiter", default=",")
    parser.add_argument("--master", default="local[*,8]")
    parser.add_argument("--memory", default="1g")
    parser.add_argument("--tries", type=int, default=3)
    parser.add_argument("--partition-bytes", default=str(16 * 1024 * 1024))
    return parser.parse_args()


def numbered(spark, path):
    """The lines of a file with their place, which is the id of each record."""
    lines = spark.read.text(path).rdd.map(lambda row: row.value).zipWithIndex()
    if path.endswith(".ndjson"):
        return lines.map(lambda pair: (pair[1], json.loads(pair[0])))
    delimiter = parsed().delimiter
    header = lines.first()[0].split(delimiter)
    return lines.filter(lambda pair: pair[1] > 0 and pair[0].strip() != "").map(
        lambda pair: (pair[1], {"raw": pair[0], "header": header})
    )


def work(options):
    program = options.program.split()
    convert = [*program, "convert", "--lines", "--to", "exams", "--mapping", options.mapping]
    export = [*program, "export", "--lines", "--apart"]
    flat = [*program, "flat", "--lines"]

    def of_partition(records):
        from line_worker import worker

        records = iter(records)
        while batch := list(itertools.islice(records, BATCH)):
            # With the id last a record cannot bring its own.
            lines = [json.dumps({**record, "id": at}, ensure_ascii=False) for at, record in batch]
            converted = worker(convert, options.tries).answers(lines)
            # The answer of one worker is the record of the next; what was kept back is handed on.
            exported = worker(export, options.tries).answers(converted)
            flattened = worker(flat, options.tries).answers(converted)
            yield from zip(converted, exported, flattened)

    return of_partition


def tables_of(answers):
    head = "id bigint, exam string, quarantine struct<reason string>"
    resource = "type string, id string, text string"
    row = ", ".join("`%s` string" % name for name in COLUMNS)
    read = answers.select(
        "converted",
        f.from_json("converted", head).alias("c"),
        f.from_json("exported", f"{head}, result array<struct<{resource}>>").alias("e"),
        f.from_json("flattened", f"{head}, result array<struct<{row}>>").alias("r"),
        "exported",
        "flattened",
    )
    reason = f.coalesce("c.quarantine.reason", "e.quarantine.reason", "r.quarantine.reason")
    good = read.filter(reason.isNull())
    line = (
        f.when(f.col("c.quarantine").isNotNull(), f.col("converted"))
        .when(f.col("e.quarantine").isNotNull(), f.col("exported"))
        .otherwise(f.col("flattened"))
    )
    resources = good.select(
        f.col("c.id").alias("id"), f.col("c.exam").alias("exam"), f.posexplode("e.result")
    )
    statements = good.select(f.col("c.id").alias("id"), f.posexplode("r.result"))
    return {
        "exams": good.select("c.id", "c.exam", f.col("converted").alias("line")),
        "resources": resources.select(
            "id", "exam", "pos", "col.type", f.col("col.id").alias("resource"), "col.text"
        ),
        "statements": statements.select("id", "pos", "col.*"),
        "kept_back": read.filter(reason.isNotNull()).select(
            "c.id", reason.alias("reason"), line.alias("line")
        ),
    }


if __name__ == "__main__":
    os.environ.setdefault("PYSPARK_PYTHON", sys.executable)
    main()
