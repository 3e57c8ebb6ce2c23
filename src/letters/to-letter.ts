import { failure, hasErrors, type Issue, issue, type Outcome, success } from '../issues/issue.ts';
import type { Exam } from '../model/exam.ts';
import { structureIssues } from '../model/schema-issues.ts';
import { createPage } from '../report/create-page.ts';
import { dayText } from '../report/dates.ts';
import { plainText } from '../report/html.ts';
import type { Page } from '../report/page.ts';
import { identityText, plainName } from '../report/parts/head.ts';
import { wordOf } from '../report/words/report-words.ts';
import { languageIssues } from '../terminology/languages/language-issues.ts';
import { toPractitioner, toSpecialist, type Writing } from './clinical.ts';
import { toEmployer } from './employer.ts';
import type { Letter, LetterOptions, LetterReader, LetterSection } from './letter.ts';
import { toPatient } from './patient.ts';
import { englishLetterWords } from './words/english.ts';

/**
 * Drafts a letter from an exam, in plain text by section and sentence, each sentence with what it
 * rests on. It holds nothing that the exam does not state. A person reads it over and signs it.
 *
 * @param exam An exam that `parseExam` accepts.
 * @param reader Who the letter is for.
 * @param options Language, settings of the checks, and what an employer may be told; see
 *   {@link LetterOptions}.
 * @returns The letter, with an issue of severity information for each statement left for a person
 *   to tell. It fails for a withdrawn record. Without the patient's consent an employer is told
 *   nothing but that the examination took place.
 * @example
 * const letter = orThrow('write the letter', toLetter(exam, 'specialist'));
 */
export function toLetter(
  exam: Exam,
  reader: LetterReader,
  options: LetterOptions = {},
): Outcome<Letter> {
  const misshapen = structureIssues(exam);
  if (misshapen.length > 0) return failure(misshapen);
  if (exam.status === 'entered-in-error') {
    return failure([issue('not-exported', ['status'], { reason: 'withdrawn-letter' })]);
  }
  const misfits =
    options.language === undefined ? [] : languageIssues(options.language, ['language']);
  if (misfits.length > 0) return failure(misfits);
  const { page, parts } = createPage(exam, options);
  const words = options.letterWords ?? englishLetterWords;
  const writing: Writing = { page, parts, words };
  const { sections, leftOut = [], issues = [] } = written(writing, reader, options);
  if (hasErrors(issues)) return failure(issues);
  const left = leftOut.map((statement) =>
    issue(
      'not-exported',
      ['statements'],
      { reason: 'left-to-tell' },
      { severity: 'information', statement },
    ),
  );
  const letter: Letter = {
    reader,
    language: options.language?.tag ?? 'en',
    title: words.title[reader],
    status: exam.status,
    running: runningText(page, reader),
    sections: sections.filter(({ sentences }) => sentences.length > 0),
    leftOut,
  };
  return success(letter, [...issues, ...left]);
}

/** An employer is told neither the date of birth nor the numbers of a patient. */
function runningText(page: Page, reader: LetterReader): string {
  const { exam, labels } = page;
  const who =
    reader === 'employer'
      ? (plainName(exam.subject.name) ?? labels.noName)
      : plainText(identityText(page));
  const day = `${labels.examined} ${dayText(exam.performed.start, labels.dates)}`;
  return `${wordOf(labels.statusShort, exam.status)} · ${who} · ${day}`;
}

function written(
  writing: Writing,
  reader: LetterReader,
  options: LetterOptions,
): {
  readonly sections: readonly LetterSection[];
  readonly leftOut?: readonly string[];
  readonly issues?: readonly Issue[];
} {
  switch (reader) {
    case 'specialist':
      return { sections: toSpecialist(writing) };
    case 'general-practitioner':
      return { sections: toPractitioner(writing) };
    case 'patient':
      return toPatient(writing);
    case 'employer':
      return toEmployer(writing, options);
  }
}
