import type { Exam } from '../../src/model/exam.ts';
import type { Statement } from '../../src/model/statement.ts';
import { examOf, examStart } from './rules/rule-cases.ts';

/**
 * Ordinary exams by seed: what a healthy worker or one with a common finding has at a yearly check.
 * Figures lie in the ranges that the table of measures names, findings fit each other. Nothing in
 * them may be called absurd.
 */

/** A small generator of numbers (mulberry32), so that each exam is the same in every run. */
function numbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

type Part = Statement extends infer S ? (S extends Statement ? Omit<S, 'key'> : never) : never;

type OneSide = 'right' | 'left';

/** What the parts of an exam are drawn and kept with. */
interface Draw {
  readonly parts: Part[];
  readonly pick: <T>(list: readonly [T, ...T[]]) => T;
  readonly figure: (low: number, high: number, digits?: number) => string;
  readonly chance: (share: number) => boolean;
}

function drawOf(seed: number): Draw {
  const next = numbers(seed);
  return {
    parts: [],
    pick: (list) => list[Math.floor(next() * list.length)] ?? list[0],
    figure: (low, high, digits = 1) => (low + next() * (high - low)).toFixed(digits),
    chance: (share) => next() < share,
  };
}

function sign(
  finding: string,
  region: string,
  side?: OneSide | 'both',
  presence = 'present',
): Part {
  const at = side === undefined ? {} : { side };
  return { kind: 'finding', finding, region, ...at, presence } as Part; // the tables give the codes
}

function measure(
  code: string,
  region: string,
  value: string,
  side?: OneSide,
  more: object = {},
): Part {
  const at = side === undefined ? {} : { side };
  return { kind: 'measurement', measure: code, region, ...at, value, unit: 'mm', ...more } as Part; // likewise
}

function lids({ parts, figure, chance }: Draw, side: OneSide): void {
  const droops = chance(0.08);
  const mrd1 = droops ? figure(1.6, 2.6) : figure(3.2, 4.8);
  parts.push(
    measure('mrd1', 'lid-upper', mrd1, side),
    measure('mrd2', 'lid-lower', figure(4.6, 6), side),
    measure('pfh', 'eyes', (Number(mrd1) + 5.2).toFixed(1), side),
    sign('lid-position.ptosis', 'lid-upper', side, droops ? 'present' : 'absent'),
    measure('levator', 'lid-upper', figure(12, 16, 0), side),
    measure('hertel', 'globe', figure(13, 19, 0), side),
    measure('pupil-diam', 'pupil', figure(2.8, 3.4), side, { conditions: ['light'] }),
    sign(chance(0.85) ? 'conjunctiva-quiet' : 'conjunctival-injection', 'conjunctiva', side),
    sign('cornea-clear', 'cornea', side),
  );
}

function earsAndNose({ parts, figure, chance }: Draw, side: OneSide): void {
  if (chance(0.2))
    parts.push(sign('eac-wax', 'eac', side), sign('eac-wax-amount.partial', 'eac', side));
  else parts.push(sign('eac-clear', 'eac', side));
  parts.push(
    sign('tm-intact.intact', 'tm', side),
    sign('tm-colour.pearl-grey', 'tm', side),
    sign(chance(0.9) ? 'turbinate-usual' : 'turbinate-pale', 'turbinate-inf', side),
    { kind: 'function-test', test: 'cn8-whisper', side, result: 'pass' },
    measure('whisper', 'hearing', figure(4, 6, 0), side, { unit: '{score}' }),
  );
}

function nodes({ parts, figure, chance }: Draw, side: OneSide): void {
  for (const level of ['ln-ib', 'ln-iia', 'ln-iii', 'ln-iv']) {
    if (!chance(0.08)) {
      parts.push(sign('node-palpable', level, side, 'absent'));
      parts.push(sign('node-enlarged', level, side, 'absent'));
      continue;
    }
    const long = figure(7, 14, 0);
    const short = String(Math.max(4, Number(long) - 3));
    parts.push(
      sign('node-palpable', level, side),
      measure('node-size', level, long, side, { conditions: ['long-axis'] }),
      measure('node-size', level, short, side, { conditions: ['short-axis'] }),
    );
  }
}

function faceAndJaw({ parts, figure }: Draw, side: OneSide): void {
  parts.push(
    sign('pupil-equality.equal', 'pupil', 'both'),
    measure('ipd', 'eyes', figure(56, 70, 0)),
    measure('icd', 'eyes', figure(28, 37, 0)),
    measure('mio', 'jaw-motion', figure(40, 56, 0)),
    sign('jaw-limited-opening', 'jaw-motion', undefined, 'absent'),
    sign('jaw-path.straight', 'jaw-motion'),
    measure('lat-exc', 'jaw-motion', figure(7, 12, 0), side),
    measure('protrusion', 'jaw-motion', figure(6, 10, 0)),
    sign('facial-weakness', 'general', undefined, 'absent'),
    sign('voice.clear', 'general'),
    sign('speech.clear', 'general'),
    { kind: 'scale-score', scale: 'hb', version: '1985', side, score: 'hb-1' },
    { kind: 'function-test', test: 'swallow-water', result: 'normal' },
  );
}

function thyroid({ parts, figure, chance }: Draw, side: OneSide): void {
  if (chance(0.9)) {
    parts.push(
      sign('thy-size.palpable-usual', 'thyroid'),
      sign('thyroid-mass', 'thyroid', undefined, 'absent'),
      { kind: 'scale-score', scale: 'goitre', version: '1992', score: 'goitre-0' },
    );
    return;
  }
  parts.push(
    sign('thy-surface.single-nodule', 'thyroid'),
    measure('thyroid-nodule', 'thyroid-lobe', figure(8, 24, 0), side),
  );
}

export function ordinaryExam(seed: number): Exam {
  const draw = drawOf(seed);
  const { parts, pick, figure, chance } = draw;
  const side = pick(['right', 'left'] as const);
  for (const one of ['right', 'left'] as const) {
    lids(draw, one);
    earsAndNose(draw, one);
    nodes(draw, one);
    parts.push({ kind: 'movement', test: 'zygomaticus', side: one, grade: 'normal' });
    parts.push({ kind: 'movement', test: 'frontalis', side: one, grade: 'normal' });
    for (const region of ['cheek-malar', 'temple'] as const) {
      parts.push({
        kind: 'region-state',
        region,
        side: one,
        state: 'normal',
        methods: ['inspection'],
      });
    }
  }
  faceAndJaw(draw, side);
  thyroid(draw, side);
  const marked = chance(0.5);
  if (marked) {
    const wide = figure(2, 9);
    parts.push(
      sign('naevus', 'nose-ala', side),
      measure('lesion-max', 'nose-ala', wide, side),
      measure('lesion-perp', 'nose-ala', (Number(wide) * 0.7).toFixed(1), side),
    );
  }
  const text = pick([
    marked ? `A mole on the ${side} side of the nose.` : 'Nothing of note.',
    'Fit for the harvest.',
    'Both ears and eyes looked at; right and left alike.',
  ]);
  const statements = parts.map((part, at) => ({ ...part, key: `s${at}` }) as Statement); // a part and its key
  const conclusion = { text, concern: marked ? ('low' as const) : ('none' as const) };
  return examOf({ statements, conclusion }, `O-${seed}`, examStart);
}
