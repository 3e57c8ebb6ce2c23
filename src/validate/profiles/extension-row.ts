import type { ExtensionPart, ExtensionRow } from '../elements/table-types.ts';
import { type SnapshotElement, type Structure, typeName } from './structure.ts';

/** Where an extension may stand and what it may hold, from its definition. */
export function extensionRow({ context, elements }: Structure): ExtensionRow {
  const { value, codes, to, parts } = content(elements, 'Extension');
  return {
    on: contextPlaces(context),
    ...(value && { value }),
    ...(codes && { codes }),
    ...(to && { to }),
    ...(elements[0]?.isModifier && { modifier: true }),
    ...(parts && { parts }),
  };
}

export function contextPlaces(context: Structure['context']): string[] {
  return context.map(({ type, expression }) => {
    if (type === 'extension') return `extension ${typeName(expression)}`;
    // A FHIRPath expression can be true anywhere.
    return type === 'fhirpath' ? 'Element' : expression;
  });
}

interface Content {
  readonly value?: readonly string[];
  readonly codes?: string;
  readonly to?: readonly string[];
  readonly parts?: Readonly<Record<string, ExtensionPart>>;
}

/** What the elements below one extension, by its id in the snapshot, let it hold. */
function content(elements: readonly SnapshotElement[], id: string): Content {
  const value = elements.find((each) => each.id.startsWith(`${id}.value`) && each.max > 0);
  const parts = elements
    .filter((each) => each.id.replace(/[^:.]*$/, '') === `${id}.extension:` && each.max > 0)
    .map((part) => ({ part, url: partUrl(elements, part) }));
  const types = [...new Set((value?.types ?? []).map(({ code }) => code))];
  const targets = (value?.types ?? []).flatMap((type) => type.targets.map(typeName));
  const { strength, valueSet } = value?.binding ?? {};
  return {
    ...(types.length > 0 && { value: types }),
    ...(strength === 'required' && valueSet && { codes: valueSet }),
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

function partUrl(elements: readonly SnapshotElement[], part: SnapshotElement): string | undefined {
  const url = elements.find(({ id }) => id === `${part.id}.url`)?.fixed;
  // A part that is an extension of its own has its url in the profile of the type.
  return typeof url === 'string' ? url : part.types[0]?.profiles[0];
}

function extensionPart(elements: readonly SnapshotElement[], part: SnapshotElement): ExtensionPart {
  const { value, codes, parts } = content(elements, part.id);
  return {
    ...(part.min > 0 && { min: part.min }),
    ...(Number.isFinite(part.max) && { max: part.max }),
    ...(value && { value }),
    ...(codes && { codes }),
    ...(parts && { parts }),
  };
}
