import { type ExamDraft, symptom } from '../../../src/index.ts';

/** What was asked before the exam, and what was not. */
export function complaints(draft: ExamDraft): ExamDraft {
  let exam = draft;
  for (const code of [
    'sym-general.fever',
    'sym-general.night-sweats',
    'sym-general.weight-loss',
    'sym-general.headache',
    'sym-skin.new-lesion',
    'sym-skin.changing-lesion',
    'sym-skin.bleeding',
    'sym-sensory.numbness',
    'sym-sensory.tingling',
    'sym-motor.weakness',
    'sym-eye.double-vision',
    'sym-eye.visual-loss',
    'sym-nose.bleeding',
    'sym-ear.pain',
    'sym-ear.hearing-loss',
    'sym-jaw.pain',
    'sym-jaw.locking',
    'sym-neck.lump',
    'sym-throat.dysphagia',
    'sym-throat.hoarseness',
  ] as const) {
    exam = symptom(exam, code, 'no', { toldBy: 'patient' });
  }
  exam = symptom(exam, 'sym-skin.dryness', 'yes', {
    toldBy: 'patient',
    region: 'vermilion',
    side: 'both',
    course: 'comes-and-goes',
    trigger: 'Wind on the quay',
    note: 'Says: «le vent du port me dessèche les lèvres»',
  });
  exam = symptom(exam, 'sym-eye.gritty', 'yes', {
    toldBy: 'patient',
    region: 'eyes',
    side: 'both',
    severity: 2,
    course: 'comes-and-goes',
    durationText: 'a few weeks each spring',
  });
  exam = symptom(exam, 'sym-nose.blocked', 'yes', {
    toldBy: 'patient',
    region: 'nasal-airway',
    side: 'right',
    course: 'same',
    durationText: 'as long as he can remember',
  });
  exam = symptom(exam, 'sym-ear.fullness', 'yes', {
    toldBy: 'patient',
    region: 'eac',
    side: 'left',
    onset: '2025-02',
    duration: { value: '2', unit: 'wk' },
  });
  exam = symptom(exam, 'sym-jaw.click', 'yes', {
    toldBy: 'patient',
    region: 'tmj',
    side: 'left',
    severity: 0,
  });
  exam = symptom(exam, 'sym-ear.tinnitus', 'unsure', {
    toldBy: 'patient',
    note: '"Perhaps, after a long shift."',
  });
  exam = symptom(exam, 'sym-jaw.clenching', 'declined');
  return symptom(exam, 'sym-general.fatigue', 'not-asked');
}
