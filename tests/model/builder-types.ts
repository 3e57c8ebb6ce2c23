/**
 * What must not compile. Nothing here runs: `npm run types` fails when a line marked as an error
 * compiles, or when one that is not marked does not.
 */
import type { Bundle } from 'fhir/r4.js';
import type * as r5 from 'fhir/r5.js';
import {
  absent,
  added,
  comparedSides,
  type EnteredStatement,
  type Exam,
  type ExamDraft,
  entered,
  measured,
  moved,
  normal,
  notExamined,
  noted,
  type Place,
  partlyExamined,
  present,
  scored,
  sensation,
  symptom,
  tested,
  toBundle,
  toBundleOrThrow,
} from '../../src/index.ts';

export function sides(draft: ExamDraft): void {
  present(draft, 'naevus', { region: 'temple', side: 'right' });
  present(draft, 'naevus', { region: 'nose-tip' });
  present(draft, 'naevus', { region: 'forehead', side: 'right-of-midline' });
  // @ts-expect-error a paired region needs its side
  present(draft, 'naevus', { region: 'temple' });
  // @ts-expect-error a paired region has no midline
  absent(draft, 'naevus', { region: 'temple', side: 'midline' });
  // @ts-expect-error a region that crosses the midline needs its side
  absent(draft, 'naevus', { region: 'forehead' });
  // @ts-expect-error a midline region has no left side
  absent(draft, 'naevus', { region: 'nose-tip', side: 'left' });
  // @ts-expect-error no such side
  absent(draft, 'naevus', { region: 'temple', side: 'R' });

  notExamined(draft, { region: 'ears', side: 'both' }, 'time');
  // @ts-expect-error a group of paired regions needs its side too
  notExamined(draft, { region: 'ears' }, 'time');

  moved(draft, 'zygomaticus', 'normal', { side: 'left' });
  moved(draft, 'cn12', 'central', {});
  // @ts-expect-error a facial movement has a side
  moved(draft, 'zygomaticus', 'normal', {});
  // @ts-expect-error the tongue is put out in the midline
  moved(draft, 'cn12', 'central', { side: 'left' });

  // @ts-expect-error sensation is felt on one side at a time
  sensation(draft, 'v1', 'both', { 'light-touch': 'normal' });
}

export function methods(draft: ExamDraft): void {
  normal(draft, [{ region: 'tm', side: 'left', methods: ['otoscopy'] }]);
  // @ts-expect-error an eardrum is not touched
  normal(draft, [{ region: 'tm', side: 'left', methods: ['palpation'] }]);
  // @ts-expect-error normal without saying how it was examined
  normal(draft, [{ region: 'tm', side: 'left' }]);
  // @ts-expect-error examined in part, and not said how
  partlyExamined(draft, { region: 'tm', side: 'left' }, 'unable-wax');
  // @ts-expect-error no method at all
  normal(draft, [{ region: 'tm', side: 'left', methods: [] }]);
}

export function codes(draft: ExamDraft): void {
  // @ts-expect-error no such sign
  present(draft, 'nevus', { region: 'temple', side: 'right' });
  present(draft, added('frown-line'), { region: added('third-eye') });
  // @ts-expect-error no such region
  present(draft, 'naevus', { region: 'third-eye' });
  // @ts-expect-error no such reason
  notExamined(draft, { region: 'neck' }, 'lazy');
  // @ts-expect-error no such symptom
  symptom(draft, 'itch', 'yes');
  // @ts-expect-error no such answer
  symptom(draft, 'sym-ear.pain', 'maybe');
}

export function tests(draft: ExamDraft): void {
  // @ts-expect-error the cornea takes no pinprick
  sensation(draft, 'v1-cornea', 'left', { pinprick: 'normal' });
  // @ts-expect-error the cornea takes no pinprick
  comparedSides(draft, 'v1-cornea', 'pinprick', 'equal');
  // @ts-expect-error a frown is not straight
  moved(draft, 'corrugator', 'straight', { side: 'left' });
  // @ts-expect-error Weber's test is not a movement
  moved(draft, 'weber', 'central', {});
  // @ts-expect-error Rinne's test is not central
  tested(draft, 'rinne', 'central', { side: 'left' });
}

export function figures(draft: ExamDraft): void {
  measured(draft, 'icd', { region: 'eyes' }, '33.0', 'mm');
  measured(draft, 'lat-exc', { region: 'jaw-motion', side: 'left' }, '10', 'mm');
  measured(draft, 'node-size', { region: 'ln-iia', side: 'left' }, '10', 'mm');
  // @ts-expect-error the height of a fissure has a side
  measured(draft, 'pfh', { region: 'eyes' }, '9.0', 'mm');
  // @ts-expect-error a lesion of a paired region has a side
  measured(draft, 'lesion-max', { region: 'temple' }, '4.5', 'mm');
  // @ts-expect-error millimetres, not degrees
  measured(draft, 'mrd1', { region: 'lid-upper', side: 'left' }, '4.0', 'deg');
  // @ts-expect-error a decimal is a text
  measured(draft, 'mrd1', { region: 'lid-upper', side: 'left' }, 4, 'mm');
  // @ts-expect-error a score is not a measure
  measured(draft, 'fitz', { region: 'skin' }, '3', '{grade}');
  // @ts-expect-error another version
  scored(draft, '7pcl', '1999', 3);
  // @ts-expect-error a grade of another scale
  scored(draft, 'fitz', '1988', 'hb-1');
}

export function signs(draft: ExamDraft, place: Place): void {
  present(draft, 'lid-turn.ectropion', { region: 'lid-lower', side: 'left' });
  // @ts-expect-error a thyroid has no lid
  present(draft, 'lid-turn.ectropion', { region: 'thyroid' });
  // @ts-expect-error nor is it looked for there
  absent(draft, 'lid-turn.ectropion', { region: 'thyroid-lobe', side: 'left' });
  // @ts-expect-error a polyp of the nose is not at the temple
  present(draft, 'nasal-polyp', { region: 'temple', side: 'left' });
  // A sign of an adopter can be anywhere, and so can a swelling.
  present(draft, added('frown-line'), { region: 'thyroid' });
  present(draft, 'swelling', place);

  const temple = { region: 'temple', side: 'right' } as const;
  present(draft, 'skin-lesion', temple, {
    attributes: { 'lesion-border': ['irregular', 'ill-defined'], 'lesion-tender': false },
  });
  // @ts-expect-error no such border
  present(draft, 'skin-lesion', temple, { attributes: { 'lesion-border': 'spikey' } });
  // @ts-expect-error tender or not, and no word for it
  present(draft, 'skin-lesion', temple, { attributes: { 'lesion-tender': 'yes' } });
  // @ts-expect-error an attribute of nodes
  present(draft, 'skin-lesion', temple, { attributes: { 'node-number': 'one' } });
  const head = { region: 'general' } as const;
  // @ts-expect-error a posture of the head has no border
  present(draft, 'head-posture.straight', head, { attributes: { 'lesion-border': 'irregular' } });
  present(draft, 'skin-lesion', temple, {
    // @ts-expect-error millimetres, not centimetres
    attributes: { 'lesion-size-rule': { value: '5', unit: 'cm' } },
  });
}

export function lists(draft: ExamDraft): void {
  normal(draft, [
    { region: 'nose-tip', methods: ['inspection'] },
    { region: 'temple', side: 'left', methods: ['inspection'] },
  ]);
  normal(draft, [
    { region: 'nose-tip', methods: ['inspection'] },
    // @ts-expect-error each place is held to its own region
    { region: 'temple', methods: ['inspection'] },
  ]);
  // @ts-expect-error no such region
  noted(draft, 'Sunburn', { region: 'third-eye' });
}

export function forms(draft: ExamDraft, field: Readonly<Record<string, string>>): void {
  const { sign = '', region = '', side = '', border } = field;
  const given: EnteredStatement = {
    kind: 'finding',
    finding: sign,
    presence: 'present',
    region,
    side,
  };
  entered(draft, { ...given, attributes: { 'lesion-border': border } });
  entered(draft, {
    kind: 'region-state',
    state: 'not-examined',
    region,
    side,
    reason: field['reason'],
  });
  // @ts-expect-error a kind is needed
  entered(draft, { finding: sign, presence: 'present', region });
  // @ts-expect-error no statement has such a member
  entered(draft, { ...given, colour: 'red' });
  // @ts-expect-error figures are texts, with the digits as they were read
  entered(draft, { kind: 'measurement', measure: 'mrd1', region, side, value: 4, unit: 'mm' });
}

export function bundles(exam: Exam, fhirVersion: 'R4' | 'R5'): readonly Bundle[] {
  const later: r5.Bundle = toBundleOrThrow(exam, { fhirVersion: 'R5' });
  const document: Bundle = toBundleOrThrow(exam, { bundleType: 'document' });
  // @ts-expect-error a bundle of R5 is none of R4
  const wrong: Bundle = toBundleOrThrow(exam, { fhirVersion: 'R5' });
  // @ts-expect-error which version it is shows only at run time
  const either: Bundle = toBundleOrThrow(exam, { fhirVersion });
  const outcome = toBundle(exam);
  return outcome.ok
    ? [outcome.value, document, wrong, either, { ...document, id: later.id ?? '' }]
    : [];
}
