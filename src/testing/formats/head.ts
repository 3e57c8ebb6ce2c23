import type { Exam } from '../../model/exam.ts';
import type { HumanName, Subject } from '../../model/people.ts';

/** Systems of the numbers that the invented export knows. */
export const numberSystems = {
  worker: 'https://clinic.example/workers',
  other: 'https://clinic.example/workers/1',
  examiner: 'https://clinic.example/staff',
} as const;

/** References to patients of the receiver begin with this. */
export const PATIENT_PREFIX = 'Patient/';

/** Head of an exam as texts; times in the form of the model. */
export interface Head {
  readonly id: string;
  readonly status: string;
  readonly worker?: string | undefined;
  readonly otherNumber?: string | undefined;
  readonly patient?: string | undefined;
  readonly family?: string | undefined;
  readonly given?: string | undefined;
  readonly name?: string | undefined;
  readonly born?: string | undefined;
  readonly sex?: string | undefined;
  readonly start: string;
  readonly end?: string | undefined;
  readonly recorded: string;
  readonly examiner?: string | undefined;
  readonly examinerNumber?: string | undefined;
  readonly indication?: string | undefined;
  readonly conclusion?: string | undefined;
  readonly concern?: string | undefined;
}

export function headOf(exam: Exam): Head {
  const { subject, examiners, performed, conclusion } = exam;
  const [examiner] = examiners;
  return {
    id: exam.id,
    status: exam.status,
    worker: numberOf(subject, numberSystems.worker),
    otherNumber: numberOf(subject, numberSystems.other),
    patient: subject.reference?.startsWith(PATIENT_PREFIX)
      ? subject.reference.slice(PATIENT_PREFIX.length)
      : undefined,
    family: subject.name?.family,
    given: subject.name?.given?.join(' '),
    name: subject.name?.text,
    born: subject.birthDate,
    sex: subject.gender,
    start: performed.start,
    end: performed.end,
    recorded: exam.recorded,
    examiner: nameText(examiner.name),
    examinerNumber: numberOf(examiner, numberSystems.examiner),
    indication: exam.indication?.text,
    conclusion: conclusion?.text,
    concern: conclusion?.concern,
  };
}

function numberOf({ identifiers }: Pick<Subject, 'identifiers'>, of: string): string | undefined {
  return identifiers?.find(({ system }) => system === of)?.value;
}

/** A name as one text. */
export function nameText(name: HumanName | undefined): string | undefined {
  if (name === undefined) return undefined;
  const parts = [name.prefix, ...(name.given ?? []), name.family];
  const text = name.text ?? parts.filter((part) => part !== undefined).join(' ');
  return text === '' ? undefined : text;
}
