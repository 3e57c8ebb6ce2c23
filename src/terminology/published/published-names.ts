import { standardSystems } from '../system-names.ts';
import { hl7Concepts } from '../tables/hl7.ts';
import { loincTerms } from '../tables/loinc.ts';
import { snomedConcepts } from '../tables/snomed.ts';

interface Names {
  readonly byCode: ReadonlyMap<string, readonly string[]>;
  readonly byName: ReadonlyMap<string, string>;
}

type Entry = readonly [code: string, names: readonly string[]];

const systems: ReadonlyMap<string, Names> = /*@__PURE__*/ new Map([
  [
    standardSystems.snomed,
    namesOf(
      snomedConcepts.map(({ id, fsn }) => [id, fsn === undefined ? [] : [fsn, untagged(fsn)]]),
    ),
  ],
  [
    standardSystems.loinc,
    namesOf(loincTerms.map(({ code, display }) => [code, display === undefined ? [] : [display]])),
  ],
  ...hl7Systems(),
]);

/** How a display stands to its code, as far as the published names in our tables tell. */
export type DisplayVerdict =
  /** It is the published name of the code. */
  | 'same'
  /** It is the published name of another code of the system. */
  | 'other-code'
  /** It is not the published name; it may be a synonym, which our tables do not hold. */
  | 'other-name'
  /** Our tables do not hold the code, or no name for it. */
  | 'unknown';

export function displayVerdict(system: string, code: string, display: string): DisplayVerdict {
  const names = systems.get(system);
  const own = names?.byCode.get(code) ?? [];
  const name = plain(display);
  if (own.some((published) => plain(published) === name)) return 'same';
  const bearer = names?.byName.get(name);
  if (bearer !== undefined && bearer !== code) return 'other-code';
  return own.length === 0 ? 'unknown' : 'other-name';
}

/** Whether our tables hold some codes of the system; all of them they hold of none. */
export function holdsCodesOf(system: string): boolean {
  return systems.has(system);
}

export function holdsCode(system: string, code: string): boolean {
  return systems.get(system)?.byCode.has(code) === true;
}

/** A fully specified name without its semantic tag: `Face structure (body structure)`. */
export function untagged(fsn: string): string {
  return fsn.replace(/ \([^()]+\)$/, '');
}

function hl7Systems(): [string, Names][] {
  const bySystem = new Map<string, Entry[]>();
  for (const { system, code, display } of hl7Concepts) {
    const entries = bySystem.get(system) ?? [];
    entries.push([code, [display]]);
    bySystem.set(system, entries);
  }
  return [...bySystem].map(([system, entries]) => [system, namesOf(entries)]);
}

function namesOf(entries: readonly Entry[]): Names {
  return {
    byCode: new Map(entries),
    byName: new Map(
      entries.flatMap(([code, names]) =>
        names.map((name): [string, string] => [plain(name), code]),
      ),
    ),
  };
}

/** Upper and lower case and runs of spaces make no other name. */
function plain(name: string): string {
  return name.trim().toLowerCase().replace(/\s+/g, ' ');
}
