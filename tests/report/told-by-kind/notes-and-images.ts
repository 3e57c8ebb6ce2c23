import { bySide, crossing, forehead, noMap, paired, region } from './parts.ts';
import type { ToldByKind } from './told.ts';

export const notesAndImages = {
  note: {
    sides: bySide((side) => ({
      statement: { kind: 'note', region, side, text: `In words, ${side}` },
      section: 'notes',
      line: `${forehead[side]}: In words, ${side}`,
      map: { Forehead: crossing(side, 'said') },
    })),
    forms: [
      {
        statement: { kind: 'note', side: 'left', text: 'Sleeps on it' },
        section: 'notes',
        line: 'left: Sleeps on it',
        map: noMap,
      },
      {
        statement: { kind: 'note', text: 'Came with\n an interpreter' },
        section: 'notes',
        line: 'Came with\n an interpreter',
        map: noMap,
      },
    ],
  },
  image: {
    sides: bySide((side) => ({
      statement: {
        kind: 'image',
        title: 'Brow from the front',
        contentType: 'image/jpeg',
        url: 'https://clinic.example/1.jpg',
        consent: 'given',
        region,
        side,
      },
      section: 'pictures',
      line: `Brow from the front – ${forehead[side]}; Consent to the picture: Given`,
      map: { Forehead: crossing(side, 'said') },
    })),
    forms: [
      {
        statement: {
          kind: 'image',
          title: 'Whole ear',
          contentType: 'image/png',
          url: 'https://clinic.example/2.png',
          consent: 'refused',
          region: 'pinna',
          side: 'left',
          note: 'Not to be sent',
        },
        section: 'pictures',
        line: 'Whole ear – Auricle, left; Consent to the picture: Refused | Not to be sent',
        map: { Auricle: paired('left', 'said') },
      },
    ],
  },
} satisfies Partial<ToldByKind>;
