import {
  absent,
  comparedSides,
  type ExamDraft,
  moved,
  noted,
  scored,
  sensation,
} from '../../../src/index.ts';
import { bothSides, facialMovements, sensationPoints } from '../zones.ts';

/** Sensation at every point, eyes closed, side against side; then the facial movements by branch. */
export function nerves(draft: ExamDraft): ExamDraft {
  let exam = draft;
  const eyesClosed = { eyesClosed: true, instruments: ['wisp', 'neurotip'] };
  for (const point of sensationPoints) {
    for (const side of bothSides) {
      exam = sensation(
        exam,
        point,
        side,
        { 'light-touch': 'normal', pinprick: 'normal' },
        eyesClosed,
      );
    }
    exam = comparedSides(exam, point, 'light-touch', 'equal', { instruments: ['wisp'] });
    exam = comparedSides(exam, point, 'pinprick', 'equal', { instruments: ['neurotip'] });
  }
  for (const side of bothSides) {
    exam = sensation(
      exam,
      'v1-cornea',
      side,
      { 'light-touch': 'normal' },
      { instruments: ['wisp'] },
    );
  }
  exam = noted(exam, 'Shown on the breastbone first. Both pain & touch felt alike, right = left.', {
    region: 'general',
  });

  for (const test of facialMovements) {
    for (const side of bothSides) exam = moved(exam, test, 'normal', { side, synkinesis: false });
  }
  exam = absent(exam, 'synkinesis', { region: 'general' });
  exam = absent(exam, 'facial-weakness', { region: 'general' });
  for (const side of bothSides) exam = scored(exam, 'hb', '1985', 'hb-1', { side });
  return exam;
}
