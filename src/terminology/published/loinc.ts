import { loincTerms } from '../tables/loinc.ts';

const displays: ReadonlyMap<string, string | undefined> = /*@__PURE__*/ new Map(
  loincTerms.map((term) => [term.code, term.display]),
);

/** The published name of a LOINC code of our tables; undefined where its wording was not seen. */
export function loincDisplay(code: string): string | undefined {
  return displays.get(code);
}
