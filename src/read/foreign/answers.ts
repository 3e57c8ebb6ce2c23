import type { Said } from '../../kinds/facets/meaning.ts';
import type { Finding, Presence } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import {
  claimEqual,
  type Element,
  flagOf,
  innerOf,
  innersOf,
  lookAt,
  lookAtList,
  peek,
} from '../bundle/element.ts';
import type { Meanings } from './mapped.ts';
import { type Answer, answers, assertions, interpretations, meaningIn } from './published-codes.ts';
import { isElsewhere, isNegated } from './wording.ts';

/** A sign that an observation, or a component of one, speaks of, and what it says of it. */
export interface SignTold {
  readonly table: 'findings' | 'symptoms';
  readonly row: string;
  /** The concept that names the sign. */
  readonly named: Element;
  readonly presence: Presence;
  readonly certainty?: Finding['certainty'];
  /** Why it must not be read as a finding although the sign is known. */
  readonly doubt?: string;
}

const answerOf = meaningIn(answers);
const isAssertion = meaningIn(assertions);
const interpretationOf = meaningIn(interpretations);

/**
 * The sign that the code names, with the answer in the value; or the one in the value, where the code
 * asks for what was found. Undefined where neither means exactly one row of ours.
 */
export function signTold(source: SignSource): SignTold | undefined {
  const code = lookAt(source.holder, 'code');
  if (code === undefined) return undefined;
  return namedByCode(source, code) ?? namedByValue(source, code);
}

export interface SignSource {
  readonly catalogue: Catalogue;
  readonly meanings: Meanings;
  /** The observation, or a component of one. */
  readonly holder: Element;
  /** What was told and not examined is a symptom, where there is one for it. */
  readonly told: boolean;
  /** For what has no value of its own: a Condition, whose states say it. */
  readonly answer?: Answer;
}

function rowIn(
  { meanings, told: wasTold }: SignSource,
  concept: Element,
): Pick<SignTold, 'table' | 'row'> | undefined {
  const tables = wasTold
    ? (['symptoms', 'findings'] as const)
    : (['findings', 'symptoms'] as const);
  for (const table of tables) {
    const row = meanings.rowOf(table, concept);
    if (row !== undefined) return { table, row };
  }
  return undefined;
}

function namedByCode(source: SignSource, code: Element): SignTold | undefined {
  const row = rowIn(source, code);
  if (row === undefined) return undefined;
  const answer = source.answer ?? answerIn(source.holder);
  if (answer === 'none') {
    const doubt = 'its value says neither that the sign is there nor that it is not';
    return { ...row, named: code, presence: 'indeterminate', doubt };
  }
  return told(source, { ...row, named: code }, answer);
}

function namedByValue(source: SignSource, code: Element): SignTold | undefined {
  const { holder } = source;
  const asks = lookAtList(code, 'coding').some(
    (coding) => isAssertion(peek(coding, 'system'), peek(coding, 'code')) === true,
  );
  const value = lookAt(holder, 'valueCodeableConcept');
  const row = asks && value ? rowIn(source, value) : undefined;
  if (row === undefined || value === undefined) return undefined;
  innerOf(holder, 'valueCodeableConcept');
  const written = textsOf(code).some((text) => isNegated(text) || isElsewhere(text));
  const found = told(source, { ...row, named: value }, 'present');
  return written ? { ...found, doubt: 'the words of its code deny it or put it elsewhere' } : found;
}

/**
 * What the value says of the sign. A sign of ours without any value is asserted by its code alone, as
 * FHIR lets an observation be; `none` where there is a value of another kind.
 */
function answerIn(holder: Element): Answer | 'none' {
  const flag = flagOf(holder, 'valueBoolean');
  if (flag !== undefined) return flag ? 'present' : 'absent';
  const concept = innerOf(holder, 'valueCodeableConcept');
  if (concept === undefined) return isValued(holder) ? 'none' : 'present';
  const codings = innersOf(concept, 'coding');
  const meant = codings.map((coding) => answerOf(peek(coding, 'system'), peek(coding, 'code')));
  const kinds = new Set(meant.filter((one) => one !== undefined));
  const [answer] = kinds;
  if (answer === undefined || kinds.size > 1) return 'none';
  codings.forEach((coding, at) => {
    if (meant[at] === undefined) return;
    for (const name of ['system', 'version', 'code', 'display']) {
      coding.claims.claim(coding.json, name);
    }
  });
  return answer;
}

function isValued({ json }: Element): boolean {
  return Object.keys(json).some((name) => /^_?(value|dataAbsentReason)/.test(name));
}

function told(
  { catalogue, holder, told: wasTold, answer: given }: SignSource,
  sign: Pick<SignTold, 'table' | 'row' | 'named'>,
  answer: Answer,
): SignTold {
  const row = sign.table === 'findings' ? catalogue.findings.get(sign.row) : undefined;
  const judged = interpreted(holder);
  // A sign that is asserted without a value can still be called negative.
  const silent = given === undefined && !isValued(holder);
  const presence =
    silent && typeof judged === 'object' && judged.means !== undefined
      ? judged.means
      : presenceOf(answer);
  const display = row?.display ?? catalogue.symptoms.get(sign.row)?.display ?? '';
  const doubt =
    (wasTold && sign.table === 'findings' ? 'it was told and not examined' : undefined) ??
    (judged === undefined ? undefined : doubtOfJudgement(judged, presence, row?.usual === true)) ??
    doubtOfWords({ ...sign, display, sure: answer !== 'suspected' }, holder, presence);
  if (doubt === undefined && judged !== undefined) {
    claimEqual(holder, 'interpretation', peek(holder, 'interpretation'));
  }
  const certainty = answer === 'suspected' || answer === 'confirmed' ? { certainty: answer } : {};
  return { ...sign, presence, ...certainty, ...(doubt !== undefined && { doubt }) };
}

function presenceOf(answer: Answer): Presence {
  return answer === 'suspected' || answer === 'confirmed' ? 'present' : answer;
}

interface Judged {
  /** Positive, negative or undecided: what was found. */
  readonly means?: Presence;
  /** Called normal: right for a usual sign that is there, and for any other that is not. */
  readonly normal: boolean;
}

/** What the interpretation says; `unknown` for a code or word that is not understood. */
function interpreted(holder: Element): Judged | 'unknown' | undefined {
  const concepts = lookAtList(holder, 'interpretation');
  if (concepts.length === 0) {
    return peek(holder, 'interpretation') === undefined ? undefined : 'unknown';
  }
  const means = new Set<Presence>();
  let normal = false;
  for (const concept of concepts) {
    const codings = lookAtList(concept, 'coding');
    const known = codings.flatMap(
      (coding) => interpretationOf(peek(coding, 'system'), peek(coding, 'code')) ?? [],
    );
    if (known.length === 0 || known.length < codings.length) return 'unknown';
    for (const one of known) {
      if (one === 'normal') normal = true;
      else if (one !== 'abnormal') means.add(one);
    }
  }
  const [first] = means;
  if (means.size > 1) return 'unknown';
  return { normal, ...(first !== undefined && { means: first }) };
}

/** True where an interpretation, if there is one, only repeats that something was found. */
export function isAffirmed(holder: Element): boolean {
  const judged = interpreted(holder);
  if (judged === undefined) return true;
  return judged !== 'unknown' && !judged.normal && judged.means === 'present';
}

function doubtOfJudgement(
  judged: Judged | 'unknown',
  presence: Presence,
  usual: boolean,
): string | undefined {
  if (judged === 'unknown') return 'its interpretation is not understood';
  const disagrees = judged.means !== undefined && judged.means !== presence;
  const misfits = judged.normal && (presence === 'present') !== usual;
  return disagrees || misfits ? 'its interpretation disagrees with what it says' : undefined;
}

/** Words that contradict the codes beside them. A sign of ours can itself be that something is not there. */
function doubtOfWords(
  {
    named,
    display,
    sure,
    textsIn = textsOf,
  }: {
    readonly named: Element;
    readonly display: string;
    readonly sure: boolean;
    readonly textsIn?: (concept: Element) => string[];
  },
  holder: Element,
  presence: Presence,
): string | undefined {
  const name = textsIn(named);
  if (name.some(isElsewhere)) {
    return 'its words put it on someone else, into another time or into doubt';
  }
  if (name.some(isNegated) && !isNegated(display)) return 'its words deny what its code names';
  const value = lookAt(holder, 'valueCodeableConcept');
  if (value === undefined || value.json === named.json) return undefined;
  const answered = textsIn(value);
  const affirmed = /^\s*(present|yes|positive|detected|ja|vorhanden)\b/i;
  if (presence === 'present' && answered.some(isNegated)) {
    return 'the words of its value deny what its code says';
  }
  if (presence === 'absent' && answered.some((text) => affirmed.test(text))) {
    return 'the words of its value affirm what its code denies';
  }
  return presence === 'present' && sure && answered.some(isElsewhere)
    ? 'the words of its value put it into doubt'
    : undefined;
}

/** The texts and displays of a concept. */
export function textsOf(concept: Element): string[] {
  const texts = [
    peek(concept, 'text'),
    ...lookAtList(concept, 'coding').map((coding) => peek(coding, 'display')),
  ];
  return texts.filter((text): text is string => typeof text === 'string');
}

const presences = { states: 'present', denies: 'absent', open: 'indeterminate' } as const;

/** Why a sign with our codes cannot be taken at its word: what stands beside them contradicts it. */
export function contradictionIn(
  catalogue: Catalogue,
  holder: Element,
  { of, polarity }: Pick<Said, 'of' | 'polarity'>,
): string | undefined {
  const named = lookAt(holder, 'code');
  const row = of.table === 'findings' ? catalogue.findings.get(of.code) : undefined;
  if (named === undefined || row === undefined || polarity === 'none') return undefined;
  const judged = interpreted(holder);
  const presence = presences[polarity];
  // The displays of codings that the caller added are the caller's own affair.
  const textsIn = (concept: Element): string[] =>
    [peek(concept, 'text')].filter((text): text is string => typeof text === 'string');
  return (
    (judged === undefined ? undefined : doubtOfJudgement(judged, presence, row.usual === true)) ??
    doubtOfWords(
      { named, display: row.display, sure: polarity !== 'open', textsIn },
      holder,
      presence,
    )
  );
}
