import { lineage } from '../../checks/places/regions.ts';
import type { FormItem, FormOption } from '../form.ts';
import type { FormWriter } from '../writer.ts';
import { type RegionAsked, stateKey, whereExamined } from './state-items.ts';

/** Signs of a region: those that are asked one by one, and a list from which others are added. */
export function signItems(writer: FormWriter, asked: RegionAsked): readonly FormItem[] {
  const listed = listedSigns(writer, asked.region);
  return [...listedItems(writer, asked, listed), ...furtherItems(writer, asked, listed)];
}

function listedSigns({ catalogue, options }: FormWriter, region: string): readonly string[] {
  const { signs } = options;
  if (signs !== undefined && Object.hasOwn(signs, region)) {
    return [...new Set(signs[region])].filter((code) => catalogue.findings.has(code));
  }
  const line = lineage(catalogue, region);
  const looked = [...catalogue.negatives.values()].flatMap(({ entries }) =>
    entries.flatMap(({ finding, regions }) => {
      const row = catalogue.findings.get(finding);
      const isHere = row !== undefined && isExpectedAt(row.regions, line);
      return isHere && regions.some((one) => line.includes(one)) ? [finding] : [];
    }),
  );
  return [...new Set(looked)];
}

function isExpectedAt(regions: readonly string[], line: readonly string[]): boolean {
  return regions.length === 0 || regions.some((one) => line.includes(one));
}

function listedItems(
  writer: FormWriter,
  asked: RegionAsked,
  listed: readonly string[],
): readonly FormItem[] {
  if (listed.length === 0) return [];
  const { region, side } = asked;
  const items = listed.map((finding): FormItem => {
    const key = ['finding', finding, region, ...(side === undefined ? [] : [side])].join('/');
    return {
      linkId: key,
      type: 'choice',
      text: writer.sided(writer.display('findings', finding), side),
      options: presences(writer, finding),
      says: {
        part: 'statement',
        key,
        statement: { kind: 'finding', finding, region, ...(side !== undefined && { side }) },
        member: ['presence'],
      },
    };
  });
  return [
    {
      linkId: `${stateKey(asked)}:signs`,
      type: 'group',
      text: writer.sided(writer.words.signs, side),
      enabledBy: whereExamined(asked),
      items,
    },
  ];
}

/** Of a disease it can be said that it is suspected, which is not that it is there. */
function presences(writer: FormWriter, finding: string | undefined): readonly FormOption[] {
  const isDisorder =
    finding === undefined || writer.catalogue.findings.get(finding)?.disorder === true;
  const suspected = writer
    .valueOptions('presence', ['suspected'])
    .map((option) => ({ ...option, value: 'present', also: { certainty: 'suspected' } }));
  const [present, ...others] = writer.valueOptions('presence', [
    'present',
    'absent',
    'indeterminate',
  ]);
  return [...(present === undefined ? [] : [present]), ...(isDisorder ? suspected : []), ...others];
}

function furtherItems(
  writer: FormWriter,
  asked: RegionAsked,
  listed: readonly string[],
): readonly FormItem[] {
  if (writer.options.furtherSigns === false) return [];
  const { region, side } = asked;
  const line = lineage(writer.catalogue, region);
  const codes = [...writer.catalogue.findings.values()].flatMap(({ code, regions }) =>
    isExpectedAt(regions, line) && !listed.includes(code) ? [code] : [],
  );
  const options = writer.answers('findings', codes);
  if (options.length === 0) return [];
  const linkId = `${stateKey(asked)}:further`;
  const target = {
    part: 'statement' as const,
    key: linkId,
    statement: { kind: 'finding', region, ...(side !== undefined && { side }) },
  };
  return [
    {
      linkId,
      type: 'group',
      text: writer.sided(writer.words.furtherSign, side),
      repeats: true,
      enabledBy: whereExamined(asked, ['abnormal', 'partial']),
      items: [
        {
          linkId: `${linkId}:sign`,
          type: 'choice',
          text: writer.words.sign,
          options,
          says: { ...target, member: ['finding'] },
        },
        {
          linkId: `${linkId}:presence`,
          type: 'choice',
          text: writer.words.found,
          required: true,
          // Renderers show one empty filling of the group, in which nothing is needed.
          enabledBy: { item: `${linkId}:sign` },
          options: presences(writer, undefined),
          says: { ...target, member: ['presence'] },
        },
      ],
    },
  ];
}
