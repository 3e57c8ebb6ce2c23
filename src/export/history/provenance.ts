import type { Coding, Provenance, ProvenanceEntity } from 'fhir/r4.js';
import { partIdentifier, partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { DATA_OPERATION, PARTICIPANT_TYPE } from '../../fhir/names/systems.ts';
import { dataOperation } from '../../fhir/record-status.ts';
import { signatureElement } from '../../fhir/signature.ts';
import type { RecordEvent } from '../../model/record-event.ts';
import { hl7Display } from '../../terminology/published/hl7.ts';
import type { ExportContext } from '../context.ts';
import { summary } from '../resources/narrative.ts';
import { statementReference } from '../resources/prompts.ts';

/** Who made a step in the life of the record, when and why. What it replaced or took out is named as entity. */
export function provenanceResource(context: ExportContext, event: RecordEvent): Provenance {
  const { coder } = context;
  const code = dataOperation[event.action];
  const verify = event.action === 'sign';
  const agent: Coding = participant(verify ? 'verifier' : 'author');
  return {
    resourceType: 'Provenance',
    id: context.id(resourceName.event(event.version)),
    ...summary(context, [coder.display('values', `event.${event.action}`), event.at, event.reason]),
    target: [
      context.reference(resourceName.report),
      ...(event.changed ?? []).map((key) => statementReference(context, key)),
    ],
    recorded: event.at,
    ...(event.reason !== undefined && { reason: [{ text: event.reason }] }),
    activity: {
      coding: [
        ...coder.codings('values', `event.${event.action}`),
        { system: DATA_OPERATION, code, display: hl7Display(DATA_OPERATION, code) },
      ],
      text: coder.display('values', `event.${event.action}`),
    },
    agent: [{ type: { coding: [agent] }, who: context.performer(event.by) }],
    ...entities(context, event),
    ...signed(context, event),
  };
}

/** What the step replaced, and the statements that it took out. */
function entities(
  { systems, exam, statementIdentifier }: ExportContext,
  { version, withdrawn = [] }: RecordEvent,
): Partial<Pick<Provenance, 'entity'>> {
  const before = partIdentifier(systems.exam, exam.id, partName.version(version - 1));
  const entity: ProvenanceEntity[] = [
    ...(version > 1 ? [{ role: 'revision' as const, what: { identifier: before } }] : []),
    ...withdrawn.map((key) => ({
      role: 'removal' as const,
      what: { identifier: statementIdentifier(key) },
    })),
  ];
  return entity.length > 0 ? { entity } : {};
}

function participant(code: 'author' | 'verifier'): Coding {
  return { system: PARTICIPANT_TYPE, code, display: hl7Display(PARTICIPANT_TYPE, code) };
}

function signed(
  { signatures, performer }: ExportContext,
  { version, by }: RecordEvent,
): Partial<Pick<Provenance, 'signature'>> {
  const made = signatures.filter((one) => one.version === version);
  if (made.length === 0) return {};
  return { signature: made.map((one) => signatureElement(one, performer(by))) };
}
