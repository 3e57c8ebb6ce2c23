/**
 * What must not compile: an empty coding from a code of ours that is not there. Nothing here runs;
 * `npm run types` fails when a line marked as an error compiles, or when another one does not.
 */
import type { Coder } from '../../src/export/coding/coder.ts';
import type { Components } from '../../src/read/observation/components.ts';
import type { TableName } from '../../src/terminology/built-in.ts';
import type { TableCodes } from '../../src/terminology/tables/code-types.ts';

export function written(coder: Coder, state: 'normal' | 'partial', stated: string): void {
  coder.concept('items', 'region-state');
  coder.concept('values', `state.${state}`);
  coder.concept('findings', stated);
  // @ts-expect-error no such item
  coder.concept('items', 'smell-test');
  // @ts-expect-error an item is not a value
  coder.concept('values', 'region-state');
  // @ts-expect-error text of unknown content is not an item
  coder.codings('items', stated);
  // @ts-expect-error nor a value
  coder.display('values', `state.${stated}`);
}

export function read(components: Components): void {
  components.text('place');
  components.value('convention');
  components.value('photo-consent', 'consent');
  // @ts-expect-error no such item
  components.flag('smell-test');
  // @ts-expect-error this item has no list of its own name
  components.value('photo-consent');
  // @ts-expect-error no such list
  components.value('photo-consent', 'agreement');
}

/** Each table has a type of its codes, and there is none for what is no table. */
export const tables: { readonly [T in TableName]: keyof TableCodes } & {
  readonly [T in keyof TableCodes]: TableName;
} = {} as never; // compared as types alone
