import { atProperty, type Fault, type Json } from './places.ts';

/** Puts another value in place of an element of a data type; a member of a list is the first. */
export function atType(wanted: string, value: Json): Fault {
  return atProperty(
    ({ type }) => type === wanted,
    (holder, name, { list }) => {
      holder[name] = list ? [value] : value;
    },
  );
}

/** Puts another value in place of a primitive; a member of a list is the first. */
export function atPrimitive(wanted: string, value: unknown): Fault {
  return atProperty(
    ({ type }) => type === wanted,
    (holder, name, { list }) => {
      holder[name] = list ? [value] : value;
    },
  );
}

/** A change of the resource itself. */
export function atRoot(change: (resource: Json) => unknown): Fault {
  return (resource) => {
    change(resource);
    return true;
  };
}

/** In resources that have narrative, extensions and contained resources. */
export function atDomain(change: (resource: Json) => unknown): Fault {
  return (resource) => {
    if (['Bundle', 'Binary', 'Parameters'].includes(String(resource['resourceType']))) return false;
    change(resource);
    return true;
  };
}

/** With these parts in a narrative that is sound otherwise. */
export function atNarrative(change: Json): Fault {
  return atDomain((resource) => {
    const sound = '<div xmlns="http://www.w3.org/1999/xhtml">Yearly check</div>';
    resource['text'] = { status: 'generated', div: sound, ...change };
    // As it is written, without what is undefined.
    resource['text'] = JSON.parse(JSON.stringify(resource['text']));
  });
}

/** With one contained resource. */
export function contained(inner: Json): Fault {
  return atDomain((resource) => {
    resource['contained'] = [inner];
  });
}

/** With one extension. */
export function extension(value: Json): Fault {
  return atDomain((resource) => {
    resource['extension'] = [value];
  });
}
