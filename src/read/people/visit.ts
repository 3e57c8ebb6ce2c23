import { encounterClass } from '../../fhir/encounter-class.ts';
import { identityOf } from '../../fhir/names/identity.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { ABSENT_EXTENSION, ACT_CODE } from '../../fhir/names/systems.ts';
import type { Encounter } from '../../model/people.ts';
import { hl7Display } from '../../terminology/published/hl7.ts';
import { claimEqual, type Element, innersOf, lookAtList } from '../bundle/element.ts';
import { claimFrame } from '../bundle/entries.ts';
import { ownCode, ownTable } from '../observation/concept.ts';
import { filled, identifierList, identifiersOf } from '../observation/values.ts';
import type { Reading } from '../reading.ts';
import { type Party, statedBy } from './party.ts';
import { claimShared, describedRecord } from './shared.ts';

/** Claims the reference at `name` where it leads to the subject or the organization of the exam. */
export type ClaimParty = (holder: Element, name: string, is: 'subject' | 'organization') => void;

export function encounterOf(reading: Reading, party: Party, claimParty: ClaimParty): Encounter {
  const { entry } = party;
  if (entry === undefined) return statedBy(party);
  claimFrame(reading, entry, resourceName.encounter);
  const { resource } = entry;
  const status = reading.filing.encounterStatus ?? 'unknown';
  claimEqual(resource, 'status', status);
  if (status === 'finished') claimEqual(resource, 'status', 'completed');
  claimExamType(reading, resource);
  claimParty(resource, 'subject', 'subject');
  claimParty(resource, 'serviceProvider', 'organization');
  const identifiers = filled(identifiersOf(identifierList(resource)));
  const kind = classOf(resource);
  const visit = {
    ...describedRecord(reading, entry, 'Encounter'),
    ...(identifiers && { identifiers }),
    ...(kind !== undefined && { class: kind }),
  };
  claimShared(entry, 'Encounter', identityOf(visit, reading.systems.exam));
  return visit;
}

/** What the visit was for is the exam. */
function claimExamType(reading: Reading, visit: Element): void {
  const [type] = lookAtList(visit, 'type');
  if (type !== undefined && ownTable(reading, type, ['items'])?.code === 'exam') {
    ownCode(reading, innersOf(visit, 'type')[0], 'items');
  }
}

/** One coding in R4, a list of concepts in R5. */
function classOf(encounter: Element): Encounter['class'] {
  for (const [name, code] of Object.entries(encounterClass)) {
    const coding = { system: ACT_CODE, code, display: hl7Display(ACT_CODE, code) };
    if (
      claimEqual(encounter, 'class', coding) ||
      claimEqual(encounter, 'class', [{ coding: [coding] }])
    ) {
      return name as Encounter['class']; // a key of the table of classes
    }
  }
  // R4 requires a class: an absent one is said by an extension.
  claimEqual(encounter, 'class', { extension: [{ url: ABSENT_EXTENSION, valueCode: 'unknown' }] });
  return undefined;
}
