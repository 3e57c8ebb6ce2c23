import { type Issue, issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import type { Exam } from '../../model/exam.ts';
import type { Identifier } from '../../model/primitive.ts';
import type { ExportContext } from '../context.ts';
import type { ExportOptions } from '../options.ts';
import { type MasterDataKind, masterDataMode, type Stated } from './master-data.ts';

/** What is stated of someone or something beside a reference, and does not fit into the reference. */
export function leftBehind({ exam, outside }: ExportContext): Issue[] {
  const { subject, examiners, organization, encounter } = exam;
  const found: Path[] = [];
  const look = (kind: MasterDataKind, stated: Stated | undefined, path: Path): boolean => {
    if (outside(kind, stated) === undefined) return false;
    if ((stated?.identifiers?.length ?? 0) > 1) found.push([...path, 'identifiers']);
    if (typeof stated?.name !== 'object') return true;
    const { text: _, ...parts } = stated.name;
    for (const part of Object.keys(parts)) found.push([...path, 'name', part]);
    return true;
  };
  if (look('patient', subject, ['subject'])) {
    if (subject.birthDate !== undefined) found.push(['subject', 'birthDate']);
    if (subject.gender !== undefined) found.push(['subject', 'gender']);
  }
  examiners.forEach((examiner, at) => {
    const path = ['examiners', at];
    const { role, identifiers = [] } = examiner;
    // Without a role resource the identifier of the reference is the examiner's key.
    const keyed = look('practitioner', examiner, path) && role === undefined;
    if (keyed && identifiers.length === 1 && !isInReference(examiner, identifiers)) {
      found.push([...path, 'identifiers']);
    }
  });
  look('organization', organization, ['organization']);
  if (look('encounter', encounter, ['encounter']) && encounter?.class !== undefined) {
    found.push(['encounter', 'class']);
  }
  return found.map((path) =>
    issue('not-exported', path, { reason: 'held' }, { severity: 'information' }),
  );
}

/** A reference by the identifier itself says it, but for its use. */
function isInReference({ reference }: Stated, [first]: readonly Identifier[]): boolean {
  return reference === undefined && first?.use === undefined;
}

/**
 * Whoever but the patient the receiver is said to hold, and nothing says which of its records is
 * meant. Whatever is stored names its patient.
 */
export function unnamedRecords(exam: Exam, { bundleType, masterData }: ExportOptions): Issue[] {
  if (bundleType !== 'transaction') return [];
  const look = (kind: MasterDataKind, stated: Stated | undefined, path: Path): Issue[] => {
    const named = stated?.reference !== undefined || stated?.identifiers !== undefined;
    if (stated === undefined || named) return [];
    if (masterDataMode(masterData, kind) !== 'reference') return [];
    return [issue('missing-property', path, { reason: 'held-record' })];
  };
  return [
    ...exam.examiners.flatMap((one, at) => look('practitioner', one, ['examiners', at])),
    ...look('organization', exam.organization, ['organization']),
    ...look('encounter', exam.encounter, ['encounter']),
    ...(exam.instruments ?? []).flatMap((one, at) => look('device', one, ['instruments', at])),
  ];
}
