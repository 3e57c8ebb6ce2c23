import {
  codingAt,
  elementWhere,
  filledBy,
  having,
  onlyWhere,
  type Template,
} from './annotation.ts';
import { codingOf, merged } from './merged.ts';
import type { Probe } from './probe.ts';
import { absentTemplate, wordsOf } from './reasons.ts';
import { type Asked, answerOf, reasonAnswer, stated, type Templates } from './statements.ts';

/**
 * The state of a region: extracted at the question how it was examined, which is asked where it was,
 * or at the question why not. So no template has both a value and a reason that there is none: obs-6.
 */
export function stateTemplates(probe: Probe, asked: Asked): Templates {
  const { key, parts } = asked;
  const options = parts.get(key)?.item.options ?? [];
  const path = answerOf(asked, key);
  const examined = `${key}:methods`;
  const missing = `${key}:reason`;
  const asking = (linkId: string): typeof options => {
    const codes = parts.get(linkId)?.item.enabledBy?.codes ?? [];
    return options.filter(({ code }) => codes.includes(code));
  };
  const states = (linkId: string, members: Template): Template => {
    const of = asking(linkId);
    const probes = of.map((option) => {
      const made = probe.statement({ ...stated(asked, 'state', option), ...members });
      const { dataAbsentReason: _, method: __, component: ___, ...rest } = made;
      return rest;
    });
    return merged(probes, { path, options: of });
  };
  const reason = reasonAnswer(asked, missing);
  const sample = { code: 'other' };
  return [
    [
      examined,
      {
        ...states(examined, { methods: [], limit: sample }),
        ...methodTemplate(probe, asked, examined),
      },
    ],
    ...(reason === undefined
      ? []
      : ([
          [
            missing,
            {
              ...states(missing, { reason: sample }),
              dataAbsentReason: absentTemplate(probe, reason, path),
            },
          ],
        ] as const)),
  ];
}

/** One method is coded; several are named together and coded each in a component, as is a limit. */
function methodTemplate(probe: Probe, asked: Asked, linkId: string): Template {
  const { coder } = probe.context;
  const options = asked.parts.get(linkId)?.item.options ?? [];
  const one = 'where(answer.count() = 1).answer.value';
  const several = 'where(answer.count() > 1).answer.value';
  const concepts = options.map((option) => ({
    option,
    concept: coder.concept('methods', option.value),
  }));
  const beside = concepts.flatMap(({ option: { code }, concept: { coding = [] } }) =>
    coding.slice(1).map((coding) => elementWhere(having(one, [code]), coding)),
  );
  const code = coder.concept('items', 'method');
  const mapped = concepts.filter(({ concept }) => (concept.coding?.length ?? 0) > 1);
  const others = concepts.filter((each) => !mapped.includes(each)).map(({ option }) => option.code);
  const limit = reasonAnswer(asked, linkId.replace(/:methods$/, ':limit'));
  return {
    method: {
      coding: [{ ...onlyWhere(one), ...codingAt('') }, ...beside],
      _text: filledBy("answer.value.display.join('; ')"),
    },
    component: [
      ...(limit === undefined
        ? []
        : [
            {
              ...onlyWhere(limit.path),
              code: coder.concept('items', 'limit'),
              valueCodeableConcept: {
                coding: [codingAt(limit.path)],
                _text: filledBy(wordsOf(limit)),
              },
            },
          ]),
      ...(others.length === 0
        ? []
        : [
            {
              ...onlyWhere(having(several, others)),
              code,
              valueCodeableConcept: { coding: [codingAt('')], _text: filledBy('display') },
            },
          ]),
      ...mapped.map(({ option, concept }) =>
        elementWhere(having(several, [option.code]), {
          code,
          valueCodeableConcept: {
            ...concept,
            coding: [codingOf(option), ...(concept.coding ?? []).slice(1)],
          },
        }),
      ),
    ],
  };
}
