import { fromJson } from '../../fhir/json/from-json.ts';
import type { Outcome } from '../../issue.ts';
import type { Plan } from '../mapping/plan.ts';
import { type MappingOptions, prepareMapping } from './prepare-mapping.ts';

/** The data of a mapping file's text, not yet checked. Comments of JavaScript are allowed. */
export function parseMappingText(text: string): Outcome<unknown> {
  return fromJson(withoutComments(text.replace(/^\uFEFF/, '')), { depth: 20 });
}

/** The mapping of a file's text, checked and made ready for use. */
export function readMapping(text: string, options: MappingOptions = {}): Outcome<Plan> {
  const { value, issues } = parseMappingText(text);
  if (value === undefined) return { issues };
  return prepareMapping(value, options);
}

/** String literals first, so that a comment mark inside one is left alone. */
const literalOrComment = /"(?:[^"\\\n]|\\.)*"|\/\/[^\n]*|\/\*[\s\S]*?\*\//g;

/** The text with comments as spaces, so that faults keep their line and column. */
export function withoutComments(text: string): string {
  return text.replace(literalOrComment, (found) =>
    found.startsWith('"') ? found : found.replace(/[^\n]/g, ' '),
  );
}
