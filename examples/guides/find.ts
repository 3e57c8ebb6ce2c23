import { find } from '../../src/find/index.ts';

// An entry field: what the examiner types, and the region that is open on the page.
const [best] = find('earwax', { kind: 'sign', region: 'eac' });
console.log(best?.code, best?.display);

// In German, with a typing error.
for (const { kind, code, display } of find('Trommelfel', { language: 'de', limit: 2 })) {
  console.log(kind, code, display);
}
