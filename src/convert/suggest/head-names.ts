import type { Source } from '../mapping/source.ts';

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

/** Usual names (common practice, no source), matched without regard to case and other marks. */
const headPatterns: { readonly [Use in keyof HeadNames]-?: RegExp } = {
  exam: /^(?:exam|visit|study|check|encounter)(?:id|no|nr|number)?$/,
  status: /^(?:record|exam)?status$/,
  subject: /^(?:patient|worker|subject|person|employee|staff)(?:id|no|nr|number)$|^(?:mrn|badge)$/,
  family: /^(?:family|last|sur)name$/,
  given: /^(?:given|first)name$/,
  born: /^(?:dob|born|birth(?:date|day)?|dateofbirth)$/,
  gender: /^(?:sex|gender)$/,
  performed: /^(?:exam|visit|check)?(?:date|day|when|time)$|^(?:examined|performed)(?:on|at)?$/,
  recorded: /^(?:recorded|entered|written|created)(?:at|on|time)?$/,
  examiner: /^(?:doctor|examiner|clinician|physician|examinedby)(?:name)?$/,
};

const itemPatterns: { readonly [Use in keyof Omit<ItemNames, 'kind' | 'display'>]-?: RegExp } = {
  code: /^(?:item|test|observation|finding|parameter)(?:code|name)?$|^code$/,
  value: /^(?:value|result|answer)$/,
  side: /^(?:side|laterality)$/,
  unit: /^(?:units?|uom)$/,
  method: /^methods?$/,
  note: /^(?:note|remark|comment)s?$/,
};

const person = 'ClinicalDocument/recordTarget/patientRole';

/** Uses of the fields of a sample: by the standard for HL7 v2 and CDA, by their names otherwise. */
export function headNamesOf(source: Source, names: readonly string[]): HeadNames {
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
      return byName(headPatterns, names);
  }
}

/** Fields of records that say in one field what another means; none in a wide table. */
export function itemNamesOf(source: Source, names: readonly string[]): readonly ItemNames[] {
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
    case 'csv': {
      const found = byName(itemPatterns, names);
      return found.code === undefined || found.value === undefined ? [] : [found];
    }
    default:
      return [];
  }
}

function byName<Use extends string>(
  patterns: { readonly [use in Use]: RegExp },
  names: readonly string[],
): { readonly [use in Use]?: string } {
  const found: { [use in Use]?: string } = {};
  // The keys of a literal typed by Use.
  for (const use of Object.keys(patterns) as Use[]) {
    const name = names.find((one) => patterns[use].test(plain(one)));
    if (name !== undefined) found[use] = name;
  }
  return found;
}

/** `Exam No.` as `examno`; of a path the last step. */
function plain(name: string): string {
  const [last = ''] = name.split('/').slice(-1);
  return last.toLowerCase().replace(/[^a-z0-9]/g, '');
}
