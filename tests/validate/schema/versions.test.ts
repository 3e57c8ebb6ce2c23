import { expect, test } from 'vitest';
import { validateBundle as validateR4 } from '../../../src/validate/versions/r4.ts';
import { validateBundle as validateR4b } from '../../../src/validate/versions/r4b.ts';
import { validateBundle as validateR5 } from '../../../src/validate/versions/r5.ts';
import { withoutFacts } from '../../issues/without-facts.ts';
import { changed, example } from '../example.ts';
import { dateTime, error, text } from './expected.ts';

test('each version has its own structures', () => {
  const observation = {
    ...example('Observation-abdo-tender'),
    bodyStructure: { reference: 'BodyStructure/1' },
  };
  expect(validateR5(observation).valid).toBe(true);
  expect(validateR4b(observation).valid).toBe(false);
  const media = {
    resourceType: 'Media',
    text,
    status: 'completed',
    content: { url: 'https://clinic.example/1' },
  };
  expect(validateR4(media).issues).toEqual([]);
  expect(withoutFacts(validateR5(media).issues)).toMatchObject([
    error('unknown-code', ['resourceType'], 'FHIR R5 has no resource type with this name'),
  ]);
});

test('an R5 time without an offset is refused, although the published pattern takes it', () => {
  const observation = changed(
    example('Observation-abdo-tender'),
    ['effectiveDateTime'],
    '2024-03-01T09:30:00',
  );
  expect(withoutFacts(validateR5(observation).issues)).toMatchObject([
    error(
      'invalid-value',
      ['effectiveDateTime'],
      'the value does not have the required form',
      dateTime,
    ),
  ]);
});
