import type { FhirRelease } from '../../corpus.ts';
import type { Json } from '../places.ts';
import { base, canonical, gender } from './canonical.ts';

const own = `${base}/CodeSystem/x2`;

/** Concept maps, sound and broken, by name. */
export function conceptMapCases(version: FhirRelease): Record<string, Json> {
  const r5 = version === 'R5';
  const map = (more: Json = {}): Json =>
    canonical('ConceptMap', {
      group: [{ source: gender, target: own, element: [{ code: 'male', target: [target('a')] }] }],
      ...more,
    });
  const target = (code: string | undefined, more: Json = {}): Json => ({
    ...(code === undefined ? {} : { code }),
    ...(r5 ? { relationship: 'equivalent' } : { equivalence: 'equivalent' }),
    ...more,
  });
  const group = (more: Json): Json =>
    map({
      group: [
        {
          source: gender,
          target: own,
          element: [{ code: 'male', target: [target('a')] }],
          ...more,
        },
      ],
    });
  return {
    'map-sound': map(),
    'map-without-group': map({ group: undefined }),
    'map-of-unknown-source-code': group({ element: [{ code: 'banana', target: [target('a')] }] }),
    'map-of-unknown-target-code': group({
      source: own,
      target: gender,
      element: [{ code: 'a', target: [target('banana')] }],
    }),
    'map-of-wrong-source-display': group({
      element: [{ code: 'male', display: 'Banana', target: [target('a')] }],
    }),
    'map-without-relation': group({ element: [{ code: 'male', target: [{ code: 'a' }] }] }),
    'map-of-unknown-relation': group({
      element: [
        {
          code: 'male',
          target: [{ code: 'a', ...(r5 ? { relationship: 'banana' } : { equivalence: 'banana' }) }],
        },
      ],
    }),
    'map-of-narrower-without-comment': group({
      element: [
        {
          code: 'male',
          target: [
            {
              code: 'a',
              ...(r5
                ? { relationship: 'source-is-broader-than-target' }
                : { equivalence: 'narrower' }),
            },
          ],
        },
      ],
    }),
    'map-of-no-map-and-target': group({
      element: [{ code: 'male', ...(r5 ? { noMap: true } : {}), target: [target('a')] }],
    }),
    'map-of-unmapped-fixed-without-code': group({ unmapped: { mode: 'fixed' } }),
    'map-of-unmapped-other-map': group({ unmapped: { mode: r5 ? 'other-map' : 'other-map' } }),
    'map-of-unmapped-code-and-other': group({
      unmapped: {
        mode: 'fixed',
        code: 'x',
        ...(r5 ? { otherMap: `${base}/ConceptMap/y` } : { url: `${base}/ConceptMap/y` }),
      },
    }),
    'map-of-one-target-twice': group({
      element: [{ code: 'male', target: [target('a'), target('a')] }],
    }),
    'map-of-element-without-code': group({ element: [{ target: [target('a')] }] }),
    'map-of-relative-system': group({ source: 'vines' }),
    'map-without-systems': group({ source: undefined, target: undefined }),
    'map-of-depends-without-value': group({
      element: [
        {
          code: 'male',
          target: [target('a', { dependsOn: [r5 ? { attribute: 'x' } : { property: 'x' }] })],
        },
      ],
    }),
  };
}
