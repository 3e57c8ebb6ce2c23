import { describe, expect, it } from 'vitest';
import { fromCda } from '../../../src/convert/cda/from-cda.ts';
import type { ConvertResult } from '../../../src/convert/exams/convert-text.ts';
import type { PresetMapping } from '../../../src/convert/mapping/mapping.ts';
import { snomedWords } from '../../../src/convert/mapping/presets/published-codes.ts';
import { examSections } from '../../../src/convert/mapping/presets/sections.ts';
import { standingOf } from '../../../src/kinds/registries/meanings.ts';
import type { Statement } from '../../../src/model/statement.ts';
import { builtInCatalogue } from '../../../src/terminology/catalogue.ts';
import { lateralitySides } from '../../../src/terminology/sides.ts';
import { checkLedger } from '../syntax-cases.ts';

const mapping: PresetMapping = { format: 'face-neck-mapping/1', use: 'c-cda' };

const SCT = '2.16.840.1.113883.6.96';
/** C-CDA R2.1, 3.90.1: the question of an observation that asserts its value. */
const ASSERTION = '<code code="ASSERTION" codeSystem="2.16.840.1.113883.5.4"/>';

const physical = '<templateId root="2.16.840.1.113883.10.20.2.10" extension="2015-08-01"/>';
const loinc = (code: string): string => `<code code="${code}" codeSystem="2.16.840.1.113883.6.1"/>`;

function section(content: string, head = physical, title = 'Physical Exam'): string {
  return `<component><section>${head}<title>${title}</title>${content}</section></component>`;
}

function document(sections: string, root = 'xmlns="urn:hl7-org:v3"'): string {
  return [
    `<ClinicalDocument ${root} xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">`,
    '<id root="1.2.3.4" extension="D-1"/><effectiveTime value="20240301101500+0000"/>',
    '<recordTarget><patientRole><id root="1.2.3.5" extension="H-0042"/>',
    '<patient><name><given>Ada</given><family>Rope</family></name></patient></patientRole></recordTarget>',
    '<author><assignedAuthor><assignedPerson><name><given>Nell</given><family>Berth</family></name></assignedPerson></assignedAuthor></author>',
    `<component><structuredBody>${sections}</structuredBody></component></ClinicalDocument>`,
  ].join('');
}

function observation(parts: string, attributes = ''): string {
  return `<entry><observation classCode="OBS" moodCode="EVN"${attributes}><statusCode code="completed"/>${parts}</observation></entry>`;
}

function site(code: string, side?: string): string {
  const qualifier =
    side === undefined
      ? ''
      : `<qualifier><name code="272741003" codeSystem="${SCT}"/><value code="${side}" codeSystem="${SCT}"/></qualifier>`;
  return `<targetSiteCode code="${code}" codeSystem="${SCT}">${qualifier}</targetSiteCode>`;
}

function value(code: string, system = SCT): string {
  return `<value xsi:type="CD" code="${code}" codeSystem="${system}"/>`;
}

function convert(content: string): ConvertResult {
  const result = fromCda(document(section(content)), mapping);
  expect(result.quarantine.flatMap(({ issues }) => issues)).toEqual([]);
  checkLedger(result);
  return result;
}

function statements(content: string): readonly Statement[] {
  return convert(content).exams.flatMap(({ exam }) => exam.statements);
}

const RIGHT = '24028007';

interface Row {
  readonly snomed: string;
  readonly finding: string;
  readonly site: string;
  readonly region: string;
  readonly side: string | undefined;
}

/** Each finding with a SNOMED CT code of its own, at its first region that has one. */
function rows(): Row[] {
  const sites = new Map(
    Object.entries(snomedWords('regions', builtInCatalogue)).map(([code, region]) => [
      region,
      code,
    ]),
  );
  return Object.entries(snomedWords('findings', builtInCatalogue)).flatMap(([snomed, finding]) => {
    const { regions = [] } = builtInCatalogue.findings.get(finding) ?? {};
    const region = regions.find(
      (one) => sites.has(one) && !builtInCatalogue.regions.get(one)?.group,
    );
    const code = region && sites.get(region);
    if (region === undefined || code === undefined) return [];
    const standing = standingOf(
      { kind: 'finding', key: 'x', finding, region, presence: 'present' },
      builtInCatalogue,
    );
    const sides = standing.laterality && lateralitySides[standing.laterality];
    const side = sides?.required && sides.sides.includes('right') ? RIGHT : undefined;
    return [{ snomed, finding, site: code, region, side }];
  });
}

describe('entries of C-CDA, by the published codes of the tables', () => {
  it('takes every finding with a code of its own, present and absent', () => {
    const all = rows();
    expect(all.length).toBeGreaterThan(40);
    for (const [attributes, presence] of [
      ['', 'present'],
      [' negationInd="true"', 'absent'],
    ] as const) {
      const entries = all.map((row) =>
        observation(ASSERTION + value(row.snomed) + site(row.site, row.side), attributes),
      );
      const found = statements(entries.join('')).filter(({ kind }) => kind === 'finding');
      expect(found).toMatchObject(
        all.map(({ finding, region, side }) => ({
          finding,
          region,
          presence,
          ...(side !== undefined && { side: 'right' }),
        })),
      );
    }
  });

  const [paired] = rows().filter(({ side }) => side !== undefined);
  if (paired === undefined) throw new Error('no finding at a paired place');
  const at = site(paired.site, RIGHT);

  it.each([
    ['of another code system', ASSERTION + value(paired.snomed, '2.16.840.1.113883.6.6') + at, ''],
    ['without a code system', ASSERTION + value(paired.snomed, '') + at, ''],
    [
      'whose site is of another code system',
      ASSERTION + value(paired.snomed) + at.replace(SCT, '1.2.3'),
      '',
    ],
    ['without its side', ASSERTION + value(paired.snomed) + site(paired.site), ''],
    [
      'with a side that is no laterality',
      ASSERTION + value(paired.snomed) + at.replace('272741003', '106233006'),
      '',
    ],
    [
      'of a relative',
      `${ASSERTION}${value(paired.snomed)}${at}<subject><relatedSubject classCode="PRS"><code code="MTH"/></relatedSubject></subject>`,
      '',
    ],
    ['that is planned', ASSERTION + value(paired.snomed) + at, ' moodCode="INT"'],
    ['by a question that is no assertion', loinc('8867-4') + value(paired.snomed) + at, ''],
  ])('codes nothing that is %s, and keeps it as text', (_, parts, attributes) => {
    const entry = observation(parts).replace(' moodCode="EVN"', attributes || ' moodCode="EVN"');
    const made = statements(entry);
    expect(made.map(({ kind }) => kind)).toEqual(made.map(() => 'note'));
    expect(JSON.stringify(made)).toContain(paired.snomed);
  });

  it('takes a sign by its answer, and a measure with its unit', () => {
    const sign = `<code code="${paired.snomed}" codeSystem="${SCT}"/>`;
    // SNOMED CT 2667000 Absent; 246794004 is the code of the palpebral fissure height.
    expect(statements(observation(sign + value('2667000') + at))).toContainEqual(
      expect.objectContaining({ finding: paired.finding, presence: 'absent', side: 'right' }),
    );
    const height = `<code code="246794004" codeSystem="${SCT}"/><value xsi:type="PQ" value="9.5" unit="mm"/>`;
    const sideAlone = site('', RIGHT).replace('code=""', 'nullFlavor="NI"');
    expect(statements(observation(height + sideAlone))).toContainEqual(
      expect.objectContaining({ kind: 'measurement', value: '9.5', unit: 'mm', side: 'right' }),
    );
  });

  it('leaves who took part to the ledger', () => {
    const author =
      '<author><time value="20240301"/><assignedAuthor><addr><city>Quayside</city></addr></assignedAuthor></author>';
    const { exams } = convert(observation(ASSERTION + value(paired.snomed) + at + author));
    expect(JSON.stringify(exams.map(({ exam }) => exam.statements))).not.toContain('Quayside');
    expect(exams[0]?.ledger.filter(({ name }) => name.endsWith('/city'))).toMatchObject([
      { fate: 'administrative' },
    ]);
  });
});

describe('sections of C-CDA', () => {
  it.each(examSections.map(({ code, region }) => [code, region]))(
    '%s is part of the exam, a note of its place',
    (code, region) => {
      const text = document(section('<text>Nothing amiss.</text>', loinc(code), 'A part'));
      const { exams } = fromCda(text, mapping);
      expect(exams.map(({ exam }) => exam.statements)).toMatchObject([
        [{ kind: 'note', text: 'Nothing amiss.', note: 'A part', ...(region && { region }) }],
      ]);
    },
  );

  const others = section('<text>Takes nothing.</text>', loinc('10160-0'), 'Medications');

  it('sets other sections aside, and says what could be done', () => {
    const { exams, quarantine } = fromCda(document(others), mapping);
    expect(exams).toEqual([]);
    expect(quarantine[0]?.issues.map(({ expected }) => expected).join()).toContain('otherSections');
  });

  it('keeps their narrative where the mapping asks for it, and codes none of their entries', () => {
    const [row] = rows();
    const entry = observation(ASSERTION + value(row?.snomed ?? '') + site(row?.site ?? '', RIGHT));
    const text = document(others.replace('</text>', `</text>${entry}`));
    const result = fromCda(text, { ...mapping, source: { otherSections: 'narrative' } });
    expect(result.exams.map(({ exam }) => exam.statements)).toMatchObject([
      [{ kind: 'note', text: 'Takes nothing.', note: 'Medications' }],
    ]);
    checkLedger(result);
  });

  it('reads a document that declares no namespace, and says so', () => {
    const { exams } = fromCda(document(section('<text>All well.</text>'), ''), mapping);
    expect(exams[0]?.exam.examiners).toMatchObject([{ name: { text: 'Nell Berth' } }]);
    expect(exams[0]?.issues.map(({ code }) => code)).toContain('unsupported-message');
  });
});
