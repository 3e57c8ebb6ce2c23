import type { CodeableConcept } from 'fhir/r4.js';
import { absentReason } from '../../export/resources/observation.ts';
import type { FormOption } from '../form.ts';
import { codingAt, filledBy, having, quoted, type Template } from './annotation.ts';
import type { Probe } from './probe.ts';

/** A reason that is asked for: where its code stands in a response, and the words beside it. */
export interface ReasonAnswer {
  readonly path: string;
  readonly words: string | undefined;
  readonly options: readonly FormOption[];
}

/**
 * Why there is no value, as the export has it: HL7's code, our own, what it was that was not done, and
 * the words used. All of it is gone where no reason was given.
 *
 * @param result expression for the coding of what was not done
 */
export function absentTemplate(
  { context }: Probe,
  { path, words, options }: ReasonAnswer,
  result: string,
): Template {
  const byCode = new Map<string, { readonly display: string; readonly codes: string[] }>();
  let system = '';
  for (const { code: reason, value } of options) {
    const { coding: [first] = [] }: CodeableConcept = absentReason(context, { code: value });
    const { code = '', display = '' } = first ?? {};
    system = first?.system ?? system;
    const known = byCode.get(code);
    if (known === undefined) byCode.set(code, { display, codes: [reason] });
    else known.codes.push(reason);
  }
  // What most reasons have stands for those that are not named: the expression stays short.
  const [most, ...others] = [...byCode].sort(([, a], [, b]) => b.codes.length - a.codes.length);
  const choose = (text: (code: string, display: string) => string): string =>
    others.reduce(
      (rest, [code, { display, codes }]) =>
        `iif(${having(path, codes)}.exists(), ${quoted(text(code, display))}, ${rest})`,
      `${path}.select(${quoted(text(most?.[0] ?? '', most?.[1].display ?? ''))})`,
    );
  return {
    coding: [
      {
        _system: filledBy(`${path}.select(${quoted(system)})`),
        _code: filledBy(choose((code) => code)),
        _display: filledBy(choose((_, display) => display)),
      },
      codingAt(path),
      codingAt(result),
    ],
    _text: filledBy(wordsOf({ path, words })),
  };
}

/** The words used, or what the code says. */
export function wordsOf({ path, words }: Pick<ReasonAnswer, 'path' | 'words'>): string {
  if (words === undefined) return `${path}.display`;
  return `iif(${words}.exists(), ${words}, ${path}.display)`;
}
