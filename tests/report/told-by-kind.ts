import type { Side, Statement, StatementKind } from '../../src/index.ts';

type Unkeyed<S> = S extends unknown ? Omit<S, 'key'> : never;

/** A statement and all that the page is to say because of it. */
export interface Told<K extends StatementKind = StatementKind> {
  readonly statement: Unkeyed<Extract<Statement, { kind: K }>>;
  /** The parser refuses it; the page, which takes an exam on trust, still puts it in its place. */
  readonly refused?: true;
  /** The one section that names it, apart from the map. */
  readonly section: string;
  readonly line?: string;
  /** First cell, right, left; of measurements the difference of the sides too. */
  readonly row?: readonly string[];
  /** Marks on the map by name of the region; every other place is as if nothing had been said. */
  readonly map: Readonly<Record<string, MapRow>>;
}

/** Marks of a region: right, left, and middle or without a side. Empty: nothing was said. */
export type MapRow = readonly [right: Mark, left: Mark, middle: Mark];

export type Mark = '' | keyof typeof marks;

/** What the legend calls each mark. */
export const marks = {
  sign: 'A sign is present',
  partial: 'Examined in part',
  'not-examined': 'Not examined, with a reason',
  normal: 'Examined, no abnormality found',
  said: 'Something was said, the region as a whole was not judged',
} as const;

export interface KindTold<K extends StatementKind> {
  readonly sides: Readonly<Record<Side, Told<K>>>;
  /** Every other form that the page tells differently. */
  readonly forms: readonly Told<K>[];
}

/** A mark on the side it belongs to; both sides of a region that crosses the midline are all of it. */
function crossing(side: Side, mark: Mark): MapRow {
  if (side === 'both') return [mark, mark, mark];
  return side === 'right' ? [mark, '', ''] : side === 'left' ? ['', mark, ''] : ['', '', mark];
}

function paired(side: Side, mark: Mark): MapRow {
  return side === 'both' ? [mark, mark, ''] : crossing(side, mark);
}

/** A row with the answer in the column of its side; without a column a line of its own. */
function answered(
  name: string,
  side: Side | undefined,
  answer: string,
  ...difference: string[]
): Pick<Told, 'row' | 'line'> {
  if (side === 'right') return { row: [name, answer, '–', ...difference] };
  if (side === 'left') return { row: [name, '–', answer, ...difference] };
  if (side === 'both') return { row: [name, answer, answer, ...difference] };
  const words: Partial<Record<Side, string>> = {
    midline: ', midline',
    'right-of-midline': ', right of the midline',
    'left-of-midline': ', left of the midline',
  };
  return { line: `${name}${side === undefined ? '' : (words[side] ?? '')}: ${answer}` };
}

const forehead: Readonly<Record<Side, string>> = {
  right: 'Forehead, right',
  left: 'Forehead, left',
  both: 'Forehead, right and left',
  midline: 'Forehead, midline',
  'right-of-midline': 'Forehead, right of the midline',
  'left-of-midline': 'Forehead, left of the midline',
};

function bySide<T>(tell: (side: Side) => T): Record<Side, T> {
  return {
    right: tell('right'),
    left: tell('left'),
    both: tell('both'),
    midline: tell('midline'),
    'right-of-midline': tell('right-of-midline'),
    'left-of-midline': tell('left-of-midline'),
  };
}

/** Where the parser takes no other sides; the table still says where the page puts them. */
function unless(...sides: Side[]): (side: Side) => { readonly refused?: true } {
  return (side) => (sides.includes(side) ? {} : { refused: true });
}

const ofPair = unless('right', 'left', 'both');
const ofPoint = unless('right', 'left');

const region = 'forehead';
const noMap = {};
const right = { region, side: 'right' } as const;
const reason = { code: 'unable-pain', text: 'A graze' };

/** Every kind of statement on every side. A new kind does not compile without its place on the page. */
export const toldByKind: { readonly [K in StatementKind]: KindTold<K> } = {
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
};
