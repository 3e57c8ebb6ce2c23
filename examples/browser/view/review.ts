import { type Exam, issueText, type Prompt } from '../../../src/index.ts';
import { toHtml } from '../../../src/report/index.ts';
import type { Placed } from '../exam/asked.ts';
import { errorsOf, signed } from '../exam/finish.ts';
import { comparisonText, whyNotShown } from '../exam/prior.ts';
import { examinerKey, now } from '../exam/saved.ts';
import { button, element, placeHref, say } from './element.ts';
import type { PageView } from './region-page.ts';
import type { Store } from './store.ts';

/** At the end: what is to mend, prompts, what changed, the report so far, and the signature. */
export function review(store: Store, done: (exam: Exam) => void): PageView {
  const mend = element('section', { 'aria-label': 'Issues', class: 'issues' });
  const changes = element('section', { 'aria-label': 'Changes' });
  const report = element('div', {});
  const said = element('p', { role: 'status', id: 'sign-said' });
  const read = element('input', { type: 'checkbox', id: 'read-over' });
  const sign = element('button', { type: 'button', class: 'main', id: 'sign' });
  sign.setAttribute('aria-describedby', said.id);
  say(sign, `Sign off as ${store.saved.head.examiner}`);
  const show = button('Show the report so far', () => {
    report.replaceChildren(reportFrame(store.reading.draft.exam));
  });
  sign.addEventListener('click', () => {
    const outcome = signed(store.reading);
    if (outcome.ok) done(outcome.value);
    else say(said, outcome.issues.map(issueText).join('\n'));
  });
  const node = element(
    'div',
    { class: 'review' },
    mend,
    changes,
    show,
    report,
    element(
      'label',
      { class: 'option' },
      read,
      element('span', {}, 'I have read the exam as it stands, with what is still open'),
    ),
    said,
    sign,
  );
  const refresh = (): void => {
    const { reading } = store;
    const errors = errorsOf(reading);
    mend.replaceChildren(
      element('h3', {}, errors.length === 0 ? 'Nothing to mend' : `To mend: ${errors.length}`),
      element(
        'ul',
        {},
        ...reading.list.map(({ severity, text, page, field }) => {
          const at = reading.all.find(({ item }) => item.linkId === field);
          const place = at === undefined ? 'Exam' : whereText(at);
          const link = element('a', { href: placeHref(page, field) }, place);
          const word = severity === 'error' ? 'To mend' : 'To look at';
          return element('li', { class: severity }, `${word}: `, link, `. ${text}`);
        }),
      ),
    );
    changes.replaceChildren(...changesIn(store));
    sign.disabled = errors.length > 0 || !read.checked;
    if (errors.length > 0) say(said, `Not before what is to mend is gone: ${errors.length}.`);
    else say(said, read.checked ? 'Ready to be signed.' : 'Say first that you have read it.');
  };
  read.addEventListener('change', refresh);
  refresh();
  return { node, refresh };
}

/** A question as it is told away from its page. */
function whereText({ item, page }: Placed): string {
  const side = item.says?.part === 'statement' ? item.says.statement['side'] : undefined;
  const where = side === undefined ? page.text : `${page.text}, ${side}`;
  return item.text.startsWith(page.text) ? item.text : `${where}: ${item.text}`;
}

function changesIn({ saved, reading }: Store): readonly HTMLElement[] {
  const { before } = saved;
  if (before === undefined) return [];
  const why = whyNotShown(reading.draft.exam, before);
  const day = before.exam.performed.start.slice(0, 10);
  const title = element('h3', {}, `Beside the exam of ${day}`);
  if (why.length > 0) return [title, element('p', { class: 'issue' }, why.join('. '))];
  const lines = reading.checked.comparisons.filter(({ now: key }) => key !== undefined);
  return [title, element('ul', {}, ...lines.map((one) => element('li', {}, comparisonText(one))))];
}

/** The report in a frame that can run nothing and reach nothing. */
export function reportFrame(exam: Exam): HTMLElement {
  return element('iframe', { sandbox: '', srcdoc: toHtml(exam), title: 'Report', class: 'report' });
}

/** Prompts of the chosen rule sets, most urgent first, with their cautions. */
export function promptsPart(store: Store): PageView {
  const node = element('section', { class: 'prompts', 'aria-label': 'Prompts' });
  let shown = '';
  const refresh = (): void => {
    const { prompts } = store.reading.checked;
    const state = JSON.stringify(prompts.map(({ id, text, dismissed }) => [id, text, dismissed]));
    if (state === shown) return;
    shown = state;
    const [first] = prompts;
    node.hidden = first === undefined;
    node.replaceChildren(
      element('h3', {}, 'Prompts'),
      element('ul', {}, ...prompts.map((one) => promptLine(one, store))),
      ...(first?.cautions ?? []).map((text) => element('p', { class: 'hint' }, text)),
    );
  };
  refresh();
  return { node, refresh };
}

function promptLine(prompt: Prompt, store: Store): HTMLElement {
  const { id, text, source, urgency, ruleSet, dismissed } = prompt;
  const line = element(
    'li',
    {},
    element('strong', {}, `How soon: ${urgency ?? 'not said'}. `),
    `${text} `,
    element('small', {}, `${ruleSet.title}, ${ruleSet.publisher}. ${source}`),
  );
  if (dismissed !== undefined) {
    line.append(element('p', {}, `Set aside: ${dismissed.reason}`));
    return line;
  }
  const reason = element('input', { type: 'text', autocomplete: 'off', id: `reason-${id}` });
  const aside = button('Set aside', () => {
    const words = reason.value.trim();
    if (words === '') return reason.focus();
    const dismissal = { prompt: id, reason: words, by: examinerKey, at: now() };
    store.change((before) => ({ ...before, dismissals: [...before.dismissals, dismissal] }));
  });
  line.append(element('label', { class: 'line' }, 'Reason to set it aside', reason), aside);
  return line;
}
