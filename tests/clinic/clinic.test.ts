import type { Bundle, Coding } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { clinicCodeSystem, firstClinicFile, parseClinic } from '../../src/clinic/index.ts';
import { find } from '../../src/find/index.ts';
import { toQuestionnaire } from '../../src/forms/index.ts';
import { checkExam, fromBundle, orThrow, toBundle } from '../../src/index.ts';
import { pathText } from '../../src/issues/path.ts';
import { validateBundle } from '../../src/validate/versions/all-r4.ts';
import { harbour, harbourFile, maskCheck } from './harbour.ts';

const exam = maskCheck('quay-1', '2025-05-06T09:00:00+02:00');
const system = 'https://harbour.example/codes';

/** Issues as `path code reason expected`. */
function toldOf(value: unknown): string[] {
  return parseClinic(value).issues.map(({ path, code, facts, expected = '' }) =>
    [pathText(path), code, facts.reason, expected.includes('perhaps') ? expected : '']
      .join(' ')
      .trim(),
  );
}

function codingsIn(value: unknown): Coding[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = 'system' in value && 'code' in value ? [value as Coding] : []; // has both
  return [...own, ...Object.values(value).flatMap(codingsIn)];
}

describe('a clinic file', () => {
  it('gives the options of export, reading, checks, forms and search', () => {
    const bundle = orThrow('export', toBundle(exam, harbour.export)) as Bundle; // R4 in the file
    expect(bundle.type).toBe('transaction');
    expect(validateBundle(bundle).valid).toBe(true);
    const codings = codingsIn(bundle);
    expect(codings).toContainEqual(expect.objectContaining({ system, code: 'mask-mark' }));
    expect(codings).toContainEqual(expect.objectContaining({ system, code: 'seal-line.left' }));
    expect(codings).toContainEqual(expect.objectContaining({ code: 'M7', display: 'Mole' }));
    expect(fromBundle(bundle, harbour.read).value).toEqual(exam);

    const { coverage, issues } = checkExam(exam, harbour.checks);
    expect(coverage?.protocol.display).toBe('Check of the skin below a mask');
    expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    const form = orThrow('form', toQuestionnaire('mask-check', harbour.form));
    expect(JSON.stringify(form)).toContain('Pressure mark of a mask');
    expect(find('strap mark', harbour.find)[0]).toMatchObject({ code: 'mask-mark', score: 1 });
    expect(find('Maskenabdruck', harbour.find)[0]?.code).toBe('mask-mark');
    const without = find('Maskenabdruck', { catalogue: harbour.catalogue });
    expect(without.map(({ code }) => code)).not.toContain('mask-mark');
  });

  it('speaks its language', () => {
    const german = orThrow('read', parseClinic({ ...harbourFile(), language: 'de' }));
    expect(german.export.language?.tag).toBe('de');
    expect(german.checks.words?.tag).toBe('de');
    expect(german.checks.catalogue?.regions.get('temple')?.display).toBe('Schläfe');
    expect(german.form.language).toBe('de');
  });

  it('holds every own code that an export can give, as a CodeSystem that conforms', () => {
    const codes = clinicCodeSystem(harbour);
    expect(validateBundle(codes).issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    const known = new Set(codes?.concept?.map(({ code }) => code));
    const sent = codingsIn(toBundle(exam, harbour.export).value).filter(
      (coding) => coding.system === system,
    );
    expect(sent.length).toBe(5);
    expect(sent.filter(({ code }) => !known.has(code ?? ''))).toEqual([]);
    expect(clinicCodeSystem(orThrow('read', parseClinic(firstClinicFile())))).toBeUndefined();
  });
});

describe('what is undecided', () => {
  it('is named in the first file, and left to the defaults', () => {
    const { ok, value, issues } = parseClinic(firstClinicFile());
    expect(ok).toBe(true);
    expect(value?.undecided).toEqual([
      'language',
      'identity',
      'snomed',
      'system',
      'bundle',
      'rule-sets',
    ]);
    expect(issues.every(({ severity }) => severity === 'information')).toBe(true);
    expect(issues).toHaveLength(6);
    expect(value?.export).not.toHaveProperty('identity');
    expect(value?.export).not.toHaveProperty('bundleType');
    expect(value?.checks).not.toHaveProperty('ruleSets');
  });

  it('is refused where nothing can do without', () => {
    const { catalogue } = harbourFile();
    const open = { ...harbourFile(), catalogue: { ...catalogue, system: 'undecided' } };
    expect(toldOf(open)).toEqual(['catalogue.system missing-property undecided-system']);
    const { value } = parseClinic({ ...harbourFile(), identity: 'undecided' });
    expect(toBundle(exam, value?.export).issues.map(({ facts }) => facts.reason)).toEqual([
      'identity',
    ]);
  });
});

describe('a clinic file is checked whole', () => {
  it.each<readonly [string, (file: ReturnType<typeof harbourFile>) => void, readonly string[]]>([
    [
      'names',
      (file) => {
        file.langage = 'en';
        file.catalogue.finding = [];
        file.checks.threshold = {};
        file.export.bundle = 'document';
      },
      [
        'langage unknown-property schema',
        'export.bundle unknown-property schema',
        'catalogue.finding unknown-property schema',
        'checks.threshold unknown-property schema',
      ],
    ],
    [
      'types',
      (file) => {
        file.words = [];
        file.catalogue.regions = {};
        file.checks = 3;
      },
      ['words wrong-type json', 'checks wrong-type json', 'catalogue.regions wrong-type json'],
    ],
    [
      'codes',
      (file) => {
        file.codeMap[0].code = 'nevus';
        file.words.findings['mask-mrk'] = ['x'];
        file.checks.negatives = ['seal-line-sign'];
        file.checks.populations = ['adults'];
        file.checks.sideDifferences = { pfg: '1' };
        file.checks.protocol = { ...file.catalogue.protocols[0], version: '2', tests: ['frown'] };
      },
      [
        'codeMap[0].code unknown-code table perhaps naevus',
        'words.findings.mask-mrk unknown-code row perhaps mask-mark, of the table findings',
        'checks.protocol.tests[0] unknown-code row',
        'checks.negatives[0] unknown-code row perhaps seal-line-signs, of the table negatives',
        'checks.sideDifferences.pfg unknown-code row perhaps pfh, of the table measures',
        'checks.populations[0] unknown-code population perhaps Adults',
      ],
    ],
    [
      'references of own rows',
      (file) => {
        file.catalogue.protocols[0].regions[0].region = 'seal-lin';
      },
      [
        'catalogue.protocols[0].regions[0].region unresolved-key table perhaps seal-line, of the table regions',
      ],
    ],
    [
      'options',
      (file) => {
        file.identity = 'our clinic';
        file.canonicalBase = 'x';
        file.snomed = { licensed: { holder: ' ', edition: '2024' } };
        file.export.filing = { tags: [{ system: 'x y', code: 'a' }] };
      },
      [
        'identity invalid-value absolute-uri',
        'canonicalBase invalid-value absolute-uri',
        'snomed.licensed.holder missing-property licence-holder',
        'snomed.licensed.edition invalid-value snomed-edition',
        'export.filing.tags[0].system invalid-value absolute-uri',
      ],
    ],
    [
      'contradictions',
      (file) => {
        file.export = {
          detail: 'report',
          bundleType: 'document',
          target: 'ips',
          fhirVersion: 'R5',
        };
        file.checks.protocol = { ...file.catalogue.protocols[0], tests: [], regions: [] };
        file.checks.thresholds = { 'difference-pfh': '2' };
        file.checks.sideDifferences = { pfh: '1' };
        file.catalogue.regions[0].code = 'tar-stain';
        file.catalogue.negatives = [];
        file.catalogue.protocols[0].regions = [];
        for (const row of file.catalogue.findings) row.regions = [];
        file.words = {};
        file.catalogue.protocols[0].measures = ['pfh'];
      },
      [
        'catalogue.findings[3].code contradiction code-twice',
        'export.detail invalid-value detail-document',
        'export.target invalid-value guide-version',
      ],
    ],
    [
      'contradictions of checks',
      (file) => {
        file.checks.protocol = { ...file.catalogue.protocols[0], regions: [] };
        file.checks.thresholds = { 'difference-pfh': '2' };
        file.checks.sideDifferences = { pfh: '1' };
        file.checks.judgements = [];
      },
      [
        'checks.judgements unknown-property of-one-exam',
        'checks.protocol.code contradiction protocol-twice',
        'checks.sideDifferences.pfh contradiction limit-twice',
      ],
    ],
  ])('%s', (_, change, told) => {
    const file = harbourFile();
    change(file);
    expect(toldOf(file)).toEqual(told);
    expect(parseClinic(file).ok).toBe(false);
  });

  it('and a part that is there without a value is as one that is left out', () => {
    const file = harbourFile();
    const { system, ...tables } = file.catalogue;
    file.catalogue = { system, ...tables, scales: undefined };
    file.words = { ...file.words, scales: undefined };
    expect(parseClinic(file).issues).toEqual([]);
  });

  it('and what has no effect is told', () => {
    const file = harbourFile();
    file.snomed = 'none';
    const [row] = file.codeMap;
    file.codeMap.push({ ...row, system: 'http://snomed.info/sct', target: '400010006' });
    const { ok } = parseClinic(file);
    expect(ok).toBe(true);
    expect(toldOf(file)).toContain('codeMap[1].system contradiction map-without-snomed');
  });

  it.each([[null], [[]], ['text'], [{}], [{ format: 'face-neck-clinic/2' }]])(
    '%j is none',
    (value) => {
      expect(parseClinic(value).ok).toBe(false);
    },
  );
});
