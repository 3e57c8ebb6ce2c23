import { issue } from '../../issues/issue.ts';
import type { Note } from '../../model/statement.ts';
import { innersOf, peek, textOf } from '../bundle/element.ts';
import type { Entry } from '../bundle/entries.ts';
import { codingsOf, filled } from '../observation/values.ts';
import type { ExamReading } from '../reading.ts';

/** The words of a conclusion whose level of concern is not told, which is not ours to guess. */
export function conclusionNote(reading: ExamReading, report: Entry): Note | undefined {
  const { resource } = report;
  if (peek(resource, 'conclusion') === reading.language.texts.withdrawn) return undefined;
  const text = textOf(resource, 'conclusion');
  if (text === undefined) return undefined;
  reading.issues.push(
    issue(
      'unread-statement',
      [...report.path, 'conclusion'],
      { reason: 'conclusion' },
      {
        severity: 'warning',
      },
    ),
  );
  const codings = filled(
    innersOf(resource, 'conclusionCode').flatMap((concept) =>
      codingsOf(innersOf(concept, 'coding')),
    ),
  );
  return { key: 'report/conclusion', kind: 'note', text, ...(codings && { codings }) };
}
