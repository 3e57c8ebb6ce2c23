// Rows of ViewDefinitions by medplum's engine. Standard input: {"id", "view", "file"}, a view as JSON
// and a file of NDJSON with resources of its type; standard output: {"id", "rows"}.
// Node 20 takes it with --experimental-websocket alone, which the package asks for when it is loaded.
import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { evalSqlOnFhir } from '@medplum/core';

const known = new Map();

function resourcesOf(file) {
  let list = known.get(file);
  if (list === undefined) {
    const lines = readFileSync(file, 'utf8').split('\n');
    list = lines.filter((line) => line !== '').map((line) => JSON.parse(line));
    known.set(file, list);
  }
  return list;
}

for await (const line of createInterface({ input: process.stdin })) {
  const { id, view, file } = JSON.parse(line);
  console.log(JSON.stringify({ id, rows: evalSqlOnFhir(view, resourcesOf(file)) }));
}
