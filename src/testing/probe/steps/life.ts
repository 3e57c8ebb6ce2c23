import { differences } from '../../../deliver/stored/differences.ts';
import { identifierOf } from '../../../deliver/stored/json.ts';
import { placeName } from '../../../deliver/stored/place.ts';
import type { ProbeContext, Step } from '../context.ts';
import type { ProbeExams } from '../probe-exams.ts';
import { readBack, type Stored, storeExam } from '../server/store.ts';
import { found } from './search.ts';

export const store: Step = {
  id: 'store',
  title: 'a transaction with an exam is stored',
  run: async (context) => {
    context.stored = await storeExam(context, context.exams.first);
    return undefined;
  },
};

export const read: Step = {
  id: 'read-back',
  title: 'the exam read back is the exam that was sent',
  needsExam: true,
  run: async (context) => {
    if (context.stored === undefined) return undefined;
    context.changes = (await readBack(context, context.stored)).changes;
    return undefined;
  },
};

export const update: Step = next('update', 'a signed exam takes the place of the first', 'updated');
export const amend: Step = next('amend', 'a corrected exam takes its place', 'corrected');
export const retract: Step = next('retract', 'an exam entered in error says so', 'retracted');

export const resend: Step = {
  id: 're-send',
  title: 'sending the same again makes nothing new',
  needsExam: true,
  run: async (context) => {
    const before = context.stored;
    if (before === undefined) return undefined;
    const after = await storeExam(context, before.exam);
    context.stored = after;
    samePlaces(context, before, after);
    const newer = versionChanges(before, after).filter(({ newer }) => newer);
    if (newer.length > 0) {
      context.client.tell({
        misbehaviour: 'new-version',
        severity: 'information',
        message: `${newer.length} of ${after.resources.length} resources`,
      });
    }
    return undefined;
  },
};

function next(id: string, title: string, state: keyof ProbeExams): Step {
  return {
    id,
    title,
    needsExam: true,
    run: async (context) => {
      const before = context.stored;
      const after = await storeExam(context, context.exams[state]);
      context.stored = after;
      if (before !== undefined) {
        samePlaces(context, before, after);
        const stale = versionChanges(before, after).filter(
          ({ changed, newer }) => changed && !newer,
        );
        if (stale.length > 0) {
          context.client.tell({
            misbehaviour: 'same-version',
            severity: 'error',
            message: `${stale.length} of ${after.resources.length} resources`,
          });
        }
      }
      await readBack(context, after);
      await onlyOneReport(context, after);
      return undefined;
    },
  };
}

/** The report is there once, in its new state and in no other. */
async function onlyOneReport(context: ProbeContext, stored: Stored): Promise<void> {
  const report = stored.resources.find(({ sent }) => sent.resourceType === 'DiagnosticReport');
  if (report === undefined) return;
  const identifier = encodeURIComponent(identifierOf(report.sent));
  const status = String(report.sent['status']);
  const asked = [
    [`DiagnosticReport?identifier=${identifier}`, 1],
    [`DiagnosticReport?identifier=${identifier}&status=${status}`, 1],
    [`DiagnosticReport?identifier=${identifier}&status=registered`, 0],
  ] as const;
  for (const [path, expected] of asked) {
    const names = await found(context, path, expected);
    if (names.size > expected) {
      const misbehaviour = expected === 0 ? 'found-too-much' : 'duplicated';
      const message = `${names.size} reports in place of ${expected}`;
      context.client.tell({ misbehaviour, severity: 'error', message });
    }
    if (names.size < expected) {
      const message = 'the report in its new state';
      context.client.tell({ misbehaviour: 'not-found', severity: 'error', message });
    }
  }
}

function samePlaces({ client }: ProbeContext, before: Stored, after: Stored): void {
  const places = new Map(before.resources.map(({ fullUrl, place }) => [fullUrl, place]));
  const moved = after.resources.filter(({ fullUrl, place }) => {
    const old = places.get(fullUrl);
    return old !== undefined && placeName(old) !== placeName(place);
  });
  if (moved.length === 0) return;
  const message = `${moved.length} of ${after.resources.length} resources`;
  client.tell({ misbehaviour: 'duplicated', severity: 'error', message });
}

/** Resources in both states whose versions are known. */
function versionChanges(
  before: Stored,
  after: Stored,
): { readonly changed: boolean; readonly newer: boolean }[] {
  const old = new Map(before.resources.map((resource) => [resource.fullUrl, resource]));
  return after.resources.flatMap(({ fullUrl, place, sent }) => {
    const earlier = old.get(fullUrl);
    const version = earlier?.place.version;
    if (earlier === undefined || version === undefined || place.version === undefined) return [];
    const changed = differences(earlier.sent, sent).some(({ path }) => path[0] !== 'text');
    return [{ changed, newer: version !== place.version }];
  });
}
