import {
  identifierOf,
  isJson,
  type JsonResource,
  objectOf,
  objectsOf,
  resourceOf,
  textOf,
} from '../../../deliver/stored/json.ts';
import { placeName } from '../../../deliver/stored/place.ts';
import type { ProbeContext, Step } from '../context.ts';
import { Misbehaved } from '../misbehaviour.ts';
import {
  placeOf,
  type Stored,
  type StoredResource,
  sentEntries,
  transactionText,
} from '../server/store.ts';

/** A search as a clinic makes it, and the resources of the exam that it must find, and no others. */
interface Search {
  readonly type: string;
  /** The parameters that the server must have. */
  readonly params: readonly string[];
  readonly query: string;
  readonly expected: (resource: StoredResource) => boolean;
}

/** Pages of one search that are followed. */
const MOST_PAGES = 20;
/** How often a search that finds too little is made again, for servers that index later. */
const PATIENCE = 3;

/** @see https://hl7.org/fhir/R4/observation.html#search and diagnosticreport.html#search */
export const search: Step = {
  id: 'search',
  title: 'searches by patient, date, code and identifier find the exam',
  needsExam: true,
  run: async (context) => {
    const { stored, declared, client } = context;
    if (stored === undefined) return undefined;
    const others = identifiersOfOtherStates(context, stored);
    for (const one of searchesFor(stored, bodySiteParam(context))) {
      const known = declared?.searches.get(one.type);
      const missing = one.params.filter((param) => known !== undefined && !known.has(param));
      if (missing.length > 0) {
        client.tell({
          misbehaviour: 'not-declared',
          severity: 'information',
          message: `search of ${one.type} by ${missing.join(' and ')}`,
        });
      } else {
        await check(context, stored, one, others);
      }
    }
    if (bodySiteParam(context) === undefined) {
      client.tell({
        misbehaviour: 'not-declared',
        severity: 'information',
        message: 'search of Observation by body site, which FHIR leaves to the server',
      });
    }
    return undefined;
  },
};

/** FHIR has no such parameter for observations; a server can have its own. */
function bodySiteParam({ declared }: ProbeContext): string | undefined {
  return [...(declared?.searches.get('Observation') ?? [])].find((name) =>
    /^body-?site$/i.test(name),
  );
}

function searchesFor(stored: Stored, bodySite: string | undefined): Search[] {
  const patient = placeOf(stored, 'Patient').id;
  const ofType = (type: string) => (one: StoredResource) => one.sent.resourceType === type;
  const [subject] = stored.resources.filter(ofType('Patient'));
  const report = ofType('DiagnosticReport');
  const one = stored.resources.find((each) => codingOf(each, 'bodySite') !== undefined);
  const code = one && codingOf(one, 'code');
  const site = one && codingOf(one, 'bodySite');
  const observation = (property: string, coding: string | undefined) => (each: StoredResource) =>
    each.sent.resourceType === 'Observation' && codingsOf(each, property).includes(coding ?? '');
  const rows: (Search | undefined)[] = [
    subject && {
      type: 'Patient',
      params: ['identifier'],
      query: `identifier=${encodeURIComponent(identifierOf(subject.sent))}`,
      expected: ofType('Patient'),
    },
    {
      type: 'DiagnosticReport',
      params: ['patient'],
      query: `patient=${patient}`,
      expected: report,
    },
    {
      type: 'Observation',
      params: ['patient'],
      query: `patient=${patient}`,
      expected: ofType('Observation'),
    },
    {
      type: 'DiagnosticReport',
      params: ['patient', 'date'],
      query: `patient=${patient}&date=2031-04-17`,
      expected: report,
    },
    {
      type: 'DiagnosticReport',
      params: ['patient', 'date'],
      query: `patient=${patient}&date=2031-04-19`,
      expected: () => false,
    },
    {
      type: 'DiagnosticReport',
      params: ['patient', 'code'],
      query: `patient=${patient}&code=${encodeURIComponent('http://loinc.org|29545-1')}`,
      expected: report,
    },
    {
      type: 'Observation',
      params: ['patient', 'code'],
      query: `patient=${patient}&code=${encodeURIComponent(code ?? '')}`,
      expected: observation('code', code),
    },
    one && {
      type: 'Observation',
      params: ['identifier'],
      query: `identifier=${encodeURIComponent(identifierOf(one.sent))}`,
      expected: (each) => each === one,
    },
    bodySite === undefined
      ? undefined
      : {
          type: 'Observation',
          params: [bodySite],
          query: `patient=${patient}&${bodySite}=${encodeURIComponent(site ?? '')}`,
          expected: observation('bodySite', site),
        },
  ];
  return rows.filter((row) => row !== undefined);
}

async function check(
  context: ProbeContext,
  stored: Stored,
  one: Search,
  others: ReadonlySet<string>,
): Promise<void> {
  const expected = stored.resources.filter(one.expected).map(({ place }) => placeName(place));
  const names = await found(context, `${one.type}?${one.query}`, expected.length);
  const missing = expected.filter((name) => !names.has(name)).length;
  const extra = [...names].filter(
    ([name, resource]) => !expected.includes(name) && !others.has(identifierOf(resource)),
  ).length;
  const by = `${one.type} by ${one.params.join(' and ')}`;
  if (missing > 0) {
    const message = `${by}: ${missing} of ${expected.length} are missing`;
    context.client.tell({ misbehaviour: 'not-found', severity: 'error', message });
  }
  if (extra > 0) {
    const message = `${by}: ${extra} too many`;
    context.client.tell({ misbehaviour: 'found-too-much', severity: 'error', message });
  }
}

/**
 * Identifiers of resources that only other states of the exam have. They stay on the server from an
 * earlier run of the same name.
 */
function identifiersOfOtherStates(context: ProbeContext, stored: Stored): ReadonlySet<string> {
  const { updated, corrected, retracted } = context.exams;
  const others = new Set(
    [updated, corrected, retracted].flatMap((exam) =>
      sentEntries(transactionText(context, exam)).map(({ sent }) => identifierOf(sent)),
    ),
  );
  for (const { sent } of stored.resources) others.delete(identifierOf(sent));
  return others;
}

/** What a search finds, by name; asked again a few times while that is less than expected. */
export async function found(
  context: ProbeContext,
  path: string,
  expected: number,
): Promise<ReadonlyMap<string, JsonResource>> {
  let names = await foundOnce(context, path);
  for (let again = 1; names.size < expected && again < PATIENCE; again++) {
    await context.settings.sleep(1000);
    names = await foundOnce(context, path);
    if (names.size >= expected) {
      const message = `after ${again} s`;
      context.client.tell({ misbehaviour: 'found-late', severity: 'information', message });
    }
  }
  return names;
}

async function foundOnce(
  { client }: ProbeContext,
  path: string,
): Promise<Map<string, JsonResource>> {
  const names = new Map<string, JsonResource>();
  let next: string | undefined = `${path}&_count=200`;
  for (let page = 0; next !== undefined; page++) {
    if (page >= MOST_PAGES) {
      const detail = `a search has more than ${MOST_PAGES} pages`;
      throw new Misbehaved('found-too-much', { detail });
    }
    const bundle = await client.resource({ method: 'GET', path: next }, 'Bundle');
    for (const entry of objectsOf(bundle, 'entry')) {
      const resource = resourceOf(entry['resource']);
      const matches = textOf(objectOf(entry, 'search'), 'mode') ?? 'match';
      if (resource !== undefined && matches === 'match') {
        names.set(`${resource.resourceType}/${String(resource['id'])}`, resource);
      }
    }
    const link = objectsOf(bundle, 'link').find((each) => textOf(each, 'relation') === 'next');
    const url = link && textOf(link, 'url');
    next = url === undefined ? undefined : client.pathOf(url);
    if (url !== undefined && next === undefined) throw new Misbehaved('redirect-to-other-host');
  }
  return names;
}

function codingOf(resource: StoredResource, property: string): string | undefined {
  return codingsOf(resource, property)[0];
}

/** `system|code` of the codings of a concept. */
function codingsOf({ sent }: StoredResource, property: string): string[] {
  const concept = sent[property];
  if (!isJson(concept)) return [];
  return objectsOf(concept, 'coding').map(
    (coding) => `${textOf(coding, 'system')}|${textOf(coding, 'code')}`,
  );
}
