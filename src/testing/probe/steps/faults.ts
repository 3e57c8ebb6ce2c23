import { objectOf, objectsOf, resourceOf, textOf } from '../../../deliver/stored/json.ts';
import { placeFrom, placeName } from '../../../deliver/stored/place.ts';
import { fromJson } from '../../../fhir/json/from-json.ts';
import { applyFault, faults as catalogue } from '../../faults/apply-fault.ts';
import type { ProbeContext, Step } from '../context.ts';
import type { FaultVerdict } from '../report/report.ts';
import { isHtmlOrNothing, saysError } from '../server/client.ts';
import type { HttpAnswer } from '../server/exchange.ts';
import { sentEntries, transactionText } from '../server/store.ts';
import { gone, removeAll } from './clean.ts';

export const faults: Step = {
  id: 'faults',
  title: 'a sample of faults is sent; what is refused leaves nothing behind',
  needsExam: true,
  run: async (context) => {
    if (context.settings.faults.length === 0) return { skipped: 'no faults were asked for' };
    const text = transactionText(context, context.exams.forFaults);
    const { value } = fromJson(text);
    if (typeof value !== 'object' || value === null) return undefined;
    const names = sentEntries(text).flatMap(({ url }) => (url.includes('?') ? [] : [url]));
    for (const id of context.settings.faults) {
      const mutant = applyFault(id, value, 1);
      const title = catalogue.find((fault) => fault.id === id)?.title ?? id;
      if (mutant === undefined) continue;
      // Until the answer is known, all of it may be there.
      for (const name of names) context.left.add(name);
      const answer = await context.client.send({ method: 'POST', path: '', body: mutant.text });
      const verdict = verdictOf(answer);
      context.faults.push({ fault: id, title, verdict, status: answer.status });
      await after(context, verdict, answer, id, names);
    }
    return undefined;
  },
};

function verdictOf(answer: HttpAnswer): FaultVerdict['verdict'] {
  const { status } = answer;
  if (status >= 500) return 'failed';
  if (status >= 400) return 'refused';
  if (status < 200 || status >= 300) return 'failed';
  const resource = resourceOf(fromJson(answer.text).value);
  const refused =
    resource !== undefined &&
    (saysError(resource) || statusesOf(resource).some((one) => /^4/.test(one)));
  return refused ? 'refused' : 'accepted';
}

function statusesOf(bundle: Parameters<typeof objectsOf>[0]): string[] {
  return objectsOf(bundle, 'entry').flatMap(
    (entry) => textOf(objectOf(entry, 'response'), 'status') ?? [],
  );
}

/** Tells of the verdict and sees to it that nothing of the fault stays on the server. */
async function after(
  context: ProbeContext,
  verdict: FaultVerdict['verdict'],
  answer: HttpAnswer,
  fault: string,
  names: readonly string[],
): Promise<void> {
  const { client, left } = context;
  if (verdict === 'refused' && isHtmlOrNothing(answer)) {
    client.tell({ misbehaviour: 'fault-without-outcome', severity: 'information', message: fault });
  }
  if (verdict === 'failed') {
    const message = `${fault}: status ${answer.status}`;
    client.tell({ misbehaviour: 'server-fault', severity: 'information', message });
  }
  if (verdict === 'accepted') {
    client.tell({ misbehaviour: 'fault-accepted', severity: 'information', message: fault });
    const bundle = resourceOf(fromJson(answer.text).value);
    const stored = objectsOf(bundle ?? {}, 'entry').flatMap(
      (entry) => placeFrom(textOf(objectOf(entry, 'response'), 'location') ?? '') ?? [],
    );
    const all = new Set([...names, ...stored.map(placeName)]);
    for (const name of all) left.add(name);
    await removeAll(context, [...all]);
    return;
  }
  // The report stands first and the last entry last: if both are gone, none was stored on the way.
  const looked = [names[0], names.at(-1)].filter((name) => name !== undefined);
  for (const name of looked) {
    if (await gone(context, name)) continue;
    client.tell({ misbehaviour: 'stored-in-part', severity: 'error', message: fault });
    await removeAll(context, names);
    return;
  }
  for (const name of names) left.delete(name);
}
