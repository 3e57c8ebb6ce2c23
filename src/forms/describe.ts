import { requiredBy } from '../checks/coverage/required.ts';
import { isPlainObject } from '../data/plain-data.ts';
import { within } from '../issues/budget.ts';
import { failure, hasErrors, type Issue, issue, type Outcome, success } from '../issues/issue.ts';
import { cutIssues, endedIssue } from '../issues/issue-list.ts';
import { firstNearest } from '../issues/nearest.ts';
import { concerns } from '../model/conclusion.ts';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';
import type { Lean, Protocol } from '../terminology/types.ts';
import type { FormDescription, FormItem, FormLanguage } from './form.ts';
import type { FormOptions } from './options.ts';
import { formPages } from './pages.ts';
import { type FormWriter, formWriter } from './writer.ts';

/** LinkId of the hidden item that says which form was filled in. */
export const protocolItem = 'protocol';

/** What that item holds. */
export function protocolText({ id, version }: FormDescription['protocol']): string {
  return `${id}|${version}`;
}

/**
 * Describes the form of a protocol as plain data: for each region what is asked of it on each side,
 * the signs to look for, points, tests, measures and a note, and the conclusion at the end. Nothing is
 * chosen beforehand. Whatever renders forms can be made from it; `toQuestionnaire` is.
 *
 * @param protocol Code of a protocol of the catalogue.
 * @param options Language, catalogue, the signs that are asked for; see {@link FormOptions}.
 * @returns The form. It fails where there is no such protocol, or where `signs` names what the catalogue
 *   does not hold.
 * @example
 * const { items } = orThrow('describe the form', toFormDescription('droopy-lid', { language: 'de' }));
 */
export function toFormDescription(
  protocol: string,
  options: FormOptions = {},
): Outcome<FormDescription> {
  return within(
    'settings',
    options.budget,
    () => described(protocol, options),
    (why) => failure([endedIssue(why)]),
  );
}

function described(protocol: string, options: FormOptions): Outcome<FormDescription> {
  const { catalogue = builtInCatalogue } = options;
  const misfits = [
    ...(typeof protocol === 'string'
      ? []
      : [issue('wrong-type', ['protocol'], { reason: 'not-text' })]),
    ...optionIssues(options),
  ];
  if (hasErrors(misfits)) return failure(cutIssues(misfits));
  const row = catalogue.protocols.get(protocol);
  if (row === undefined) {
    const near = firstNearest()(protocol, [...catalogue.protocols.keys()]);
    return failure([
      issue('unknown-code', ['protocol'], { reason: 'table', table: 'protocols', near }),
    ]);
  }
  const { required, unknown } = requiredBy(row, catalogue);
  const issues = [
    ...unknown.map(({ table, path }) =>
      issue('unknown-code', ['protocol', ...path], { reason: 'protocol', table }),
    ),
    ...signIssues(options, catalogue),
  ];
  if (hasErrors(issues)) return failure(cutIssues(issues));
  const writer = formWriter(options);
  const pages = formPages(
    writer,
    required.map(({ item }) => item),
  );
  return success(formOf(writer, row, pages));
}

function optionIssues({ language = 'en', signs = {} }: FormOptions): Issue[] {
  const languages: readonly FormLanguage[] = ['en', 'de'];
  return [
    ...(languages.includes(language)
      ? []
      : [issue('unknown-code', ['language'], { reason: 'option', codes: languages })]),
    ...(isPlainObject(signs)
      ? Object.values(signs).flatMap((codes: unknown, at) =>
          Array.isArray(codes) && codes.every((code) => typeof code === 'string')
            ? []
            : [issue('wrong-type', ['signs', at], { reason: 'not-a-list' })],
        )
      : [issue('wrong-type', ['signs'], { reason: 'not-an-object' })]),
  ];
}

function signIssues({ signs = {} }: FormOptions, catalogue: Catalogue): Issue[] {
  const nearest = firstNearest();
  return Object.entries(signs).flatMap(([region, codes], at) => [
    ...(catalogue.regions.has(region)
      ? []
      : [
          issue('unknown-region', ['signs', at], {
            reason: 'table',
            near: nearest(region, [...catalogue.regions.keys()]),
          }),
        ]),
    ...codes.flatMap((code, place) =>
      catalogue.findings.has(code)
        ? []
        : [
            issue('unknown-code', ['signs', at, place], {
              reason: 'table',
              table: 'findings',
              near: nearest(code, [...catalogue.findings.keys()]),
            }),
          ],
    ),
  ]);
}

function formOf(
  writer: FormWriter,
  { code, version }: Lean<Protocol>,
  pages: readonly FormItem[],
): FormDescription {
  const protocol = { id: code, version };
  return {
    format: 'face-neck-form/1',
    protocol,
    language: writer.language,
    title: writer.display('protocols', code),
    items: [
      {
        linkId: protocolItem,
        type: 'string',
        text: writer.words.protocol,
        readOnly: true,
        hidden: true,
        value: protocolText(protocol),
        says: { part: 'protocol' },
      },
      ...pages,
      conclusionOf(writer),
    ],
  };
}

function conclusionOf(writer: FormWriter): FormItem {
  return {
    linkId: 'conclusion',
    type: 'group',
    text: writer.display('items', 'conclusion'),
    page: true,
    items: [
      {
        linkId: 'conclusion:text',
        type: 'text',
        text: writer.display('items', 'conclusion'),
        required: true,
        says: { part: 'conclusion', member: ['text'] },
      },
      {
        linkId: 'conclusion:concern',
        type: 'choice',
        text: writer.display('items', 'concern'),
        required: true,
        options: writer.valueOptions('concern', concerns),
        says: { part: 'conclusion', member: ['concern'] },
      },
    ],
  };
}
