import { expect } from 'vitest';
import { type ConvertResult, convertText } from '../../src/convert/exams/convert-text.ts';
import type { Mapping } from '../../src/convert/mapping/mapping.ts';
import type { Plan } from '../../src/convert/mapping/plan.ts';
import { prepareMapping } from '../../src/convert/prepare/prepare-mapping.ts';
import type { Reader } from '../../src/convert/record/record.ts';
import { toBundle } from '../../src/export/to-bundle.ts';
import { issueText } from '../../src/issues/issue.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';
import type { Random } from './random.ts';
import { checkLedger } from './syntax-cases.ts';

/** A generated export. */
export interface Messy {
  readonly text: string;
  /** Exams, and pieces that belong to none, that the text holds. */
  readonly units: number;
  /** Texts that have to be found again, each unlike any other. */
  readonly marks: readonly string[];
}

export interface Syntax {
  readonly plan: Plan;
  readonly reader: Reader;
  /** The units of a text make up the text: nothing stands outside them. */
  readonly seamless: boolean;
}

/** A syntax with its mapping made ready once. */
export function syntaxOf(mapping: Mapping, reader: Reader, seamless: boolean): Syntax {
  const { value: plan, issues } = prepareMapping(mapping);
  if (plan === undefined) throw new Error(issues.map(issueText).join('\n'));
  return { plan, reader, seamless };
}

/** Converted and quarantined are what came in; what was converted is valid; no mark is lost. */
export function checkMessy({ text, units, marks }: Messy, { plan, reader }: Syntax): ConvertResult {
  const result = convertText(text, reader, plan);
  expect(result.exams.length + result.quarantine.length).toBe(units);
  checkLedger(result);
  const kept = `${JSON.stringify(result.exams.map(({ exam }) => exam))}\n${JSON.stringify(result.quarantine)}`;
  expect(marks.filter((mark) => !kept.includes(mark))).toEqual([]);
  for (const { exam } of result.exams) {
    const { value, issues } = toBundle(exam);
    expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    const validation = validateBundle(value);
    expect(validation.issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  }
  return result;
}

/** How much of a text is changed at one place. */
const LONGEST_EDIT = 40;

/** The text with some of its characters lost, doubled, moved or replaced by marks of the syntax. */
export function mutated(text: string, marks: string, random: Random): string {
  let result = text;
  for (let edits = 1 + random.below(6); edits > 0; edits--) {
    const at = random.below(result.length + 1);
    const length = random.below(LONGEST_EDIT);
    const before = result.slice(0, at);
    const mark = marks.charAt(random.below(marks.length));
    switch (random.below(5)) {
      case 0:
        result = before + result.slice(at + length);
        break;
      case 1:
        result = before + mark + result.slice(at);
        break;
      case 2:
        result = before + mark + result.slice(at + 1);
        break;
      case 3:
        result = before + result.slice(at, at + length) + result.slice(at);
        break;
      default:
        result = before + String.fromCharCode(random.below(256)) + result.slice(at + 1);
    }
  }
  return result;
}

/** A damaged input never throws, and every unit that the splitter finds is converted or set aside. */
export function checkMutated(text: string, { plan, reader, seamless }: Syntax): void {
  const splitter = reader.splitter();
  const units = [...splitter.push(text), ...splitter.end()];
  if (seamless && text.trim() !== '') expect(units.map(({ raw }) => raw).join('')).toBe(text);
  const result = convertText(text, reader, plan);
  expect(result.exams.length + result.quarantine.length).toBe(units.length);
  checkLedger(result);
}
