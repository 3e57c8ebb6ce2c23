import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CheckResult } from '../../src/checks/check-exam.ts';
import { checkExam } from '../../src/checks/check-exam.ts';
import { type RuleSetId, ruleSets } from '../../src/checks/rule-sets.ts';
import type { Exam } from '../../src/model/exam.ts';
import type { Statement } from '../../src/model/statement.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { examOf, examStart } from './rules/rule-cases.ts';

/**
 * The bank of invented pictures that warnings are held to. A picture says in short lines what an
 * exam states, so that two hundred can be read:
 *
 *     lid-position.ptosis lid-upper left {attribute=value}   a sign that is present
 *     no pupil-large pupil left                              a sign that is absent
 *     normal pupil left reflex                               a region, by a method
 *     told sym-neck.pain left 2d worse in chin               a complaint; also denied, unsure, unasked
 *     move zygomaticus left obvious-weakness
 *     feel v2 left reduced
 *     test visual-acuity left reduced
 *     measure pupil-diam pupil left 4.0 dark
 *     history diabetes yes
 */
export interface Picture {
  readonly kind: 'danger' | 'near-miss' | 'partial' | 'noisy' | 'ordinary';
  readonly name: string;
  /** The row of the tables of pictures that it is a case of; its source is the source of the case. */
  readonly of?: string;
  /** One of the pictures on which an earlier state of the library was silent. */
  readonly reported?: true;
  readonly age?: number;
  readonly says: readonly string[];
  /** Prompts that must fire, and those that must say that they cannot be told. */
  readonly fires?: readonly string[];
  readonly open?: readonly string[];
  /** Prompts of other lines and rule sets that fire too. All that fires is in `fires` or here. */
  readonly also?: readonly string[];
}

const folder = join(import.meta.dirname, '../cases/checks/warnings');

export const bank: readonly Picture[] = readdirSync(folder).flatMap((name): Picture[] =>
  JSON.parse(readFileSync(join(folder, name), 'utf8')),
);

export const everySet: readonly RuleSetId[] = ruleSets.map(({ id }) => id);

const sides = new Set(['right', 'left', 'both', 'midline']);

export function examFor({ says, age, name }: Picture): Exam {
  const conditions = says
    .filter((line) => line.startsWith('history '))
    .map((line) => {
      const [, condition = '', value = ''] = line.split(' ');
      return { condition, value };
    });
  const statements = says
    .filter((line) => !line.startsWith('history '))
    .map((line, at) => ({ ...statementOf(line), key: `s${at}` }) as Statement); // the codes are the tables'
  const parts: Partial<Exam> = {
    statements,
    ...(conditions.length > 0 && { conditions: conditions as NonNullable<Exam['conditions']> }), // likewise
    subject: {
      identifiers: [{ system: 'urn:oid:2.999.1', value: 'W-0417' }],
      ...(age !== undefined && { birthDate: `${2024 - age}-01-15` }),
    },
  };
  return examOf(parts, `W-${name.length}`, examStart);
}

function statementOf(line: string): object {
  const [, plain = '', written] = /^([^{]*)(?:\{(.*)\})?$/.exec(line) ?? [];
  const words = plain.trim().split(' ');
  const side = words.find((word) => sides.has(word));
  const at = side === undefined ? {} : { side };
  const [verb = '', code = '', third = ''] = words.filter((word) => word !== side);
  switch (verb) {
    case 'told':
    case 'denied':
    case 'unsure':
    case 'unasked':
      return { ...symptomOf(verb, code, words), ...at };
    case 'normal': {
      const method = third || (builtInCatalogue.regions.get(code)?.methods[0] ?? 'inspection');
      return { kind: 'region-state', region: code, ...at, state: 'normal', methods: [method] };
    }
    case 'move':
      return { kind: 'movement', test: code, ...at, grade: third };
    case 'feel':
      return {
        kind: 'sensation',
        point: code,
        ...at,
        results: [{ modality: 'light-touch', result: third }],
      };
    case 'test':
      return { kind: 'function-test', test: code, ...at, result: third };
    case 'measure':
      return measureOf(words, at);
    case 'no':
      return { kind: 'finding', finding: code, region: third, ...at, presence: 'absent' };
    default: {
      const attributes = (written ?? '')
        .split(',')
        .filter(Boolean)
        .map((pair) => {
          const [attribute = '', value = ''] = pair.split('=');
          return { attribute, value };
        });
      return {
        kind: 'finding',
        finding: verb,
        region: code,
        ...at,
        presence: 'present',
        ...(attributes.length > 0 && { attributes }),
      };
    }
  }
}

const answers = { told: 'yes', denied: 'no', unsure: 'unsure', unasked: 'not-asked' } as const;

function symptomOf(verb: keyof typeof answers, symptom: string, words: readonly string[]): object {
  const days = words.map((word) => /^([\d.]+)d$/.exec(word)?.[1]).find((one) => one !== undefined);
  const course = words.find((word) => word === 'worse' || word === 'same');
  const region = words[words.indexOf('in') + 1];
  return {
    kind: 'symptom',
    symptom,
    answer: answers[verb],
    ...(days !== undefined && { duration: { value: days, unit: 'd' } }),
    ...(words.includes('words') && { durationText: 'a while' }),
    ...(course !== undefined && { course }),
    ...(words.includes('in') && { region }),
  };
}

function measureOf(words: readonly string[], at: object): object {
  const [, measure = '', region = '', ...rest] = words.filter((word) => !sides.has(word));
  const unit = builtInCatalogue.measures.get(measure)?.unit ?? 'mm';
  const [value = '', ...conditions] = rest;
  return {
    kind: 'measurement',
    measure,
    region,
    ...at,
    value,
    unit,
    ...(conditions.length > 0 && { conditions }),
  };
}

const known = new Map<Picture, CheckResult>();

/** What the checks find with every rule set. */
export function checked(picture: Picture): CheckResult {
  const before = known.get(picture);
  if (before !== undefined) return before;
  const result = checkExam(examFor(picture), { ruleSets: everySet });
  known.set(picture, result);
  return result;
}
