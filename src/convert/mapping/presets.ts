/** What a preset says of each syntax; a mapping that uses it says the rest. */
export const presets: { readonly [name: string]: object } = { 'c-cda': cCda() };

/** The mapping with its preset below it; anything that is no mapping is given back as it is. */
export function withPreset(value: unknown): unknown {
  if (!isObject(value)) return value;
  const { use } = value;
  if (typeof use !== 'string' || !Object.hasOwn(presets, use)) return value;
  return joined(presets[use], value);
}

function joined(below: unknown, above: unknown): unknown {
  if (!isObject(below) || !isObject(above)) return above;
  const result: { [name: string]: unknown } = { ...below };
  for (const [name, value] of Object.entries(above)) {
    result[name] = Object.hasOwn(below, name) ? joined(below[name], value) : value;
  }
  return result;
}

function isObject(value: unknown): value is { readonly [name: string]: unknown } {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/**
 * C-CDA R2.1: the US Realm Header (2.16.840.1.113883.10.20.22.1.1) and the Physical Exam Section
 * (2.16.840.1.113883.10.20.2.10). The document id with its time names the exam; each number of the
 * patient stands under its own OID. A narrative is a note of its section and is never read as codes.
 */
function cCda(): object {
  const header = 'ClinicalDocument';
  const role = `${header}/recordTarget/patientRole`;
  const visit = `${header}/componentOf/encompassingEncounter/effectiveTime`;
  const written = `${header}/effectiveTime/@value`;
  return {
    source: { syntax: 'cda' },
    exam: {
      id: {
        prefix: 'cda',
        from: [`${header}/id/@root`],
        also: [`${header}/id/@extension`, written],
      },
      status: { value: 'final' },
      subject: {
        identifiers: [
          { from: `${role}/id/@extension`, system: 'urn:oid:', oidFrom: `${role}/id/@root` },
        ],
        family: `${role}/patient/name/family`,
        given: `${role}/patient/name/given`,
        birthDate: `${role}/patient/birthTime/@value`,
        gender: {
          from: `${role}/patient/administrativeGenderCode/@code`,
          // Code system v3-AdministrativeGender of HL7 terminology.
          words: { F: 'female', M: 'male', UN: 'other' },
        },
      },
      performed: {
        start: {
          // Not the service event: in a summary of care it is the whole time of care.
          from: [`${visit}/@value`, `${visit}/low/@value`, written],
        },
      },
      recorded: { from: written },
      examiner: {
        name: `${header}/author/assignedAuthor/assignedPerson/name/family`,
        fixed: { name: 'the author of the document' },
      },
      protocol: { id: 'full', version: '1.0.0' },
    },
    items: [
      {
        kind: 'section',
        code: ['section/code/@code'],
        value: 'section/text',
        map: { '29545-1': { kind: 'note' } },
      },
      // Entries whose codes the mapping does not know: each is one text.
      ...['observation', 'procedure', 'act', 'organizer'].flatMap((name) =>
        [name, `negated-${name}`].map((kind) => ({
          kind,
          code: [`${name}/code/@code`],
          value: `${name}/value`,
          map: {},
        })),
      ),
    ],
    layout: [
      'section/templateId/@root',
      'section/templateId/@extension',
      'section/id/@root',
      'section/id/@extension',
      'section/code/@codeSystem',
      'section/code/@codeSystemName',
      'section/code/@displayName',
      'section/title',
    ],
  };
}
