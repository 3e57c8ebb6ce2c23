import type { QuestionnaireResponseItemAnswer } from 'fhir/r4.js';
import type { Exam } from '../../src/index.ts';
import type { GivenAnswer } from './fill.ts';

type Members = Readonly<Record<string, unknown>>;

/**
 * Answers that do not stand in an exam as they were given, and how many statements more or fewer it
 * has. Read off the linkIds and not from the description of the form, so that a slip in one shows in
 * the other.
 */
export function differencesOf(exam: Exam, given: readonly GivenAnswer[]): readonly string[] {
  const once = given.filter(({ round, linkId }) => round === '' && linkId !== 'protocol');
  const keys = new Set(
    once.map(({ linkId }) => keyOf(linkId)).filter((key) => key !== 'conclusion'),
  );
  const rounds = [...new Set(given.map(({ round }) => round))].filter((round) => round !== '');
  const count = keys.size + rounds.length;
  const [form] = given.filter(({ linkId }) => linkId === 'protocol');
  return [
    ...(count === exam.statements.length ? [] : [`${exam.statements.length} and not ${count}`]),
    ...(`${exam.protocol.id}|${exam.protocol.version}` === form?.answers[0]?.valueString
      ? []
      : ['another protocol']),
    ...differing(exam, once),
    ...rounds.filter((round) => {
      const answers = given.filter((one) => one.round === round);
      return !exam.statements.some((one) => saysAll(membersOf(one), answers));
    }),
  ];
}

function differing(exam: Exam, given: readonly GivenAnswer[]): readonly string[] {
  const statements = new Map(exam.statements.map((one) => [one.key, membersOf(one)]));
  return given.flatMap(({ linkId, answers }) => {
    const key = keyOf(linkId);
    const [, ...members] = linkId.split(':');
    const holder = key === 'conclusion' ? membersOf(exam.conclusion ?? {}) : statements.get(key);
    const stands = holder && standing(holder, key, members);
    const wanted = answers.map(wordOf);
    const found = Array.isArray(stands) ? [...stands] : [stands];
    const isSame = JSON.stringify(found.sort()) === JSON.stringify(wanted.sort());
    return isSame ? [] : [`${linkId}: ${JSON.stringify([wanted, stands])}`];
  });
}

function keyOf(linkId: string): string {
  return linkId.split(':')[0] ?? '';
}

function membersOf(statement: object): Members {
  return Object.fromEntries(Object.entries(statement));
}

const leading: Readonly<Record<string, string>> = {
  'region-state': 'state',
  finding: 'presence',
  movement: 'grade',
  'function-test': 'result',
  measurement: 'value',
  'scale-score': 'score',
  note: 'text',
};

function standing(holder: Members, key: string, members: readonly string[]): unknown {
  const [kind = ''] = key.split('/');
  let at: unknown = holder;
  const way =
    kind === 'sensation'
      ? ['results', ...members]
      : members.length === 0
        ? [leading[kind] ?? '']
        : members;
  for (const step of way) {
    if (Array.isArray(at)) at = at.find((one) => one.modality === step);
    else at = (at as Members | undefined)?.[step === 'words' ? 'text' : step];
  }
  if (kind === 'sensation' && members.length === 1) at = (at as Members | undefined)?.['result'];
  const last = way.at(-1);
  return last === 'reason' || last === 'limit' ? (at as Members | undefined)?.['code'] : at;
}

/** `state.normal` stands as `normal`; the codes of other tables as they are. */
function wordOf(answer: QuestionnaireResponseItemAnswer): string {
  const { valueCoding, valueDecimal, valueInteger, valueString } = answer;
  if (valueCoding === undefined) return String(valueDecimal ?? valueInteger ?? valueString);
  const { system = '', code = '' } = valueCoding;
  return system.endsWith('/values') ? code.replace(/^[a-z-]+\./, '') : code;
}

/** Answers of one repetition: a sign with its presence, or a place with its figure. */
function saysAll(statement: Members, answers: readonly GivenAnswer[]): boolean {
  return answers.every(({ linkId, answers: [answer] }) => {
    const wanted = answer === undefined ? '' : wordOf(answer);
    if (linkId.endsWith(':sign')) return statement['finding'] === wanted;
    if (linkId.endsWith(':value')) return statement['value'] === wanted;
    if (linkId.endsWith(':place')) {
      const { region, side } = statement;
      return [region, side].filter((part) => part !== undefined).join('.') === wanted;
    }
    return wanted === 'suspected'
      ? statement['presence'] === 'present' && statement['certainty'] === 'suspected'
      : statement['presence'] === wanted && statement['certainty'] === undefined;
  });
}
