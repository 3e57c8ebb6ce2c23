import { isLate, recallsOf } from '../../../audit/recall.ts';
import {
  calendarEnd,
  calendarHead,
  recallHead,
  recallRow,
  recallTask,
  recallTodo,
} from '../../../audit/write-recall.ts';
import { parseExam } from '../../../model/parse-exam.ts';
import { flagOption, textOption } from '../../arguments.ts';
import type { Command } from '../../command.ts';
import { eachDocument } from '../../input/each-document.ts';
import { withFolders } from '../../input/folders.ts';
import { parseOptionsOf } from '../../input/read-exam.ts';
import { clinicOption, issueOptions, outOption } from '../../shared-options.ts';

export const command: Command = {
  argumentsText: '[FILE|FOLDER ...]',
  description:
    'Lists what exams leave to be done: items of the plan that have a date, referrals, tests and reviews ' +
    'even without one, and reviews of the safety net, by whom, and what is overdue today. Whether it has ' +
    'been done is not known here. The list names people.',
  options: {
    to: {
      type: 'text',
      values: ['csv', 'ical', 'fhir'],
      fallback: 'csv',
      help: 'A table, a calendar (iCalendar to-dos), or FHIR R4 Tasks, one per line',
    },
    overdue: { type: 'flag', help: 'Only what is overdue, or urgent and without a date' },
    ...clinicOption,
    ...outOption,
    ...issueOptions,
  },
  examples: [
    ['recall exams/ --overdue', 'what should have been done by today'],
    ['recall year.ndjson --to ical --out recall.ics', 'for a calendar'],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const { io, options } = call;
    const parse = parseOptionsOf(call);
    const onlyOverdue = flagOption(options, 'overdue');
    const to = textOption(options, 'to') ?? 'csv';
    const now = io.now().toISOString();
    const files = await withFolders(io, call.files);
    const head = to === 'csv' ? recallHead : to === 'ical' ? calendarHead : '';
    let begun = false;
    return eachDocument(
      { ...call, files },
      {
        run: async (value) => {
          const { value: exam, issues } = parseExam(value, parse);
          if (exam === undefined) return { issues };
          const recalls = recallsOf(exam, now).filter((one) => !onlyOverdue || isLate(one));
          const text = recalls
            .map((one) =>
              to === 'csv'
                ? recallRow(one)
                : to === 'ical'
                  ? recallTodo(one, now)
                  : `${JSON.stringify(recallTask(one))}\n`,
            )
            .join('');
          const start = begun ? '' : head;
          begun = true;
          return { text: start + text, issues };
        },
        end: () => (to === 'ical' ? (begun ? '' : head) + calendarEnd : ''),
      },
    );
  },
};
