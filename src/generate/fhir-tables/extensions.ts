import type { ExtensionPart, ExtensionRow, ExtensionTable } from '../../validate/table-types.ts';
import {
  type Definitions,
  type ElementDefinition,
  type StructureDefinition,
  typeName,
  withoutVersion,
} from './definitions.ts';

/** Types above the held ones, which contexts of extensions name too. */
const abstractTypes = [
  'Element',
  'BackboneElement',
  'Resource',
  'DomainResource',
  'CanonicalResource',
  'MetadataResource',
] as const;

/** Every extension that HL7 has published; of those that stand in none of the held types, only where. */
export function extensionTable(definitions: Definitions, types: readonly string[]): ExtensionTable {
  const held = new Set<string>([...types, ...abstractTypes]);
  const rows: [string, ExtensionRow][] = [];
  for (const found of definitions.structures.values()) {
    if (found.type !== 'Extension' || found.derivation !== 'constraint') continue;
    const on = contexts(found);
    const within = on.some(
      (place) => place.startsWith('extension ') || held.has(place.split('.')[0] ?? ''),
    );
    rows.push([typeName(found.url), within ? extensionRow(found, on) : { on }]);
  }
  return Object.fromEntries(rows.sort(([one], [other]) => (one < other ? -1 : 1)));
}

function contexts({ context = [] }: StructureDefinition): string[] {
  return context.map(({ type, expression }) => {
    if (type === 'extension') return `extension ${typeName(expression)}`;
    // A FHIRPath expression can be true anywhere.
    return type === 'fhirpath' ? 'Element' : expression;
  });
}

function extensionRow(found: StructureDefinition, on: readonly string[]): ExtensionRow {
  const { value, codes, to, parts } = content(found.snapshot.element, 'Extension');
  return {
    on,
    ...(value && { value }),
    ...(codes && { codes }),
    ...(to && { to }),
    ...(found.snapshot.element[0]?.isModifier && { modifier: true }),
    ...(parts && { parts }),
  };
}

interface Content {
  readonly value?: readonly string[];
  readonly codes?: string;
  readonly to?: readonly string[];
  readonly parts?: Readonly<Record<string, ExtensionPart>>;
}

/** What the elements below one extension, by its id in the snapshot, let it hold. */
function content(elements: readonly ElementDefinition[], id: string): Content {
  const value = elements.find((each) => each.id.startsWith(`${id}.value`) && each.max !== '0');
  const parts = elements
    .filter((each) => each.id.replace(/[^:.]*$/, '') === `${id}.extension:` && each.max !== '0')
    .map((part) => ({ part, url: partUrl(elements, part) }));
  const types = [...new Set((value?.type ?? []).map(({ code }) => code))];
  const targets = (value?.type ?? []).flatMap(({ targetProfile = [] }) =>
    targetProfile.map(typeName),
  );
  const { strength, valueSet } = value?.binding ?? {};
  return {
    ...(types.length > 0 && { value: types }),
    ...(strength === 'required' && valueSet && { codes: withoutVersion(valueSet) }),
    ...(targets.length > 0 && !targets.includes('Resource') && { to: [...new Set(targets)] }),
    // HL7 left the urls out of one definition, quantity-confidenceInterval: what it holds is not told.
    ...(parts.length > 0 &&
      parts.every(({ url }) => url !== undefined) && {
        parts: Object.fromEntries(
          parts.map(({ part, url }) => [url, extensionPart(elements, part)]),
        ),
      }),
  };
}

function partUrl(
  elements: readonly ElementDefinition[],
  part: ElementDefinition,
): string | undefined {
  const url = elements.find(({ id }) => id === `${part.id}.url`)?.fixedUri;
  // A part that is an extension of its own has its url in the profile of the type.
  return url ?? part.type?.[0]?.profile?.[0];
}

function extensionPart(
  elements: readonly ElementDefinition[],
  part: ElementDefinition,
): ExtensionPart {
  const { value, codes, parts } = content(elements, part.id);
  return {
    ...(part.min > 0 && { min: part.min }),
    ...(part.max !== '*' && { max: Number(part.max) }),
    ...(value && { value }),
    ...(codes && { codes }),
    ...(parts && { parts }),
  };
}
