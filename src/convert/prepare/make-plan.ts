import type { Catalogue } from '../../terminology/catalogue.ts';
import { planOperation } from '../cells/divide.ts';
import type { DateField, ItemRecords, Mapping } from '../mapping/mapping.ts';
import type { ItemPlan, Plan, PlannedTarget } from '../mapping/plan.ts';
import type { Target, Words } from '../mapping/target.ts';
import { wordMap } from '../mapping/word-map.ts';
import { headingLookUp } from '../narrative/headings.ts';
import { type DateReader, dateReader, formatProblems } from '../values/date.ts';
import { type DateFormat, dateFormat } from '../values/date-format.ts';
import { companionNames, headNames, itemNames } from './names.ts';

/**
 * Forms of HL7 v2 and CDA times, which have one form at several precisions.
 * @see HL7 v2.8 chapter 2A, DTM
 */
const compactFormats: readonly string[] = [
  'YYYY',
  'YYYYMM',
  'YYYYMMDD',
  'YYYYMMDDHHmm',
  'YYYYMMDDHHmmZ',
  'YYYYMMDDHHmmss',
  'YYYYMMDDHHmmssZ',
];

/** ISO 8601 calendar dates and times, which cannot be mistaken for others. */
const isoFormats: readonly string[] = [
  'YYYY-MM-DD',
  'YYYY-MM-DDTHH:mmZ',
  'YYYY-MM-DDTHH:mm:ssZ',
  'YYYY-MM-DDTHH:mm',
  'YYYY-MM-DDTHH:mm:ss',
];

/** Whole dates and times of both standards. A year or month alone is one only where nothing else is stated. */
const standardFormats: readonly string[] = [...compactFormats, ...isoFormats].filter((form) =>
  form.includes('DD'),
);

/** The forms of a mapping with those of the standards that read no text in another way than they do. */
function withStandardForms(formats: readonly string[]): readonly string[] {
  const all = [...formats, ...standardFormats.filter((form) => !formats.includes(form))];
  const doubtful = new Set(formatProblems(all).map(({ at }) => at));
  return all.filter((_, at) => at < formats.length || !doubtful.has(at));
}

/** The mapping with its look-ups made, once. It must have passed its checks. */
export function makePlan(mapping: Mapping, catalogue: Catalogue): Plan {
  const ignoreCase = mapping.ignoreCase ?? false;
  const planned = (target: Target): PlannedTarget => ({
    target,
    words: wordMap(tableOf('words' in target ? target.words : undefined, mapping), ignoreCase),
  });
  return {
    mapping,
    catalogue,
    operations: (mapping.cells ?? []).map(planOperation),
    fields: new Map(
      Object.entries(mapping.fields ?? {}).map(([name, target]) => [name, planned(target)]),
    ),
    items: (mapping.items ?? []).map((records) => itemPlan(records, planned, ignoreCase)),
    head: new Set(headNames(mapping.exam)),
    companions: new Set(Object.values(mapping.fields ?? {}).flatMap(companionNames)),
    named: new Set([
      ...Object.entries(mapping.fields ?? {}).flatMap(([name, target]) => [
        name,
        ...companionNames(target),
      ]),
      ...(mapping.items ?? []).flatMap(itemNames),
      ...(mapping.text ?? []),
    ]),
    layout: new Set(mapping.layout),
    text: new Set(mapping.text),
    noValue: wordMap(mapping.noValue, ignoreCase),
    sides: wordMap(mapping.sides, ignoreCase),
    methods: wordMap(mapping.methods, ignoreCase),
    measureConditions: wordMap(mapping.measureConditions, ignoreCase),
    regions: wordMap(mapping.regions, ignoreCase),
    modalities: wordMap(mapping.modalities, ignoreCase),
    units: wordMap(mapping.units, ignoreCase),
    headings: headingLookUp(catalogue, mapping.headings),
    decimalMark: mapping.decimalMark ?? '.',
    dates: dateReaders(mapping),
  };
}

/** The table that a target names or writes out. */
export function tableOf(
  words: Words | undefined,
  mapping: Mapping,
): Exclude<Words, string> | undefined {
  if (typeof words !== 'string') return words;
  const tables = mapping.words ?? {};
  return Object.hasOwn(tables, words) ? tables[words] : undefined;
}

/** Accepted forms where the mapping states none. */
export function defaultFormats({ source }: Mapping): readonly string[] {
  return source.syntax === 'hl7v2' || source.syntax === 'cda' ? compactFormats : isoFormats;
}

function itemPlan(
  records: ItemRecords,
  planned: (target: Target) => PlannedTarget,
  ignoreCase: boolean,
): ItemPlan {
  const targets = Object.entries(records.map).map(([code, target]) => [code, planned(target)]);
  return {
    records,
    // Codes are identifiers of the export, not words: their case counts.
    map: wordMap(Object.fromEntries(targets), false),
    ...(records.otherwise !== undefined && { otherwise: planned(records.otherwise) }),
    statuses: wordMap(records.status?.words, ignoreCase),
    names: new Set(itemNames(records)),
  };
}

function dateReaders(mapping: Mapping): (field: DateField) => DateReader {
  const stated = mapping.dates?.formats;
  const formats = stated === undefined ? defaultFormats(mapping) : withStandardForms(stated);
  const rules = { ...mapping.dates, formats };
  const compile = (formats: readonly string[]): DateReader =>
    dateReader(
      formats.map(dateFormat).filter((format): format is DateFormat => format !== undefined),
      rules,
    );
  const usual = compile(rules.formats);
  const own = new Map<readonly string[], DateReader>();
  return (field) => {
    const formats = typeof field === 'string' ? undefined : field.formats;
    if (formats === undefined) return usual;
    const reader = own.get(formats) ?? compile(withStandardForms(formats));
    own.set(formats, reader);
    return reader;
  };
}
