import { describe, expect, it } from 'vitest';
import { toBundleOrThrow } from '../../src/export/to-bundle.ts';
import { keptTypes, policies, readTypes } from '../../src/read/foreign/modifiers.ts';
import { modifierElements } from '../../src/read/foreign/tables/modifiers.ts';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { sampleExams } from '../../src/testing/index.ts';

interface Resource {
  readonly resourceType: string;
  [name: string]: unknown;
}

const isSign = ({ code }: Resource): boolean =>
  JSON.stringify(code ?? '').includes('CodeSystem/findings');

/** A bundle of ours with one resource of a type changed: of observations, the first sign. */
function changed(type: string, change: (resource: Resource) => object): object {
  const exam = [...sampleExams(11, 12, { size: 'small' })].find(({ statements }) =>
    statements.some(({ kind }) => kind === 'finding'),
  );
  if (exam === undefined) throw new Error('no sample');
  const bundle = JSON.parse(JSON.stringify(toBundleOrThrow(exam, { allowDraft: true })));
  const at = bundle.entry.findIndex(
    ({ resource }: { resource: Resource }) =>
      resource.resourceType === type && (type !== 'Observation' || isSign(resource)),
  );
  bundle.entry[at].resource = change(bundle.entry[at].resource);
  return bundle;
}

const codesOf = (bundle: object): string[] => fromBundle(bundle).issues.map(({ code }) => code);

describe('modifier elements', () => {
  it('of every type that is read are read, allowed by value, or told', () => {
    const open = Object.entries(modifierElements).flatMap(([type, names]) =>
      names
        .map((name) => `${type}.${name}`)
        .filter((path) => {
          return policies[path] === undefined && !keptTypes.includes(type);
        }),
    );
    // A patient who is linked to another is told whatever the link; a name of a device is not a finding.
    expect(open).toEqual(['Device.name.display', 'Patient.link']);
  });

  it('have a policy only where the definitions have the element, of a type that is read', () => {
    for (const path of Object.keys(policies)) {
      const [type = '', ...rest] = path.split('.');
      expect(readTypes).toContain(type);
      expect(modifierElements[type]).toContain(rest.join('.'));
    }
  });

  it.each([
    ['modifierExtension', { modifierExtension: [{ url: 'http://example.org/x', valueCode: 'y' }] }],
    ['implicitRules', { implicitRules: 'http://example.org/rules' }],
    [
      'a component with modifierExtension',
      { component: [{ modifierExtension: [{ url: 'u:x' }] }] },
    ],
  ])('bar an observation of ours that has %s, with an error', (_, parts) => {
    const bundle = changed('Observation', (resource) => ({ ...resource, ...parts }));
    const before = fromBundle(changed('Observation', (resource) => resource));
    const { value, issues } = fromBundle(bundle);
    expect(value?.statements.length).toBe((before.value?.statements.length ?? 0) - 1);
    expect(issues.filter(({ severity }) => severity === 'error').map(({ code }) => code)).toContain(
      'not-understood',
    );
  });

  it('bar the whole exam where they stand in its report or in the bundle', () => {
    const rules = { implicitRules: 'http://example.org/rules' };
    const inReport = changed('DiagnosticReport', (resource) => ({ ...resource, ...rules }));
    expect(fromBundle(inReport).value).toBeUndefined();
    expect(codesOf(inReport)).toEqual(['not-understood']);
    const inBundle = { ...changed('Observation', (resource) => resource), ...rules };
    expect(fromBundle(inBundle).value).toBeUndefined();
    expect(codesOf(inBundle)).toEqual(['not-understood']);
  });

  it('keep a sign of ours from being read where text or interpretation denies it', () => {
    const denied = changed('Observation', (resource) => ({
      ...resource,
      code: { ...Object(resource['code']), text: 'No such thing' },
    }));
    const { value, issues } = fromBundle(denied);
    const plain = fromBundle(changed('Observation', (resource) => resource));
    const signs = (list: readonly { readonly kind: string }[] = []): number =>
      list.filter(({ kind }) => kind === 'finding').length;
    expect(signs(value?.statements)).toBe(signs(plain.value?.statements) - 1);
    expect(issues.map(({ code }) => code)).toContain('unread-statement');
  });

  it.each([
    ['Patient', { active: false }],
    ['Patient', { link: [{ other: { reference: 'Patient/9' }, type: 'replaced-by' }] }],
    ['Patient', { deceasedBoolean: true }],
  ])('of a %s are told as a warning: %o', (type, parts) => {
    const sample = [...sampleExams(11, 12, { size: 'small' })].find(
      ({ subject }) => subject.name !== undefined,
    );
    if (sample === undefined) throw new Error('no sample with a patient of its own');
    const bundle = JSON.parse(JSON.stringify(toBundleOrThrow({ ...sample, status: 'final' })));
    for (const { resource } of bundle.entry) {
      if (resource.resourceType === type) Object.assign(resource, parts);
    }
    const { value, issues } = fromBundle(bundle);
    expect(value).toBeDefined();
    expect(issues.map(({ code, severity }) => [code, severity])).toContainEqual([
      'not-understood',
      'warning',
    ]);
  });
});
