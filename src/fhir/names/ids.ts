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
  const namespace = parse(v5(`${examSystem}|${examId}`, LIBRARY_NAMESPACE));
  const encoder = new TextEncoder();
  const known = new Map<string, string>();
  return (name) => {
    let id = known.get(name);
    if (id === undefined) {
      id = v5(encoder.encode(name), namespace);
      known.set(name, id);
    }
    return id;
  };
}
