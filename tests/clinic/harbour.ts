import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type Clinic, parseClinic } from '../../src/clinic/index.ts';
import { conclude, type Exam, entered, finishExam, orThrow, startExam } from '../../src/index.ts';

/** The invented clinic of the examples: five signs, a region and a protocol of its own. */
export const harbourPath = resolve(import.meta.dirname, '../../examples/clinic/harbour.json');
export const harbourText = readFileSync(harbourPath, 'utf8');

// Plain data of the test's own making, changed case by case.
// biome-ignore lint/suspicious/noExplicitAny: it is broken on purpose
export const harbourFile = (): any => JSON.parse(harbourText);

export const harbour: Clinic = orThrow('read the clinic file', parseClinic(harbourFile()));

/** What an examiner of the clinic enters, as text of a form. */
const fields = [
  { kind: 'finding', finding: 'mask-mark', presence: 'present', region: 'seal-line', side: 'left' },
  { kind: 'finding', finding: 'tar-stain', presence: 'absent', region: 'seal-line', side: 'right' },
  { kind: 'finding', finding: 'naevus', presence: 'present', region: 'temple', side: 'left' },
  {
    kind: 'region-state',
    region: 'chin',
    side: 'midline',
    state: 'normal',
    methods: ['inspection'],
  },
] as const;

/** An exam by the clinic's own protocol, with its own signs at its own region. */
export function maskCheck(id: string, start: string): Exam {
  const { catalogue } = harbour;
  const begun = startExam({
    id,
    subject: { reference: 'Patient/417' },
    examiners: [{ key: 'nurse', role: 'harbour nurse' }],
    performed: { start },
    recorded: start,
    protocol: { id: 'mask-check', version: '1.0.0' },
  });
  const draft = fields.reduce(
    (made, field) => orThrow('enter', entered(made, field, { catalogue })),
    begun,
  );
  const told = conclude(draft, { text: 'A mark of the mask.', concern: 'none' });
  return orThrow('finish the exam', finishExam(told, 'final', { catalogue }));
}
