import { LOINC_OID, PHYSICAL_EXAM_TEMPLATE, PHYSICAL_FINDINGS } from '../../convert/cda/names.ts';
import { compactTime } from './compact-time.ts';
import { valueText } from './csv.ts';
import type { FieldNames, LegacyFormat } from './format.ts';
import { type Head, headOf } from './head.ts';
import type { Item, ItemValue } from './item.ts';
import { itemsOfExam } from './items-of-exam.ts';
import { legacyMapping } from './legacy-mapping.ts';
import { element } from './markup.ts';

const header = 'ClinicalDocument';
/** Namespace of what CDA has no element for. @see CDA R2, section 1.4, extensibility */
const EXTENSIONS = 'https://clinic.example/cda';

const foreign = `${header}/{${EXTENSIONS}}`;
const role = `${header}/recordTarget/patientRole`;
const author = `${header}/author/assignedAuthor`;
const visit = `${header}/componentOf/encompassingEncounter`;

const names: FieldNames = {
  source: { syntax: 'cda' },
  head: {
    id: `${header}/id/@extension`,
    status: `${foreign}record/@status`,
    worker: `${role}/id/@extension`,
    patient: `${role}/patient/id/@extension`,
    family: `${role}/patient/name/family`,
    given: `${role}/patient/name/given`,
    name: `${role}/patient/name`,
    born: `${role}/patient/birthTime/@value`,
    sex: `${role}/patient/administrativeGenderCode/@code`,
    // Code system v3-AdministrativeGender of HL7 terminology 7.0.1.
    sexWords: { M: 'male', F: 'female', UN: 'other' },
    start: `${visit}/effectiveTime/low/@value`,
    end: `${visit}/effectiveTime/high/@value`,
    recorded: `${header}/effectiveTime/@value`,
    examiner: `${author}/assignedPerson/name`,
    examinerNumber: `${author}/id/@extension`,
    indication: `${foreign}indication`,
    conclusion: `${foreign}conclusion`,
    concern: `${foreign}conclusion/@concern`,
  },
  item: {
    kind: 'observation',
    code: 'observation/code/@code',
    value: 'observation/value',
    region: 'observation/targetSiteCode/@code',
    side: 'observation/targetSiteCode/qualifier/value/@code',
    method: 'observation/methodCode/@code',
    conditions: 'observation/methodCode/translation/@code',
    unit: 'observation/value/@unit',
    at: 'observation/effectiveTime/@value',
    group: 'observation/reference/externalObservation/id/@extension',
    note: 'observation/text',
  },
  layout: [
    `${header}/typeId/@root`,
    `${header}/typeId/@extension`,
    `${header}/id/@root`,
    `${header}/code/@code`,
    `${header}/code/@codeSystem`,
    `${header}/confidentialityCode/@code`,
    `${header}/confidentialityCode/@codeSystem`,
    `${header}/author/time/@value`,
    `${header}/custodian/assignedCustodian/representedCustodianOrganization/id/@root`,
    `${role}/id`,
    `${role}/id/@root`,
    `${role}/patient/id/@root`,
    `${role}/patient/administrativeGenderCode/@codeSystem`,
    `${role}/patient/administrativeGenderCode`,
    `${author}/id`,
    `${author}/id/@root`,
    'section/templateId/@root',
    'section/code/@code',
    'section/code/@codeSystem',
    'section/title',
    'section/text',
    'observation/value/@xsi:type',
    'observation/methodCode',
    'observation/targetSiteCode',
    'observation/targetSiteCode/qualifier/name/@code',
    'observation/targetSiteCode/qualifier/name/@codeSystem',
    'observation/reference/externalObservation/id/@root',
  ],
};

/** SNOMED CT 272741003 Laterality, by which a reader knows that a qualifier is a side. */
const LATERALITY = '272741003';

/** Made up: the clinic that gives the numbers. */
const CLINIC_ROOT = 'ca7b5f0e-4f2b-4c43-9a53-6d3b9b1f2a10';

/** Documents of CDA R2 with one physical exam section, an entry for each item. */
export const cdaFormat: LegacyFormat = {
  mapping: () => legacyMapping(names),
  begin: '',
  end: '',
  exam: (exam) => {
    const head = headOf(exam);
    const namespaces = {
      xmlns: 'urn:hl7-org:v3',
      'xmlns:xsi': 'http://www.w3.org/2001/XMLSchema-instance',
      'xmlns:x': EXTENSIONS,
    };
    const parts = [
      element('typeId', { root: '2.16.840.1.113883.1.3', extension: 'POCD_HD000040' }),
      element('id', { root: CLINIC_ROOT, extension: head.id }),
      element('code', { code: PHYSICAL_FINDINGS, codeSystem: LOINC_OID }),
      element('effectiveTime', { value: compactTime(head.recorded) }),
      // Code system v3-Confidentiality of HL7 terminology 7.0.1.
      element('confidentialityCode', { code: 'N', codeSystem: '2.16.840.1.113883.5.25' }),
      recordTarget(head),
      authorElement(head),
      element('custodian', {}, [
        element('assignedCustodian', {}, [
          element('representedCustodianOrganization', {}, [element('id', { root: CLINIC_ROOT })]),
        ]),
      ]),
      visitElement(head),
      element('x:record', { status: head.status }),
      element('x:indication', {}, head.indication),
      element('x:conclusion', { concern: head.concern }, head.conclusion),
      bodyOf(itemsOfExam(exam)),
    ];
    return `${element(header, namespaces, parts)}\n`;
  },
};

function recordTarget(head: Head): string {
  const sex = Object.entries(names.head.sexWords).find(([, meaning]) => meaning === head.sex)?.[0];
  const named = head.family !== undefined || head.given !== undefined;
  const name = named
    ? [element('family', {}, head.family), element('given', {}, head.given)]
    : head.name;
  return element('recordTarget', {}, [
    element('patientRole', {}, [
      idElement(head.worker),
      element('patient', {}, [
        head.patient === undefined ? '' : idElement(head.patient),
        element('name', {}, name),
        element('administrativeGenderCode', {
          code: sex,
          codeSystem: sex && '2.16.840.1.113883.5.1',
          nullFlavor: sex === undefined ? 'UNK' : undefined,
        }),
        element('birthTime', { value: head.born && compactTime(head.born) }),
      ]),
    ]),
  ]);
}

function idElement(extension: string | undefined): string {
  return extension === undefined
    ? element('id', { nullFlavor: 'NI' })
    : element('id', { root: CLINIC_ROOT, extension });
}

function authorElement(head: Head): string {
  return element('author', {}, [
    element('time', { value: compactTime(head.recorded) }),
    element('assignedAuthor', {}, [
      idElement(head.examinerNumber),
      element('assignedPerson', {}, [element('name', {}, head.examiner)]),
    ]),
  ]);
}

function visitElement({ start, end }: Head): string {
  return element('componentOf', {}, [
    element('encompassingEncounter', {}, [
      element('effectiveTime', {}, [
        element('low', { value: compactTime(start) }),
        element('high', { value: end && compactTime(end) }),
      ]),
    ]),
  ]);
}

function bodyOf(items: readonly Item[]): string {
  const section = element('section', {}, [
    element('templateId', { root: PHYSICAL_EXAM_TEMPLATE }),
    element('code', { code: PHYSICAL_FINDINGS, codeSystem: LOINC_OID }),
    element('title', {}, 'Physical findings'),
    element('text', {}, 'See the entries.'),
    ...items.map((item) => element('entry', {}, [observation(item)])),
  ]);
  return element('component', {}, [
    element('structuredBody', {}, [element('component', {}, [section])]),
  ]);
}

function observation(item: Item): string {
  const { code, value, region, side, methods = [], conditions = [], at, group, note } = item;
  return element('observation', { classCode: 'OBS', moodCode: 'EVN' }, [
    element('code', { code }),
    element('text', {}, note),
    element('statusCode', { code: 'completed' }),
    element('effectiveTime', { value: at && compactTime(at) }),
    valueElement(value),
    ...methods.map((method) => element('methodCode', { code: method })),
    ...conditions.map((condition) =>
      element('methodCode', { nullFlavor: 'OTH' }, [element('translation', { code: condition })]),
    ),
    siteElement(region, side),
    group === undefined
      ? ''
      : element('reference', { typeCode: 'REFR' }, [
          element('externalObservation', { classCode: 'OBS', moodCode: 'EVN' }, [idElement(group)]),
        ]),
  ]);
}

function valueElement(value: ItemValue): string {
  const type = (name: string, more: object = {}) => ({ 'xsi:type': name, ...more });
  if ('word' in value) return element('value', type('CD', { code: value.word }));
  if ('text' in value) return element('value', type('ST'), value.text);
  if ('count' in value) return element('value', type('INT', { value: String(value.count) }));
  const { number, comparator, unit } = value;
  if (comparator === undefined) return element('value', type('PQ', { value: number, unit }));
  // PQ has no comparator, and an interval could not be told from a range. A unit such as `1` cannot
  // stand behind a number; it is the one that the mapping states.
  const text = /^\p{L}/u.test(unit) ? `${valueText(value)} ${unit}` : valueText(value);
  return element('value', type('ST'), text);
}

function siteElement(region: string | undefined, side: string | undefined): string {
  const qualifier =
    side === undefined
      ? []
      : [
          element('qualifier', {}, [
            element('name', { code: LATERALITY, codeSystem: '2.16.840.1.113883.6.96' }),
            element('value', { code: side }),
          ]),
        ];
  const code = region === undefined && side !== undefined ? { nullFlavor: 'NI' } : { code: region };
  return element('targetSiteCode', code, qualifier);
}
