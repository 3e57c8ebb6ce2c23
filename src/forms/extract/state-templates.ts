import type { Coding } from 'fhir/r4.js';
import type { FormOption } from '../form.ts';
import { codingAt, filledBy, having, onlyWhere, type Template } from './annotation.ts';
import { allFilled, merged, mergedList } from './merged.ts';
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
              // The template stands at the question for the reason.
              dataAbsentReason: absentTemplate(probe, { ...reason, path: 'answer.value' }, path),
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
  const beside = options.map(
    (option) => coder.concept('methods', option.value).coding?.slice(1) ?? [],
  );
  const limit = reasonAnswer(asked, linkId.replace(/:methods$/, ':limit'));
  return {
    method: {
      coding: [
        { ...onlyWhere(one), ...codingAt('') },
        ...mergedList(beside, { path: one, options }),
      ],
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
      ...severalMethods(options, beside).map(({ codes, coding }) => ({
        ...onlyWhere(having(several, codes)),
        code: coder.concept('items', 'method'),
        valueCodeableConcept: { coding: [codingAt(''), ...coding], _text: filledBy('display') },
      })),
    ],
  };
}

/**
 * Methods with as many codes beside their own are one component each by the same element. Nothing
 * within it is there on a condition: in an element that is repeated, engines mix that up.
 */
function severalMethods(
  options: readonly FormOption[],
  beside: readonly (readonly Coding[])[],
): readonly { readonly codes: readonly string[]; readonly coding: readonly unknown[] }[] {
  const counts = [...new Set(beside.map(({ length }) => length))];
  return counts.map((count) => {
    const of = options.filter((_, at) => beside[at]?.length === count);
    const lists = beside.filter(({ length }) => length === count);
    const coding = Array.from({ length: count }, (_, at) => {
      const column = lists.map((list): Template => ({ ...list[at] }));
      return allFilled(merged(column, { path: '', options: of }));
    });
    return { codes: of.map(({ code }) => code), coding };
  });
}
