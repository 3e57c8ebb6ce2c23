/**
 * What must not compile. Nothing here runs: `npm run types` fails when a line marked as an error
 * compiles, or when one that is not marked does not.
 */
import {
  absent,
  added,
  comparedSides,
  type ExamDraft,
  measured,
  moved,
  normal,
  notExamined,
  partlyExamined,
  present,
  scored,
  sensation,
  symptom,
  tested,
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
