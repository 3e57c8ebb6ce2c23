import { answered, bySide, crossing, forehead, noMap, paired, reason, region } from './parts.ts';
import type { ToldByKind } from './told.ts';

export const measuresAndScales = {
  measurement: {
    sides: bySide((side) => ({
      statement: {
        kind: 'measurement',
        measure: 'lesion-max',
        region,
        side,
        value: '5.0',
        unit: 'mm',
      },
      section: 'measures',
      ...answered('Greatest diameter of a lesion, Forehead', side, '5.0 mm', '–'),
      map: { Forehead: crossing(side, 'said') },
    })),
    forms: [
      {
        statement: {
          kind: 'measurement',
          measure: 'pupil-diam',
          region: 'pupil',
          side: 'left',
          conditions: ['light'],
          value: '3',
          comparator: '<',
          unit: 'mm',
          readings: ['2.5', '3'],
          convention: 'maximum',
          estimated: true,
          note: 'Restless',
        },
        section: 'measures',
        ...answered(
          'Diameter of the pupil, Bright light',
          'left',
          '<3 mm; (2.5, 3); Largest reading; Estimated, not read off an instrument | Restless',
          '–',
        ),
        map: { Pupil: paired('left', 'said') },
      },
      {
        statement: {
          kind: 'measurement',
          measure: 'mio',
          region: 'jaw-motion',
          unit: 'mm',
          unusable: reason,
        },
        section: 'measures',
        line: 'Mouth opening between the incisors, greatest: Too painful: A graze',
        map: { 'Jaw movement': ['', '', 'said'] },
      },
    ],
  },
  'scale-score': {
    sides: bySide((side) => ({
      statement: { kind: 'scale-score', scale: 'abcde', version: '2004', region, side, score: 2 },
      section: 'scores',
      line: `ABCDE features (version 2004) – ${forehead[side]}: 2`,
      map: { Forehead: crossing(side, 'said') },
    })),
    forms: [
      {
        statement: {
          kind: 'scale-score',
          scale: 'hb',
          version: '1985',
          side: 'left',
          score: 'hb-3',
          note: 'At rest',
        },
        section: 'scores',
        line: 'House-Brackmann facial nerve grade (version 1985), left: III: moderate | At rest',
        map: noMap,
      },
      {
        statement: {
          kind: 'scale-score',
          scale: 'abcde',
          version: '2004',
          region: 'temple',
          side: 'left',
          score: 1,
          items: [
            { item: 'abcde-a', value: true },
            { item: 'abcde-b', value: false },
          ],
        },
        section: 'scores',
        line: 'ABCDE features (version 2004) – Temple, left: 1 (Asymmetry:\u00a0yes; Border irregular:\u00a0no)',
        map: { Temple: paired('left', 'said') },
      },
    ],
  },
} satisfies Partial<ToldByKind>;
