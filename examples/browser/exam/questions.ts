import {
  type FormDescription,
  type FormItem,
  type FormOption,
  toFormDescription,
} from '../../../src/forms/index.ts';
import { builtInCatalogue, orThrow, type Side } from '../../../src/index.ts';
import { type Answers, answered, type Saved } from './saved.ts';

const forms = new Map<string, FormDescription>();

/** The form of a protocol of the catalogue. */
export function formOf(protocol: string): FormDescription {
  const known = forms.get(protocol) ?? orThrow('describe the form', toFormDescription(protocol));
  forms.set(protocol, known);
  return known;
}

/**
 * What is asked, page by page: the form of the protocol, each filling of a group that repeats as a
 * group of its own, and what the form leaves to the builder: attributes, and why there is no figure.
 */
export function pagesOf({ head, rounds, answers }: Saved): readonly FormItem[] {
  const expand = (items: readonly FormItem[]): readonly FormItem[] =>
    items.flatMap((item) => {
      if (item.repeats === true && item.type === 'group') return fillings(item, rounds, answers);
      const inner = item.items === undefined ? item : { ...item, items: expand(item.items) };
      return [inner, ...besides(item, answers)];
    });
  return expand(formOf(head.protocol.id).items.filter(({ page }) => page === true));
}

/** The group itself, without questions, as the place where a filling is added, and its fillings. */
function fillings(group: FormItem, rounds: Saved['rounds'], answers: Answers): readonly FormItem[] {
  const filled = (rounds[group.linkId] ?? []).map((number): FormItem => {
    const renamed = renumbered(group, number);
    const items = (renamed.items ?? []).flatMap((item) => [item, ...besides(item, answers)]);
    const { repeats: _repeats, enabledBy: _condition, ...once } = renamed;
    return { ...once, items: [...items, ...sideOf(renamed)] };
  });
  const { items: _items, ...head } = group;
  return [{ ...head, items: filled }];
}

function renumbered(item: FormItem, number: number): FormItem {
  const named = (text: string): string => `${text}#${number}`;
  const { says, enabledBy, items } = item;
  return {
    ...item,
    linkId: named(item.linkId),
    ...(enabledBy && { enabledBy: { ...enabledBy, item: named(enabledBy.item) } }),
    ...(says?.part === 'statement' && { says: { ...says, key: named(says.key) } }),
    ...(items && { items: items.map((one) => renumbered(one, number)) }),
  };
}

function besides(item: FormItem, answers: Answers): readonly FormItem[] {
  const { says } = item;
  if (says?.part !== 'statement') return [];
  const [member] = says.member;
  if (member === 'presence') return [...methodsOf(item, answers), ...attributesOf(item, answers)];
  if (says.statement.kind === 'measurement' && member === 'value') return [withoutFigure(item)];
  return [];
}

/** Attributes that may be given more than once, as their definitions in terminology/attributes.json say. */
const several: ReadonlySet<string> = new Set([
  'lesion-secondary',
  'lesion-colour',
  'lesion-symptom',
  'tm-part',
  'tm-part-seen',
]);

/** Asked where the sign is there or suspected. */
function attributesOf(item: FormItem, answers: Answers): readonly FormItem[] {
  const { says, linkId } = item;
  if (says?.part !== 'statement') return [];
  const chosen = answered(answers, linkId.replace(':presence', ':sign'))[0];
  const sign = builtInCatalogue.findings.get(says.statement['finding'] ?? chosen ?? '');
  if (sign?.attributes === undefined) return [];
  return [...builtInCatalogue.attributes.values()]
    .filter(({ family }) => family === sign.attributes)
    .map(({ code, display, type, values = [], unit }): FormItem => {
      const coded = type === 'boolean' ? yesNo : values.map((one) => option(one.code, one.display));
      return {
        linkId: `${linkId}:attribute:${code}`,
        type: type === 'count' ? 'integer' : type === 'quantity' ? 'decimal' : 'choice',
        text: unit === undefined ? display : `${display} (${unit})`,
        enabledBy: { item: linkId, codes: ['presence.present', 'presence.suspected'] },
        ...(several.has(code) && { repeats: true as const }),
        ...(coded.length > 0 && { options: coded }),
        ...(unit !== undefined && { unit }),
        says: { ...says, member: ['attributes', code] },
      };
    });
}

const yesNo: readonly FormOption[] = [option('true', 'Yes'), option('false', 'No')];

function option(code: string, display: string): FormOption {
  return { system: '', code, display, value: code };
}

/** Where an entry for several places said how a sign was looked for, this can be seen and changed. */
function methodsOf({ linkId, text, says }: FormItem, answers: Answers): readonly FormItem[] {
  const methods = `${linkId}:methods`;
  if (says?.part !== 'statement' || answered(answers, methods).length === 0) return [];
  const taken = builtInCatalogue.regions.get(says.statement['region'] ?? '')?.methods ?? [];
  return [
    {
      linkId: methods,
      type: 'choice',
      text: `${text}: looked for by`,
      repeats: true,
      enabledBy: { item: linkId },
      options: taken.map((code) =>
        option(code, builtInCatalogue.methods.get(code)?.display ?? code),
      ),
      says: { ...says, member: ['methods'] },
    },
  ];
}

function withoutFigure({ linkId, says, text }: FormItem): FormItem {
  return {
    linkId: `${linkId}:unusable`,
    type: 'choice',
    text: `${text}: why there is no figure`,
    options: [...builtInCatalogue.reasons.values()].map((one) => option(one.code, one.display)),
    ...(says?.part === 'statement' && { says: { ...says, member: ['unusable', 'code'] } }),
  };
}

const sides: readonly Side[] = [
  'midline',
  'right',
  'left',
  'both',
  'right-of-midline',
  'left-of-midline',
];

/** A further sign can lie on one side of a region that the protocol asks for as a whole. */
function sideOf(group: FormItem): readonly FormItem[] {
  const says = group.items?.[0]?.says;
  if (says?.part !== 'statement' || says.statement.kind !== 'finding') return [];
  if (says.statement['side'] !== undefined) return [];
  return [
    {
      linkId: `${group.linkId}:side`,
      type: 'choice',
      text: 'Side of the patient',
      enabledBy: { item: group.items?.[0]?.linkId ?? '' },
      options: sides.map((side) =>
        option(side, builtInCatalogue.values.get(`side.${side}`)?.display ?? side),
      ),
      says: { ...says, member: ['side'] },
    },
  ];
}
