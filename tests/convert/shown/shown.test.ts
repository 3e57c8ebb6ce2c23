import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Proposal } from '../../../src/convert/proposals/proposal.ts';
import type { Exam } from '../../../src/model/exam.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';
import { inFolder, run } from '../../cli/in-process.ts';

/** What must come of a document or message: exams, coded statements before and after confirmation. */
interface Shown {
  readonly file: string;
  readonly mapping: string;
  readonly exams: number;
  /** Coded without anybody: by published codes. */
  readonly coded: readonly string[];
  /** Proposed with nothing to decide, and therefore ready to be confirmed. */
  readonly sure: readonly string[];
  /** Proposed with something that a person has to decide. */
  readonly open: number;
}

/**
 * Documents and messages in the shape of C-CDA R2.1 (US Realm Header, History and Physical, Consultation
 * Note, Progress Note) and of HL7 v2.3 to 2.5.1 ORU^R01; what they say is invented.
 */
const shown: readonly Shown[] = [
  {
    file: 'history-and-physical.xml',
    mapping: 'c-cda.json',
    exams: 1,
    coded: ['lid-position.ptosis lid-upper right present'],
    sure: ['lid-position.ptosis lid-upper right present'],
    open: 1,
  },
  {
    file: 'consultation.xml',
    mapping: 'c-cda.json',
    exams: 1,
    coded: [],
    sure: [
      'lid-position.ptosis lid-upper right present',
      'lid-turn.ectropion lid-lower right absent',
      'lid-position.ptosis lid-upper left absent',
      'scar temple left present',
    ],
    open: 0,
  },
  {
    file: 'progress-note.xml',
    mapping: 'c-cda.json',
    exams: 1,
    coded: [],
    sure: [
      'lid-position.ptosis lid-upper right present',
      'lid-position.ptosis lid-upper left absent',
      'scar temple right present',
    ],
    open: 1,
  },
  {
    file: 'coded.hl7',
    mapping: 'oru.json',
    exams: 1,
    coded: ['pfh right 9.5', 'lid-position.ptosis lid-upper left present'],
    sure: [],
    open: 0,
  },
  {
    file: 'letter.hl7',
    mapping: 'oru.json',
    exams: 1,
    coded: [],
    sure: [
      'lid-position.ptosis lid-upper right absent',
      'lid-position.ptosis lid-upper left present',
    ],
    open: 2,
  },
  {
    file: 'lines.hl7',
    mapping: 'oru.json',
    exams: 2,
    coded: [],
    sure: [
      'lid-position.ptosis lid-upper right present',
      'lid-position.ptosis lid-upper left absent',
    ],
    open: 2,
  },
];

/** Most lines of a mapping of one's own. */
const MOST_LINES = 10;

const here = import.meta.dirname;

const lines = <Line>(text: string): Line[] =>
  text
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line));

const codedIn = (exams: readonly Exam[]): string[] =>
  exams.flatMap(({ statements }) =>
    statements.flatMap((one) => {
      if (one.kind === 'finding') return [sayOf(one)];
      return one.kind === 'measurement' ? [`${one.measure} ${one.side} ${one.value}`] : [];
    }),
  );

const sayOf = ({ finding, region, side, presence }: Proposal['statement']): string =>
  `${finding} ${region} ${side} ${presence}`;

describe.each(shown)('$file, by a preset and the command line', (one) => {
  const file = join(here, one.file);
  const mapping = join(here, one.mapping);

  it('is an exam by a mapping of less than ten lines, and its texts are proposed', async () => {
    expect(readFileSync(mapping, 'utf8').trim().split('\n').length).toBeLessThan(MOST_LINES);
    const exams = await run(['convert', file, '--mapping', mapping, '--to', 'exams']);
    expect(lines<Exam>(exams.out).length).toBe(one.exams);
    expect(codedIn(lines<Exam>(exams.out))).toEqual(one.coded);
    const { out } = await run(['convert', file, '--mapping', mapping, '--propose']);
    const proposals = lines<Proposal>(out);
    const sure = proposals.filter(({ open }) => open.length === 0);
    expect(sure.map(({ statement }) => sayOf(statement))).toEqual(one.sure);
    expect(proposals.length - sure.length).toBe(one.open);
  });

  it('has the coded statements that a person has confirmed, and leaves as valid FHIR', async () => {
    const { out } = await run(['convert', file, '--mapping', mapping, '--propose']);
    const confirmed = { by: 'Tom Hawser', at: '2025-09-10T09:00:00+02:00' };
    const read = lines<Proposal>(out).map((proposal) =>
      proposal.open.length === 0 && !one.coded.includes(sayOf(proposal.statement))
        ? { ...proposal, confirmed }
        : proposal,
    );
    const expected = [...one.coded, ...one.sure.filter((said) => !one.coded.includes(said))];
    await inFolder(async (folder) => {
      const path = join(folder, 'proposals.ndjson');
      writeFileSync(path, read.map((line) => `${JSON.stringify(line)}\n`).join(''));
      const options = ['convert', file, '--mapping', mapping, '--confirmed', path];
      const exams = lines<Exam>((await run([...options, '--to', 'exams'])).out);
      expect(codedIn(exams).sort()).toEqual(expected.sort());
      const isTold = read.some((line) => 'confirmed' in line);
      expect(JSON.stringify(exams).includes('Tom Hawser')).toBe(isTold);
      const bundles = lines((await run(options)).out);
      expect(bundles.length).toBe(one.exams);
      for (const bundle of bundles) expect(validateBundle(bundle).valid).toBe(true);
    });
  });
});

describe('a confirmed file that does not fit', () => {
  it('sets the exam aside, so that nothing confirmed is lost unseen', async () => {
    const [file, mapping] = [join(here, 'letter.hl7'), join(here, 'oru.json')];
    const { out } = await run(['convert', file, '--mapping', mapping, '--propose']);
    const confirmed = { by: 'Tom Hawser', at: '2025-09-10T09:00:00+02:00' };
    await inFolder(async (folder) => {
      const path = join(folder, 'proposals.ndjson');
      const [first] = lines<Proposal>(out);
      writeFileSync(path, JSON.stringify({ ...first, text: 'Another sentence', confirmed }));
      const result = await run(['convert', file, '--mapping', mapping, '--confirmed', path]);
      expect(result.code).toBe(1);
      expect(result.out).toBe('');
      expect(result.err).toContain('is not at this place');
      writeFileSync(path, JSON.stringify({ ...first, exam: 'another', confirmed }));
      const other = await run(['convert', file, '--mapping', mapping, '--confirmed', path]);
      expect(other.err).toContain('no exam of this run has the id');
      writeFileSync(path, 'no JSON');
      const broken = await run(['convert', file, '--mapping', mapping, '--confirmed', path]);
      expect(broken.code).toBe(1);
      expect(broken.err).toContain('not a proposal');
    });
  });
});
