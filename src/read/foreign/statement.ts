import { issue } from '../../issues/issue.ts';
import { standingOf } from '../../kinds/registries/meanings.ts';
import type { Key, Side } from '../../model/primitive.ts';
import type { Finding, Measurement, Note, Statement, Symptom } from '../../model/statement.ts';
import { lateralitySides, sideText } from '../../terminology/sides.ts';
import {
  claimEqual,
  type Element,
  innerOf,
  innersOf,
  lookAt,
  peek,
  textOf,
} from '../bundle/element.ts';
import type { Entry } from '../bundle/entries.ts';
import { baseOf, claimCommon, type Observed, observe } from '../observation/observation.ts';
import type { Place } from '../observation/place.ts';
import { codingsOf, filled, quantityOf } from '../observation/values.ts';
import { type ExamReading, partNameOf } from '../reading.ts';
import { type SignTold, signTold } from './answers.ts';
import { conditionFrame, type Frame } from './frame.ts';
import { keyOfResource } from './key.ts';
import type { Meanings } from './mapped.ts';
import type { Answer } from './published-codes.ts';
import { type ForeignSite, foreignSite, sidesNamed } from './sites.ts';
import { sidesIn } from './wording.ts';
import { holderWords } from './words.ts';

/** What is read: a resource of others, or a component of one. */
export interface Source {
  readonly reading: ExamReading;
  readonly meanings: Meanings;
  readonly entry: Entry;
  /** The resource itself, or the component. */
  readonly holder: Element;
  readonly key: Key;
  readonly frame: Frame;
  /** Keys of statements that the rules refused in an earlier round, to be kept in words. */
  readonly refused: ReadonlySet<Key>;
  /** What the states of a Condition say; an observation says it by its value. */
  readonly answer?: Answer;
}

/**
 * The statements of an observation without our codes: signs, symptoms and measurements where its
 * codes mean one of ours and nothing else, or else notes with its words. What keeps a known sign
 * from being read is told, and so is a side that finds no place.
 */
export function readForeign(
  reading: ExamReading,
  meanings: Meanings,
  entry: Entry,
  { key, frame, refused }: Pick<Source, 'key' | 'frame' | 'refused'>,
): readonly Statement[] {
  const { resource } = entry;
  const source = { reading, meanings, entry, holder: resource, key, frame, refused };
  const told = statementOf(source);
  const whole = told.statement === undefined ? [] : [told.statement];
  // What stands in a part of ours beside its code is not a statement of its own.
  if (partNameOf(reading, resource) !== undefined) return whole;
  // What qualifies a finding means nothing by itself; in a panel each component stands for itself.
  const parts = innersOf(resource, 'component').flatMap((holder) => {
    const part = { ...source, holder, key: `${key}/component.${holder.at}` };
    const read = told.inWords
      ? statementOf(part).statement
      : holder.claims.attempt(() => noteOf(part));
    return read ?? [];
  });
  return [...whole, ...parts];
}

/** The finding that a Condition names, present, suspected or ruled out; or a note with its words. */
export function readCondition(
  reading: ExamReading,
  meanings: Meanings,
  entry: Entry,
  { key, refused }: Pick<Source, 'key' | 'refused'>,
): readonly Statement[] {
  const frame = conditionFrame(reading, entry);
  if (frame.unsaid) return [];
  const { resource } = entry;
  const answer = frame.certainty ?? frame.presence;
  const source = { reading, meanings, entry, holder: resource, key, frame, refused, answer };
  const { statement, inWords } = statementOf(source);
  if (!inWords) {
    for (const name of ['clinicalStatus', 'verificationStatus']) {
      claimEqual(resource, name, peek(resource, name));
    }
  }
  return statement === undefined ? [] : [statement];
}

interface Told {
  readonly statement: Statement | undefined;
  /** Kept in words alone, or not at all. */
  readonly inWords: boolean;
}

function statementOf(source: Source): Told {
  const { claims } = source.holder;
  if (source.refused.has(source.key)) return { statement: readWords(source), inWords: true };
  const coded = claims.attempt(() => signOf(source)) ?? claims.attempt(() => measurementOf(source));
  if (coded !== undefined) return { statement: coded, inWords: false };
  return { statement: claims.attempt(() => noteOf(source)), inWords: true };
}

/** The sign or symptom; undefined, and the reason told, where a sign of ours cannot be read as one. */
function signOf(source: Source): Finding | Symptom | undefined {
  const { reading, meanings, holder, frame, answer } = source;
  const told = signTold({
    catalogue: reading.catalogue,
    meanings,
    holder,
    told: frame.told === true,
    ...(answer !== undefined && { answer }),
  });
  if (told === undefined) return undefined;
  const site = foreignSite(source);
  const statement =
    told.table === 'symptoms' ? symptomOf(source, told, site) : findingOf(source, told, site);
  if (typeof statement !== 'string') return statement;
  refuse(source, statement);
  return undefined;
}

function findingOf(source: Source, told: SignTold, site: ForeignSite): Finding | string {
  const { reading } = source;
  const row = reading.catalogue.findings.get(told.row);
  const doubt = source.frame.doubt ?? told.doubt ?? site.trouble;
  if (doubt !== undefined) return doubt;
  const place = site.place ?? onlyPlace(reading, row?.regions, told.presence === 'absent');
  if (place === undefined) return 'its place is not one of ours';
  if (told.presence !== 'present' && site.narrower) {
    return 'its site is only a part of the region that it would deny';
  }
  const { presence, certainty } = told;
  const statement: Finding = {
    ...shared(source, told.named),
    kind: 'finding',
    finding: told.row,
    presence,
    ...place,
    ...(certainty !== undefined && { certainty }),
  };
  return soundly(source, statement, site, sidesIn(row?.display ?? ''));
}

const symptomAnswers = { present: 'yes', absent: 'no', indeterminate: 'unsure' } as const;

function symptomOf(source: Source, told: SignTold, site: ForeignSite): Symptom | string {
  const doubt = source.frame.doubt ?? told.doubt ?? site.trouble;
  if (doubt !== undefined) return doubt;
  const statement: Symptom = {
    ...shared(source, told.named),
    kind: 'symptom',
    symptom: told.row,
    answer: symptomAnswers[told.presence],
    ...site.place,
  };
  return soundly(source, statement, site, new Set());
}

function measurementOf(source: Source): Measurement | undefined {
  const { reading, meanings, holder } = source;
  const code = lookAt(holder, 'code');
  const measure = code && meanings.rowOf('measures', code);
  const row = measure === undefined ? undefined : reading.catalogue.measures.get(measure);
  if (code === undefined || row === undefined) return undefined;
  const quantity = quantityOf(innerOf(holder, 'valueQuantity'));
  const site = foreignSite(source);
  const refused = ((): string | undefined => {
    if (quantity === undefined) return 'it has no quantity in UCUM';
    if (quantity.unit !== row.unit && row.units?.includes(quantity.unit) !== true) {
      return 'its unit is none that the measure takes';
    }
    return source.frame.doubt ?? site.trouble;
  })();
  if (quantity === undefined || refused !== undefined) {
    refuse(source, refused ?? 'it has no quantity');
    return undefined;
  }
  const statement: Measurement = {
    ...shared(source, code),
    kind: 'measurement',
    measure: row.code,
    ...(site.place ?? { region: row.region }),
    ...quantity,
  };
  const sound = soundly(source, statement, site, new Set());
  if (typeof sound !== 'string') return sound;
  refuse(source, sound);
  return undefined;
}

/**
 * The statement where its place can have its side and every side that the source names is in it; else
 * the reason. A side read from words is told.
 */
function soundly<S extends Finding | Measurement | Symptom>(
  source: Source,
  statement: S,
  site: ForeignSite,
  ownSides: ReadonlySet<Side>,
): S | string {
  const { reading, entry } = source;
  if (!isSided(statement, reading)) {
    return statement.side === undefined
      ? 'its place needs a side and none is given'
      : 'its place cannot have its side';
  }
  const lost = sidesOf(source).filter(
    (side) => !ownSides.has(side) && !covers(statement.side, side),
  );
  if (lost.length > 0) return 'it names a side that the statement would not hold';
  if (site.sideInWords) {
    reading.issues.push(
      issue('side-in-words', entry.path, { reason: 'words-alone' }, { severity: 'warning' }),
    );
  }
  return statement;
}

function sidesOf(source: Source): readonly Side[] {
  const { holder, entry } = source;
  const whole = holder === entry.resource;
  // The components of a resource are read by themselves; its site is that of all of them.
  const { component: _, ...rest } = holder.json as Readonly<Record<string, unknown>>;
  const own = sidesNamed(rest, source);
  return whole ? [...own] : [...new Set([...own, ...sidesNamed(siteOnly(entry), source)])];
}

function siteOnly({ resource }: Entry): object {
  return { bodySite: peek(resource, 'bodySite') ?? [] };
}

function covers(stated: Side | undefined, named: Side): boolean {
  if (stated === named) return true;
  if (stated === 'both') return named === 'right' || named === 'left';
  return stated === `${named}-of-midline`;
}

/** A side that the place can have, and one wherever it must have one. */
function isSided(statement: Finding | Measurement | Symptom, reading: ExamReading): boolean {
  const { laterality, needsSide } = standingOf(statement, reading.catalogue);
  if (laterality === undefined) return !needsSide;
  const { sides, required } = lateralitySides[laterality];
  if (statement.side === undefined) return !required || !needsSide;
  return sides.includes(statement.side);
}

/** The one region that a sign has. What is absent is not said to be absent in all of a group. */
function onlyPlace(
  { catalogue }: ExamReading,
  regions: readonly string[] | undefined,
  isAbsent: boolean,
): Place | undefined {
  const [region] = regions ?? [];
  if (region === undefined || regions?.length !== 1) return undefined;
  return isAbsent && catalogue.regions.get(region)?.group ? undefined : { region };
}

function refuse({ reading, entry, holder }: Source, why: string): void {
  const at = 'at' in holder && holder !== entry.resource ? ['component', Number(holder.at)] : [];
  reading.issues.push(
    issue(
      'unread-statement',
      [...entry.path, ...at],
      { reason: 'kept-as-note', says: why },
      { severity: 'warning' },
    ),
  );
}

/** Code, value and place in the words of the source, with any side that those words leave out. */
function noteOf(source: Source): Note | undefined {
  const { holder, entry } = source;
  const base = shared(source, lookAt(holder, 'code'));
  // A panel has no value of its own: its members or components say everything.
  if (base.note === undefined && isBarePanel(holder)) return undefined;
  const site = holder.claims.attempt(() => sidedPlace(source));
  const title = holder === entry.resource ? undefined : innerOf(entry.resource, 'code');
  const text = textWith(source, site, title);
  return text === '' ? undefined : { ...base, kind: 'note', text, ...site };
}

function textWith(source: Source, site: Place | undefined, title: Element | undefined): string {
  const { reading, entry } = source;
  const words = holderWords(source.holder, { withSite: site === undefined, title, entry });
  if (words === '') return words;
  const said = new Set([...sidesIn(words, true), ...(site?.side === undefined ? [] : [site.side])]);
  const unsaid = sidesOf(source).filter((side) => ![...said].some((one) => covers(one, side)));
  if (unsaid.length === 0) return words;
  reading.issues.push(
    issue('side-in-words', entry.path, { reason: 'no-place' }, { severity: 'warning' }),
  );
  return `${words} [${unsaid.map((side) => sideText[side]).join(', ')}]`;
}

function isBarePanel(holder: Element): boolean {
  const valued = Object.keys(holder.json).some((name) => /^_?(value|dataAbsentReason)/.test(name));
  const grouped = ['hasMember', 'component'].some((name) => Array.isArray(peek(holder, name)));
  return !valued && grouped;
}

/** The words of a resource or component and nothing else, for one whose details the rules refuse. */
export function readWords(source: Source): Note | undefined {
  const { reading, entry, holder, key } = source;
  return holder.claims.attempt(() => {
    claimCommon(observe(reading, entry), partNameOf(reading, entry.resource), { category: 'exam' });
    const text = textWith(source, undefined, undefined);
    return text === '' ? undefined : { key, kind: 'note', text };
  });
}

function sidedPlace(source: Source): Place | undefined {
  const { reading } = source;
  const { place, sideInWords } = foreignSite(source);
  // A side that stands in words stays there.
  if (place === undefined || sideInWords) return undefined;
  const laterality = reading.catalogue.regions.get(place.region)?.laterality;
  if (laterality === undefined || place.side === undefined) return place;
  return lateralitySides[laterality].sides.includes(place.side) ? place : undefined;
}

/** What a statement has whatever its kind, with the codes of what it names as codings. */
function shared(
  { reading, entry, holder, key }: Source,
  named: Element | undefined,
): Omit<Note, 'kind' | 'text' | 'region' | 'side'> {
  const observed: Observed = observe(reading, entry);
  claimCommon(observed, partNameOf(reading, entry.resource), { category: 'exam' });
  claimEqual(entry.resource, 'id', keyOfResource(entry).slice(entry.type.length + 1));
  innerOf(holder, 'code');
  const codings = filled(codingsOf(named === undefined ? [] : innersOf(named, 'coding')));
  if (named !== undefined) textOf(named, 'text');
  const base = holder === entry.resource ? baseOf(observed) : timeOnly(baseOf(observed));
  return { key, ...base, ...(codings && { codings }) };
}

/** A component shares time and examiner with its resource, and not the note on it. */
function timeOnly({ at, examiner }: ReturnType<typeof baseOf>): ReturnType<typeof baseOf> {
  return { ...(at !== undefined && { at }), ...(examiner !== undefined && { examiner }) };
}
