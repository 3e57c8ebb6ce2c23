import type { DiagnosticReport, FhirResource, Observation } from 'fhir/r4.js';
import differences from './extraction-differences.json' with { type: 'json' };

/** Differences between what is extracted and what is exported, by id of their row in the table. */
export const known: ReadonlySet<string> = new Set(differences.map(({ id }) => id));

type Compared = Observation | DiagnosticReport;

/** Takes what a row of the table says out of a resource, and tells that it was there. */
export class Comparison {
  /** Rows that were met. */
  readonly met = new Set<string>();
  readonly #linkIds: ReadonlySet<string>;

  /** @param linkIds of the form: a statement under another key was chosen from a list */
  constructor(linkIds: ReadonlySet<string>) {
    this.#linkIds = linkIds;
  }

  /** What our export says, less what no template can say. */
  exported(resources: readonly FhirResource[]): string[] {
    return resources.flatMap((resource) => {
      if (
        resource.resourceType === 'Practitioner' ||
        resource.resourceType === 'PractitionerRole'
      ) {
        return this.#none('people');
      }
      if (!isCompared(resource)) throw new Error(`exported: ${resource.resourceType}`);
      if (resource.resourceType === 'Observation' && resource.hasMember !== undefined) {
        return this.#none('groups');
      }
      return canonical(this.#fitted(resource));
    });
  }

  /** What was extracted, less what it says of the response alone. */
  extracted(resources: readonly FhirResource[], authored: string, response: string): string[] {
    return resources.map((resource) => {
      if (!isCompared(resource)) throw new Error(`extracted: ${resource.resourceType}`);
      const { effectiveDateTime, issued, ...rest } = resource;
      if (effectiveDateTime !== authored || issued !== authored) throw new Error('no time');
      if (!('derivedFrom' in rest)) return canonical(rest);
      const { derivedFrom, ...last } = rest;
      const [only] = derivedFrom ?? [];
      if (only?.reference !== response) throw new Error('not from the response');
      this.met.add('derived-from');
      return canonical(last);
    });
  }

  #none(row: string): [] {
    this.met.add(row);
    return [];
  }

  #fitted(resource: Compared): object {
    const { id, identifier, text, effectiveDateTime, issued, performer, ...rest } = resource;
    this.met.add('identity').add('time').add('people');
    if (text !== undefined) this.met.add('narrative');
    if (rest.resourceType === 'DiagnosticReport') {
      const { result: _, ...report } = rest;
      this.met.add('report-results');
      return report;
    }
    const key = identifier?.[0]?.value?.split('|').slice(1).join('|') ?? '';
    return this.#statement(key, rest);
  }

  #statement(key: string, rest: Omit<Observation, 'id' | 'identifier'>): object {
    const { dataAbsentReason, bodySite, code } = rest;
    const [kind = ''] = key.split('/');
    if (kind === 'sensation') this.met.add('sensation-apart');
    if (/^(?:movement|function-test)$/.test(kind) && dataAbsentReason !== undefined) {
      this.met.add('test-without-result');
      const { dataAbsentReason: _, ...last } = rest;
      return { ...last, component: [{ code: limit, dataAbsentReason }] };
    }
    if (this.#linkIds.has(key)) return rest;
    if (kind === 'finding') {
      if ((code.coding?.length ?? 0) > 1) this.met.add('further-sign');
      return { ...rest, code: { ...code, coding: code.coding?.slice(0, 1) } };
    }
    if (kind === 'measurement' && bodySite !== undefined) {
      const { extension, ...site } = bodySite;
      if (extension !== undefined) this.met.add('chosen-place');
      return { ...rest, bodySite: site };
    }
    return rest;
  }
}

const limit = {
  coding: [
    {
      system: 'https://face-neck-fhir.example/fhir/CodeSystem/items',
      code: 'limit',
      display: 'Limit of the examination',
    },
  ],
  text: 'Limit of the examination',
};

function isCompared(resource: FhirResource): resource is Compared {
  return resource.resourceType === 'Observation' || resource.resourceType === 'DiagnosticReport';
}

/** In lists of codings, interpretations and components the order says nothing. */
function canonical(resource: object): string {
  const sorted = (value: unknown): unknown => {
    if (Array.isArray(value)) {
      return value.map(sorted).sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
    }
    if (typeof value !== 'object' || value === null) return value;
    const members = Object.entries(value).map(([name, one]) => [name, sorted(one)] as const);
    return Object.fromEntries(members.sort(([a], [b]) => (a < b ? -1 : 1)));
  };
  return JSON.stringify(sorted(resource));
}
