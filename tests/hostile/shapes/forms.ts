import { fromQuestionnaireResponse } from '../../../src/forms/index.ts';
import { createCatalogue, orThrow } from '../../../src/index.ts';
import { head } from '../../forms/fill.ts';
import { characters, many, nested, type Shape } from './shape.ts';

const row = {
  code: 'quay-check',
  display: 'Quay check',
  version: '1',
  regions: [{ region: 'temple', methods: ['inspection'] }],
};
const system = 'https://harbour.example/codes';
const catalogue = orThrow('add', createCatalogue({ system, protocols: [row] }));
const state = 'region-state/temple/left';
const coded = (code: string) => [{ valueCoding: { code } }];

const answered = (item: unknown): object => ({
  resourceType: 'QuestionnaireResponse',
  item: [{ linkId: 'protocol', answer: [{ valueString: 'quay-check|1' }] }, ...[item].flat()],
});

/** The left temple, abnormal, with more items. */
const temple = (items: readonly unknown[]): object =>
  answered({
    linkId: 'region/temple',
    item: [
      {
        linkId: 'region/temple/left',
        item: [
          { linkId: state, answer: coded('state.abnormal') },
          { linkId: `${state}:methods`, answer: coded('inspection') },
          ...items,
        ],
      },
    ],
  });

const further = (at: number): object => ({
  linkId: `${state}:further`,
  item: [
    { linkId: `${state}:further:sign`, answer: coded(at % 2 === 0 ? 'scar' : 'papule') },
    { linkId: `${state}:further:presence`, answer: coded('presence.present') },
  ],
});

const responses: Readonly<Record<string, (bytes: number) => object>> = {
  ...Object.fromEntries(
    characters.map(([name, letters]) => [
      `note of ${name}`,
      (bytes: number) =>
        answered({
          linkId: 'region/temple',
          item: [
            {
              linkId: 'note/temple',
              answer: [{ valueString: letters.repeat(bytes / letters.length) }],
            },
          ],
        }),
    ]),
  ),
  'many further signs': (bytes) => temple(many(bytes, further)),
  'many answers': (bytes) =>
    temple([{ linkId: `${state}:methods`, answer: many(bytes, () => coded('palpation')[0]) }]),
  'one item again and again': (bytes) =>
    temple(many(bytes, () => ({ linkId: state, answer: coded('state.normal') }))),
  'unknown items': (bytes) => answered(many(bytes, (at) => ({ linkId: `x${at}` }))),
  'items in items': (bytes) =>
    answered(nested(bytes, (inner) => ({ linkId: 'region/temple', item: [inner] }))),
  'nulls for items': (bytes) => answered(many(bytes, () => null)),
};

export const formShapes: readonly Shape[] = Object.entries(responses).map(([name, make]) => ({
  entry: 'fromQuestionnaireResponse',
  name,
  prepare: (bytes) => {
    const response = make(bytes);
    return () =>
      fromQuestionnaireResponse(response, { protocol: 'quay-check', catalogue, exam: head });
  },
}));
