import { type ElementForm, elementRow, type TypeRows } from '../../fhir/xml/element-table.ts';
import type { XmlTypes } from '../../fhir/xml/from-xml.ts';
import { type Definitions, onDemand, type TypeInfo } from '../elements/definitions.ts';

/** The elements of every type in the order that XML keeps, from the tables of the validation. */
export function xmlTypes(definitions: Definitions): XmlTypes {
  const known = onDemand((name) => {
    const info = definitions.types.get(name);
    return info && rowsOf(info);
  });
  return { version: definitions.fhirVersion, types: (type) => known.get(type) };
}

/** @see https://hl7.org/fhir/R4/xml.html: elements as defined, id and url of an extension as attributes */
function rowsOf({ name: type, properties, isResource }: TypeInfo): TypeRows {
  const own: ElementForm[] = [];
  for (const [name, property] of properties) {
    if (name.startsWith('_') || name === 'extension') continue;
    const order = own.at(-1)?.order ?? 0;
    const before = own.at(-1)?.name;
    const choice = property.choice;
    const together =
      choice !== undefined && before !== undefined && choice.properties.includes(before);
    const attribute = type === 'Extension' && name === 'url';
    own.push({
      name,
      type: property.type,
      list: property.list,
      attribute,
      order: order + (together ? 0 : 2),
    });
  }
  const id = { name: 'id', type: 'string', list: false, attribute: !isResource, order: 0 };
  const rows = [id, ...own];
  if (properties.has('extension')) {
    // Extensions stand first in a type, and in a resource right before those that modify it.
    const modifier = rows.findIndex(({ name }) => name === 'modifierExtension');
    const at = modifier === -1 ? 1 : modifier;
    const order = (rows[at - 1]?.order ?? 0) + 1;
    rows.splice(at, 0, {
      name: 'extension',
      type: 'Extension',
      list: true,
      attribute: false,
      order,
    });
  }
  return new Map(rows.map((row, place) => [row.name, elementRow(row, place)]));
}
