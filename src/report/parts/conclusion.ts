import { missingText } from '../../checks/words/check-words.ts';
import { type Conclusion, concerns, type PlanItem } from '../../model/conclusion.ts';
import { time } from '../dates.ts';
import { type Content, element, joined, list, section, table, words } from '../html.ts';
import { inEnglish, type Page, separated } from '../page.ts';

/** What the examiner makes of it, and how much it worries. Of a withdrawn record nothing is shown. */
export function conclusionPart(page: Page): Content {
  const { exam, labels } = page;
  const { conclusion } = exam;
  if (exam.status === 'entered-in-error') return undefined;
  if (conclusion === undefined) {
    return section('conclusion', labels.conclusion, element('p', {}, labels.noConclusion));
  }
  return section(
    'conclusion',
    labels.conclusion,
    concern(page, conclusion.concern),
    element('p', { class: 'lead' }, words(conclusion.text)),
    conclusion.worries &&
      element('p', {}, `${labels.worries}: `, separated(conclusion.worries.map(words))),
  );
}

/** Told by words, by how many steps are filled, and by the weight of the frame; colour only adds. */
function concern({ teller, labels }: Page, level: Conclusion['concern']): Content {
  const step = concerns.indexOf(level) + 1;
  return element(
    'p',
    { class: `concern concern-${level}` },
    element('span', {}, `${labels.concern}: `),
    element('strong', {}, teller.answer('concern', level)),
    element(
      'span',
      { class: 'steps', 'aria-hidden': 'true' },
      concerns.map((_, at) => element('span', { class: at < step ? 'step on' : 'step' })),
    ),
    element('span', { class: 'of' }, ` ${step} ${labels.ofSteps} ${concerns.length}`),
  );
}

const urgencies: readonly PlanItem['urgency'][] = ['stat', 'urgent', 'asap', 'routine'];

/** Who does what by when, most urgent first; then what to come back for, and who was told what. */
export function planPart(page: Page): Content {
  const { exam, labels } = page;
  const { conclusion } = exam;
  if (exam.status === 'entered-in-error' || conclusion === undefined) return undefined;
  const { plan = [], told = [] } = conclusion;
  const { todo, whom, when } = labels.columns;
  const rank = ({ urgency }: PlanItem): number => {
    const at = urgencies.indexOf(urgency);
    return at === -1 ? urgencies.length : at;
  };
  const rows = [...plan].sort((a, b) => rank(a) - rank(b)).map((item) => planRow(page, item));
  return section(
    'plan',
    labels.plan,
    plan.length === 0 && element('p', {}, labels.noPlan),
    table({ caption: labels.plan, head: [todo, whom, when], rows }),
    safetyNet(page, conclusion),
    told.length > 0 &&
      element(
        'p',
        {},
        element('strong', {}, `${labels.told}: `),
        separated(
          told.map(({ who, what, at }) => [
            words(who),
            at !== undefined && [' (', time(at, labels.dates), ')'],
            ': ',
            words(what),
          ]),
        ),
      ),
  );
}

function planRow({ teller, labels }: Page, item: PlanItem): Content[] {
  const pressing = item.urgency !== undefined && item.urgency !== 'routine';
  const urgency = item.urgency && teller.answer('urgency', item.urgency);
  return [
    joined(
      `${teller.answer('plan', item.kind)}: `,
      words(item.text),
      item.guideline && [' (', words(item.guideline), ')'],
    ),
    separated([
      item.to ? words(item.to) : item.service && teller.display('services', item.service),
    ]) ?? '–',
    separated([
      urgency && (pressing ? element('strong', { class: 'pressing' }, urgency) : urgency),
      item.due && [`${labels.due} `, time(item.due, labels.dates)],
    ]) ?? '–',
  ];
}

function safetyNet({ labels }: Page, { safetyNet: net }: Conclusion): Content {
  if (net === undefined) return undefined;
  const parts: [string, Content][] = [
    [labels.safetyNet, words(net.text)],
    [labels.returnIf, net.returnIf && separated(net.returnIf.map(words))],
    [labels.reviewBy, net.reviewBy && time(net.reviewBy, labels.dates)],
    [labels.owner, net.owner && words(net.owner)],
  ];
  return element(
    'p',
    { class: 'net' },
    separated(
      parts
        .filter(([, what]) => what !== undefined)
        .map(([label, what]) => [element('strong', {}, `${label}: `), what]),
      ' · ',
    ),
  );
}

/** What urgent prompts ask for, on the first page; the sources stand with all prompts below. */
export function urgentPart({ checks, labels }: Page): Content {
  const urgent = checks.prompts.filter(
    ({ severity, dismissed }) => severity === 'urgent' && dismissed === undefined,
  );
  return section('urgent', labels.urgentPrompts, list(urgent.map(({ text }) => text)));
}

/**
 * Prompts that fire, most urgent first, a line each with what it rests on folded away, and those that
 * cannot be told although the exam points to them; then once the cautions.
 */
export function promptPart({ checks, labels }: Page): Content {
  const { prompts, openPrompts } = checks;
  if (prompts.length === 0 && openPrompts.length === 0) return undefined;
  const said = labels.checks;
  return section(
    'prompts',
    labels.prompts,
    list(
      prompts.map((prompt) =>
        joined(
          prompt.severity === 'urgent' && element('strong', {}, `${labels.urgent}: `),
          prompt.text,
          prompt.inputsMissing.length > 0 &&
            element('div', {}, `${labels.missing}: ${missingText(said, prompt.inputsMissing)}`),
          prompt.dismissed &&
            element('div', {}, `${labels.setAside}: `, words(prompt.dismissed.reason)),
          element(
            'details',
            { class: 'note' },
            element('summary', {}, labels.source),
            inEnglish(prompt.source),
          ),
        ),
      ),
    ),
    openPrompts.length > 0 && element('h3', {}, said.headings.open),
    list(
      openPrompts.map(
        ({ text, inputsMissing }) =>
          `${text} ${labels.missing}: ${missingText(said, inputsMissing)}`,
      ),
    ),
    element('div', { class: 'cautions' }, list(said.cautions)),
  );
}
