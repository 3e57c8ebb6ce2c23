import { parseClinic } from '../../src/clinic/index.ts';
import { find } from '../../src/find/index.ts';
import { toFormDescription } from '../../src/forms/index.ts';
import {
  checkExam,
  entered,
  finishExam,
  fromBundle,
  issueText,
  orThrow,
  startExam,
  toBundle,
} from '../../src/index.ts';

// The text of a file; `fromJson` reads it.
const file = {
  format: 'face-neck-clinic/1',
  identity: 'https://harbour.example/records',
  catalogue: {
    system: 'https://harbour.example/codes',
    findings: [{ code: 'tar-stain', display: 'Tar stain', regions: ['forehead', 'chin'] }],
    protocols: [
      {
        code: 'tar-check',
        display: 'Check for tar',
        version: '1.0.0',
        regions: [{ region: 'forehead', methods: ['inspection'] }],
      },
    ],
  },
  words: { findings: { 'tar-stain': ['pitch mark'] } },
  export: { bundleType: 'transaction' },
  checks: { ruleSets: 'undecided' },
};
const { value: clinic, issues } = parseClinic(file);
for (const issue of issues) console.log(issue.path.join('.'), issue.severity);
if (clinic === undefined) throw new Error(issues.map(issueText).join('\n'));

const { catalogue } = clinic;
console.log(orThrow('make the form', toFormDescription('tar-check', clinic.form)).title);
console.log(find('pitch mark', clinic.find)[0]?.code);

const start = '2025-05-06T09:00:00+02:00';
const begun = startExam({
  id: 'quay-7',
  subject: { reference: 'Patient/417' },
  examiners: [{ key: 'nurse', role: 'harbour nurse' }],
  performed: { start },
  recorded: start,
  protocol: { id: 'tar-check', version: '1.0.0' },
});
const place = { region: 'forehead', side: 'left' };
const sign = { kind: 'finding', finding: 'tar-stain', presence: 'present', ...place };
const draft = orThrow('enter the sign', entered(begun, sign, { catalogue }));
const exam = orThrow('finish the exam', finishExam(draft, 'final', { catalogue }));

console.log(checkExam(exam, clinic.checks).coverage?.regions.gaps, 'gaps');
const bundle = orThrow('export', toBundle(exam, clinic.export));
console.log(bundle.type, orThrow('read', fromBundle(bundle, clinic.read)).id);

// Undecided is not forgotten: whatever is stored needs an identity.
const open = orThrow('read', parseClinic({ ...file, identity: 'undecided' }));
console.log(open.undecided.join(), toBundle(exam, open.export).ok);

const { issues: wrong } = parseClinic({ ...file, words: { findings: { 'tar-stian': ['x'] } } });
for (const issue of wrong.filter(({ severity }) => severity === 'error')) {
  console.log(issueText(issue));
}
