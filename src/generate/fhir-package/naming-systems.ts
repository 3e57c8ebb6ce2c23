import { identifierSystem } from '../../fhir/names/code-systems.ts';
import { type Definition, head, type PackageOrder } from './head.ts';

/** What identifiers of ours name, by the last part of their system. */
const systems = {
  exam: 'The id of an examination, as the recording system gives it',
  statement:
    'A statement or another part of an examination: the id of the examination, a bar, and its key',
  tracking: 'A lesion, node or lump that is followed from one examination to the next',
} as const;

/** The identifier systems that an export uses unless the clinic names its own. */
export function namingSystems(order: PackageOrder): Definition[] {
  return Object.entries(systems).map(([name, description]) => {
    const [id, value] = [name, identifierSystem(order.base, name as keyof typeof systems)]; // a key of it
    const {
      url,
      version,
      title,
      experimental: _,
      ...rest
    } = head(order, 'NamingSystem', id, {
      title: `Identifiers of kind ${name}`,
      version: order.packageVersion,
      description,
    });
    return {
      ...rest,
      // R4 has none of these three.
      ...(order.version === 'R5' && { url, version, title }),
      kind: 'identifier',
      uniqueId: [{ type: 'uri', value, preferred: true }],
    };
  });
}
