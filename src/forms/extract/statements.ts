import type { FormItem, FormOption, StatementBeginning } from '../form.ts';
import { below, codingAt, filledBy, having, onlyWhere, type Template } from './annotation.ts';
import { type Ask, merged, mergedList } from './merged.ts';
import type { Probe } from './probe.ts';
import { absentTemplate, type ReasonAnswer } from './reasons.ts';
import { stateTemplates } from './state-templates.ts';

/** An item of a form that says something of a statement. */
export interface Part {
  readonly item: FormItem;
  /** FHIRPath of what a response has for it, from the response. */
  readonly path: string;
}

/** The items of one statement, by linkId. */
export interface Asked {
  readonly key: string;
  readonly beginning: StatementBeginning;
  readonly parts: ReadonlyMap<string, Part>;
}

/** By linkId of the item or group that it stands at, what is extracted from there. */
export type Templates = readonly (readonly [linkId: string, template: Template])[];

/** What is extracted from the answers that make one statement. */
export function statementTemplates(probe: Probe, asked: Asked): Templates {
  const { key, parts } = asked;
  // What the form asks of it tells the ways of a statement apart, and not its kind.
  if (parts.has(`${key}:methods`)) return stateTemplates(probe, asked);
  if (parts.has(`${key}:place`)) return placedTemplates(probe, asked);
  if (parts.has(`${key}:sign`)) return furtherTemplates(probe, asked);
  if ('scale' in asked.beginning) return scoreTemplates(probe, asked);
  if ([...parts.values()].some(({ item }) => leadingMember(item) === 'results')) {
    return sensationTemplates(probe, asked);
  }
  return [...asked.parts.values()].flatMap(({ item }): Templates => {
    const { says } = item;
    if (says?.part !== 'statement' || says.member.length > 1) return [];
    return [[item.linkId, answerTemplate(probe, asked, item)]];
  });
}

/** The statement with one answer, as the exam has it. */
export function stated({ beginning }: Asked, member: string, option: FormOption): Template {
  return { ...beginning, [member]: option.value, ...option.also };
}

/** A note, a figure, or a sign, movement or test with its result. */
function answerTemplate(probe: Probe, asked: Asked, item: FormItem): Template {
  const { beginning } = asked;
  if (item.type === 'text') {
    const { valueString: _, ...rest } = probe.statement({ ...beginning, text: 'asked' });
    return { ...rest, _valueString: filledBy('answer.value') };
  }
  if (item.options === undefined) {
    return withFigure(probe.statement({ ...beginning, value: '1' }), 'answer.value');
  }
  const { options } = item;
  const member = leadingMember(item);
  const reason = reasonAnswer(asked, `${item.linkId}:reason`);
  const untested = untestedCodes(asked, `${item.linkId}:reason`);
  const probes = options.map((option) => {
    const members = stated(asked, member, option);
    if (!untested.includes(option.code)) return probe.statement(members);
    const { dataAbsentReason: _, ...rest } = probe.statement({ ...members, ...sampleReason });
    return rest;
  });
  const template = merged(probes, { path: 'answer.value', options });
  if (reason === undefined) return template;
  // obs-6 forbids a template with both a value and dataAbsentReason, although no answer gives both.
  return {
    ...template,
    component: [
      {
        ...onlyWhere(having('answer.value', untested)),
        code: probe.context.coder.concept('items', 'limit'),
        dataAbsentReason: absentTemplate(probe, reason, answerOf(asked, item.linkId)),
      },
    ],
  };
}

const sampleReason = { reason: { code: 'other' } };

function leadingMember({ says }: FormItem): string {
  return says?.part === 'statement' ? (says.member[0] ?? '') : '';
}

/** Where the answer to an item stands, from the response. */
export function answerOf({ parts }: Asked, linkId: string): string {
  return `${parts.get(linkId)?.path ?? ''}.answer.value`;
}

/** The question for a reason, where the form has it. */
export function reasonAnswer(asked: Asked, linkId: string): ReasonAnswer | undefined {
  const options = asked.parts.get(linkId)?.item.options;
  if (options === undefined) return undefined;
  const words = `${linkId}:words`;
  return {
    path: answerOf(asked, linkId),
    words: asked.parts.has(words) ? answerOf(asked, words) : undefined,
    options,
  };
}

function untestedCodes({ parts }: Asked, reason: string): readonly string[] {
  return parts.get(reason)?.item.enabledBy?.codes ?? [];
}

function withFigure({ valueQuantity, ...rest }: Template, path: string): Template {
  // The export writes a quantity with each figure.
  const { value: _, ...quantity } = valueQuantity as Template;
  return { ...rest, valueQuantity: { ...quantity, _value: filledBy(path) } };
}

/** Each modality by itself: the form has no item for a point as a whole. */
function sensationTemplates(probe: Probe, asked: Asked): Templates {
  return [...asked.parts.values()].flatMap(({ item }): Templates => {
    const { linkId, says, options } = item;
    if (says?.part !== 'statement' || options === undefined || says.member[2] !== 'result') {
      return [];
    }
    const [, modality] = says.member;
    const reason = reasonAnswer(asked, `${linkId}:reason`);
    const untested = untestedCodes(asked, `${linkId}:reason`);
    const probes = options.map(({ code, value: result }) => {
      const isUntested = untested.includes(code);
      const results = [{ modality, result, ...(isUntested && sampleReason) }];
      return withoutAbsence(probe.statement({ ...asked.beginning, results }));
    });
    const template = merged(probes, { path: 'answer.value', options });
    const [component] = template['component'] as readonly Template[]; // one for each modality
    if (reason === undefined) return [[linkId, template]];
    const dataAbsentReason = {
      ...onlyWhere(reason.path),
      ...absentTemplate(probe, reason, answerOf(asked, linkId)),
    };
    return [[linkId, { ...template, component: [{ ...component, dataAbsentReason }] }]];
  });
}

function withoutAbsence(observation: Template): Template {
  const component = (observation['component'] as readonly Template[]).map(
    ({ dataAbsentReason: _, ...rest }) => rest,
  );
  return { ...observation, component };
}

/** A measure with the place that was chosen for it. */
function placedTemplates(probe: Probe, asked: Asked): Templates {
  const { key } = asked;
  const options = asked.parts.get(`${key}:place`)?.item.options ?? [];
  const probes = options.map((option) => {
    const members = { ...stated(asked, 'region', option), value: '1' };
    const { bodySite, ...rest } = probe.statement(members);
    // An extension cannot have a condition within it, since it has a value: ext-1.
    const { extension: _, ...site } = bodySite as Template;
    return { ...rest, bodySite: site };
  });
  const template = merged(probes, { path: repeatedAnswer(`${key}:place`), options });
  return [[key, withFigure(template, repeatedAnswer(`${key}:value`))]];
}

/** From the group that it stands in. */
function repeatedAnswer(linkId: string): string {
  return `${below('', linkId)}.answer.value`;
}

/** A sign that was chosen from all that the region can have, under our own code alone. */
function furtherTemplates(probe: Probe, asked: Asked): Templates {
  const { key, parts } = asked;
  const signs = parts.get(`${key}:sign`)?.item.options ?? [];
  const options = parts.get(`${key}:presence`)?.item.options ?? [];
  const sign = repeatedAnswer(`${key}:sign`);
  const ask: Ask = { path: repeatedAnswer(`${key}:presence`), options };
  const found = signs.map((one) => ({
    code: one.code,
    probes: options.map((option) =>
      probe.statement({ ...stated(asked, 'presence', option), finding: one.value }),
    ),
  }));
  const [first] = found;
  if (first === undefined) return [];
  const plain = first.probes.map(({ code: _, interpretation: __, ...rest }) => rest);
  const meanings = new Map<string, { lists: Template[][]; codes: string[] }>();
  for (const { code, probes } of found) {
    const lists = probes.map(({ interpretation = [] }) => interpretation as Template[]);
    const name = JSON.stringify(lists);
    const known = meanings.get(name);
    if (known === undefined) meanings.set(name, { lists, codes: [code] });
    else known.codes.push(code);
  }
  const [most, ...others] = [...meanings.values()].sort((a, b) => b.codes.length - a.codes.length);
  const rare = others.flatMap(({ codes }) => codes);
  const unlike = rare.length === 0 ? '' : `where(${having(sign, rare)}.empty()).`;
  return [
    [
      `${key}`,
      {
        ...merged(plain, ask),
        code: { coding: [codingAt(sign)], _text: filledBy(`${sign}.display`) },
        interpretation: [
          ...mergedList(most?.lists ?? [], { ...ask, path: `${unlike}${ask.path}` }),
          ...others.flatMap(({ lists, codes }) => {
            const alike = `where(${having(sign, codes)}.exists()).`;
            return mergedList(lists, { ...ask, path: `${alike}${ask.path}` });
          }),
        ],
      },
    ],
  ];
}

/** A score, on the version of its scale that was chosen where there are several. */
function scoreTemplates(probe: Probe, asked: Asked): Templates {
  const { key, beginning, parts } = asked;
  const score = parts.get(key)?.item;
  if (score === undefined) return [];
  const versions = parts.get(`${key}:version`)?.item.options;
  const version = beginning['version'] ?? versions?.[0]?.value;
  const start = { ...beginning, version };
  const { options } = score;
  const template =
    options === undefined
      ? withCount(probe.statement({ ...start, score: 1 }))
      : merged(
          options.map(({ value }) => probe.statement({ ...start, score: value })),
          { path: 'answer.value', options },
        );
  if (versions === undefined) return [[key, template]];
  const byVersion = versions.map((one) => {
    const made = probe.statement({ ...start, version: one.value, score: options?.[0]?.value ?? 1 });
    return { component: made['component'], method: made['method'] };
  });
  const ask = { path: answerOf(asked, `${key}:version`), options: versions };
  return [[key, { ...template, ...merged(byVersion, ask) }]];
}

function withCount({ valueInteger: _, ...rest }: Template): Template {
  return { ...rest, _valueInteger: filledBy('answer.value') };
}
