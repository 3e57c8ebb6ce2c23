import { cutBundle } from '../../../deliver/cut.ts';
import { toBundleOrThrow } from '../../../export/to-bundle.ts';
import { toJson } from '../../../fhir/json/to-json.ts';
import type { Step } from '../context.ts';
import { Misbehaved } from '../misbehaviour.ts';
import { storeText, transactionOptions } from '../server/store.ts';

/** Limits in use: entries of hosted services and platforms, from their documentation, read 2026. */
const limits = [500, 160, 50, 25];

/** A large exam is offered whole, then in ever smaller bundles, until one is taken. */
export const size: Step = {
  id: 'size',
  title: 'the largest transaction that the server takes',
  needsExam: true,
  run: async (context) => {
    const { settings, measured, exams } = context;
    if (settings.entries === 0) return { skipped: 'not asked for' };
    const whole = toBundleOrThrow(exams.large, transactionOptions(context));
    const count = whole.entry?.length ?? 0;
    for (const most of [count, ...limits.filter((limit) => limit < count)]) {
      const [first] = cutBundle(whole, { most }).value ?? [];
      if (first === undefined) break;
      const sent = first.entry?.length ?? 0;
      try {
        await storeText(context, toJson(first));
        measured.taken = sent;
        return undefined;
      } catch (thrown) {
        if (!(thrown instanceof Misbehaved) || !isRefusal(thrown)) throw thrown;
        context.unknownIds = false;
        measured.refused = sent;
        const message = `${thrown.message} to a transaction of ${sent} entries`;
        context.client.tell({
          misbehaviour: thrown.misbehaviour,
          severity: 'information',
          message,
        });
      }
    }
    return undefined;
  },
};

/** A server may have a limit: that is no fault. */
function isRefusal({ misbehaviour }: Misbehaved): boolean {
  return misbehaviour === 'unexpected-status' || misbehaviour === 'server-fault';
}
