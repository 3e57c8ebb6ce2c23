import type { Bundle, Observation } from 'fhir/r4.js';
import { describe, expect, test } from 'vitest';
import { codesFromCsv } from '../../../src/convert/code-map/from-csv.ts';
import { withheldCodes } from '../../../src/export/coding/code-map-policy.ts';
import type { ExportOptions } from '../../../src/export/options.ts';
import { toBundle } from '../../../src/export/to-bundle.ts';
import { licenceIssues } from '../../../src/fhir/licence/licence-gate.ts';
import { orThrow } from '../../../src/issues/issue.ts';
import { absent, measured, present, scored } from '../../../src/kinds/registries/builders.ts';
import { startExam } from '../../../src/model/builder/draft.ts';
import { conclude, finishExamOrThrow } from '../../../src/model/builder/finish-exam.ts';
import { createCatalogue } from '../../../src/terminology/catalogue.ts';
import { freeSet } from '../../../src/terminology/published/free-set.ts';

const HARBOUR = 'https://harbour.example/codes';
const SCT = 'http://snomed.info/sct';

let draft = startExam({
  id: 'map-1',
  subject: { identifiers: [{ system: 'https://harbour.example/crew', value: '17' }] },
  examiners: [{ key: 'e1' }],
  performed: { start: '2024-05-02T09:00:00+02:00' },
  recorded: '2024-05-02T09:30:00+02:00',
  protocol: { id: 'droopy-lid', version: '1.0.0' },
});
const lid = { region: 'lid-upper', side: 'left', methods: ['inspection'] } as const;
draft = present(draft, 'lid-position.ptosis', lid);
draft = absent(draft, 'lid-swelling', { ...lid, side: 'right' });
draft = measured(draft, 'mrd1', lid, '2', 'mm');
draft = measured(draft, 'mrd1', { ...lid, side: 'right' }, '0.4', 'cm');
draft = scored(draft, 'hb', '1985', 'hb-2', { side: 'left' });
const exam = finishExamOrThrow(
  conclude(draft, { text: 'Drooping lid.', concern: 'watch' }),
  'final',
);

function map(...rows: string[]) {
  const head = 'source,code,system,target,relation,action,unit';
  return orThrow('load the map', codesFromCsv([head, ...rows].join('\n')));
}

function exported(rows: string[], options: ExportOptions = {}) {
  const { value, issues } = toBundle(exam, { codes: map(...rows), ...options });
  const entries = (value as Bundle | undefined)?.entry ?? [];
  const observations = entries.flatMap(({ resource }) =>
    resource?.resourceType === 'Observation' ? [resource as Observation] : [],
  );
  const by = (code: string, side: string): Observation | undefined =>
    observations.find(
      (one) =>
        one.code.coding?.[0]?.code === code && one.bodySite?.coding?.[0]?.code?.endsWith(side),
    );
  const list = (concept: Observation['code'] | undefined) =>
    concept?.coding?.map(({ system, code }) => [system?.split('/').at(-1), code]);
  return { by, list, value, issues };
}

describe("an adopter's code map", () => {
  test('adds codings behind ours and the built-in ones', () => {
    const { by, list } = exported([`findings,lid-position.ptosis,${HARBOUR},PT,equivalent,,`]);
    expect(list(by('lid-position.ptosis', '.left')?.code)).toEqual([
      ['findings', 'lid-position.ptosis'],
      ['sct', '11934000'],
      ['codes', 'PT'],
    ]);
  });

  test('a wider place stands beside what was found there, and not beside what was not', () => {
    const rows = ['right', 'left'].map(
      (side) => `regions,lid-upper.${side},${HARBOUR},eye,wider,,`,
    );
    const { by } = exported(rows);
    const site = (code: string, side: string) =>
      by(code, side)?.bodySite?.coding?.map(({ code: one }) => one);
    expect(site('lid-position.ptosis', 'left')).toContain('eye');
    expect(site('lid-swelling', 'right')).not.toContain('eye');
  });

  test('replaces what the row has in that system, or removes it', () => {
    const replaced = exported([`findings,lid-position.ptosis,${SCT},22298006,wider,replace,`], {
      freeSet,
    });
    expect(replaced.list(replaced.by('lid-position.ptosis', '.left')?.code)).toEqual([
      ['findings', 'lid-position.ptosis'],
      ['sct', '22298006'],
    ]);
    const removed = exported([`findings,lid-position.ptosis,${SCT},,,replace,`]);
    expect(removed.list(removed.by('lid-position.ptosis', '.left')?.code)).toEqual([
      ['findings', 'lid-position.ptosis'],
    ]);
  });

  test('a wider code is not sent for what is absent, a narrower one never', () => {
    const rows = [
      `findings,lid-swelling,${HARBOUR},WIDE,wider,,`,
      `findings,lid-swelling,${HARBOUR},SAME,equivalent,,`,
      `findings,lid-position.ptosis,${HARBOUR},WIDE,wider,,`,
      `findings,lid-position.ptosis,${HARBOUR},NARROW,narrower,,`,
    ];
    const { by, list } = exported(rows);
    expect(list(by('lid-swelling', '.right')?.code)).toContainEqual(['codes', 'SAME']);
    expect(list(by('lid-swelling', '.right')?.code)).not.toContainEqual(['codes', 'WIDE']);
    expect(list(by('lid-position.ptosis', '.left')?.code)).toContainEqual(['codes', 'WIDE']);
    expect(list(by('lid-position.ptosis', '.left')?.code)).not.toContainEqual(['codes', 'NARROW']);
  });

  test('a region with its side, and a value in a row, have codings of their own', () => {
    const rows = [
      `regions,lid-upper.left,${HARBOUR},LUL,equivalent,,`,
      `scales,hb.hb-2,${HARBOUR},HB2,equivalent,,`,
    ];
    const { by, list, value } = exported(rows);
    expect(list(by('lid-position.ptosis', '.left')?.bodySite)).toContainEqual(['codes', 'LUL']);
    expect(list(by('lid-swelling', '.right')?.bodySite)).not.toContainEqual(['codes', 'LUL']);
    expect(JSON.stringify(value)).toContain('"code":"HB2"');
  });

  test('a code for one unit stands beside values in that unit alone', () => {
    const rows = [
      `measures,mrd1,${HARBOUR},MRD-MM,equivalent,,mm`,
      `measures,mrd1,${HARBOUR},MRD-CM,equivalent,,cm`,
    ];
    const { by, list } = exported(rows);
    expect(list(by('mrd1', '.left')?.code)).toEqual([
      ['measures', 'mrd1'],
      ['codes', 'MRD-MM'],
    ]);
    expect(list(by('mrd1', '.right')?.code)).toEqual([
      ['measures', 'mrd1'],
      ['codes', 'MRD-CM'],
    ]);
  });

  test('does not get by the licence policy, and says so', () => {
    const rows = [
      `findings,lid-position.ptosis,${SCT},68426009,equivalent,,`,
      `regions,lid-upper.left,${SCT},68426009,equivalent,,`,
    ];
    const { value, issues } = exported(rows, { freeSet });
    expect(licenceIssues(value, 'free-set', { freeSet })).toEqual([]);
    expect(issues.map(({ code, path }) => [code, path])).toContainEqual([
      'withheld-code',
      ['codes'],
    ]);
    expect(withheldCodes(map(...rows), { freeSet }).map(({ path }) => path)).toEqual([
      ['findings|lid-position.ptosis', 0],
      ['regions|lid-upper.left', 0],
    ]);
    const snomed = {
      licensed: {
        holder: 'Harbour clinic',
        edition: 'http://snomed.info/sct/900000000000207008/version/20240101',
      },
    };
    expect(JSON.stringify(exported(rows, { snomed }).value)).toContain('"code":"68426009"');
    expect(withheldCodes(map(...rows), { snomed })).toEqual([]);
  });
});

test('rows of an adopter cannot stand under the name of SNOMED CT', () => {
  for (const system of [SCT, 'urn:oid:2.16.840.1.113883.6.96', 'http://loinc.org']) {
    const { value, issues } = createCatalogue({ system });
    expect(value).toBeUndefined();
    expect(issues.map(({ code, path }) => [code, path])).toEqual([['wrong-system', ['system']]]);
  }
});
