import { partIdentifier, partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import type { RoughExam } from '../exam/read-once.ts';
import type { Reading } from '../reading.ts';
import { claimEqual, type Element, peek, textOf } from './element.ts';
import { claimProfiles } from './entries.ts';

/** Claims what the bundle itself says, where an export of the exam says the same. */
export function claimBundle(reading: Reading, bundle: Element, exam: RoughExam['exam']): void {
  const { systems, idOf } = reading;
  const last = exam.history?.at(-1);
  claimEqual(bundle, 'resourceType', 'Bundle');
  claimProfiles(bundle, reading);
  const type = peek(bundle, 'type');
  textOf(bundle, 'type');
  claimEqual(bundle, 'language', reading.language.tag);
  if (typeof type === 'string') claimEqual(bundle, 'id', idOf(resourceName.bundle(type)));
  claimEqual(bundle, 'timestamp', last?.at ?? exam.recorded);
  const document = `${partName.document}|${last?.version ?? 0}`;
  claimEqual(bundle, 'identifier', partIdentifier(systems.exam, exam.id, document));
}
