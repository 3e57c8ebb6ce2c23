import { bySide, crossing, forehead, noMap, paired, region } from './parts.ts';
import type { ToldByKind } from './told.ts';

export const symptoms = {
  symptom: {
    sides: bySide((side) => ({
      statement: { kind: 'symptom', symptom: 'sym-skin.itch', answer: 'yes', region, side },
      section: 'symptoms',
      line: `Itch of the skin – ${forehead[side]}: Yes`,
      map: { Forehead: crossing(side, 'said') },
    })),
    forms: [
      {
        statement: { kind: 'symptom', symptom: 'sym-eye.pain', answer: 'no', note: 'Denied' },
        section: 'symptoms',
        line: 'No\u00a0pain in the eye (when asked) | Denied',
        map: noMap,
      },
      {
        statement: { kind: 'symptom', symptom: 'sym-ear.pain', answer: 'yes', side: 'left' },
        section: 'symptoms',
        line: 'Earache, left: Yes',
        map: noMap,
      },
      {
        statement: { kind: 'symptom', symptom: 'sym-ear.itch', answer: 'not-asked' },
        section: 'symptoms',
        line: 'Not asked: Itching of the ear',
        map: noMap,
      },
      {
        statement: {
          kind: 'symptom',
          symptom: 'sym-skin.itch',
          answer: 'no',
          region: 'temple',
          side: 'right',
          toldBy: 'patient',
          durationText: 'never',
        },
        section: 'symptoms',
        line: 'No\u00a0itch of the skin – Temple, right (when asked; Told by: Patient); never',
        map: { Temple: paired('right', 'said') },
      },
      {
        statement: {
          kind: 'symptom',
          symptom: 'sym-jaw.pain',
          answer: 'yes',
          toldBy: 'relative',
          onset: '2025-04',
          durationText: 'a few weeks',
          course: 'worse',
          severity: 0,
          trigger: 'Chewing',
        },
        section: 'symptoms',
        line: 'Pain of the jaw: Yes (Told by: Relative); Onset: April 2025; a few weeks; Getting worse; Severity, 0 to 10: 0; Trigger: Chewing',
        map: noMap,
      },
    ],
  },
} satisfies Partial<ToldByKind>;
