import {
  builtInCatalogue,
  type Exam,
  finishExam,
  hasErrors,
  issueText,
  ruleSets,
  startExam,
} from '../../../src/index.ts';
import { readPrior } from '../exam/prior.ts';
import { formOf } from '../exam/questions.ts';
import { type Before, begin, now, type Saved, startOf } from '../exam/saved.ts';
import { element, labelled, say } from './element.ts';

/** Who is examined by which protocol. Nothing of it is filled in beforehand. */
export function startPage(begun: (saved: Saved) => void): HTMLElement {
  const protocol = element(
    'select',
    { id: 'protocol', required: true },
    new Option('Choose a protocol', ''),
    ...[...builtInCatalogue.protocols.values()].map((row) => new Option(row.display, row.code)),
  );
  const person = labelled('Name of the person', { id: 'person', required: true });
  const number = labelled('Number of the person in this clinic', { id: 'number' });
  const born = labelled('Born (YYYY-MM-DD)', {
    id: 'born',
    pattern: '[0-9]{4}(-[0-9]{2}(-[0-9]{2})?)?',
    inputmode: 'numeric',
  });
  const examiner = labelled('Name of the examiner', { id: 'examiner', required: true });
  const role = labelled('Role of the examiner', { id: 'role' });
  const prior = priorPart();
  const chosen = ruleSets.map(({ id, title, publisher }) => {
    const input = element('input', { type: 'checkbox', value: id });
    const label = element('label', { class: 'option' }, input, `${title} (${publisher})`);
    return { id, input, label };
  });
  const wrong = element('p', { class: 'error', role: 'alert' });
  const form = element(
    'form',
    { id: 'start', class: 'start' },
    element('label', { class: 'line' }, 'Protocol', protocol),
    person.node,
    number.node,
    born.node,
    examiner.node,
    role.node,
    prior.node,
    element(
      'details',
      {},
      element('summary', {}, 'Rule sets for prompts'),
      element(
        'fieldset',
        {},
        element('legend', {}, 'Prompts come only from what is chosen here'),
        ...chosen.map(({ label }) => label),
      ),
    ),
    wrong,
    element('button', { type: 'submit', class: 'main' }, 'Begin the examination'),
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const head = {
      id: `exam-${crypto.randomUUID()}`,
      protocol: formOf(protocol.value).protocol,
      person: person.input.value.trim(),
      born: born.input.value.trim(),
      number: number.input.value.trim(),
      examiner: examiner.input.value.trim(),
      role: role.input.value.trim(),
      started: now(),
    };
    const sets = chosen.filter(({ input }) => input.checked).map(({ id }) => id);
    const saved = begin(head, sets, prior.before());
    const { issues } = finishExam(startExam(startOf(saved)), 'draft');
    say(
      wrong,
      issues
        .filter(({ severity }) => severity === 'error')
        .map(issueText)
        .join('\n'),
    );
    if (!hasErrors(issues)) begun(saved);
  });
  return element('div', {}, element('h2', { tabindex: '-1' }, 'Begin'), form);
}

/** The exam before, from a file that is read in this page alone. */
function priorPart(): { readonly node: HTMLElement; readonly before: () => Before | undefined } {
  let read: Exam | undefined;
  const said = element('p', { role: 'status' });
  const file = element('input', { type: 'file', id: 'prior', accept: '.json,application/json' });
  const assumed = element('input', { type: 'checkbox', id: 'assumed' });
  file.addEventListener('change', async () => {
    read = undefined;
    const text = await file.files?.[0]?.text();
    if (text === undefined) return say(said, '');
    const outcome = readPrior(text);
    if (outcome.ok) read = outcome.value;
    say(
      said,
      read === undefined
        ? `Not taken: ${outcome.issues[0]?.message ?? 'no exam'}.`
        : `Exam of ${read.performed.start.slice(0, 10)} is shown beside the questions, as of then.`,
    );
  });
  const node = element(
    'div',
    { class: 'prior' },
    element('label', { class: 'line' }, 'Exam before (file, JSON), where there is one', file),
    element(
      'label',
      { class: 'option' },
      assumed,
      'It is of the same person, although the two records do not show it',
    ),
    said,
  );
  return {
    node,
    before: () => (read === undefined ? undefined : { exam: read, isAssumed: assumed.checked }),
  };
}
