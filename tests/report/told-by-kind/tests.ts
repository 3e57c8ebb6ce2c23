import { answered, bySide, crossing, ofPair, ofPoint, paired, reason } from './parts.ts';
import type { ToldByKind } from './told.ts';

export const tests = {
  sensation: {
    sides: bySide((side) => ({
      // The type of a sensation has no side `both`: each side is a statement of its own.
      statement: {
        kind: 'sensation',
        point: 'v1',
        side: side as 'right',
        results: [{ modality: 'light-touch', result: 'reduced' }],
      },
      ...ofPoint(side),
      section: 'sensation',
      ...answered('Forehead above the brow (V1)', side, 'Light touch: Reduced'),
      map: { Forehead: crossing(side, 'said') },
    })),
    forms: [
      {
        statement: {
          kind: 'sensation',
          point: 'v2',
          side: 'left',
          results: [
            { modality: 'light-touch', result: 'absent' },
            { modality: 'pinprick', result: 'not-tested', reason },
          ],
          note: 'Numb',
        },
        section: 'sensation',
        ...answered(
          'Cheek over the malar bone or side of the upper lip (V2)',
          'left',
          'Light touch: Absent; Pinprick: Not tested (Too painful: A graze) | Numb',
        ),
        map: { 'Malar (infraorbital) cheek': paired('left', 'said') },
      },
    ],
  },
  'sensation-comparison': {
    sides: bySide(() => ({
      statement: {
        kind: 'sensation-comparison',
        point: 'v1',
        modality: 'light-touch',
        result: 'left-less',
      },
      section: 'sensation',
      line: 'Forehead above the brow (V1): Light touch: Less on the left',
      map: { Forehead: crossing('both', 'said') },
    })),
    forms: [
      {
        statement: {
          kind: 'sensation-comparison',
          point: 'v2',
          modality: 'pinprick',
          result: 'right-less',
          note: 'At once',
        },
        section: 'sensation',
        line: 'Cheek over the malar bone or side of the upper lip (V2): Pinprick: Less on the right | At once',
        map: { 'Malar (infraorbital) cheek': paired('both', 'said') },
      },
    ],
  },
  movement: {
    sides: bySide((side) => ({
      statement: { kind: 'movement', test: 'frontalis', side, grade: 'trace' },
      ...ofPair(side),
      section: 'tests',
      ...answered('Raising the brows', side, 'Trace of movement'),
      map: { Forehead: crossing(side, 'sign') },
    })),
    forms: [
      {
        statement: { kind: 'movement', test: 'cn12', grade: 'to-left', note: 'Twice' },
        section: 'tests',
        line: 'Putting out the tongue: To the left | Twice',
        map: { Swallowing: ['', '', 'sign'] },
      },
      {
        statement: {
          kind: 'movement',
          test: 'zygomaticus',
          side: 'left',
          grade: 'not-tested',
          synkinesis: true,
          reason,
        },
        section: 'tests',
        ...answered('Smiling', 'left', 'Not tested; Synkinesis:\u00a0yes; Too painful: A graze'),
        map: { 'Corner of the mouth': paired('left', 'sign') },
      },
    ],
  },
  'function-test': {
    sides: bySide((side) => ({
      statement: { kind: 'function-test', test: 'corneal-reflex', side, result: 'absent' },
      ...ofPair(side),
      section: 'tests',
      ...answered('Corneal reflex', side, 'Absent'),
      map: { Cornea: paired(side, 'sign') },
    })),
    forms: [
      {
        statement: { kind: 'function-test', test: 'jaw-jerk', result: 'not-tested', reason },
        section: 'tests',
        line: 'Jaw jerk: Not tested; Too painful: A graze',
        map: { 'Jaw movement': ['', '', 'said'] },
      },
    ],
  },
} satisfies Partial<ToldByKind>;
