import { createHash } from 'node:crypto';
import { exportJWK, generateKeyPair, type JWK } from 'jose';
import { beforeAll, describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import {
  amendExam,
  type Exam,
  type ExportOptions,
  fromJson,
  orThrow,
  signExam,
  toBundle,
  toBundleOrThrow,
  toJson,
} from '../../src/index.ts';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { contentToSign, type ExamSignature, verifySignatures } from '../../src/sign/index.ts';
import { jwsVerifier, signDetached } from '../../src/sign/jws.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';
import { validateBundle as validateR4b } from '../../src/validate/versions/r4b.ts';
import { validateBundle as validateR5 } from '../../src/validate/versions/r5.ts';
import { clinic } from '../clinic.ts';

const validators = { R4: validateBundle, R4B: validateR4b, R5: validateR5 };
const example = examples.get('broken-off');
if (example === undefined) throw new Error('no example');
const by = example.examiners[0].key;
const when = '2031-11-05T10:00:00Z';
const exam = orThrow('sign', signExam({ ...example, status: 'preliminary' }, { by, at: when }));
const version = exam.history?.length ?? 0;

let key: JWK;
let open: JWK;

beforeAll(async () => {
  const pair = await generateKeyPair('ES256', { extractable: true });
  key = { ...(await exportJWK(pair.privateKey)), alg: 'ES256', kid: 'nurse-1' };
  open = { ...(await exportJWK(pair.publicKey)), alg: 'ES256', kid: 'nurse-1' };
});

const verifier = () => jwsVerifier((kid) => (kid === open.kid ? open : undefined));

async function signed(of: Exam, options: ExportOptions, step = version) {
  const content = orThrow('write', contentToSign(toBundleOrThrow(of, options)));
  const made = await signDetached(content, key, when);
  const signature: ExamSignature = { version: step, purpose: 'author', when, ...made };
  const signatures = [signature];
  return { bundle: toBundleOrThrow(of, { ...options, signatures }), content, signatures };
}

describe('a signed record', () => {
  it.each(['R4', 'R4B', 'R5'] as const)(
    'is verified, valid, and read back with its signature, %s',
    async (fhirVersion) => {
      for (const bundleType of ['collection', 'transaction', 'document'] as const) {
        const { bundle, signatures } = await signed(exam, { ...clinic, fhirVersion, bundleType });
        expect(
          validators[fhirVersion](bundle).issues.filter((one) => one.severity === 'error'),
        ).toEqual([]);
        expect(await verifySignatures(bundle, verifier())).toMatchObject({ ok: true, value: 1 });
        const read = fromBundle(bundle, clinic);
        expect(read).toMatchObject({ value: exam, signatures, remainder: [] });
        // As a file, and once more exported with what was read.
        const parsed = orThrow('read', fromJson(toJson(bundle)));
        expect(await verifySignatures(parsed, verifier())).toMatchObject({ ok: true });
        const again = { ...clinic, fhirVersion, bundleType, signatures: read.signatures };
        expect(toJson(toBundleOrThrow(exam, again))).toBe(toJson(bundle));
      }
    },
  );

  it('is verified as a server gives it back, which rewrites references and adds meta', async () => {
    const { bundle } = await signed(exam, {
      ...clinic,
      bundleType: 'transaction',
      masterData: 'own',
    });
    const held = JSON.parse(toJson(bundle), (name, value) =>
      name === 'reference' && String(value).startsWith('urn:uuid:')
        ? `Any/${value.slice(9)}`
        : value,
    );
    for (const entry of held.entry) {
      const { resourceType, id } = entry.resource;
      entry.fullUrl = `https://server.example/fhir/${resourceType}/${id}`;
      entry.resource.meta = { versionId: '3' };
    }
    expect(await verifySignatures(held, verifier())).toMatchObject({ ok: true });
  });

  it('that was changed in any resource is told', async () => {
    const { bundle } = await signed(exam, {});
    const text = toJson(bundle);
    const changed: [string, (entries: { resource: Record<string, unknown> }[]) => unknown][] = [
      [
        'value',
        (all) =>
          Object.assign(
            all.find(({ resource }) => resource['valueCodeableConcept'])?.resource ?? {},
            { valueCodeableConcept: { text: 'Normal' } },
          ),
      ],
      [
        'conclusion',
        (all) => Object.assign(all[0]?.resource ?? {}, { conclusion: 'Nothing found.' }),
      ],
      [
        'patient',
        (all) =>
          Object.assign(
            all.find(({ resource }) => resource['resourceType'] === 'Patient')?.resource ?? {},
            { birthDate: '1950' },
          ),
      ],
      [
        'left out',
        (all) =>
          all.splice(
            all.findIndex(({ resource }) => resource['resourceType'] === 'Observation'),
            1,
          ),
      ],
      [
        'put in',
        (all) =>
          all.push({
            ...all[0],
            fullUrl: 'urn:uuid:4b9ad0c4-8b1c-4a6e-9d1e-7d1f0d9b8a11',
          } as never),
      ],
    ];
    for (const [what, change] of changed) {
      const altered = JSON.parse(text);
      change(altered.entry);
      const { ok, issues } = await verifySignatures(altered, verifier());
      expect({ what, ok, codes: issues.map(({ code }) => code) }).toEqual({
        what,
        ok: false,
        codes: ['invalid-signature'],
      });
    }
  });

  it('of another key, another algorithm or none is not verified', async () => {
    const { bundle } = await signed(exam, {});
    const codes = async (data: unknown, verify = verifier()) =>
      (await verifySignatures(data, verify)).issues.map(({ code }) => code);
    expect(
      await codes(
        bundle,
        jwsVerifier(() => undefined),
      ),
    ).toEqual(['invalid-signature']);
    expect(
      await codes(
        bundle,
        jwsVerifier(() => ({ ...open, alg: 'ES384' })),
      ),
    ).toEqual(['invalid-signature']);
    expect(await codes(toBundleOrThrow(exam))).toEqual(['missing-property']);
    const bare = JSON.parse(toJson(bundle), (name, value) =>
      name === 'data' ? Buffer.from('{"alg":"none"}..').toString('base64') : value,
    );
    expect(await codes(bare)).toEqual(['invalid-signature']);
    for (const odd of [
      null,
      7,
      'x',
      [],
      { resourceType: 'Bundle' },
      { resourceType: 'Bundle', entry: [null, {}] },
    ]) {
      expect((await verifySignatures(odd, verifier())).ok).toBe(false);
    }
  });

  it('that was changed by a later step says that the earlier signature cannot be checked', async () => {
    const { signatures } = await signed(exam, {});
    const reason = 'Second opinion';
    const { conclusion } = exam;
    if (conclusion === undefined) throw new Error('no conclusion');
    const changes = { conclusion: { ...conclusion, text: 'Asked again, and looked at again.' } };
    const later = orThrow(
      'amend',
      amendExam(exam, { by, at: '2031-11-06T10:00:00Z', reason, changes }),
    );
    const { ok, issues } = await verifySignatures(
      toBundleOrThrow(later, { signatures }),
      verifier(),
    );
    expect(ok).toBe(false);
    expect(issues.map(({ facts }) => facts.reason)).toEqual(['earlier', 'signature']);
  });

  it('is signed where its history says so, whole, and by data of the form', () => {
    const good = {
      version,
      purpose: 'author',
      when,
      format: 'application/jose',
      data: 'AAAA',
    } as const;
    const told = (signature: object, options: ExportOptions = {}) => {
      const signatures = [signature as ExamSignature]; // what a file could hold
      const { issues } = toBundle(exam, { ...options, signatures });
      return issues.map(({ path }) => path.join('.'));
    };
    expect(told(good)).toEqual([]);
    expect(told({ ...good, version: 90 })).toEqual(['signatures.0.version']);
    expect(told({ ...good, purpose: 'x' })).toEqual(['signatures.0.purpose']);
    expect(told({ ...good, when: '2031' })).toEqual(['signatures.0.when']);
    expect(told({ ...good, data: 'no base64!' })).toEqual(['signatures.0.data']);
    expect(told({ version })).toHaveLength(4);
    expect(told(good, { detail: 'notable' })).toContain('signatures');
  });
});

describe('what is signed', () => {
  const content = orThrow('write', contentToSign(toBundleOrThrow(exam)));

  it('has sorted properties, no whitespace, and neither narrative nor meta', () => {
    const value = JSON.parse(content);
    const sorted = (one: unknown): boolean =>
      typeof one !== 'object' || one === null
        ? true
        : Object.values(one).every(sorted) &&
          (Array.isArray(one) || Object.keys(one).join() === Object.keys(one).sort().join());
    expect(sorted(value)).toBe(true);
    expect(content).not.toMatch(/"(?:text":\{"status|meta)"?/);
    expect(value.entry.length).toBe(
      (toBundleOrThrow(exam).entry ?? []).filter(
        ({ resource }) => resource?.resourceType !== 'Provenance',
      ).length,
    );
  });

  it('stays the same text whatever the order of entries and properties', () => {
    const reversed = JSON.parse(toJson(toBundleOrThrow(exam)), (_, value) =>
      value && typeof value === 'object' && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(value).reverse())
        : value,
    );
    reversed.entry.reverse();
    const digest = (text: string | undefined) =>
      createHash('sha256')
        .update(text ?? '')
        .digest('hex');
    expect(digest(contentToSign(reversed).value)).toBe(digest(content));
  });
});
