import { afterEach, describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { deliver, type ForbiddenChange, readBack } from '../../src/deliver/index.ts';
import { toBundleOrThrow } from '../../src/index.ts';
import { clinic } from '../clinic.ts';
import { type FakeServer, startFake, type Twist } from '../testing/fake-server.ts';

const exam = examples.get('skin-lesion');
if (exam === undefined) throw new Error('no example');
const put = toBundleOrThrow(exam, { ...clinic, bundleType: 'transaction' });
const conditional = toBundleOrThrow(exam, {
  ...clinic,
  bundleType: 'transaction',
  transaction: 'conditional',
});

let open: FakeServer[] = [];
afterEach(async () => {
  await Promise.all(open.map((one) => one.stop()));
  open = [];
});

async function delivered(bundle: typeof put, twist?: Twist) {
  const fake = await startFake(twist, { lax: true });
  open.push(fake);
  const to = { base: fake.url, sleep: () => Promise.resolve() };
  const { value } = await deliver(bundle, to, { most: 50 });
  if (value?.result !== 'stored') throw new Error(`not stored: ${value?.fault}`);
  return { fake, check: () => readBack(bundle, to, value.state) };
}

/** Bends what is read, of one type or of all. */
function atRead(type: string, bend: (text: string) => string): Twist {
  return ({ method, path }, answer) => {
    if (method === 'GET' && path.startsWith(type)) answer.body = bend(answer.body);
  };
}

const without =
  (name: string) =>
  (text: string): string =>
    JSON.stringify(JSON.parse(text, (property, value) => (property === name ? undefined : value)));

describe('what was delivered and is read again', () => {
  it.each([
    ['under our ids', put],
    ['under ids of the server', conditional],
  ])('is the same on a server that keeps it, %s', async (_, bundle) => {
    const { check } = await delivered(bundle);
    const { changes, exchanges, ...found } = await check();
    expect(found).toEqual({ same: true, missing: [], doubled: [], unread: [] });
    expect(changes.filter(({ allowed }) => !allowed)).toEqual([]);
    expect(exchanges.length).toBeGreaterThan(40);
  });

  const lies: readonly (readonly [string, ForbiddenChange, string, Twist])[] = [
    [
      'drops extensions',
      'dropped-extension',
      'Observation.bodySite.extension',
      atRead('Observation/', without('extension')),
    ],
    [
      'rounds figures',
      'changed-content',
      'Observation.valueQuantity.value',
      atRead('Observation/', (text) => text.replace(/"value":(\d+)\.\d+/g, '"value":$1')),
    ],
    [
      'drops notes',
      'dropped-content',
      'DiagnosticReport.conclusion',
      atRead('DiagnosticReport/', without('conclusion')),
    ],
    [
      'adds a result',
      'added-content',
      'Observation.specimen',
      atRead('Observation/', (text) =>
        text.replace('"category":', '"specimen":{"display":"none"},"category":'),
      ),
    ],
    [
      'gives the report to another patient',
      'changed-reference',
      'DiagnosticReport.subject.reference',
      atRead('DiagnosticReport/', (text) => text.replace(/"Patient\/[^"]+"/, '"Patient/other"')),
    ],
  ];
  it.each(lies)('shows a server that %s', async (_, what, element, twist) => {
    const { check } = await delivered(put, twist);
    const { same, changes } = await check();
    expect(same).toBe(false);
    const found = changes.find((one) => one.what === what && one.element === element);
    expect(found, JSON.stringify(changes)).toMatchObject({ allowed: false });
  });

  it('shows a server that stored under other ids', async () => {
    const { fake, check } = await delivered(put, ({ method }, answer) => {
      if (method !== 'POST') return;
      answer.body = answer.body.replaceAll('"location":"Observation/', '"location":"Observation/x');
    });
    for (const [name, kept] of [...fake.stored]) {
      const id = name.split('/')[1];
      if (!name.startsWith('Observation/')) continue;
      fake.stored.delete(name);
      const resource = { ...kept.resource, id: `x${id}` };
      fake.stored.set(`Observation/x${id}`, { ...kept, resource });
    }
    const { same, changes } = await check();
    expect(same).toBe(false);
    expect(changes.map(({ what }) => what)).toContain('changed-ids');
  });

  it('shows a server that lost something, or keeps another thing there', async () => {
    const { fake, check } = await delivered(put);
    const names = [...fake.stored.keys()].filter((name) => name.startsWith('Observation/'));
    const [gone = '', other = ''] = names;
    fake.stored.delete(gone);
    const kept = fake.stored.get(other);
    if (kept !== undefined) kept.resource = { resourceType: 'Basic' };
    const { same, missing } = await check();
    expect(same).toBe(false);
    expect([...missing].sort()).toEqual([gone, other].sort());
  });

  it('shows a server that forgot to match: two patients with one identifier', async () => {
    const { fake, check } = await delivered(put);
    const [[name, kept] = []] = [...fake.stored].filter(([one]) => one.startsWith('Patient/'));
    if (name === undefined || kept === undefined) throw new Error('no patient');
    fake.stored.set('Patient/copy', { ...kept, resource: { ...kept.resource, id: 'copy' } });
    expect(await check()).toMatchObject({ same: false, doubled: ['Patient'], missing: [] });
  });

  it.each([
    ['fails', 500, '{}'],
    ['answers with pages', 200, '<html></html>'],
    ['answers with an error', 403, ''],
  ])('is not called the same where the server %s', async (_, status, body) => {
    let told = false;
    const { check } = await delivered(put, ({ method }, answer) => {
      if (told && method === 'GET') Object.assign(answer, { status, body });
    });
    told = true;
    const { same, unread, missing } = await check();
    expect({ same, missing }).toEqual({ same: false, missing: [] });
    expect(unread).toContain('DiagnosticReport');
    expect(unread).toContain('Patient');
  });
});
