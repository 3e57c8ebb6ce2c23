import { entered, finishExamOrThrow, issueText, startExam } from '../src/index.ts';

let draft = startExam({
  id: 'quay-2025-18',
  subject: { reference: 'Patient/417' },
  examiners: [{ key: 'nurse', role: 'harbour nurse' }],
  performed: { start: '2025-05-06T09:00:00+02:00' },
  recorded: '2025-05-06T09:20:00+02:00',
  protocol: { id: 'skin-lesion', version: '1.0.0' },
});
const fields: Record<string, string>[] = [
  { sign: 'skin-lesion', region: 'temple', side: 'right', border: 'irregular', note: '' },
  { sign: 'skin-lesion', region: 'tempel', side: 'right', border: 'irregular' },
  { sign: 'skin-lesion', region: 'cheek-malar', side: '', border: 'iregular' },
];
for (const { sign = '', region, side, border, note } of fields) {
  const outcome = entered(draft, {
    kind: 'finding',
    finding: sign,
    presence: 'present',
    region,
    side,
    attributes: { 'lesion-border': border },
    note,
  });
  if (outcome.ok) draft = outcome.value;
  else for (const issue of outcome.issues) console.log(issueText(issue));
}
console.log(finishExamOrThrow(draft, 'preliminary').statements.length);
