import type { FhirRelease } from '../../../corpus.ts';
import type { Json } from '../../places.ts';
import { bundle, entry, identified, patient } from './parts.ts';

/** Messages, and notifications of R5. */
export function messageCases(version: FhirRelease): Record<string, Json> {
  const r5 = version === 'R5';
  const event = { eventCoding: { system: 'http://vineyard.example/events', code: 'x' } };
  const header: Json = {
    resourceType: 'MessageHeader',
    id: 'm1',
    ...event,
    source: r5
      ? { endpointUrl: 'http://vineyard.example' }
      : { endpoint: 'http://vineyard.example' },
  };
  return {
    'message-sound': bundle('message', [entry(header)], { timestamp: identified.timestamp }),
    'message-of-patient-first': bundle('message', [entry(patient()), entry(header)]),
    'message-without-focus': bundle('message', [
      entry({ ...header, focus: [{ reference: 'Patient/p9' }] }),
    ]),
    'message-with-focus': bundle('message', [
      entry({ ...header, focus: [{ reference: 'Patient/p1' }] }),
      entry(patient()),
    ]),
    'message-with-orphan': bundle('message', [entry(header), entry(patient())]),
    'message-without-event': bundle('message', [entry({ ...header, eventCoding: undefined })]),
    'message-of-two-events': bundle(
      'message',
      [entry({ ...header, eventUri: 'http://vineyard.example/e' })].map((one) =>
        r5 ? { ...one, resource: { ...header, eventCanonical: 'http://vineyard.example/e' } } : one,
      ),
    ),
    ...(r5 && {
      notification: bundle('subscription-notification', [
        entry({
          resourceType: 'SubscriptionStatus',
          id: 's1',
          type: 'handshake',
          subscription: { reference: 'Subscription/1' },
        }),
      ]),
      'notification-of-patient-first': bundle('subscription-notification', [entry(patient())]),
    }),
  };
}
