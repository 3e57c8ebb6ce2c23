import { parse, v5 } from 'uuid';

/** Namespace of all ids of this library: the UUID v5 of its canonical base in the URL namespace. */
const LIBRARY_NAMESPACE: string = /*@__PURE__*/ v5('https://face-neck-fhir.example/fhir', v5.URL);

/**
 * Ids of the resources of one exam: UUID v5 of the exam's identity and a stable name, so that the
 * same exam always gives the same ids and re-sending updates.
 * @see https://www.rfc-editor.org/rfc/rfc9562 section 5.5
 */
export function idsOf(examSystem: string, examId: string): (name: string) => string {
  // Bytes, because parsing the namespace again for each id costs more than the hash.
  const namespace = parse(v5(bytesOf(`${examSystem}|${examId}`), LIBRARY_NAMESPACE));
  const known = new Map<string, string>();
  return (name) => {
    let id = known.get(name);
    if (id === undefined) {
      id = v5(bytesOf(name), namespace);
      known.set(name, id);
    }
    return id;
  };
}

/** What several exams can name: whoever and whatever is known by an identity of its own. */
export type SharedType =
  | 'Patient'
  | 'Practitioner'
  | 'PractitionerRole'
  | 'Organization'
  | 'Encounter'
  | 'Device';

/**
 * Id of a person, place or device: UUID v5 of its own identity, so that all exams that name it share
 * one resource. Whoever can guess the identity can find the id again: it hides nothing.
 * @param identity for example system and value of its first identifier
 */
export function sharedId(type: SharedType, identity: Identity): string {
  return v5(bytesOf(JSON.stringify([type, ...identity])), LIBRARY_NAMESPACE);
}

/** Words that tell one person, place or device from all others of its type. */
export type Identity = readonly string[];

const encoder = /*@__PURE__*/ new TextEncoder();

/** UTF-8; unlike `uuid` itself, it does not throw at half a surrogate pair in the text of another. */
function bytesOf(text: string): Uint8Array {
  return encoder.encode(text);
}
