import { type Exam, issueText } from '../../../src/index.ts';
import { toHtml } from '../../../src/report/index.ts';
import { bundleOf } from '../exam/finish.ts';
import { button, download, element } from './element.ts';
import { reportFrame } from './review.ts';

/** The signed exam: report and bundle, both made and checked in this page. */
export function signedPage(exam: Exam): HTMLElement {
  const { text, valid, resources, issues } = bundleOf(exam);
  const save = button(
    'Save the bundle (JSON)',
    () => download(`${exam.id}.json`, 'application/fhir+json', text),
    { id: 'save-bundle', disabled: !valid },
  );
  const saveReport = button(
    'Save the report (HTML)',
    () => download(`${exam.id}.html`, 'text/html', toHtml(exam)),
    { id: 'save-report' },
  );
  const saveExam = button(
    'Save the exam (JSON), to be shown beside the next one',
    () => download(`${exam.id}.exam.json`, 'application/json', JSON.stringify(exam, null, 1)),
    { id: 'save-exam' },
  );
  return element(
    'div',
    { class: 'signed' },
    element('h2', { tabindex: '-1' }, 'Signed'),
    element(
      'p',
      { role: 'status', id: 'validity' },
      valid ? `Valid FHIR R4: ${resources} resources` : 'The bundle is not valid and is not saved',
    ),
    element('ul', {}, ...issues.map((one) => element('li', {}, issueText(one)))),
    element('div', { class: 'actions' }, save, saveReport, saveExam),
    reportFrame(exam),
    element(
      'details',
      {},
      element('summary', {}, 'Bundle'),
      element('label', { class: 'line' }, 'As JSON', bundleText(text)),
    ),
  );
}

function bundleText(text: string): HTMLTextAreaElement {
  const area = element('textarea', { id: 'bundle', rows: '12', readonly: true });
  area.value = text;
  return area;
}
