import { expect, test } from 'vitest';
import {
  currentCodes,
  ledgerFaults,
  readLedger,
} from '../../src/generate/terminology/code-ledger.ts';

const ledger = await readLedger();

test('no code has gone or come back, and every code is in the ledger', () => {
  expect(ledgerFaults(ledger, currentCodes())).toEqual([]);
  expect(ledger.codes).toEqual(currentCodes());
});

test('a code that goes, and a retired one that comes back, are faults', () => {
  const before = {
    ...ledger,
    codes: { sections: ['nose', 'throat'] },
    retired: { sections: ['ears'] },
  };
  expect(ledgerFaults(before, { sections: ['nose', 'ears'] })).toEqual([
    'sections: throat has gone; move it to retired',
    'sections: ears is retired and cannot be used again',
  ]);
});
