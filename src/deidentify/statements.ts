import type { ScaleScore } from '../kinds/scale-score/statement.ts';
import type { Statement } from '../model/statement.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import type { Dates } from './dates.ts';

/** What becomes of the names and times in a statement. */
export interface Renaming {
  readonly dates: Dates;
  readonly catalogue: Catalogue;
  /** Statements of this exam that leave. */
  readonly leaves: (key: string) => boolean;
  readonly statement: (key: string) => string;
  /** Of another exam of the same patient. */
  readonly carriedStatement: (exam: string, key: string) => string;
  readonly exam: (id: string) => string;
  readonly tracking: (key: string) => string;
  readonly examiner: (key: string) => string;
}

/** Codes of our tables, closed lists, figures and flags: what `parseExam` has looked up. */
export const keptNames: ReadonlySet<string> = new Set([
  'answer',
  'attribute',
  'attributes',
  'certainty',
  'code',
  'comparator',
  'conditions',
  'confirmed',
  'convention',
  'course',
  'duration',
  'estimated',
  'except',
  'eyesClosed',
  'finding',
  'grade',
  'item',
  'items',
  'kind',
  'limit',
  'measure',
  'methods',
  'modality',
  'point',
  'presence',
  'readings',
  'reason',
  'region',
  'result',
  'results',
  'scale',
  'score',
  'severity',
  'side',
  'state',
  'symptom',
  'synkinesis',
  'test',
  'toldBy',
  'unit',
  'unusable',
  'value',
  'version',
]);

/** What is made anew, by its own rule. */
export const madeAnew: ReadonlySet<string> = new Set([
  'key',
  'at',
  'onset',
  'about',
  'carried',
  'tracking',
  'examiner',
]);

/** Words, addresses, serial numbers and codes of whoever wrote them. */
export const leftOut: ReadonlySet<string> = new Set([
  'note',
  'place',
  'text',
  'title',
  'url',
  'contentType',
  'consent',
  'purpose',
  'scaleBar',
  'trigger',
  'durationText',
  'codings',
  'instruments',
]);

/** A statement that is made of words or a picture: a note, an image. */
const ownWords = ['text', 'title', 'url'] as const;

/** Whether a statement leaves: one made of words does not, nor a score that no table vouches for. */
export function mayLeave(statement: Statement, catalogue: Catalogue): boolean {
  if (ownWords.some((name) => name in statement)) return false;
  return !('scale' in statement) || isListed(statement, catalogue);
}

/** Version, grade and items are words where the table does not have them. */
function isListed(
  { scale, version, score, items = [] }: ScaleScore,
  catalogue: Catalogue,
): boolean {
  const row = catalogue.scales.get(scale);
  const isGrade = typeof score === 'number' || row?.grades?.some(({ code }) => code === score);
  return (
    row?.versions.includes(version) === true &&
    isGrade === true &&
    items.every(({ item }) => row.items?.some(({ code }) => code === item) === true)
  );
}

/** The statement with what may leave of it; a time that can't be moved is left out, where it may be. */
export function withoutWords(statement: Statement, renaming: Renaming): Statement {
  const { dates } = renaming;
  const made: Record<string, unknown> = keptOf(statement);
  made['key'] = renaming.statement(statement.key);
  const { at, examiner, carried } = statement;
  if (at !== undefined) made['at'] = dates.dateTime(at);
  if (examiner !== undefined) made['examiner'] = renaming.examiner(examiner);
  if ('onset' in statement && statement.onset !== undefined) {
    made['onset'] = dates.dateTime(statement.onset);
  }
  if ('tracking' in statement && statement.tracking !== undefined) {
    made['tracking'] = renaming.tracking(statement.tracking);
  }
  if (
    'about' in statement &&
    typeof statement.about === 'string' &&
    renaming.leaves(statement.about)
  ) {
    made['about'] = renaming.statement(statement.about);
  }
  if (carried !== undefined) {
    made['carried'] = {
      exam: renaming.exam(carried.exam),
      statement: renaming.carriedStatement(carried.exam, carried.statement),
      at: dates.dateTime(carried.at),
      confirmed: carried.confirmed,
    };
  }
  // Each property is that of the statement given, or its own kind of value made anew.
  return defined(made) as unknown as Statement;
}

function keptOf(value: object): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(value)
      .filter(([name]) => keptNames.has(name))
      .map(([name, member]) => [name, keptValue(member)]),
  );
}

function keptValue(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(keptValue);
  return typeof value === 'object' && value !== null ? keptOf(value) : value;
}

function defined(made: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(made).filter(([, value]) => value !== undefined));
}
