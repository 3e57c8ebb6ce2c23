import { differences } from '../../../deliver/stored/differences.ts';
import { identifierOf, type JsonResource } from '../../../deliver/stored/json.ts';
import { placeName } from '../../../deliver/stored/place.ts';
import { toBundleOrThrow } from '../../../export/to-bundle.ts';
import { toJson } from '../../../fhir/json/to-json.ts';
import type { ProbeContext, Step } from '../context.ts';
import { Misbehaved } from '../misbehaviour.ts';
import { type StoredResource, storeText, transactionOptions } from '../server/store.ts';
import { found } from './search.ts';

/**
 * A patient who is matched is made once, and what is there is not written over.
 * @see https://hl7.org/fhir/R4/http.html#ccreate
 */
export const matching: Step = {
  id: 'matching',
  title: 'a patient who is there is matched, and not written over',
  needsExam: true,
  run: async (context) => {
    const { client, measured } = context;
    let first: StoredResource | undefined;
    try {
      first = await storePatient(context, true);
    } catch (thrown) {
      if (!(thrown instanceof Misbehaved) || thrown.misbehaviour !== 'unexpected-status') {
        throw thrown;
      }
      // It was answered, and nothing stored.
      context.unknownIds = false;
      measured.conditionalCreate = false;
      const message = `conditional creation: ${thrown.message}`;
      client.tell({ misbehaviour: 'not-declared', severity: 'information', message });
    }
    if (first === undefined) return undefined;
    const before = await read(context, first);
    const second = await storePatient(context, false);
    if (second === undefined) return undefined;
    const query = `Patient?identifier=${encodeURIComponent(identifierOf(first.sent))}`;
    const names = await found(context, query, 1);
    const once = names.size <= 1 && placeName(first.place) === placeName(second.place);
    measured.conditionalCreate = once;
    if (!once) {
      const message = 'a patient who was to be matched';
      client.tell({ misbehaviour: 'duplicated', severity: 'error', message });
    }
    const after = await read(context, first);
    const written = differences(before, after).some(({ path }) => path[0] !== 'meta');
    measured.overwrites = written;
    if (written) {
      const message = 'a patient who was to be matched is written over';
      client.tell({ misbehaviour: 'changed-content', severity: 'error', message });
    }
    return undefined;
  },
};

/** Sends a patient alone, to be matched; the second time with less known. */
async function storePatient(
  context: ProbeContext,
  whole: boolean,
): Promise<StoredResource | undefined> {
  const { matched } = context.exams;
  const { name: _, ...less } = matched.subject;
  const exam = whole ? matched : { ...matched, subject: less };
  const options = { ...transactionOptions(context), masterData: 'match' } as const;
  const bundle = toBundleOrThrow(exam, options);
  const entry = (bundle.entry ?? []).filter(({ resource }) => resource?.resourceType === 'Patient');
  const [stored] = await storeText(context, toJson({ ...bundle, entry }));
  return stored;
}

function read({ client }: ProbeContext, { place }: StoredResource): Promise<JsonResource> {
  return client.resource({ method: 'GET', path: placeName(place) }, 'Patient');
}
