// @ts-check
/**
 * The library from plain JavaScript: types are checked from the comments, nothing is compiled.
 * Run: npm run example:javascript
 */
import {
  absent,
  conclude,
  finishExam,
  hasErrors,
  issueText,
  measured,
  present,
  startExam,
  toBundle,
  toJson,
} from 'face-neck-fhir';
import { validateBundle } from 'face-neck-fhir/validate/r4';

/**
 * A check of one naevus, as a form might give it.
 * @typedef {object} NaevusCheck
 * @property {string} id
 * @property {'right' | 'left'} side
 * @property {string} millimetres as read off the ruler: 4.0 is not 4
 */

/**
 * @param {NaevusCheck} check
 * @returns {import('face-neck-fhir').Outcome<import('face-neck-fhir').Exam>}
 */
export function examOf({ id, side, millimetres }) {
  /** @type {import('face-neck-fhir').Place} */
  const place = { region: 'temple', side };
  let draft = startExam({
    id,
    subject: { name: { text: 'Invented Cooper' }, birthDate: '1988' },
    examiners: [{ key: 'nurse', role: 'harbour nurse' }],
    performed: { start: '2025-09-03T09:00:00+02:00' },
    recorded: '2025-09-03T09:12:00+02:00',
    protocol: { id: 'skin-lesion', version: '1.0.0' },
  });
  draft = present(draft, 'naevus', place, { key: 'naevus-1' });
  draft = measured(draft, 'lesion-max', place, millimetres, 'mm', { about: 'naevus-1' });
  draft = absent(draft, 'vesicles', place);
  draft = conclude(draft, { text: 'A mole, measured; nothing else looked at.', concern: 'none' });
  return finishExam(draft, 'final');
}

/**
 * The bundle as text, or what stands in the way, one line each.
 * @param {NaevusCheck} check
 * @returns {{ json: string } | { problems: string[] }}
 */
export function bundleText(check) {
  const exam = examOf(check);
  if (exam.value === undefined) return { problems: exam.issues.map(issueText) };
  const bundle = toBundle(exam.value, { fhirVersion: 'R4' });
  const issues = [...bundle.issues, ...validateBundle(bundle.value).issues];
  return bundle.value === undefined || hasErrors(issues)
    ? { problems: issues.map(issueText) }
    : { json: toJson(bundle.value, { pretty: true }) };
}

if (process.argv[1] === import.meta.filename) {
  const told = bundleText({ id: 'harbour-7', side: 'left', millimetres: '4.0' });
  console.log('json' in told ? told.json : told.problems.join('\n'));
}
