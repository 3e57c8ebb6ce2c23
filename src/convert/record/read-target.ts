import type { Issue } from '../../issues/issue.ts';
import { targetConversion } from '../../kinds/registries/conversions.ts';
import { type Built, isState, type Problem, type Reading, type Unkeyed } from '../build/built.ts';
import { contentOf, isBlank, printable } from '../exams/note.ts';
import { type ConversionCode, type ConversionFacts, issue } from '../issue.ts';
import type { ItemStatus, Meaning } from '../mapping/mapping.ts';
import { ownWordsProblem } from '../mapping/own-words.ts';
import type { Plan, PlannedTarget } from '../mapping/plan.ts';
import { looksDamaged } from '../values/damaged.ts';
import type { Draft, Drafts, TextDraft } from './draft.ts';
import { isProblem, type Place, placesOf, type Roles } from './place.ts';
import type { Field } from './record.ts';

/** A value, the target that it is for, and what else its record says about it. */
export interface TargetInput {
  readonly planned: PlannedTarget;
  readonly value: Field;
  /** Name of the field or item, for keys. */
  readonly name: string;
  readonly roles: Roles;
  readonly status?: ItemStatus;
  /** Fields that are stated together with the value: item code, side, unit ... */
  readonly beside: readonly Field[];
  /** The examiner's words for this statement. */
  readonly notes: readonly Field[];
  /** Fields without a meaning of their own; they go into the note of the statement. */
  readonly extras: readonly Field[];
  /** Writes the whole as text, for when it cannot be coded. */
  readonly text: () => string;
  /** The record says something besides the value: a blank value is then text, not silence. */
  readonly isItem: boolean;
  /** Why nothing can be coded, whatever the value says. */
  readonly refused?: Problem;
  /** The sender's words for the codes of this value, and those of the value itself. */
  readonly wordings?: readonly string[];
  readonly valueWordings?: readonly string[];
}

/** What became of a value that makes no statement and is not kept as text. */
export type TargetResult = Drafts & { readonly blank: readonly Field[] };

/** Statement, text or silence: what one value of a record becomes. */
export function readTarget(input: TargetInput, plan: Plan): TargetResult {
  const { value, status } = input;
  const found = placesOf(input.planned.target, input.roles, plan);
  // Text that may be of several sides is not put on one of them.
  const [place, other] = isProblem(found) ? [{}] : found;
  const textPlace = other === undefined && input.refused === undefined ? place : {};
  if (status === 'withdrawn') return asText(input, withdrawn, textPlace);
  const meaning = meaningOf(input, plan);
  if (status === 'text' || meaning === 'text') return asText(input, undefined, textPlace);
  if (meaning === 'not-stated') return silence(input, textPlace);
  if (isBlank(value) && meaning === undefined) return blank(input, textPlace);
  if (input.refused !== undefined) return asText(input, input.refused);
  if (isProblem(found)) return asText(input, found);
  const built: Exclude<Built, Problem>[] = [];
  for (const one of found) {
    const made = builtFrom(input, one, meaning, plan);
    if ('problem' in made) return asText(input, sideConflict(value, one, plan) ?? made, textPlace);
    built.push(made);
  }
  const statements = built.flatMap((one) => ('statements' in one ? one.statements : []));
  const { wordings = [], valueWordings = [] } = input;
  const against = ownWordsProblem(statements, wordings, valueWordings, plan.catalogue);
  if (against !== undefined) return asText(input, against);
  return {
    drafts: built.flatMap((one, at) => drafts(input, one, found[at] ?? place, at === 0)),
    issues: [],
    blank: [],
  };
}

const withdrawn: Problem = {
  problem: 'withdrawn-value',
  facts: { reason: 'status' },
};

function meaningOf({ planned, value, status }: TargetInput, plan: Plan): Meaning | undefined {
  if (isState(status)) return status;
  const word = contentOf(value);
  return planned.words.get(word) ?? plan.noValue.get(word);
}

function builtFrom(
  input: TargetInput,
  place: Place,
  meaning: Meaning | undefined,
  plan: Plan,
): Built {
  const { planned, value, roles } = input;
  const conversion = targetConversion(planned.target);
  const isNote = conversion.verbatim === true;
  if (meaning === undefined && !isNote && looksDamaged(value.text)) {
    return {
      problem: 'damaged-value',
      facts: { reason: 'value' },
    };
  }
  const reading: Reading = {
    text: isNote ? printable(contentOf(value)) : contentOf(value).trim(),
    meaning,
    ...place,
    ...(roles.unit !== undefined && { unitText: roles.unit }),
    ...(roles.at !== undefined && { at: roles.at }),
  };
  return conversion.build(planned, reading, plan);
}

/** A value such as "L 4.5" in a field of the right side tells more than that it is not a number. */
function sideConflict(value: Field, place: Place, plan: Plan): Problem | undefined {
  const [first, ...rest] = contentOf(value)
    .trim()
    .split(/[\s:.,;]+/);
  if (first === undefined || rest.length === 0 || place.side === undefined) return undefined;
  const meaning = plan.sides.get(first);
  const side = typeof meaning === 'object' ? meaning.side : meaning;
  if (side === undefined || side === place.side) return undefined;
  return { problem: 'side-conflict', facts: { reason: 'value' } };
}

function drafts(
  input: TargetInput,
  built: Exclude<Built, Problem>,
  place: Place,
  firstPlace: boolean,
): (Draft | TextDraft)[] {
  const { value, beside, notes, extras, status } = input;
  const group = input.roles.group === undefined ? {} : { group: input.roles.group };
  // A value beside a status that says there is none is told as text.
  const spare = isState(status) && !isBlank(value) ? [value, ...extras] : extras;
  const told = [...notes, ...spare];
  const stated = [...new Set([value, ...beside])].filter((field) => !told.includes(field));
  const fallback = (): TextDraft => textDraft(input, place);
  if ('attribute' in built) {
    const rest = firstPlace ? told.map((field): TextDraft => tell(field, place)) : [];
    return [
      { content: { attribute: built.attribute }, fields: stated, told: [], fallback, ...group },
      ...rest,
    ];
  }
  const words = noteText(notes, spare);
  if ('condition' in built) {
    const condition = { ...built.condition, ...(words !== undefined && { note: words }) };
    return [{ content: { condition }, fields: stated, told, fallback }];
  }
  return built.statements.map((statement): Draft => {
    const noted: Unkeyed = words === undefined ? statement : withNote(statement, words);
    // What its target leaves open the statement says: the region of a measure.
    const { region } = { region: place.region, ...statement };
    const inWords = (): TextDraft =>
      textDraft(input, { ...place, ...(region !== undefined && { region }) });
    return { content: { statement: noted }, fields: stated, told, fallback: inWords, ...group };
  });
}

function withNote(statement: Unkeyed, words: string): Unkeyed {
  return { ...statement, note: words };
}

function noteText(notes: readonly Field[], extras: readonly Field[]): string | undefined {
  const lines = [
    ...notes.map(contentOf),
    ...extras.map((field) => `${field.name}: ${contentOf(field)}`),
  ];
  return lines.length === 0 ? undefined : printable(lines.join('\n'));
}

function tell(field: Field, place: Place): TextDraft {
  return {
    text: printable(`${field.name}: ${contentOf(field)}`),
    name: field.name,
    fields: [field],
    ...at(place),
  };
}

function at({ region, side }: Place): Place {
  return { ...(region !== undefined && { region }), ...(side !== undefined && { side }) };
}

function textDraft(input: TargetInput, place: Place): TextDraft {
  const { value, beside, notes, extras, text, name, planned } = input;
  const region = place.region ?? ('region' in planned.target ? planned.target.region : undefined);
  const fields = [...new Set([value, ...beside, ...notes, ...extras])];
  return {
    text: text(),
    name,
    fields,
    ...at({ ...place, ...(region !== undefined && { region }) }),
  };
}

function asText(input: TargetInput, problem?: Problem, place: Place = {}): TargetResult {
  const issues = problem === undefined ? [] : [problemIssue(input, problem)];
  return { drafts: [textDraft(input, place)], issues, blank: [] };
}

function problemIssue({ value, name }: TargetInput, { problem, facts }: Problem): Issue {
  return fieldIssue(problem, name, value, facts);
}

/** An issue about a field whose text is kept, so that nothing is lost. */
export function fieldIssue<Code extends ConversionCode>(
  code: Code,
  name: string,
  field: Field,
  facts: ConversionFacts<Code>,
): Issue {
  return issue(code, [name], facts, { severity: 'warning', source: field.at });
}

/** The mapping says that this value says nothing. Words beside it are still kept. */
function silence({ value, beside, notes, extras }: TargetInput, place: Place): TargetResult {
  const told = [...notes, ...extras];
  const silent = [value, ...beside].filter((field) => !told.includes(field));
  return { drafts: told.map((field) => tell(field, place)), issues: [], blank: silent };
}

function blank(input: TargetInput, place: Place): TargetResult {
  const found = issue(
    'blank-field',
    [input.name],
    { reason: 'unstated' },
    {
      severity: 'information',
      source: input.value.at,
    },
  );
  if (input.isItem) return { drafts: [textDraft(input, place)], issues: [found], blank: [] };
  return { ...silence(input, place), issues: [found] };
}
