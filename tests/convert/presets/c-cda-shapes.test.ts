import { describe, expect, it } from 'vitest';
import { cdaReaderOf } from '../../../src/convert/cda/reader.ts';
import { convertText } from '../../../src/convert/exams/convert-text.ts';
import type { PresetMapping } from '../../../src/convert/mapping/mapping.ts';
import type { Plan } from '../../../src/convert/mapping/plan.ts';
import { prepareMapping } from '../../../src/convert/prepare/prepare-mapping.ts';
import type { Statement } from '../../../src/model/statement.ts';
import { checkLedger } from '../syntax-cases.ts';

/** Shapes in which systems of different makers write one examination; all people are invented. */
const mapping: PresetMapping = {
  format: 'face-neck-mapping/1',
  use: 'c-cda',
  source: { otherSections: 'narrative' },
};

const plan = planOf(mapping);

function planOf(own: PresetMapping): Plan {
  const { value } = prepareMapping(own);
  if (value === undefined) throw new Error('the preset cannot be prepared');
  return value;
}

const SCT = '2.16.840.1.113883.6.96';
/** C-CDA R2.1, 3.90.1: the question of an observation that asserts its value. */
const ASSERTION = '<code code="ASSERTION" codeSystem="2.16.840.1.113883.5.4"/>';
/** SNOMED CT 11934000 Ptosis of eyelid, 38934000 upper eyelid, as the tables have them. */
const PTOSIS = '11934000';
const EYELID = '38934000';
const RIGHT = '24028007';
const RIGHT_EYELID = `<targetSiteCode code="${EYELID}" codeSystem="${SCT}"><qualifier><name code="272741003" codeSystem="${SCT}"/><value code="${RIGHT}" codeSystem="${SCT}"/></qualifier></targetSiteCode>`;

function document(body: string, head = ''): string {
  return [
    '<ClinicalDocument xmlns="urn:hl7-org:v3" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">',
    `<id root="1.2.3.4" extension="D-1"/>${head}<effectiveTime value="20240301101500+0000"/>`,
    '<recordTarget><patientRole><id root="1.2.3.5" extension="H-0042"/>',
    '<patient><name><given>Ada</given><family>Rope</family></name></patient></patientRole></recordTarget>',
    '<author><time value="20240301"/><assignedAuthor><assignedPerson><name><given>Nell</given><family>Berth</family></name></assignedPerson></assignedAuthor></author>',
    `${body}</ClinicalDocument>`,
  ].join('');
}

function section(content: string): string {
  return `<component><structuredBody><component><section><templateId root="2.16.840.1.113883.10.20.2.10"/><code code="29545-1" codeSystem="2.16.840.1.113883.6.1"/><title>Physical Exam</title>${content}</section></component></structuredBody></component>`;
}

function observation(parts: string, attributes = ''): string {
  return `<observation classCode="OBS" moodCode="EVN"${attributes}><statusCode code="completed"/>${parts}</observation>`;
}

function convert(text: string, own = plan): ReturnType<typeof convertText> {
  const result = convertText(text, cdaReaderOf({ syntax: 'cda', otherSections: 'narrative' }), own);
  checkLedger(result);
  return result;
}

function statements(content: string): readonly Statement[] {
  const { exams } = convert(document(section(content)));
  expect(exams).toHaveLength(1);
  return exams.flatMap(({ exam }) => exam.statements);
}

const coded = { kind: 'finding', finding: 'lid-position.ptosis', side: 'right' } as const;
const local = (inner: string): string =>
  `<value xsi:type="CD" code="LID-7" codeSystem="1.2.3.9">${inner}</value>`;
const translation = (code: string, system = SCT): string =>
  `<translation code="${code}" codeSystem="${system}"/>`;
const icd = translation('H02.401', '2.16.840.1.113883.6.90');

describe('codes of entries, wherever they stand', () => {
  it.each([
    ['as they are', ASSERTION, `<value xsi:type="CD" code="${PTOSIS}" codeSystem="${SCT}"/>`],
    ['as a translation', ASSERTION, local(translation(PTOSIS))],
    ['among translations into other systems', ASSERTION, local(icd + translation(PTOSIS) + icd)],
    [
      'as the translation of a code that is null for want of one (OTH)',
      ASSERTION,
      `<value xsi:type="CD" nullFlavor="OTH">${icd}${translation(PTOSIS)}</value>`,
    ],
  ])('%s', (_, question, value) => {
    const found = statements(`<entry>${observation(question + value + RIGHT_EYELID)}</entry>`);
    expect(found.filter(({ kind }) => kind === 'finding')).toMatchObject([
      { ...coded, presence: 'present' },
    ]);
    const denied = statements(
      `<entry>${observation(question + value + RIGHT_EYELID, ' negationInd="true"')}</entry>`,
    );
    expect(denied.filter(({ kind }) => kind === 'finding')).toMatchObject([
      { ...coded, presence: 'absent' },
    ]);
  });

  it.each([
    [
      'a null of another kind beside its translation',
      ASSERTION,
      `<value xsi:type="CD" nullFlavor="UNK">${translation(PTOSIS)}</value>`,
    ],
    [
      'two translations of one system that differ',
      ASSERTION,
      local(translation(PTOSIS) + translation('162291001')),
    ],
    ['a translation of an unnamed system', ASSERTION, local(`<translation code="${PTOSIS}"/>`)],
    [
      'a question that is null beside its code',
      ASSERTION.replace('/>', ' nullFlavor="UNK"/>'),
      `<value xsi:type="CD" code="${PTOSIS}" codeSystem="${SCT}"/>`,
    ],
  ])('codes nothing of %s, and keeps it', (_, question, value) => {
    const found = statements(`<entry>${observation(question + value + RIGHT_EYELID)}</entry>`);
    expect(found.filter(({ kind }) => kind !== 'note')).toEqual([]);
    expect(JSON.stringify(found)).toContain(PTOSIS);
  });
});

describe('entries inside others', () => {
  const inner = observation(
    `${ASSERTION}<value xsi:type="CD" code="${PTOSIS}" codeSystem="${SCT}"/>${RIGHT_EYELID}`,
  );
  const organizer = (attributes: string, status = 'completed', content = inner): string =>
    `<entry><organizer classCode="CLUSTER"${attributes}><code code="X" codeSystem="1.2"/><statusCode code="${status}"/><component>${content}</component></organizer></entry>`;
  const findings = (content: string): readonly Statement[] =>
    statements(content).filter(({ kind }) => kind === 'finding');

  it('are coded at any depth', () => {
    expect(findings(organizer(' moodCode="EVN"'))).toMatchObject([coded]);
    const twice = organizer('', 'completed', organizer('').replace(/<\/?entry>/g, ''));
    expect(findings(twice)).toMatchObject([coded]);
  });

  it.each([
    ['denied', organizer(' negationInd="true"')],
    ['planned', organizer(' moodCode="INT"')],
    ['taken back', organizer('', 'nullified')],
    [
      'linked by a negation',
      organizer('').replace('<component>', '<component negationInd="true">'),
    ],
  ])('are not coded where the one around them is %s', (_, content) => {
    const found = statements(content);
    expect(found.filter(({ kind }) => kind !== 'note')).toEqual([]);
    expect(JSON.stringify(found)).toContain(PTOSIS);
  });
});

describe('documents that are not quite as they should be', () => {
  it('reads the elements of a header in which text has gone astray, and keeps the text', () => {
    const { exams } = convert(
      document(section('<text>Lids even</text>'), '<realmCode code="US"/>2.16.840'),
    );
    expect(exams[0]?.exam.subject).toMatchObject({
      identifiers: [{ value: 'H-0042' }],
      name: { family: 'Rope', given: ['Ada'] },
    });
    expect(JSON.stringify(exams[0]?.ledger)).toContain('ClinicalDocument/text()');
  });

  it('takes the time of the document, whatever several authors say', () => {
    const author = '<author><time value="20240229"/><assignedAuthor/></author>';
    const { exams } = convert(document(section('<text>Lids even</text>'), author));
    expect(exams[0]?.exam.performed.start).toBe('2024-03-01T10:15:00+00:00');
  });

  it('reads every body', () => {
    const { exams } = convert(
      document(section('<text>Lids even</text>') + section('<text>Neck soft</text>')),
    );
    const texts = exams.flatMap(({ exam }) => exam.statements.map((one) => JSON.stringify(one)));
    expect(texts.join('')).toMatch(/Lids even.*Neck soft/);
  });

  const plain = (attributes: string, text: string): string =>
    document(`<component><nonXMLBody><text${attributes}>${text}</text></nonXMLBody></component>`);

  it.each([
    ['plain text', plain(' mediaType="text/plain"', 'Neck: soft')],
    ['text of no stated kind', plain('', 'Neck: soft')],
    [
      'text in Base64',
      plain(
        ' mediaType="text/plain" representation="B64"',
        Buffer.from('Neck: soft').toString('base64'),
      ),
    ],
  ])('keeps %s as a note', (_, text) => {
    const { exams } = convert(text);
    expect(exams[0]?.exam.statements).toMatchObject([{ kind: 'note', text: 'Neck: soft' }]);
  });

  it.each([
    ['a PDF', plain(' mediaType="application/pdf" representation="B64"', 'JVBERi0=')],
    ['a file elsewhere', plain('', '<reference value="exam.pdf"/>')],
    ['Base64 that is none', plain(' mediaType="text/plain" representation="B64"', '&amp;&amp;')],
  ])('reads nothing in %s, and says so', (_, text) => {
    const { exams, quarantine } = convert(text);
    expect(exams).toEqual([]);
    expect(quarantine[0]?.issues).toMatchObject([
      { code: 'unsupported-message', facts: { reason: 'unstructured' } },
    ]);
  });
});
