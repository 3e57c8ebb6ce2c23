import { partIdentifier, partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { DATA_OPERATION, PARTICIPANT_TYPE } from '../../fhir/names/systems.ts';
import { dataOperation } from '../../fhir/record-status.ts';
import { purposeOf, signatureElement } from '../../fhir/signature.ts';
import type { RecordEvent } from '../../model/record-event.ts';
import { hl7Display } from '../../terminology/published/hl7.ts';
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
import { claimReference, claimReferences, targetName, targetOf } from '../bundle/reference.ts';
import { claimCodings, ownTable } from '../observation/concept.ts';
import { filled } from '../observation/values.ts';
import type { ExamReading } from '../reading.ts';
import { keyNamed } from './prompts.ts';

/** The steps in the life of the record, from the Provenance resources of its report, in their order. */
export function readHistory(reading: ExamReading, report: Entry): RecordEvent[] {
  return reading.entries
    .ofType('Provenance')
    .flatMap((entry) => readEvent(reading, report, entry) ?? [])
    .sort((a, b) => a.version - b.version);
}

function readEvent(reading: ExamReading, report: Entry, entry: Entry): RecordEvent | undefined {
  const { resource } = entry;
  return resource.claims.attempt(() => {
    const about = lookAtList(resource, 'target').some((reference) =>
      leadsTo(reading, reference, entry, report),
    );
    const activity = innerOf(resource, 'activity');
    const action = activity && actionOf(reading, activity);
    if (!about || action === undefined) return undefined;
    const entities = innersOf(resource, 'entity');
    const version = versionOf(reading, entities);
    claimFrame(reading, entry, resourceName.event(version ?? 0));
    const by = agentOf(reading, entry, action);
    const at = instantOf(resource, 'recorded');
    if (by === undefined || at === undefined || version === undefined) return undefined;
    const changed = filled(targetsOf(reading, entry, report));
    const withdrawn = filled(withdrawnOf(reading, entities));
    const reason = reasonOf(resource);
    readSignatures(reading, entry, { version, by });
    return {
      action,
      by,
      at,
      ...(reason !== undefined && { reason }),
      version,
      ...(changed && { changed }),
      ...(withdrawn && { withdrawn }),
    };
  });
}

function leadsTo(reading: ExamReading, reference: Element, from: Entry, report: Entry): boolean {
  const target = targetOf(reading, reference, from);
  return target !== undefined && targetName(target) === targetName(report);
}

/** The statements that the step changed; the report itself is its first target. */
function targetsOf(reading: ExamReading, entry: Entry, report: Entry): string[] {
  const found = claimReferences(reading, entry.resource, 'target', (reference) =>
    leadsTo(reading, reference, entry, report)
      ? ''
      : (reading.statementOf(reference, entry) ?? keyNamed(reading, reference)),
  );
  return found.filter((key) => key !== '');
}

function actionOf(reading: ExamReading, activity: Element): RecordEvent['action'] | undefined {
  const code = ownTable(reading, activity, ['values'])?.code;
  const action = actions.find((known) => code === `event.${known}`);
  if (code === undefined || action === undefined) return undefined;
  const operation = dataOperation[action];
  const display = reading.catalogue.values.get(code)?.display;
  claimCodings(activity, [
    { system: reading.lookup.systemOf('values', code), code, display },
    { system: DATA_OPERATION, code: operation, display: hl7Display(DATA_OPERATION, operation) },
  ]);
  claimEqual(activity, 'text', display);
  return action;
}

const actions = Object.keys(dataOperation) as RecordEvent['action'][]; // keys of a total record

function agentOf(
  reading: ExamReading,
  entry: Entry,
  action: RecordEvent['action'],
): string | undefined {
  const [agent] = innersOf(entry.resource, 'agent');
  const who = agent && lookAt(agent, 'who');
  const key = who && reading.people.examinerOf(who, entry);
  if (agent === undefined || key === undefined) return undefined;
  claimReference(reading, agent, 'who');
  const code = action === 'sign' ? 'verifier' : 'author';
  const display = hl7Display(PARTICIPANT_TYPE, code);
  claimEqual(agent, 'type', { coding: [{ system: PARTICIPANT_TYPE, code, display }] });
  return key;
}

/** The statements that the step took out. */
function withdrawnOf(reading: ExamReading, entities: readonly Element[]): string[] {
  return entities.flatMap((entity) => {
    if (peek(entity, 'role') !== 'removal') return [];
    const what = innerOf(entity, 'what');
    const key = what && keyNamed(reading, what);
    if (key === undefined) return [];
    claimEqual(entity, 'role', 'removal');
    return [key];
  });
}

/** One more than the version that the step replaced; the first step replaced none. */
function versionOf(reading: ExamReading, entities: readonly Element[]): number | undefined {
  const entity = entities.find((one) => peek(one, 'role') === 'revision');
  if (entity === undefined) return 1;
  const what = innerOf(entity, 'what');
  const identifier = what && lookAt(what, 'identifier');
  const value = identifier && peek(identifier, 'value');
  const before = typeof value === 'string' ? Number(value.slice(value.lastIndexOf('|') + 1)) : 0;
  if (what === undefined || !Number.isInteger(before) || before < 1) return undefined;
  const named = partIdentifier(reading.systems.exam, reading.id, partName.version(before));
  if (!claimEqual(what, 'identifier', named)) return undefined;
  claimEqual(entity, 'role', 'revision');
  return before + 1;
}

/** `reason` in R4, `authorization` in R5. */
function reasonOf(resource: Element): string | undefined {
  const [r4] = innersOf(resource, 'reason');
  const [r5] = innersOf(resource, 'authorization');
  const concept = r4 ?? (r5 && innerOf(r5, 'concept'));
  return concept && textOf(concept, 'text');
}

/** Signatures of the form that an export writes; others are left over. */
function readSignatures(
  reading: ExamReading,
  entry: Entry,
  { version, by }: Pick<RecordEvent, 'version' | 'by'>,
): void {
  for (const element of innersOf(entry.resource, 'signature')) {
    const [coding] = lookAtList(element, 'type');
    const purpose = coding && purposeOf(peek(coding, 'code'));
    const who = lookAt(element, 'who');
    const [when, format, data] = ['when', 'sigFormat', 'data'].map((name) => peek(element, name));
    if (purpose === undefined || who === undefined) continue;
    if (typeof when !== 'string' || typeof format !== 'string' || typeof data !== 'string')
      continue;
    if (reading.people.examinerOf(who, entry) !== by) continue;
    const expected = signatureElement({ purpose, when, format, data }, {});
    for (const name of ['type', 'when', 'targetFormat', 'sigFormat', 'data'] as const) {
      claimEqual(element, name, expected[name]);
    }
    claimReference(reading, element, 'who');
    reading.signatures.push({ version, purpose, when, format, data });
  }
}
