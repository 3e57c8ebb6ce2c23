import { describe, expect, test } from 'vitest';
import {
  createTerminology,
  type Fetch,
  type TerminologyOptions,
  withTerminology,
} from '../../src/validate/terminology/server/index.ts';
import { compileProfiles, validateBundle } from '../../src/validate/versions/r4.ts';

// A terminology server as FHIR describes its operations, in memory; it can misbehave as servers do.
// https://hl7.org/fhir/R4/valueset-operation-validate-code.html and valueset-operation-expand.html

const valueSet = 'https://vineyard.example/ValueSet/grapes';
const system = 'https://vineyard.example/CodeSystem/grapes';
const held = ['riesling', 'merlot'];

type Json = Record<string, unknown>;
type Answer = { status?: number; text: string } | 'hang' | 'refuse';

function server(behave: (path: string, parameters: Json) => Answer): {
  fetch: Fetch;
  asked: string[];
} {
  const asked: string[] = [];
  const fetch: Fetch = (url, { body, signal }) => {
    const path = url.replace('https://tx.vineyard.example/fhir/', '');
    const list = (JSON.parse(body) as { parameter: Json[] }).parameter;
    const parameters = Object.fromEntries(
      list.map((one) => [one['name'], Object.entries(one).find(([key]) => key !== 'name')?.[1]]),
    );
    asked.push(`${path} ${String(parameters['code'] ?? parameters['url'])}`);
    const answer = behave(path, parameters);
    if (answer === 'refuse') return Promise.reject(new TypeError('fetch failed'));
    if (answer === 'hang') {
      return new Promise((_, reject) => {
        signal.addEventListener('abort', () => reject(new Error('aborted')));
      });
    }
    const { status = 200, text } = answer;
    return Promise.resolve({ ok: status < 300, status, text: () => Promise.resolve(text) });
  };
  return { fetch, asked };
}

function parameters(result: boolean, ...more: Json[]): Answer {
  const parameter = [{ name: 'result', valueBoolean: result }, ...more];
  return { text: JSON.stringify({ resourceType: 'Parameters', parameter }) };
}

const sound = (path: string, asked: Json): Answer => {
  if (path === 'ValueSet/$validate-code') return parameters(held.includes(String(asked['code'])));
  const contains = held.map((code) => ({ system, code }));
  return { text: JSON.stringify({ resourceType: 'ValueSet', expansion: { total: 2, contains } }) };
};

const outcome = {
  resourceType: 'OperationOutcome',
  issue: [{ severity: 'error', code: 'not-found' }],
};

function terminology(fetch: Fetch, more: Partial<TerminologyOptions> = {}) {
  return createTerminology({ baseUrl: 'https://tx.vineyard.example/fhir/', fetch, ...more });
}

const profile = (strength: string): object => ({
  resourceType: 'StructureDefinition',
  url: 'https://vineyard.example/StructureDefinition/tasting',
  type: 'Observation',
  baseDefinition: 'http://hl7.org/fhir/StructureDefinition/Observation',
  differential: {
    element: [
      {
        id: 'Observation.code',
        path: 'Observation.code',
        type: [{ code: 'CodeableConcept' }],
        binding: { strength, valueSet },
      },
    ],
  },
});

const observation = (...codes: string[]): object => ({
  resourceType: 'Observation',
  meta: { profile: ['https://vineyard.example/StructureDefinition/tasting'] },
  text: { status: 'generated', div: '<div xmlns="http://www.w3.org/1999/xhtml">a</div>' },
  status: 'final',
  code: { coding: codes.map((code) => ({ system, code })) },
});

async function judged(fetch: Fetch, codes: string[], strength = 'required') {
  const profiles = compileProfiles([profile(strength)]);
  const resource = observation(...codes);
  const before = validateBundle(resource, { profiles });
  expect(before.unchecked.map((one) => one.valueSet)).toEqual([valueSet]);
  const found = await withTerminology(resource, before, terminology(fetch, { timeout: 20 }));
  return {
    valid: found.valid,
    issues: found.issues.map(({ code, severity, path }) => `${severity} ${code} ${path.join('.')}`),
    unchecked: found.unchecked.map(({ why }) => why),
  };
}

describe('codes that only a server knows', () => {
  test('a code of the value set is no longer unchecked', async () => {
    const { fetch } = server(sound);
    expect(await judged(fetch, ['merlot'])).toEqual({ valid: true, issues: [], unchecked: [] });
  });

  test('one code of several is enough', async () => {
    const { fetch } = server(sound);
    expect(await judged(fetch, ['apple', 'riesling'])).toEqual({
      valid: true,
      issues: [],
      unchecked: [],
    });
  });

  test.each([
    ['required', false, 'error'],
    ['extensible', true, 'warning'],
  ])('a code outside of a value set, %s', async (strength, valid, severity) => {
    const { fetch } = server(sound);
    expect(await judged(fetch, ['apple'], strength)).toEqual({
      valid,
      issues: [`${severity} unknown-code code`],
      unchecked: [],
    });
  });
});

const misbehaviour: readonly [what: string, answer: Answer, why: RegExp][] = [
  ['is not there', 'refuse', /could not be reached/],
  ['does not answer', 'hang', /did not answer in time/],
  ['fails', { status: 500, text: 'oh' }, /status 500/],
  ['asks for a login', { status: 401, text: '{}' }, /status 401/],
  ['does not know the value set', { status: 404, text: JSON.stringify(outcome) }, /status 404/],
  ['sends a page', { text: '<html></html>' }, /no known form/],
  ['sends another resource', { text: JSON.stringify(outcome) }, /no known form/],
  ['sends no result', { text: '{"resourceType":"Parameters"}' }, /no known form/],
  [
    'sends text for a result',
    { text: '{"resourceType":"Parameters","parameter":[{"name":"result","valueString":"false"}]}' },
    /no known form/,
  ],
  [
    'does not know the code system',
    parameters(false, { name: 'x-caused-by-unknown-system', valueCanonical: system }),
    /does not know/,
  ],
  [
    'says in its issues that it does not know the code system',
    parameters(false, { name: 'issues', resource: outcome }),
    /does not know/,
  ],
];

describe('a server that does not say is not a verdict', () => {
  test.each(misbehaviour)('it %s', async (_, answer, why) => {
    const { fetch } = server(() => answer);
    const { valid, issues, unchecked } = await judged(fetch, ['apple']);
    expect({ valid, issues }).toEqual({ valid: true, issues: ['information unchecked-rule code'] });
    expect(unchecked).toEqual([expect.stringMatching(why)]);
    expect(JSON.stringify(unchecked)).not.toContain('apple');
  });
});

describe('a server is not asked more than it must be', () => {
  const ask = (code: string) => ({ valueSet, system, code });

  test('the same question is asked once, also at the same time', async () => {
    const { fetch, asked } = server(sound);
    const client = terminology(fetch);
    const answers = await Promise.all(
      ['merlot', 'merlot', 'apple'].map((code) => client.validateCode(ask(code))),
    );
    await client.validateCode(ask('merlot'));
    expect(answers.map(({ answer }) => answer)).toEqual(['in', 'in', 'not-in']);
    expect(asked).toEqual(['ValueSet/$validate-code merlot', 'ValueSet/$validate-code apple']);
  });

  test('that says no to a value set that it does not have', async () => {
    const message = `Unknown or unusable ValueSet[${valueSet}]`;
    const unknown = (): Answer => parameters(false, { name: 'message', valueString: message });
    const asked = { valueSet, system, code: 'merlot' };
    const { answer } = await terminology(server(unknown).fetch).validateCode(asked);
    expect(answer).toBe('not-checked');
  });

  // HAPI FHIR 8.4 infers no system: tests/reference/package-on-server.test.ts.
  test.each([
    ['and lists the value set', { total: 2, contains: held.map((code) => ({ system, code })) }],
    ['and lists no value set', undefined],
  ])('that infers no system %s', async (_, expansion) => {
    const infersNone = (path: string): Answer =>
      path === 'ValueSet/$validate-code'
        ? parameters(false)
        : { text: JSON.stringify({ resourceType: 'ValueSet', ...(expansion && { expansion }) }) };
    const asked = (code: string) =>
      terminology(server(infersNone).fetch).validateCode({ valueSet, system: undefined, code });
    const listed = expansion !== undefined;
    expect((await asked('merlot')).answer).toBe(listed ? 'in' : 'not-checked');
    expect((await asked('apple')).answer).toBe(listed ? 'not-in' : 'not-checked');
  });

  test('an unanswered question may be asked again', async () => {
    let up = false;
    const { fetch } = server((path, given) => (up ? sound(path, given) : 'refuse'));
    const client = terminology(fetch);
    expect((await client.validateCode(ask('merlot'))).answer).toBe('not-checked');
    up = true;
    expect((await client.validateCode(ask('merlot'))).answer).toBe('in');
  });

  test('no more than the caller allows', async () => {
    const { fetch, asked } = server(sound);
    const client = terminology(fetch, { maxRequests: 5 });
    const codes = Array.from({ length: 50 }, (_, at) => `code-${at}`);
    const answers = await Promise.all(codes.map((code) => client.validateCode(ask(code))));
    expect(asked).toHaveLength(5);
    expect(answers.filter(({ answer }) => answer === 'not-checked')).toHaveLength(45);
  });

  test('one that is down is left alone after three requests', async () => {
    const { fetch, asked } = server(() => 'refuse');
    const client = terminology(fetch, { concurrency: 1 });
    for (let at = 0; at < 20; at++) await client.validateCode(ask(`code-${at}`));
    expect(asked).toHaveLength(3);
  });

  test('old answers make room', async () => {
    const { fetch, asked } = server(sound);
    const client = terminology(fetch, { cacheSize: 2 });
    for (const code of ['a', 'b', 'c', 'a', 'c']) await client.validateCode(ask(code));
    expect(asked.map((line) => line.slice(-1))).toEqual(['a', 'b', 'c', 'a']);
  });
});

describe('expansion', () => {
  const of = (contains: Json[], total?: number): Answer => ({
    text: JSON.stringify({ resourceType: 'ValueSet', expansion: { total, contains } }),
  });

  test('every code, also below others', async () => {
    const { fetch } = server(() =>
      of([
        { system, code: 'red', contains: [{ system, code: 'merlot' }] },
        { system, code: 'x', abstract: true },
      ]),
    );
    expect(await terminology(fetch).expand(valueSet)).toEqual({
      codes: expect.arrayContaining([
        { system, code: 'red' },
        { system, code: 'merlot' },
      ]),
    });
  });

  test.each([
    ['a page of it', of([{ system, code: 'merlot' }], 900)],
    ['nothing', of([])],
    ['an error', { status: 422, text: JSON.stringify(outcome) }],
  ])('%s is not the whole', async (_, answer) => {
    const { fetch } = server(() => answer as Answer);
    expect(await terminology(fetch).expand(valueSet)).toBeUndefined();
  });
});
