/**
 * Writes what the profiles of a guide ask for, without their prose, to tests/export/targets: what the
 * quick suite holds exports for that guide to. The guide is a folder of StructureDefinitions in JSON
 * or XML: an unpacked package, or the sources of a guide that no package registry here has.
 * Run: npx tsx src/generate/guide-profiles.ts TARGET FOLDER "what it is and where it is from"
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { guides, isTarget } from '../export/target/guides.ts';
import { fromJson } from '../fhir/json/from-json.ts';
import { readResourceXml } from '../fhir/xml/from-xml.ts';
import * as tables from '../validate/tables/r4.ts';
import * as rest from '../validate/tables/r4-rest.ts';
import * as vitalSigns from '../validate/tables/r4-vital-signs.ts';
import { xmlTypes } from '../validate/text/xml-types.ts';
import { wholeTables } from '../validate/versions/whole-tables.ts';
import { isObject, type JsonObject, listOf, textOf } from '../validate/walk/json.ts';
import { createVersion } from '../validate/walk/stages.ts';

const [target = '', folder = '', source = ''] = process.argv.slice(2);
if (!isTarget(target) || source === '') {
  throw new TypeError('expected a target, a folder of definitions and their source');
}

const kept = ['resourceType', 'url', 'version', 'name', 'status', 'fhirVersion', 'kind'].concat([
  'abstract',
  'type',
  'baseDefinition',
  'derivation',
  'context',
]);
const keptOfElement =
  /^(id|path|sliceName|min|max|type|contentReference|fixed.*|pattern.*|mustSupport|isModifier|isModifierReason)$/;

function element(given: unknown): JsonObject {
  const all = isObject(given) ? given : {};
  const { slicing, binding, constraint } = all;
  return {
    ...Object.fromEntries(Object.entries(all).filter(([name]) => keptOfElement.test(name))),
    ...(isObject(slicing) && { slicing: without(slicing, ['description']) }),
    ...(isObject(binding) && {
      binding: { strength: binding.strength, valueSet: binding.valueSet },
    }),
    ...(constraint !== undefined && {
      constraint: listOf(constraint).map((one) => {
        const { key, severity, expression } = isObject(one) ? one : {};
        return { key, severity, human: key, expression };
      }),
    }),
  };
}

function without(all: JsonObject, names: readonly string[]): JsonObject {
  return Object.fromEntries(Object.entries(all).filter(([name]) => !names.includes(name)));
}

function definition(all: JsonObject): JsonObject {
  if (all.resourceType === 'ValueSet') {
    const { resourceType, url, version, status, compose } = all;
    return { resourceType, url, ...(version !== undefined && { version }), status, compose };
  }
  if (all.resourceType === 'CodeSystem') {
    const { resourceType, url, status, content, concept } = all;
    const codes = listOf(concept).flatMap((one) => (isObject(one) ? [{ code: one.code }] : []));
    return { resourceType, url, status, content, concept: codes };
  }
  const { differential } = all;
  const elements = isObject(differential) ? listOf(differential.element) : [];
  return {
    ...Object.fromEntries(
      kept.flatMap((name) => (all[name] === undefined ? [] : [[name, all[name]]])),
    ),
    differential: { element: elements.map(element) },
  };
}

const types = xmlTypes(createVersion('R4', wholeTables(tables, rest), vitalSigns).plan.definitions);
const byUrl = new Map<string, JsonObject>();
for (const file of readdirSync(folder).sort()) {
  if (!/\.(json|xml)$/.test(file)) continue;
  const text = readFileSync(join(folder, file), 'utf8');
  const { value } = file.endsWith('.xml') ? readResourceXml(text, types) : fromJson(text);
  const url = isObject(value) ? textOf(value.url) : undefined;
  const type = isObject(value) ? value.resourceType : undefined;
  if (
    isObject(value) &&
    /^(StructureDefinition|ValueSet|CodeSystem)$/.test(String(type)) &&
    url !== undefined
  ) {
    byUrl.set(url, definition(value));
  }
}

/**
 * A profile that rests on another guide cannot be used without that one. It is kept by name alone, as
 * one of what FHIR itself defines, since validators refuse references to what they do not know; no
 * exam has a resource of these.
 */
function byName({ differential: _, ...head }: JsonObject): JsonObject {
  const type = textOf(head.type) ?? '';
  const baseDefinition = `http://hl7.org/fhir/StructureDefinition/${type}`;
  return { ...head, baseDefinition, differential: { element: [{ id: type, path: type }] } };
}

function restsOnOthers({ baseDefinition }: JsonObject): boolean {
  const base = textOf(baseDefinition);
  return (
    base !== undefined &&
    !base.startsWith('http://hl7.org/fhir/StructureDefinition/') &&
    !byUrl.has(base.split('|')[0] ?? '')
  );
}

/** The profiles that are claimed, and every definition of the guide that these name. */
const wanted = new Map<string, JsonObject>();
const open: string[] = Object.values(guides[target].profiles);
for (let url = open.pop(); url !== undefined; url = open.pop()) {
  const known = byUrl.get(url);
  if (known === undefined || wanted.has(url)) continue;
  const found = restsOnOthers(known) ? byName(known) : known;
  wanted.set(url, found);
  JSON.stringify(found, (name, value: unknown) => {
    // Only of a required value set must it be known what it holds.
    const required = isObject(value) && value.strength === 'required' ? value.valueSet : undefined;
    if (typeof required === 'string') open.push(required.split('|')[0] ?? '');
    if (name === 'system' && typeof value === 'string') open.push(value);
    const parts = name === 'valueSet' && Array.isArray(value);
    if (parts || /^(profile|targetProfile|baseDefinition)$/.test(name)) {
      for (const named of listOf(value).concat(value)) {
        if (typeof named === 'string') open.push(named.split('|')[0] ?? '');
      }
    }
    return value;
  });
}
for (const url of Object.values(guides[target].profiles)) {
  if (!wanted.has(url)) throw new TypeError(`the guide does not define ${url}`);
}
const sorted = [...wanted].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, one]) => one);
const lines = sorted.map((one) => `    ${JSON.stringify(one)}`).join(',\n');
writeFileSync(
  `tests/export/targets/${target}.json`,
  `{\n  "source": ${JSON.stringify(source)},\n  "definitions": [\n${lines}\n  ]\n}\n`,
);
console.log(`${target}: ${sorted.length} definitions`);
