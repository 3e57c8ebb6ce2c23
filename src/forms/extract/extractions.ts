import type { FhirResource } from 'fhir/r4.js';
import { toR5 } from '../../fhir/to-r5.ts';
import type { FhirVersion } from '../../fhir/version.ts';
import type { FormDescription, FormItem } from '../form.ts';
import type { FormOptions } from '../options.ts';
import { below, filledBy, type Template } from './annotation.ts';
import { fromResponse, responseHead } from './head.ts';
import { merged } from './merged.ts';
import { exportProbe, type Probe } from './probe.ts';
import { type Asked, type Part, statementTemplates, type Templates } from './statements.ts';

/** What is extracted from a form. */
export interface Extractions {
  /** The templates, to be contained in the form. */
  readonly contained: readonly FhirResource[];
  /** By linkId of the item or group that it stands at, id of the template. */
  readonly at: ReadonlyMap<string, string>;
}

/**
 * Templates from which any engine for template-based extraction makes of a response what the export
 * makes of the same answers, one for each statement.
 * @see https://hl7.org/fhir/uv/sdc/extraction.html#template-based-extraction
 */
export function extractionsOf(
  form: FormDescription,
  options: FormOptions,
  version: FhirVersion,
): Extractions {
  const probe = exportProbe(form, options);
  const { statements, others } = askedIn(form.items);
  const templates = [
    ...others.flatMap((item) => otherTemplates(probe, item)),
    ...statements.flatMap((asked) => statementTemplates(probe, asked)),
  ];
  const at = new Map<string, string>();
  const contained = templates.map(([linkId, template]) => {
    const id = `extract-${at.size + 1}`;
    at.set(linkId, id);
    const { resourceType, ...rest } = template;
    const isReport = resourceType === 'DiagnosticReport';
    const whole = {
      resourceType,
      id,
      ...responseHead(),
      ...rest,
      ...(!isReport && fromResponse()),
    };
    // A template is no resource as the types have it before it is filled in.
    const resource = whole as unknown as FhirResource;
    return version === 'R5' ? (toR5(resource) as FhirResource) : resource;
  });
  return { contained, at };
}

interface AllAsked {
  readonly statements: readonly Asked[];
  /** Items that are not about a statement. */
  readonly others: readonly FormItem[];
}

function askedIn(items: readonly FormItem[]): AllAsked {
  const statements = new Map<string, Asked & { readonly parts: Map<string, Part> }>();
  const others: FormItem[] = [];
  const look = (inner: readonly FormItem[], above: string): void => {
    for (const item of inner) {
      const path = below(above, item.linkId);
      const { says } = item;
      if (says?.part === 'statement') {
        const { key, statement: beginning } = says;
        const known = statements.get(key) ?? { key, beginning, parts: new Map() };
        statements.set(key, known);
        known.parts.set(item.linkId, { item, path });
      } else if (says !== undefined) others.push(item);
      look(item.items ?? [], path);
    }
  };
  look(items, '%resource');
  return { statements: [...statements.values()], others };
}

function otherTemplates(probe: Probe, { linkId, says, options = [] }: FormItem): Templates {
  if (says?.part === 'protocol') return [[linkId, probe.protocol()]];
  if (says?.part !== 'conclusion') return [];
  if (says.member[0] === 'text') {
    return [[linkId, { ...probe.report(), _conclusion: filledBy('answer.value') }]];
  }
  const probes: Template[] = options.map(({ value }) => probe.concern(value));
  return [[linkId, merged(probes, { path: 'answer.value', options })]];
}
