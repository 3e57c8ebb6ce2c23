import { type SnomedPolicy, snomedMayLeave } from '../../fhir/licence/snomed-policy.ts';
import { type Issue, issue } from '../../issues/issue.ts';
import type { AdopterCodes } from '../../terminology/code-map/entry.ts';
import type { FreeSet } from '../../terminology/published/snomed.ts';
import { standardSystem } from '../../terminology/system-names.ts';

/** What the policy lets out, as in the export. */
export interface MapPolicy {
  /** Default `free-set`. */
  readonly snomed?: SnomedPolicy;
  /** Look-up of the whole free set, from `terminology/free-set`. */
  readonly freeSet?: FreeSet;
}

/**
 * Lists the SNOMED CT codings of a code map that an export with this policy holds back, so that
 * they can be looked at when the map is loaded.
 *
 * @param codes The code map.
 * @param policy The SNOMED CT policy of the export, and the whole free set where it is at hand.
 * @returns A warning for each coding held back, whose path is the row and the place of the coding
 *   in it. Empty where all may leave.
 * @example
 * const codes = orThrow('read the code map', codesFromConceptMap(resource));
 * const held = withheldCodes(codes, { snomed: 'none' });
 */
export function withheldCodes(
  codes: AdopterCodes,
  { snomed = 'free-set', freeSet }: MapPolicy = {},
): Issue[] {
  return [...codes.entries].flatMap(([row, { codings }]) =>
    codings.flatMap(({ system, code }, at) => {
      const held = standardSystem(system) === 'snomed' && !snomedMayLeave(snomed, code, freeSet);
      return held
        ? [issue('withheld-code', [row, at], { reason: 'map-coding' }, { severity: 'warning' })]
        : [];
    }),
  );
}

/** The same in one issue, for an export: which rows an exam uses would tell what was found. */
export function codeMapRemark(codes: AdopterCodes | undefined, policy: MapPolicy): Issue[] {
  const held = codes === undefined ? 0 : withheldCodes(codes, policy).length;
  if (held === 0) return [];
  return [issue('withheld-code', ['codes'], { reason: 'map' }, { severity: 'information' })];
}
