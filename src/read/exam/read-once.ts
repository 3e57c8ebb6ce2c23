import { idsOf } from '../../fhir/names/ids.ts';
import { identitySystems } from '../../fhir/names/part-names.ts';
import { CANONICAL_BASE } from '../../fhir/names/systems.ts';
import type { ExamSignature } from '../../fhir/signature.ts';
import type { Issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import type { Exam } from '../../model/exam.ts';
import type { Key } from '../../model/primitive.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import { english, inLanguage } from '../../terminology/languages/language.ts';
import { claimBundle } from '../bundle/bundle-head.ts';
import { createClaims } from '../bundle/claims.ts';
import { type Element, peek } from '../bundle/element.ts';
import { readEntries } from '../bundle/entries.ts';
import { chooseExam } from '../bundle/exam-id.ts';
import { createLookup } from '../bundle/lookup.ts';
import { type Remainder, remainderOf } from '../bundle/remainder.ts';
import { modifierWarnings, unknownModifiers, unreadTypes } from '../foreign/modifiers.ts';
import type { ReadOptions } from '../options.ts';
import type { Reading } from '../reading.ts';
import type { Refused } from '../refused.ts';
import { readExam } from './read-exam.ts';

/** An exam as far as the bundle tells it, before the rules have seen it. */
export interface RoughExam {
  readonly exam: Pick<Exam, 'format' | 'id' | 'statements'> & Partial<Exam>;
  /** Where in the bundle each statement stands. */
  readonly origins: ReadonlyMap<Key, Path>;
  /** Where the report stands; the bundle where there is none. */
  readonly home: Path;
  /** It was written by this library. */
  readonly own: boolean;
}

export interface ReadOnce {
  readonly rough: RoughExam | undefined;
  readonly issues: readonly Issue[];
  readonly remainder: readonly Remainder[];
  readonly signatures: readonly ExamSignature[];
}

/** One reading of a bundle, with the parts left out that were refused before. */
export function readOnce(
  json: Readonly<Record<string, unknown>>,
  options: ReadOptions,
  refused: Refused,
): ReadOnce {
  const claims = createClaims();
  const bundle: Element = { json, claims };
  const barred = unknownModifiers(json);
  if (barred.whole !== undefined)
    return { rough: undefined, issues: [barred.whole], remainder: [], signatures: [] };
  const entries = readEntries(bundle, barred.resources);
  const base = options.canonicalBase ?? CANONICAL_BASE;
  const systems = identitySystems(base, options.identity);
  const chosen = chooseExam(entries, systems, options);
  if ('code' in chosen) {
    return { rough: undefined, issues: [...barred.issues, chosen], remainder: [], signatures: [] };
  }

  const language = options.language ?? english;
  const catalogue = inLanguage(options.catalogue ?? builtInCatalogue, language);
  const reading: Reading = {
    id: chosen.id,
    idOf: idsOf(systems.exam, chosen.id),
    catalogue,
    language,
    adopted: options.codes,
    base,
    lookup: createLookup(catalogue, base),
    filing: options.filing ?? {},
    systems,
    entries,
    issues: [
      ...barred.issues,
      ...entries.all.flatMap(modifierWarnings),
      ...(chosen.own ? [] : unreadTypes(entries.all)),
    ],
    knownReferences: new Map(),
    signatures: [],
    reasons: new Map(
      [...barred.resources].map((one) => [one, 'it is changed in a way that is not understood']),
    ),
  };
  const rough = readExam(reading, {
    chosen,
    bundleType: peek(bundle, 'type'),
    supplied: options.supplied ?? {},
    refused,
  });
  claimBundle(reading, bundle, rough.exam);
  const { issues, signatures } = reading;
  return { rough, issues, remainder: remainderOf(json, claims, reading.reasons), signatures };
}
