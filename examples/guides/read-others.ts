import { fromBundle } from '../../src/index.ts';

const observation = {
  resourceType: 'Observation',
  id: 'o1',
  status: 'final',
  code: { text: 'Small lump, left cheek' },
  subject: { reference: 'Patient/417' },
  effectiveDateTime: '2025-05-06T08:00:00Z',
};
const bundle = { resourceType: 'Bundle', type: 'searchset', entry: [{ resource: observation }] };

const { value, remainder } = fromBundle(bundle, {
  supplied: {
    id: 'taken-over-1',
    status: 'final',
    subject: { reference: 'Patient/417' },
    examiners: [{ key: 'other', name: { text: 'Harbour clinic' } }],
    performed: { start: '2025-05-06T08:00:00Z' },
    recorded: '2025-05-06T09:00:00Z',
    protocol: { id: 'full', version: '1.0.0' },
  },
});
for (const one of value?.statements ?? []) {
  console.log(one.kind === 'note' ? one.text : one.kind);
}
console.log(remainder.length > 0 ? 'some of it has no place in an exam' : 'all of it was read');
