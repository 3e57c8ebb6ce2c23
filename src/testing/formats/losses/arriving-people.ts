import type { Exam } from '../../../model/exam.ts';
import type { Examiner, HumanName, Subject } from '../../../model/people.ts';
import type { Identifier } from '../../../model/primitive.ts';
import { nameText, numberSystems, PATIENT_PREFIX } from '../head.ts';
import { UNNAMED_EXAMINER } from '../legacy-mapping.ts';
import type { Arriving } from './loss-work.ts';

export function arrivingSubject(subject: Subject, work: Arriving): Subject {
  const { reference, identifiers = [], name, birthDate, gender } = subject;
  const numbers = identifiers.flatMap((one) => arrivingNumber(one, work));
  const [first, ...more] = numbers;
  const known = reference?.startsWith(PATIENT_PREFIX) === true;
  if (reference !== undefined && !known) work.lost('other-numbers');
  const arrived = name && arrivingName(name, work);
  const told = !(work.format === 'cda' && gender === 'unknown');
  if (!told) work.lost('gender-cda');
  return {
    ...(reference !== undefined && known && { reference }),
    ...(first !== undefined && { identifiers: [first, ...more] }),
    ...(arrived !== undefined && { name: arrived }),
    ...(birthDate !== undefined && { birthDate }),
    ...(gender !== undefined && told && { gender }),
  };
}

function arrivingNumber(given: Identifier, work: Arriving): Identifier[] {
  const { system } = given;
  if (system === numberSystems.other && work.format === 'cda') {
    work.lost('second-number-cda');
    return [];
  }
  if (system !== numberSystems.worker && system !== numberSystems.other) {
    work.lost('other-numbers');
    return [];
  }
  return [work.without('identifier', given)];
}

function arrivingName(given: HumanName, work: Arriving): HumanName | undefined {
  const { family, given: names, text } = work.without('name', given);
  const joined = names?.join(' ');
  if (names !== undefined && names.length > 1) work.lost('given-names');
  const parts = family !== undefined || joined !== undefined;
  const whole = !(work.format === 'cda' && parts && text !== undefined);
  if (!whole) work.lost('name-text-cda');
  if (!parts && text === undefined) return undefined;
  return {
    ...(family !== undefined && { family: work.head(family) }),
    ...(joined !== undefined && { given: [work.head(joined)] }),
    ...(text !== undefined && whole && { text: work.head(text) }),
  };
}

export function arrivingExaminer(examiners: Exam['examiners'], work: Arriving): Examiner {
  const [first] = examiners;
  const number = first.identifiers?.find(({ system }) => system === numberSystems.examiner);
  const name = nameText(first.name);
  work.lost('other-examiners');
  return {
    key: 'examiner',
    ...(number !== undefined && { identifiers: [work.without('identifier', number)] }),
    ...(name !== undefined && { name: { text: work.head(name) } }),
    ...(number === undefined && name === undefined && { name: { text: UNNAMED_EXAMINER } }),
  };
}
