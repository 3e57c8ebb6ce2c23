import { toJson } from '../../../src/fhir/json/to-json.ts';
import { licenceIssues } from '../../../src/fhir/licence/licence-gate.ts';
import { toXml } from '../../../src/fhir/xml/index.ts';
import { fromBundle } from '../../../src/read/from-bundle.ts';
import { conformsTo, holdsExam } from '../../../src/testing/index.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import { validateBundle as validateAny } from '../../../src/validate/versions/all-r4.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';
import { validateBundle as validateR5 } from '../../../src/validate/versions/r5.ts';
import { characters, many, nested, type Shape } from './shape.ts';

const code = { text: 'x' };
const observation = (at: number) => ({
  resourceType: 'Observation',
  id: `o${at}`,
  status: 'final',
  code,
});
const coding = (at: number) => ({ system: 'https://quay.example/codes', code: `c${at}` });
const collection = (resources: readonly unknown[]) => ({
  resourceType: 'Bundle',
  type: 'collection',
  entry: resources.map((resource, at) => ({
    fullUrl: `https://quay.example/fhir/Observation/o${at}`,
    resource,
  })),
});

const bundles: Readonly<Record<string, (bytes: number) => unknown>> = {
  'many observations': (bytes) => collection(many(bytes, observation)),
  'one id for all': (bytes) => collection(many(bytes, () => observation(0))),
  'members in a circle': (bytes) => {
    const list = many(bytes, (at) => ({ ...observation(at), hasMember: [{}] }));
    return collection(
      list.map((one, at) => ({
        ...one,
        hasMember: [{ reference: `Observation/o${(at + 1) % list.length}` }],
      })),
    );
  },
  'chain of contained resources': (bytes) => ({
    ...observation(0),
    contained: many(bytes, (at) => ({
      ...observation(at),
      hasMember: [{ reference: `#o${at + 1}` }],
    })),
    hasMember: [{ reference: '#o0' }],
  }),
  'codings by components': (bytes) => ({
    ...observation(0),
    code: { coding: many(bytes / 2, coding) },
    component: many(bytes / 2, (at) => ({ code: { coding: [coding(at)] }, valueString: 'x' })),
  }),
  'extensions inside extensions': (bytes) => ({
    ...observation(0),
    extension: [nested(bytes, (inner) => ({ url: 'https://quay.example/x', extension: [inner] }))],
  }),
  'sections inside sections': (bytes) => ({
    resourceType: 'Composition',
    status: 'final',
    section: [nested(bytes, (inner) => ({ title: 'x', section: [inner] }))],
  }),
  'many sections': (bytes) => ({
    resourceType: 'Composition',
    status: 'final',
    section: many(bytes, (at) => ({ title: `x${at}`, entry: [{ reference: `#o${at}` }] })),
  }),
  'unknown names': (bytes) => ({
    ...observation(0),
    ...Object.fromEntries(many(bytes, (at): [string, number] => [`statuss${at}`, at])),
  }),
  'nulls for entries': (bytes) => collection(many(bytes, () => null)),
  'undefined for entries': (bytes) => ({
    resourceType: 'Bundle',
    type: 'collection',
    entry: many(bytes, () => ({ resource: { ...observation(0), hasMember: [undefined] } })),
  }),
  'identifiers without end': (bytes) => ({
    ...observation(0),
    identifier: many(bytes, (at) => ({ system: 'https://quay.example', value: `v${at}` })),
  }),
  'narrative of open elements': (bytes) => ({
    ...observation(0),
    text: {
      status: 'generated',
      div: '<div xmlns="http://www.w3.org/1999/xhtml">'.repeat(bytes / 46),
    },
  }),
  'narrative of attributes': (bytes) => ({
    ...observation(0),
    text: {
      status: 'generated',
      div: `<div xmlns="http://www.w3.org/1999/xhtml"><p ${many(bytes, (at) => `a${at}="x"`).join(' ')}/></div>`,
    },
  }),
  'deep list': (bytes) => nested(bytes),
};

const ours: Readonly<Record<string, (bytes: number) => unknown>> = {
  'system of nested references': (bytes) => ({
    ...observation(0),
    code: { coding: many(bytes, () => ({ system: 'http://snomed.info/sct', code: '68426009' })) },
  }),
};

const longTexts = Object.fromEntries(
  characters.flatMap(([name, letters]) => [
    [
      `code of ${name}`,
      (bytes: number) => ({ ...observation(0), status: letters.repeat(bytes / 2), id: letters }),
    ],
    [
      `text of ${name}`,
      (bytes: number) => ({
        ...observation(0),
        code: {
          text: letters.repeat(bytes / 2),
          coding: [{ system: letters.repeat(bytes / 4), code: letters.repeat(bytes / 4) }],
        },
        valueDateTime: letters.repeat(bytes / 8),
      }),
    ],
  ]),
);

const exam = sampleExam(1, { size: 'small' });

/** As `toJson`, which promises one error for what is nested too deep, and throws nothing else here. */
function written(bundle: unknown): string | undefined {
  try {
    return toJson(bundle);
  } catch (thrown) {
    if (thrown instanceof TypeError && /deeper than \d+ levels$/.test(thrown.message))
      return undefined;
    throw thrown;
  }
}

const calls: Readonly<Record<string, (bundle: never) => unknown>> = {
  'validateBundle r4': validateBundle,
  'validateBundle r5': validateR5,
  'validateBundle all-r4': validateAny,
  fromBundle,
  toXml: (bundle) => toXml(bundle),
  toJson: written,
  licenceIssues: (bundle) => licenceIssues(bundle, 'none'),
  conformsTo: (bundle) => conformsTo(bundle, 'R4'),
  holdsExam: (bundle) => holdsExam(bundle, exam),
};

export const bundleShapes: readonly Shape[] = Object.entries(calls).flatMap(([entry, call]) =>
  Object.entries({ ...bundles, ...ours, ...longTexts }).map(
    ([name, make]): Shape => ({
      entry,
      name,
      prepare: (bytes) => {
        const bundle = make(bytes) as never; // wrong on purpose
        return () => call(bundle);
      },
    }),
  ),
);
