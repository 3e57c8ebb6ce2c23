import { absentValue } from '../../fhir/absent-value.ts';
import { observationName } from '../../fhir/names/resource-names.ts';
import { category, interpretation, interpretationsOf } from '../../fhir/observation-codes.ts';
import { unverifiedStatus } from '../../fhir/record-status.ts';
import { seenAt } from '../../kinds/facets/base.ts';
import type { Coded, Said } from '../../kinds/facets/meaning.ts';
import type { Key } from '../../model/primitive.ts';
import type { Statement, StatementBase } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import {
  claimEqual,
  dateTimeOf,
  type Element,
  innerOf,
  innersOf,
  lookAt,
  lookAtList,
  textOf,
} from '../bundle/element.ts';
import { claimFrame, type Entry } from '../bundle/entries.ts';
import { claimReference, claimReferences } from '../bundle/reference.ts';
import { type ExamReading, otherIdentifiers } from '../reading.ts';
import { type Components, componentsOf } from './components.ts';
import { ownCode } from './concept.ts';
import { filled } from './values.ts';

/** An observation that is being read. */
export interface Observed {
  readonly reading: ExamReading;
  readonly entry: Entry;
  readonly element: Element;
  readonly components: Components;
}

export function observe(reading: ExamReading, entry: Entry): Observed {
  const element = entry.resource;
  return { reading, entry, element, components: componentsOf(reading, element) };
}

/** A statement of one kind without what all kinds have in common, which is read in one place. */
export type Read<S extends Statement> = S extends Statement
  ? Omit<S, Exclude<keyof StatementBase, 'codings'>>
  : never;

/** How a kind of statement is read: facet of its `read.ts`, listed in `kinds/from-observation.ts`. */
export interface Reader<S extends Statement> {
  /** Whether an observation with this code of ours is a statement of the kind. */
  of(code: Coded, catalogue: Catalogue): boolean;
  /**
   * What the observation states, with its claims; undefined where it lacks what the kind must have.
   * `name` is the name under which the exam identifies it, if any.
   */
  read(observed: Observed, name: string | undefined): Read<S> | undefined;
  /** The observation is cancelled since the thing was not done, which is what it states. */
  undone?(read: Read<S>): boolean;
  /** Address of the picture that the statement refers to. */
  pictureUrl?(statement: S): string;
}

/** Claims the interpretations that follow from what is said. */
export function claimInterpretation(
  element: Element,
  said: readonly Pick<Said, 'of' | 'polarity' | 'usual'>[],
): void {
  const meanings = interpretationsOf(said);
  if (meanings.length > 0) claimEqual(element, 'interpretation', meanings.map(interpretation));
}

export interface FrameOptions {
  readonly category: 'exam' | 'survey';
  /** Status that the observation has by itself, whatever the step in its life. */
  readonly status?: string;
}

/**
 * Claims what an observation of the exam has in common with all others, where it is as it must be:
 * identifier, status, category, subject, encounter and time of writing. Returns the identifiers that
 * are left.
 */
export function claimCommon(
  { reading, entry, element, components }: Observed,
  name: string | undefined,
  options: FrameOptions,
): Element[] {
  claimFrame(reading, entry, name === undefined ? undefined : observationName(name));
  const status = reading.statusOf(name ?? '');
  const unconfirmed = carriedOf(components)?.confirmed === false;
  claimEqual(
    element,
    'status',
    options.status ?? (unconfirmed ? unverifiedStatus(status) : status),
  );
  claimEqual(element, 'category', [category(options.category)]);
  claimEqual(element, '_effectiveDateTime', absentValue);
  const subject = lookAt(element, 'subject');
  if (subject && reading.people.isSubject(subject, entry)) {
    claimReference(reading, element, 'subject');
  }
  const encounter = lookAt(element, 'encounter');
  if (encounter && reading.people.isEncounter(encounter, entry)) {
    claimReference(reading, element, 'encounter');
  }
  if (reading.recorded !== undefined) claimEqual(element, 'issued', reading.recorded);
  return otherIdentifiers(reading, element, name);
}

/** The time of an observation, where it is not that of the exam. */
export function ownTime({ reading, element }: Observed): string | undefined {
  const { performed } = reading;
  if (performed !== undefined) {
    const { start, end } = performed;
    const same =
      end === undefined
        ? claimEqual(element, 'effectiveDateTime', start)
        : claimEqual(element, 'effectivePeriod', { start, end });
    if (same) return undefined;
  }
  return dateTimeOf(element, 'effectiveDateTime');
}

/** What all statements have in common. `further` are the codings beside ours. */
export function baseOf(observed: Observed): Omit<StatementBase, 'key' | 'codings'> {
  const { element, components } = observed;
  const carried = carriedOf(components);
  const time = ownTime(observed);
  // What was not looked at again has the time of the exam that it was taken from.
  const at = time === seenAt({ ...(carried && { carried }) }) ? undefined : time;
  const examiner = performerOf(observed);
  const instruments = instrumentsOf(observed);
  const [note] = innersOf(element, 'note');
  const text = note && textOf(note, 'text');
  return {
    ...(at !== undefined && { at }),
    ...(examiner !== undefined && { examiner }),
    ...(instruments && { instruments }),
    ...(text !== undefined && { note: text }),
    ...(carried && { carried }),
  };
}

/** Key of the examiner, where it is not the first of the exam. */
function performerOf({ reading, entry, element }: Observed): Key | undefined {
  const { examinerOf, examiners } = reading.people;
  const [first] = lookAtList(element, 'performer');
  const key = first && examinerOf(first, entry);
  if (key === undefined) return undefined;
  claimReference(reading, element, 'performer', 0);
  return key === examiners[0]?.key ? undefined : key;
}

function instrumentsOf({
  reading,
  entry,
  element,
  components,
}: Observed): StatementBase['instruments'] {
  const device = lookAt(element, 'device');
  const first = device && reading.instrumentOf(device, entry);
  if (first === undefined) return undefined;
  claimReference(reading, element, 'device');
  return [first, ...components.texts('instrument')];
}

function carriedOf(components: Components): StatementBase['carried'] {
  const exam = components.text('carried-exam');
  const statement = components.text('carried-statement');
  const time = components.first('carried-at');
  const at = time && dateTimeOf(time, 'valueDateTime');
  const confirmed = components.flag('carried-confirmed');
  if (exam === undefined || statement === undefined) return undefined;
  if (at === undefined || confirmed === undefined) return undefined;
  return { exam, statement, at, confirmed };
}

/** Methods: one is coded in `method`, several in components and named in `method`. */
export function methodsOf({
  reading,
  element,
  components,
}: Observed): readonly string[] | undefined {
  const several = components.codes('method', 'methods');
  if (several.length > 0) {
    const names = several.map((code) => reading.catalogue.methods.get(code)?.display ?? code);
    claimEqual(element, 'method', { text: names.join('; ') });
    return several;
  }
  const method = lookAt(element, 'method');
  const one = method && ownCode(reading, method, 'methods');
  if (one === undefined) return undefined;
  innerOf(element, 'method');
  return [one.code];
}

/** Keys of the statements that the observation is about. */
export function aboutOf({
  reading,
  entry,
  element,
}: Observed): readonly [Key, ...Key[]] | undefined {
  return filled(
    claimReferences(reading, element, 'focus', (reference) =>
      reading.statementOf(reference, entry),
    ),
  );
}
