import type { Conclusion, PlanItem } from '../../model/conclusion.ts';
import { type Content, element, joined, list, section, words } from '../html.ts';
import { inEnglish, type Page, separated } from '../page.ts';

/** What the examiner makes of it, and what happens next. Of a withdrawn record nothing is shown. */
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
    element('p', { class: 'lead' }, words(conclusion.text)),
    element(
      'p',
      {},
      `${labels.concern}: `,
      element('strong', {}, page.teller.answer('concern', conclusion.concern)),
    ),
    labelled(labels.worries, list((conclusion.worries ?? []).map(words))),
    labelled(labels.plan, list((conclusion.plan ?? []).map((item) => planText(page, item)))),
    safetyNet(page, conclusion),
    labelled(
      labels.told,
      list(
        (conclusion.told ?? []).map(({ who, what, at }) =>
          separated([joined(words(who), ': ', words(what)), at], ', '),
        ),
      ),
    ),
  );
}

function planText({ teller, labels }: Page, item: PlanItem): Content {
  return joined(
    `${teller.answer('plan', item.kind)}: `,
    separated([
      words(item.text),
      item.urgency && teller.answer('urgency', item.urgency),
      item.due && `${labels.due} ${item.due}`,
      item.service && teller.display('services', item.service),
      item.to && words(item.to),
      item.guideline && words(item.guideline),
    ]),
  );
}

function safetyNet({ labels }: Page, { safetyNet: net }: Conclusion): Content {
  if (net === undefined) return undefined;
  return joined(
    element('h3', {}, labels.safetyNet),
    element('p', {}, words(net.text)),
    net.returnIf && labelled(labels.returnIf, list(net.returnIf.map(words))),
    net.reviewBy && element('p', {}, `${labels.reviewBy} ${net.reviewBy}`),
    net.owner && element('p', {}, words(net.owner)),
  );
}

/** A list under a heading of its own; nothing without the list. */
function labelled(label: string, content: Content): Content {
  return content === undefined ? undefined : joined(element('h3', {}, label), content);
}

/** Prompts that fire, each with its source, what was not known, and the cautions. */
export function promptPart({ checks, labels }: Page): Content {
  const { prompts } = checks;
  if (prompts.length === 0) return undefined;
  const cautions = [...new Set(prompts.flatMap((prompt) => prompt.cautions))];
  return section(
    'prompts',
    labels.prompts,
    list(
      prompts.map((prompt) =>
        joined(
          prompt.severity === 'urgent' && element('strong', {}, `${labels.urgent}: `),
          inEnglish(prompt.text),
          prompt.inputsMissing.length > 0 &&
            element('div', {}, `${labels.missing}: `, inEnglish(prompt.inputsMissing.join(', '))),
          element('div', { class: 'note' }, `${labels.source}: `, inEnglish(prompt.source)),
          prompt.dismissed &&
            element('div', {}, `${labels.setAside}: `, words(prompt.dismissed.reason)),
        ),
      ),
    ),
    element('div', { class: 'cautions' }, list(cautions.map(inEnglish))),
  );
}
