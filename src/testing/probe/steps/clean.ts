import { toJson } from '../../../fhir/json/to-json.ts';
import type { ProbeContext, Step } from '../context.ts';

export const clean: Step = {
  id: 'clean',
  title: 'everything that the probe stored is deleted again',
  run: async (context) => {
    const { settings, left, client } = context;
    if (!settings.clean) return { skipped: `not asked for; ${left.size} resources may be left` };
    try {
      await removeAll(context, [...left]);
    } finally {
      if (left.size > 0) {
        const message = `${left.size} resources`;
        client.tell({ misbehaviour: 'left-behind', severity: 'error', message });
      }
    }
    if (context.unknownIds) {
      const message = 'a transaction was not answered, and the server gives the ids';
      client.tell({ misbehaviour: 'left-behind', severity: 'error', message });
    }
    return undefined;
  },
};

/** Rounds of single deletions: what others refer to can be deleted only after them. */
const ROUNDS = 4;

/** Deletes resources, together or else one by one, and strikes off what is gone. */
export async function removeAll(context: ProbeContext, names: readonly string[]): Promise<void> {
  const { client, left } = context;
  if (names.length === 0) return;
  const body = toJson({
    resourceType: 'Bundle',
    type: 'transaction',
    entry: names.map((url) => ({ request: { method: 'DELETE', url } })),
  });
  await client.send({ method: 'POST', path: '', body });
  let rest = await remaining(context, names);
  for (let round = 0; rest.length > 0 && round < ROUNDS; round++) {
    for (const path of rest) await client.send({ method: 'DELETE', path });
    const before = rest.length;
    rest = await remaining(context, rest);
    if (rest.length === before) break;
  }
  for (const name of names) if (!rest.includes(name)) left.delete(name);
}

async function remaining(context: ProbeContext, names: readonly string[]): Promise<string[]> {
  const rest: string[] = [];
  for (const name of names) if (!(await gone(context, name))) rest.push(name);
  return rest;
}

/** Whether a resource is not there, or deleted. @see https://hl7.org/fhir/R4/http.html#delete */
export async function gone({ client }: ProbeContext, name: string): Promise<boolean> {
  const { status } = await client.send({ method: 'GET', path: name });
  return status === 404 || status === 410;
}
