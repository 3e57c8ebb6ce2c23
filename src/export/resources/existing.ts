import type { Reference } from 'fhir/r4.js';
import { type Issue, issue } from '../../issue.ts';
import type { Exam } from '../../model/exam.ts';
import type { HumanName } from '../../model/people.ts';
import type { Identifier } from '../../model/primitive.ts';
import type { Path } from '../../path.ts';

/** A person, place or thing that the exam describes, or that the receiver holds already. */
interface Stated {
  readonly reference?: string;
  readonly identifiers?: readonly Identifier[];
  readonly name?: HumanName | string;
}

/** A reference to what the receiver holds, with the little that a reference can say of it. */
export function existingReference(stated: Stated | undefined): Reference | undefined {
  if (stated?.reference === undefined) return undefined;
  const identifier = stated.identifiers?.[0];
  const display = typeof stated.name === 'object' ? stated.name.text : stated.name;
  return {
    reference: stated.reference,
    ...(identifier && { identifier: { ...identifier } }),
    ...(display !== undefined && { display }),
  };
}

/** What is stated of someone or something beside a reference, and does not fit into the reference. */
export function leftBehind({ subject, examiners, organization, encounter }: Exam): Issue[] {
  const found: Path[] = [];
  const look = (stated: Stated | undefined, path: Path, identifiersKept = 1): void => {
    if (stated?.reference === undefined) return;
    if ((stated.identifiers?.length ?? 0) > identifiersKept) found.push([...path, 'identifiers']);
    if (typeof stated.name !== 'object') return;
    const { text: _, ...parts } = stated.name;
    for (const part of Object.keys(parts)) found.push([...path, 'name', part]);
  };
  look(subject, ['subject']);
  if (subject.reference !== undefined) {
    if (subject.birthDate !== undefined) found.push(['subject', 'birthDate']);
    if (subject.gender !== undefined) found.push(['subject', 'gender']);
  }
  examiners.forEach((examiner, at) => {
    // Without a role resource the identifier of the reference is the examiner's key.
    look(examiner, ['examiners', at], examiner.role === undefined ? 0 : 1);
  });
  look(organization, ['organization']);
  look(encounter, ['encounter']);
  if (encounter?.reference !== undefined && encounter.class !== undefined) {
    found.push(['encounter', 'class']);
  }
  return found.map((path) =>
    issue(
      'not-exported',
      path,
      { reason: 'held' },
      {
        severity: 'information',
      },
    ),
  );
}
