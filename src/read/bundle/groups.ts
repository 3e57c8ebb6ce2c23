import { partName } from '../../fhir/names/part-names.ts';
import { claimFirstPerformer } from '../exam/instruments.ts';
import { ownCode, ownTable } from '../observation/concept.ts';
import { claimCommon, observe, ownTime } from '../observation/observation.ts';
import { type ExamReading, partNameOf } from '../reading.ts';
import { innerOf, lookAt } from './element.ts';
import type { Entry } from './entries.ts';
import { claimReferences, targetName, targetOf } from './reference.ts';

/** Observations of the exam that stand for a group of others, by the path of their resource. */
export type Groups = ReadonlyMap<string, Entry>;

/** Claims the groups of an exam, which follow from their members. */
export function claimGroups(reading: ExamReading, parts: ReadonlyMap<string, Entry>): Groups {
  const prefix = partName.group('');
  const groups = new Map<string, Entry>();
  for (const [name, entry] of parts) {
    if (entry.type !== 'Observation' || !name.startsWith(prefix)) continue;
    const observed = observe(reading, entry);
    const { resource } = entry;
    claimCommon(observed, name, { category: 'exam' });
    claimFirstPerformer(reading, entry);
    ownTime(observed);
    const concept = lookAt(resource, 'code');
    const own = concept && ownTable(reading, concept, ['sections', 'items']);
    if (own !== undefined) ownCode(reading, innerOf(resource, 'code'), own.table);
    claimReferences(reading, resource, 'hasMember', (reference) => {
      const target = targetOf(reading, reference, entry);
      const member = typeof target === 'object' ? target : undefined;
      return member && partNameOf(reading, member.resource);
    });
    groups.set(targetName(entry), entry);
  }
  return groups;
}
