import { observationStatus } from '../../fhir/record-status.ts';
import type { Exam } from '../../model/exam.ts';
import type { OptionalPart } from '../../model/optional-parts.ts';
import type { Key } from '../../model/primitive.ts';
import type { Note } from '../../model/statement.ts';
import type { Entry } from '../bundle/entries.ts';
import type { Chosen } from '../bundle/exam-id.ts';
import { claimGroups } from '../bundle/groups.ts';
import { inOrder, statementsOf } from '../bundle/members.ts';
import { findParts, type Parts } from '../bundle/parts.ts';
import { targetName, targetOf } from '../bundle/reference.ts';
import { withoutWithdrawn } from '../bundle/withdrawn.ts';
import { conclusionNote } from '../foreign/conclusion.ts';
import { headOfObservations } from '../foreign/head.ts';
import { createMeanings } from '../foreign/mapped.ts';
import { withPerformers } from '../foreign/people.ts';
import { readStatements } from '../observation/statements.ts';
import { filled } from '../observation/values.ts';
import type { Supplied } from '../options.ts';
import { readPeople } from '../people/people.ts';
import type { ExamReading, People, Reading } from '../reading.ts';
import type { Refused } from '../refused.ts';
import { readConclusion } from './assessment.ts';
import { readCircumstances } from './circumstances.ts';
import { claimDocument } from './composition.ts';
import { claimFiled } from './filed-document.ts';
import { readHistory } from './history.ts';
import { findInstruments, type InstrumentPlaces, readInstruments } from './instruments.ts';
import { readRequests } from './plan.ts';
import { readJudgements, readPrompts } from './prompts.ts';
import type { RoughExam } from './read-once.ts';
import { claimResults, type ReportHead, readReport } from './report.ts';

/** How a bundle is to be read. */
export interface ReadPlan {
  readonly chosen: Chosen;
  readonly bundleType: unknown;
  readonly supplied: Supplied;
  readonly refused: Refused;
}

/** The exam as far as the bundle tells it: its head first, then its people, then what was stated. */
export function readExam(reading: Reading, plan: ReadPlan): RoughExam {
  const { chosen, bundleType, supplied, refused } = plan;
  const { report } = chosen;
  const kept = (part: OptionalPart): boolean => !refused.parts.has(part);
  const ordered = inOrder(reading, report, bundleType);
  const parts = findParts(reading, withoutWithdrawn(reading, report, ordered));
  const observations = statementsOf(reading, report, parts, chosen.own);
  const keys = new Map([...observations].map(([key, entry]) => [targetName(entry), key]));
  const tools = findInstruments(reading, parts.byName);
  const head = headOf(reading, plan, observations);
  const people = peopleOf(reading, chosen, observations);
  const early = examReading(reading, { head, people, keys, tools });

  const history = filled(report && kept('history') ? readHistory(early, report) : []);
  const record = { ...head, ...(history && { history }) };
  const late = {
    ...early,
    statusOf: observationStatus({ ...record, status: head.status ?? 'final' }),
  };

  const meanings = createMeanings(reading.catalogue);
  const { list, origins } = readStatements(late, { meanings, observations, refused });
  const stated = new Set(list.map(({ key }) => key));
  for (const [name, key] of keys) if (!stated.has(key)) keys.delete(name);

  const { protocol, ...circumstances } = readCircumstances(late, parts.items, kept);
  const instruments = filled(kept('instruments') ? readInstruments(late, tools) : []);
  const assessed = report && readAssessment(late, { report, parts, bundleType, kept });
  const warnings = readWarnings(late, parts, kept);
  const statements = [...list, ...(assessed?.notes ?? [])];
  const groups = claimGroups(late, parts.byName);
  if (report !== undefined) claimResults(late, report, groups, statements);
  claimDocument(late, record);
  if (report !== undefined) claimFiled(late, parts.byName, report);
  const exam = {
    ...suppliedParts(supplied),
    format: 'face-neck-exam/1' as const,
    id: reading.id,
    ...headParts(head),
    ...peopleParts(people, kept),
    ...(protocol && { protocol }),
    ...circumstances,
    ...(instruments && { instruments }),
    statements,
    ...assessed?.conclusion,
    ...warnings,
    ...(history && { history }),
  };
  return { exam, origins, home: report?.path ?? [], own: chosen.own };
}

/** Prompts that were shown, and what was judged. */
function readWarnings(
  reading: ExamReading,
  parts: Parts,
  kept: (part: OptionalPart) => boolean,
): Pick<Exam, 'prompts' | 'judgements'> {
  const prompts = filled(kept('prompts') ? readPrompts(reading, parts.byName) : []);
  const judgements = filled(kept('judgements') ? readJudgements(reading, parts.items) : []);
  return { ...(prompts && { prompts }), ...(judgements && { judgements }) };
}

/** The conclusion, or its words as a note where its level of concern is not told. */
function readAssessment(
  reading: ExamReading,
  from: {
    readonly report: Entry;
    readonly parts: Parts;
    readonly bundleType: unknown;
    readonly kept: (part: OptionalPart) => boolean;
  },
): { readonly conclusion?: Pick<Exam, 'conclusion'>; readonly notes: readonly Note[] } {
  const { report, parts, bundleType, kept } = from;
  if (kept('conclusion')) {
    const requests = readRequests(reading, parts.byName, bundleType);
    const conclusion = readConclusion(reading, report, parts.items, requests);
    if (conclusion !== undefined) return { conclusion: { conclusion }, notes: [] };
  }
  const note = conclusionNote(reading, report);
  return { notes: note === undefined ? [] : [note] };
}

function headOf(
  reading: Reading,
  { chosen, supplied }: ReadPlan,
  observations: ReadonlyMap<Key, Entry>,
): ReportHead {
  const { report } = chosen;
  const told = report
    ? readReport(reading, report)
    : headOfObservations([...observations.values()]);
  return {
    status: told.status ?? supplied.status,
    performed: told.performed ?? supplied.performed,
    recorded: told.recorded ?? supplied.recorded,
  };
}

function peopleOf(
  reading: Reading,
  { report, own }: Chosen,
  observations: ReadonlyMap<Key, Entry>,
): People {
  const all = [...observations.values()];
  const people = readPeople(reading, report ?? all[0]);
  return own ? people : withPerformers(reading, people, all);
}

function examReading(
  reading: Reading,
  parts: {
    readonly head: ReportHead;
    readonly people: People;
    readonly keys: ReadonlyMap<string, Key>;
    readonly tools: InstrumentPlaces;
  },
): ExamReading {
  const { head, people, keys, tools } = parts;
  return {
    ...reading,
    ...head,
    people,
    statusOf: () => 'final',
    statementOf: (reference, from) => {
      const target = targetOf(reading, reference, from);
      return target === undefined ? undefined : keys.get(targetName(target));
    },
    instrumentOf: tools.keyOf,
  };
}

/** What may be supplied and no more, whatever else the object given holds. */
function suppliedParts({ status, subject, examiners, ...rest }: Supplied): Partial<Exam> {
  const { performed, recorded, protocol } = rest;
  return {
    ...headParts({ status, performed, recorded }),
    ...(subject && { subject }),
    ...(examiners && { examiners }),
    ...(protocol && { protocol }),
  };
}

function headParts({ status, performed, recorded }: ReportHead): Partial<Exam> {
  return {
    ...(status !== undefined && { status }),
    ...(performed && { performed }),
    ...(recorded !== undefined && { recorded }),
  };
}

function peopleParts(people: People, kept: (part: OptionalPart) => boolean): Partial<Exam> {
  const { subject, examiners, organization, encounter } = people;
  const stated = filled(examiners);
  return {
    ...(subject && { subject }),
    ...(stated && { examiners: stated }),
    ...(organization && kept('organization') && { organization }),
    ...(encounter && kept('encounter') && { encounter }),
  };
}
