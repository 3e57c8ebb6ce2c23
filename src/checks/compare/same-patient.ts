import type { Exam } from '../../model/exam.ts';
import type { Subject } from '../../model/people.ts';

/**
 * Whether two exams are of one person, by reference and identifiers alone: names change and are
 * shared. `unknown` where the records have nothing in common to go by.
 */
export function samePatient(now: Exam, before: Exam): 'same' | 'different' | 'unknown' {
  const answers = [
    byReference(now.subject, before.subject),
    byIdentifier(now.subject, before.subject),
  ];
  if (answers.includes('different') || birthDatesDiffer(now.subject, before.subject)) {
    return 'different';
  }
  return answers.includes('same') ? 'same' : 'unknown';
}

function byReference(a: Subject, b: Subject): 'same' | 'different' | 'unknown' {
  if (a.reference === undefined || b.reference === undefined) return 'unknown';
  return a.reference === b.reference ? 'same' : 'different';
}

/** One shared identifier is enough; two numbers of one system that differ are two people. */
function byIdentifier(a: Subject, b: Subject): 'same' | 'different' | 'unknown' {
  let differs = false;
  for (const left of a.identifiers ?? []) {
    for (const right of b.identifiers ?? []) {
      if (left.system !== right.system) continue;
      if (left.value === right.value) return 'same';
      // A number that has been replaced says nothing.
      if (left.use !== 'old' && right.use !== 'old') differs = true;
    }
  }
  return differs ? 'different' : 'unknown';
}

/** True where the dates of birth cannot be of one person, as far as both are known. */
function birthDatesDiffer(a: Subject, b: Subject): boolean {
  if (a.birthDate === undefined || b.birthDate === undefined) return false;
  return !a.birthDate.startsWith(b.birthDate) && !b.birthDate.startsWith(a.birthDate);
}
