import { expect } from 'vitest';
import { examples } from '../../../examples/all-exams.ts';
import {
  type DeliverOptions,
  type Delivery,
  deliver,
  type FhirServer,
} from '../../../src/deliver/index.ts';
import { toBundleOrThrow, toJson } from '../../../src/index.ts';
import { withOnly } from '../../../src/testing/without.ts';
import { clinic } from '../../clinic.ts';
import { type FakeServer, startFake, type Twist } from '../../testing/fake-server.ts';

const lesion = examples.get('skin-lesion');
if (lesion === undefined) throw new Error('no example');
const exam = withOnly(lesion, lesion.statements.slice(0, 4), new Set(['consents', 'conditions']));
export const bundle = toBundleOrThrow(exam, { ...clinic, bundleType: 'transaction' });
export const entries = bundle.entry?.length ?? 0;

let open: FakeServer[] = [];
/** After each test. A hook in this module would be one of the first file alone that imports it. */
export async function stopServers(): Promise<void> {
  await Promise.all(open.map((one) => one.stop()));
  open = [];
}

export async function serve(twist?: Twist): Promise<{ fake: FakeServer; to: FhirServer }> {
  const fake = await startFake(twist, { lax: true });
  open.push(fake);
  return {
    fake,
    to: { base: fake.url, timeout: 3_000, sleep: () => Promise.resolve() },
  };
}

export async function sent(to: FhirServer, options: DeliverOptions = {}): Promise<Delivery> {
  const { value } = await deliver(bundle, to, options);
  if (value === undefined) throw new Error('no outcome');
  return value;
}

/** What is stored, without versions and times. */
export function contentOf({ stored }: FakeServer): string[] {
  return [...stored]
    .map(
      ([
        name,
        {
          resource: { meta: _, ...content },
        },
      ]) => `${name} ${toJson(content)}`,
    )
    .sort();
}

const held = new Map<DeliverOptions, Promise<string[]>>();

/** What an honest server holds in the end. */
export function honest(options: DeliverOptions): Promise<string[]> {
  const known = held.get(options) ?? heldByHonest(options);
  held.set(options, known);
  return known;
}

async function heldByHonest(options: DeliverOptions): Promise<string[]> {
  const { fake, to } = await serve();
  expect((await sent(to, options)).result).toBe('stored');
  return contentOf(fake);
}
