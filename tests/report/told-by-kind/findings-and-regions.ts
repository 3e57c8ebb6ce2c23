import { bySide, crossing, forehead, paired, reason, region, right } from './parts.ts';
import type { ToldByKind } from './told.ts';

export const findingsAndRegions = {
  finding: {
    sides: bySide((side) => ({
      statement: { kind: 'finding', finding: 'naevus', presence: 'present', region, side },
      section: 'abnormal',
      line: `Naevus (mole) – ${forehead[side]}`,
      map: { Forehead: crossing(side, 'sign') },
    })),
    forms: [
      {
        statement: {
          kind: 'finding',
          finding: 'scar',
          presence: 'absent',
          ...right,
          note: 'Sought',
        },
        section: 'negatives',
        line: 'No\u00a0scar: Forehead, right | Sought',
        map: { Forehead: crossing('right', 'said') },
      },
      {
        statement: { kind: 'finding', finding: 'scar', presence: 'indeterminate', ...right },
        section: 'undecided',
        line: 'Looked for and not decided: Scar: Forehead, right',
        map: { Forehead: crossing('right', 'said') },
      },
      {
        statement: {
          kind: 'finding',
          finding: 'basal-cell-carcinoma-face',
          presence: 'present',
          certainty: 'suspected',
          ...right,
          place: 'At the brow',
          methods: ['inspection'],
          attributes: [{ attribute: 'lesion-colour', value: 'brown' }],
        },
        section: 'abnormal',
        line: 'Suspected: Basal cell carcinoma of the face – Forehead, right (At the brow). Colour: Brown [Inspection]',
        map: { Forehead: crossing('right', 'sign') },
      },
      {
        statement: {
          kind: 'finding',
          finding: 'skin-texture.smooth',
          presence: 'present',
          ...right,
        },
        section: 'usual',
        line: 'Skin smooth: Forehead, right',
        map: { Forehead: crossing('right', 'said') },
      },
      {
        statement: {
          kind: 'finding',
          finding: 'skin-texture.smooth',
          presence: 'absent',
          ...right,
        },
        section: 'abnormal',
        line: 'Skin not\u00a0smooth – Forehead, right',
        map: { Forehead: crossing('right', 'sign') },
      },
    ],
  },
  'region-state': {
    sides: bySide((side) => ({
      statement: { kind: 'region-state', state: 'normal', region, side, methods: ['inspection'] },
      section: 'normal',
      line: `No abnormality found: ${forehead[side]} [Inspection]`,
      map: { Forehead: crossing(side, 'normal') },
    })),
    forms: [
      {
        statement: {
          kind: 'region-state',
          state: 'abnormal',
          ...right,
          methods: ['palpation'],
          note: 'Not as it was',
        },
        section: 'abnormal',
        line: 'Examined and found abnormal: Forehead, right [Palpation] | Not as it was',
        map: { Forehead: crossing('right', 'sign') },
      },
      {
        statement: {
          kind: 'region-state',
          state: 'partial',
          ...right,
          methods: ['inspection'],
          limit: reason,
        },
        section: 'not-examined',
        line: 'Examined only in part: Forehead, right: Too painful: A graze [Inspection]',
        map: { Forehead: crossing('right', 'partial') },
      },
      {
        statement: { kind: 'region-state', state: 'not-examined', ...right, reason },
        section: 'not-examined',
        line: 'Not examined: Forehead, right: Too painful: A graze',
        map: { Forehead: crossing('right', 'not-examined') },
      },
      {
        statement: {
          kind: 'region-state',
          state: 'not-applicable',
          region: 'globe',
          side: 'right',
          reason: { code: 'structure-absent' },
        },
        section: 'not-examined',
        line: 'Not there to be examined (Structure not there): Position of the eye, right',
        map: { 'Position of the eye': paired('right', 'not-examined') },
      },
    ],
  },
} satisfies Partial<ToldByKind>;
