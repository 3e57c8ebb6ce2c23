import { profileUrl } from '../../fhir/names/profile-names.ts';
import { fhirVersionNumber } from '../../fhir/version.ts';
import { type Definition, head, ownCopyright, type PackageOrder } from './head.ts';
import { ownSearches } from './search-parameters.ts';

type Interaction = 'read' | 'vread' | 'create' | 'update' | 'search-type';

interface Held {
  readonly type: string;
  readonly profiles?: readonly Parameters<typeof profileUrl>[1][];
  /** Searches by what FHIR defines, with their types. */
  readonly searches?: readonly (readonly [name: string, type: string])[];
}

const patient = ['patient', 'reference'] as const;
const identifier = ['identifier', 'token'] as const;
const date = ['date', 'date'] as const;
const code = ['code', 'token'] as const;

/** What an exam is stored as, and how it is found again. */
const content: readonly Held[] = [
  {
    type: 'DiagnosticReport',
    profiles: ['face-neck-report'],
    searches: [identifier, patient, date, code],
  },
  {
    type: 'Observation',
    profiles: [
      'face-neck-observation',
      'face-neck-finding',
      'face-neck-region-state',
      'face-neck-sensation',
      'face-neck-sensation-comparison',
      'face-neck-test',
      'face-neck-measurement',
      'face-neck-symptom',
      'face-neck-region-group',
    ],
    searches: [identifier, patient, date, code, ['code-value-concept', 'composite']],
  },
  { type: 'Provenance', searches: [['target', 'reference']] },
  { type: 'ServiceRequest', searches: [identifier, patient] },
  { type: 'BodyStructure', searches: [identifier, patient] },
  { type: 'DetectedIssue', searches: [identifier, patient] },
  { type: 'Composition', searches: [patient, date] },
  { type: 'DocumentReference', searches: [identifier, patient] },
];

/** Pictures, which R5 has no type of their own for. */
const pictures: Readonly<Record<PackageOrder['version'], readonly Held[]>> = {
  R4: [{ type: 'Media', searches: [identifier, patient] }],
  R5: [],
};

/** People, places and things, which are matched and never changed. */
const shared = [
  'Patient',
  'Practitioner',
  'PractitionerRole',
  'Organization',
  'Device',
  'Encounter',
];

/** What a server must do for exams to be stored, found and checked; and what the library does as its client. */
export function capabilityStatements(order: PackageOrder): Definition[] {
  return [
    statement(order, 'exam-server', {
      title: 'A server for examinations of face and neck',
      description:
        'What a server must hold and do so that examinations can be stored, found again by site, side and sign, and checked.',
      rest: {
        mode: 'server',
        documentation:
          'Exams come as transactions. The codes, value sets and profiles of this package are installed, so that codes are validated, and searches below a region answered.',
        resource: [
          ...[...content, ...pictures[order.version]].map((held) => heldResource(order, held)),
          ...shared.map((type) => heldResource(order, { type, searches: [identifier] }, true)),
          ...terminology,
        ],
        interaction: [{ code: 'transaction' }],
      },
    }),
    statement(order, 'exam-client', {
      title: 'A client that delivers examinations',
      description:
        'What the library does towards a server: it reads what the server declares, sends an exam as transactions of the size that the server takes, and reads an exam back where it is asked to.',
      rest: {
        mode: 'client',
        documentation:
          'A statement that an exam no longer holds is sent as entered-in-error; nothing is deleted. People, places and devices are created where they are missing, and not updated.',
        resource: [...contentTypes(order), ...shared].map((type) => ({
          type,
          interaction: [{ code: 'read' }, { code: 'create' }, { code: 'update' }],
        })),
        interaction: [{ code: 'transaction' }],
      },
    }),
  ];
}

function contentTypes({ version }: PackageOrder): string[] {
  return [...content, ...pictures[version]].map(({ type }) => type);
}

function statement(
  order: PackageOrder,
  id: string,
  { title, description, rest }: { title: string; description: string; rest: object },
): Definition {
  return {
    ...head(order, 'CapabilityStatement', id, {
      title,
      version: order.packageVersion,
      description,
    }),
    copyright: ownCopyright,
    kind: 'requirements',
    fhirVersion: fhirVersionNumber[order.version],
    format: ['json'],
    implementationGuide: [`${order.base}/ImplementationGuide/guide`],
    rest: [rest],
  };
}

function heldResource(order: PackageOrder, held: Held, conditional = false): object {
  const { type, profiles = [], searches = [] } = held;
  const interactions: readonly Interaction[] = ['read', 'create', 'update', 'search-type'];
  const searchParam = [
    ...searches.map(([name, kind]) => ({ name, type: kind })),
    ...(type === 'Observation' ? ownSearches(order) : []),
  ];
  return {
    type,
    ...(profiles.length > 0 && {
      supportedProfile: profiles.map((name) => profileUrl(order.base, name)),
    }),
    interaction: interactions.map((each) => ({ code: each })),
    ...(conditional && { conditionalCreate: true }),
    ...(searchParam.length > 0 && { searchParam }),
  };
}

const operations = 'http://hl7.org/fhir/OperationDefinition';
const operation = (type: string, name: string): object => ({
  name,
  definition: `${operations}/${type}-${name}`,
});
const reads = [{ code: 'read' }, { code: 'search-type' }] as const;

/** @see https://hl7.org/fhir/R4/terminology-service.html */
const terminology = [
  {
    type: 'CodeSystem',
    interaction: reads,
    operation: ['lookup', 'validate-code', 'subsumes'].map((name) => operation('CodeSystem', name)),
  },
  {
    type: 'ValueSet',
    interaction: reads,
    operation: ['expand', 'validate-code'].map((name) => operation('ValueSet', name)),
  },
  { type: 'ConceptMap', interaction: reads, operation: [operation('ConceptMap', 'translate')] },
  { type: 'StructureDefinition', interaction: reads },
  { type: 'SearchParameter', interaction: reads },
];
