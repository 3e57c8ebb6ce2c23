import { isTable, type Source } from '../../mapping/source.ts';
import { datesOf } from '../guess/guess-dates.ts';
import type { Respell } from './spelling.ts';
import { headWords, itemWords, phraseKeys, placeIn } from './use-words.ts';

/** Fields of an export that have a use besides statements. */
export interface HeadNames {
  readonly exam?: string;
  readonly status?: string;
  readonly subject?: string;
  readonly family?: string;
  readonly given?: string;
  readonly born?: string;
  readonly gender?: string;
  readonly performed?: string;
  readonly recorded?: string;
  readonly examiner?: string;
}

export interface ItemNames {
  readonly kind?: string;
  readonly code?: string;
  /** Field with the code in words, tried where the code itself says nothing. */
  readonly display?: string;
  readonly value?: string;
  readonly side?: string;
  readonly unit?: string;
  readonly method?: string;
  readonly note?: string;
}

/** A field by its name and what it holds. */
export interface NamedField {
  readonly name: string;
  /** Its different texts that are not blank. */
  readonly words: readonly string[];
}

const person = 'ClinicalDocument/recordTarget/patientRole';

/**
 * Uses of the fields of a sample: by the standard for HL7 v2 and CDA, by usual names otherwise. Of several
 * fields with one use the one with the plainest name is taken, and only where its values can be of it.
 */
export function headNamesOf(
  source: Source,
  fields: readonly NamedField[],
  respell: Respell = asWritten,
): HeadNames {
  switch (source.syntax) {
    case 'hl7v2':
      return {
        exam: 'OBR-3',
        status: 'OBR-25',
        subject: 'PID-3',
        family: 'PID-5',
        given: 'PID-5.2',
        born: 'PID-7',
        gender: 'PID-8',
        performed: 'OBR-7',
        recorded: 'MSH-7',
      };
    case 'cda':
      return {
        exam: 'ClinicalDocument/id/@extension',
        subject: `${person}/id/@extension`,
        family: `${person}/patient/name/family`,
        given: `${person}/patient/name/given`,
        born: `${person}/patient/birthTime/@value`,
        performed: 'ClinicalDocument/componentOf/encompassingEncounter/effectiveTime/@value',
        recorded: 'ClinicalDocument/effectiveTime/@value',
      };
    default:
      return byName(
        headKeys,
        labelled(source, fields),
        respell,
        (use, field) => fits[use]?.(field) !== false,
      );
  }
}

/** Fields of records that say in one field what another means; none in a wide table. */
export function itemNamesOf(
  source: Source,
  fields: readonly NamedField[],
  respell: Respell = asWritten,
): readonly ItemNames[] {
  switch (source.syntax) {
    case 'hl7v2':
      return [
        {
          kind: 'OBX',
          code: 'OBX-3',
          display: 'OBX-3.2',
          value: 'OBX-5',
          side: 'OBX-4',
          unit: 'OBX-6',
        },
      ];
    case 'cda':
      return [
        {
          kind: 'observation',
          code: 'observation/code/@code',
          display: 'observation/code/@displayName',
          value: 'observation/value',
          unit: 'observation/value/@unit',
          method: 'observation/methodCode/@code',
        },
      ];
    case 'csv':
    case 'xlsx':
    case 'fixed': {
      const found = byName(itemKeys, labelled(source, fields), respell, () => true);
      return found.code === undefined || found.value === undefined ? [] : [found];
    }
    default:
      return [];
  }
}

type Keys<Use extends string> = { readonly [use in Use]: ReadonlyMap<string, number> };

/** What a field is called by itself: in XML and CDA the last step of its path. */
export function labelOf(source: Source, name: string): string {
  if (isTable(source) || source.syntax === 'hl7v2') return name;
  return name.split('/').at(-1)?.replace(/^@/, '') ?? name;
}

interface LabelledField extends NamedField {
  readonly label: string;
}

function labelled(source: Source, fields: readonly NamedField[]): readonly LabelledField[] {
  return fields.map(({ name, words }) => ({ name, words, label: labelOf(source, name) }));
}

function byName<Use extends string>(
  keys: Keys<Use>,
  fields: readonly LabelledField[],
  respell: Respell,
  isPossible: (use: Use, field: NamedField) => boolean,
): { readonly [use in Use]?: string } {
  const found: { [use in Use]?: string } = {};
  const taken = new Set<string>();
  // The keys of a literal typed by Use.
  for (const use of Object.keys(keys) as Use[]) {
    let best: LabelledField | undefined;
    let bestPlace = Number.POSITIVE_INFINITY;
    for (const field of fields) {
      const place = placeIn(keys[use], field.label, respell);
      if (place < 0 || place >= bestPlace || taken.has(field.name)) continue;
      if (!isPossible(use, field)) continue;
      best = field;
      bestPlace = place;
    }
    if (best === undefined) continue;
    found[use] = best.name;
    taken.add(best.name);
  }
  return found;
}

const asWritten: Respell = (term) => term;

function keysOf<Use extends string>(
  phrases: {
    readonly [use in Use]: readonly string[];
  },
): Keys<Use> {
  // One entry for each of the same keys.
  return Object.fromEntries(
    Object.entries<readonly string[]>(phrases).map(([use, list]) => [use, phraseKeys(list)]),
  ) as unknown as Keys<Use>;
}

const headKeys = keysOf(headWords);
const itemKeys = keysOf(itemWords);

const isDate = ({ words }: NamedField): boolean => words.length === 0 || datesOf(words).length > 0;

/** Values that a field of a use can have, where its name alone could mean something else. */
const fits: { readonly [Use in keyof HeadNames]?: (field: NamedField) => boolean } = {
  // A column `patient` could hold names: a number has digits.
  subject: ({ name, words }) =>
    /[^\p{L}]|id|nr|no|mrn|badge/iu.test(name) || words.every((word) => /\d/.test(word)),
  exam: ({ words }) => words.every((word) => !/\s/.test(word.trim())),
  performed: isDate,
  recorded: isDate,
  born: isDate,
  examiner: (field) => field.words.length === 0 || !isDate(field),
};
