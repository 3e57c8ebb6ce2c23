import type { Code, Side } from '../../model/primitive.ts';
import type { Presence } from '../../model/statement.ts';
import type { ReadOptions } from '../../read/options.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import { patternText, regionAndParts, type StatementPattern, unmet } from './pattern.ts';
import { type Told, type ToldStatement, toldIn } from './told.ts';
import { issueLines, type Verdict, verdict } from './verdict.ts';

/** A sign, and where it is expected; `presence` is `present` unless told. */
export type FindingPattern = StatementPattern & {
  readonly finding: Code;
  readonly presence?: Presence;
};

/** A place of the body; the parts of a region belong to it. */
export interface AboutPlace {
  readonly region: Code;
  /** Default: any side. */
  readonly side?: Side;
}

/**
 * Checks whether a bundle holds a statement that meets a pattern.
 *
 * @param bundle The bundle as plain data.
 * @param pattern Properties that the statement must have.
 * @param options As for `fromBundle`.
 * @returns The verdict, whose message names the statements that come nearest by their FHIR path,
 *   with what differs in them; values are not shown.
 * @throws {TypeError} Where the pattern is empty, since any statement would meet it.
 * @example
 * const { pass } = holdsStatement(bundle, { kind: 'region-state', region: 'nose' });
 */
export function holdsStatement(
  bundle: unknown,
  pattern: StatementPattern,
  options?: ReadOptions,
): Verdict {
  const wanted = patternText(pattern);
  if (wanted === '') throw new TypeError('cannot look for a statement: expected a pattern');
  const told = toldIn(bundle, options);
  const unreadable = unread(told, wanted);
  if (unreadable !== undefined) return unreadable;
  const rated = told.statements.map((one) => ({ one, missed: unmet(pattern, one.statement) }));
  const met = rated.filter(({ missed }) => missed.length === 0);
  return met.length > 0
    ? verdict(
        true,
        `the bundle holds ${wanted}`,
        met.map(({ one }) => lineOf(one)),
      )
    : verdict(false, `the bundle does not hold ${wanted}`, nearestLines(rated, pattern));
}

/**
 * Checks whether a bundle holds a sign, like {@link holdsStatement}.
 *
 * @param bundle The bundle as plain data.
 * @param finding The sign and what else must hold; `presence` is `present` unless stated.
 * @param options As for `fromBundle`.
 * @returns The verdict, with a message as of `holdsStatement`.
 * @example
 * const { pass } = holdsFinding(bundle, { finding: 'naevus', side: 'right' });
 */
export function holdsFinding(
  bundle: unknown,
  finding: FindingPattern,
  options?: ReadOptions,
): Verdict {
  return holdsStatement(bundle, { kind: 'finding', presence: 'present', ...finding }, options);
}

/**
 * Checks whether a bundle is silent on a place: it says neither normal nor not examined nor
 * anything else about it or its parts. It also fails where a part of the bundle could not be read,
 * since that part could speak of the place.
 *
 * @param bundle The bundle as plain data.
 * @param place The region, and the side where one is meant.
 * @param options As for `fromBundle`.
 * @returns The verdict, whose message names what speaks of the place.
 * @throws {TypeError} Where the catalogue does not hold the region.
 * @example
 * const { pass } = holdsNothingAbout(bundle, { region: 'nose' });
 */
export function holdsNothingAbout(
  bundle: unknown,
  place: AboutPlace,
  options: ReadOptions = {},
): Verdict {
  const catalogue = options.catalogue ?? builtInCatalogue;
  if (!catalogue.regions.has(place.region)) {
    throw new TypeError('cannot look for silence: expected a region of the catalogue');
  }
  const told = toldIn(bundle, options);
  const wanted = `anything about ${patternText({ ...place })}`;
  const unreadable = unread(told, wanted);
  if (unreadable !== undefined) return unreadable;
  const regions = regionAndParts(place.region, catalogue);
  const speaking = told.statements.filter(
    ({ statement }) =>
      'region' in statement &&
      statement.region !== undefined &&
      regions.has(statement.region) &&
      sidesMeet(place.side, statement.side),
  );
  if (speaking.length > 0)
    return verdict(false, `the bundle holds ${wanted}`, speaking.map(lineOf));
  const unclear = told.remainder.map(({ what, path }) => `${what} at ${path.join('.')}`);
  return unclear.length > 0
    ? verdict(false, `whether the bundle holds ${wanted} is not known, unread:`, unclear)
    : verdict(true, `the bundle does not hold ${wanted}`);
}

/** A side that was not told could be this one. */
function sidesMeet(asked: Side | undefined, told: Side | undefined): boolean {
  return (
    asked === undefined ||
    told === undefined ||
    told === asked ||
    told === 'both' ||
    asked === 'both'
  );
}

function unread({ unread: issues }: Told, wanted: string): Verdict | undefined {
  if (issues.length === 0) return undefined;
  return verdict(false, `whether the bundle holds ${wanted} is not known`, issueLines(issues));
}

function lineOf({ statement, where }: ToldStatement): string {
  return `${where}  ${statement.kind}`;
}

/** Statements of the same sign, test or measure first; those that meet nothing are left out. */
function nearestLines(
  rated: readonly { readonly one: ToldStatement; readonly missed: readonly string[] }[],
  pattern: StatementPattern,
): string[] {
  const size = Object.keys(pattern).length;
  return rated
    .filter(({ missed }) => missed.length < size)
    .sort((a, b) => rank(a.missed) - rank(b.missed))
    .slice(0, 3)
    .map(({ one, missed }) => `${lineOf(one)} differs in ${missed.join(', ')}`);
}

const subjects = ['finding', 'measure', 'scale', 'symptom', 'point', 'test', 'region'];

function rank(missed: readonly string[]): number {
  return missed.length + (missed.some((name) => subjects.includes(name)) ? 10 : 0);
}
