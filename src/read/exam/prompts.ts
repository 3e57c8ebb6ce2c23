import { partIdentifier, partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { issueStatus } from '../../fhir/record-status.ts';
import { judgements } from '../../model/judgements.ts';
import type { Key } from '../../model/primitive.ts';
import type { JudgementMade, PromptAnswer, ShownPrompt } from '../../model/prompts.ts';
import {
  claimEqual,
  type Element,
  innerOf,
  innersOf,
  instantOf,
  lookAt,
  lookAtList,
  peek,
  textOf,
} from '../bundle/element.ts';
import { claimFrame, type Entry } from '../bundle/entries.ts';
import { claimReference, claimReferences } from '../bundle/reference.ts';
import { ownCode, ownTable, ownValue, ownWords } from '../observation/concept.ts';
import type { Observed } from '../observation/observation.ts';
import { filled } from '../observation/values.ts';
import { type ExamReading, otherIdentifiers } from '../reading.ts';
import { claimItemCode, type ItemEntry, readItems } from './circumstances.ts';

/** The prompts of the exam from its DetectedIssue resources, in their order. */
export function readPrompts(
  reading: ExamReading,
  parts: ReadonlyMap<string, Entry>,
): ShownPrompt[] {
  const prefix = partName.prompt(0).slice(0, -1);
  return [...parts]
    .flatMap(([name, entry]) => {
      const at = Number(name.slice(prefix.length));
      const isPrompt = entry.type === 'DetectedIssue' && name.startsWith(prefix);
      return isPrompt && Number.isInteger(at) ? [{ at, entry }] : [];
    })
    .sort((one, other) => one.at - other.at)
    .flatMap(({ at, entry }) => readPrompt(reading, at, entry) ?? []);
}

const urgencies = ['prompt', 'urgent'] as const;
const answers = ['followed', 'dismissed'] as const;

function readPrompt(reading: ExamReading, at: number, entry: Entry): ShownPrompt | undefined {
  const { resource } = entry;
  return resource.claims.attempt(() => {
    claimIssue(reading, at, entry);
    const code = innerOf(resource, 'code');
    const stated = code && ownTable(reading, code, ['values'])?.code;
    const urgency = urgencies.find((known) => stated === `prompt.${known}`);
    if (code === undefined || urgency === undefined) return undefined;
    ownCode(reading, code, 'values');
    claimEqual(resource, 'severity', urgency === 'urgent' ? 'high' : 'moderate');
    // The name of the prompt is the text of its code, also where the two are equal.
    const prompt = peek(code, 'text');
    const shown = instantOf(resource, 'identifiedDateTime');
    const text = textOf(resource, 'detail');
    const rule = ruleOf(reading, resource);
    const about = filled(statementsAt(reading, entry, resource, 'implicated'));
    const answer = answerOf(reading, entry);
    if (typeof prompt !== 'string' || shown === undefined || text === undefined) return undefined;
    if (rule === undefined || answer === 'unread') return undefined;
    code.claims.claim(code.json, 'text');
    return {
      prompt,
      ...rule,
      urgency,
      text,
      shown,
      ...(about && { about }),
      ...(answer && { answer }),
    };
  });
}

function claimIssue(reading: ExamReading, at: number, entry: Entry): void {
  const { resource } = entry;
  claimFrame(reading, entry, resourceName.prompt(at));
  otherIdentifiers(reading, resource, partName.prompt(at));
  claimEqual(resource, 'status', issueStatus(reading.status ?? 'final'));
  for (const name of ['patient', 'subject']) {
    const subject = lookAt(resource, name);
    if (subject && reading.people.isSubject(subject, entry)) {
      claimReference(reading, resource, name);
    }
  }
}

function ruleOf(
  reading: ExamReading,
  resource: Element,
): Pick<ShownPrompt, 'ruleSet' | 'version' | 'source'> | undefined {
  const told = new Map<string, string>();
  for (const evidence of innersOf(resource, 'evidence')) {
    for (const concept of innersOf(evidence, 'code')) {
      const item = ownTable(reading, concept, ['items'])?.code;
      const text = peek(concept, 'text');
      if (item === undefined || typeof text !== 'string') continue;
      ownCode(reading, concept, 'items');
      concept.claims.claim(concept.json, 'text');
      told.set(item, text);
    }
  }
  const [ruleSet, version, source] = ['rule-set', 'rule-version', 'rule-source'].map((item) =>
    told.get(item),
  );
  if (ruleSet === undefined || version === undefined || source === undefined) return undefined;
  return { ruleSet, version, source };
}

function answerOf(reading: ExamReading, entry: Entry): PromptAnswer | undefined | 'unread' {
  const [mitigation, ...more] = innersOf(entry.resource, 'mitigation');
  if (mitigation === undefined) return undefined;
  const action = innerOf(mitigation, 'action');
  const stated = action && ownTable(reading, action, ['values'])?.code;
  const answer = answers.find((known) => stated === `prompt-answer.${known}`);
  const at = instantOf(mitigation, 'date');
  const author = lookAt(mitigation, 'author');
  const by = author && reading.people.examinerOf(author, entry);
  if (action === undefined || answer === undefined || more.length > 0) return 'unread';
  if (at === undefined || by === undefined) return 'unread';
  claimReference(reading, mitigation, 'author');
  ownCode(reading, action, 'values');
  const reason = ownWords(action, reading.catalogue.values.get(stated ?? '')?.display);
  return { answer, by, at, ...(reason !== undefined && { reason }) };
}

/** Statements of the exam, those that a step has withdrawn by their identifier alone. */
function statementsAt(reading: ExamReading, entry: Entry, holder: Element, name: string): Key[] {
  return claimReferences(
    reading,
    holder,
    name,
    (reference) => reading.statementOf(reference, entry) ?? keyNamed(reading, reference),
  );
}

/** Key of a statement that is named by its identifier alone, since it no longer stands in the exam. */
export function keyNamed(reading: ExamReading, reference: Element): Key | undefined {
  const identifier = lookAt(reference, 'identifier');
  const value = identifier && peek(identifier, 'value');
  const start = `${reading.id}|`;
  if (typeof value !== 'string' || !value.startsWith(start)) return undefined;
  const key = value.slice(start.length);
  const named = partIdentifier(reading.systems.statement, reading.id, key);
  return !key.includes('|') && claimEqual(reference, 'identifier', named) ? key : undefined;
}

/** What examiners judged of complaints and findings. */
export function readJudgements(reading: ExamReading, items: readonly ItemEntry[]): JudgementMade[] {
  return readItems(reading, items, 'judgement', readJudgement);
}

function readJudgement(observed: Observed): JudgementMade | undefined {
  const { reading, element, entry } = observed;
  claimItemCode(observed);
  const stated = ownValue(reading, innerOf(element, 'valueCodeableConcept'), 'judgement');
  const judgement = judgements.find((known) => known === stated);
  const at = instantOf(element, 'effectiveDateTime');
  const [performer] = lookAtList(element, 'performer');
  const by = performer && reading.people.examinerOf(performer, entry);
  const [statement] = statementsAt(reading, entry, element, 'derivedFrom');
  if (judgement === undefined || at === undefined || by === undefined) return undefined;
  if (statement === undefined) return undefined;
  claimReference(reading, element, 'performer', 0);
  const [note] = innersOf(element, 'note');
  const reason = note && textOf(note, 'text');
  return { statement, judgement, by, at, ...(reason !== undefined && { reason }) };
}
