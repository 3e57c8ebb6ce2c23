import { finishExam, issueText, normal, notExamined, present, startExam } from '../../src/index.ts';
import { toHtml } from '../../src/report/index.ts';

let draft = startExam({
  id: 'quay-2025-17',
  subject: { reference: 'Patient/417' },
  examiners: [{ key: 'nurse', role: 'harbour nurse' }],
  performed: { start: '2025-05-06T08:00:00+02:00' },
  recorded: '2025-05-06T08:20:00+02:00',
  protocol: { id: 'skin-lesion', version: '1.0.0' },
});
draft = normal(draft, [{ region: 'forehead', side: 'both', methods: ['inspection'] }]);
draft = present(draft, 'naevus', { region: 'temple', side: 'right' });
draft = notExamined(draft, { region: 'eac', side: 'both' }, 'unable-pain');

const { value, issues } = finishExam(draft, 'preliminary');
for (const issue of issues) console.log(issueText(issue));
if (value !== undefined) console.log(toHtml(value).startsWith('<!DOCTYPE html>'));
