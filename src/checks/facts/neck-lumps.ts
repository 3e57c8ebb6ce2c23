import type { Finding } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { fill } from '../words/check-words.ts';
import type { Phrase } from '../words/english.ts';
import { every, type Fact, ifNotDenied, knownBy, some } from './fact.ts';
import { judged, lastedDays, sign, symptom, symptomsNamed } from './stated.ts';

const touch = ['palpation', 'bimanual-palpation'];
const nodes = [
  'ln-ia',
  'ln-ib',
  'ln-iia',
  'ln-iib',
  'ln-iii',
  'ln-iv',
  'ln-va',
  'ln-vb',
  'ln-vi',
  'ln-vii',
  'ln-supraclav',
  'ln-preauricular',
  'ln-postauricular',
  'ln-occipital',
  'ln-facial',
];

const massRegions = ['triangle-anterior', 'triangle-posterior', 'neck-midline'];

/** Signs that are a lump of the neck or of a salivary gland. */
const lumpSigns: ReadonlySet<string> = new Set([
  'neck-mass',
  'node-enlarged',
  'node-palpable',
  'parotid-mass',
  'submandibular-mass',
  'lump-felt',
]);

const thyroidSigns = ['thyroid-mass', 'thy-surface.single-nodule', 'thy-surface.multinodular'];

/** Lumps of the neck and salivary glands that are stated as present, in the order of the exam. */
export function neckLumps({ index }: CheckContext): readonly Finding[] {
  const within = (one: Finding): boolean =>
    one.finding !== 'lump-felt' || neckRegions.has(one.region);
  return index
    .all('finding')
    .filter((one) => one.presence === 'present' && lumpSigns.has(one.finding) && within(one));
}

const neckRegions: ReadonlySet<string> = new Set([
  ...nodes,
  'neck',
  'neck-midline',
  'triangle-anterior',
  'triangle-posterior',
  'carotid',
  'scm',
  'parotid',
  'submandibular-gland',
]);

/** A lump of the neck, told by the patient or found. Denied only where it was asked and felt for. */
export function neckLump(context: CheckContext): Fact {
  return some([symptom(context, 'sym-neck.lump'), feltLump(context)]);
}

/** A node that can be felt is not a lump until it is called enlarged; where no node is felt, none is enlarged. */
function feltLump(context: CheckContext): Fact {
  const lumps = neckLumps(context).filter((one) => one.finding !== 'node-palpable');
  if (lumps.length > 0)
    return knownBy(
      true,
      lumps.map((one) => one.key),
    );
  return some([
    sign(context, { finding: 'neck-mass', regions: massRegions, by: touch }),
    enlargedNodes(context),
  ]);
}

/** A lump of the thyroid that was found. */
export function thyroidLump(context: CheckContext): Fact {
  return some(
    thyroidSigns.map((finding) =>
      sign(context, {
        finding,
        regions: ['thyroid-lobe', 'thyroid-isthmus', 'thyroid'],
        by: touch,
      }),
    ),
  );
}

/** Lymph nodes of the neck felt as enlarged; where none can be felt none is. */
export function enlargedNodes(context: CheckContext): Fact {
  return some(
    nodes.map((region) => {
      const enlarged = sign(context, { finding: 'node-enlarged', regions: [region], by: touch });
      if (enlarged.holds !== undefined) return enlarged;
      const palpable = sign(context, { finding: 'node-palpable', regions: [region], by: touch });
      return palpable.holds === false ? palpable : enlarged;
    }),
  );
}

/** A hoarse voice, told or heard. */
export function hoarseness(context: CheckContext): Fact {
  return some([
    symptom(context, 'sym-throat.hoarseness'),
    sign(context, { finding: 'voice.hoarse', regions: ['general', 'swallow'], by: [] }),
  ]);
}

/** Days below which a complaint is not called persistent unless the clinician does; common practice, no source. */
const RECENT_DAYS = 14;

/** Whether all complaints that a fact rests on are known to be recent. */
function isRecent(context: CheckContext, fact: Fact): boolean {
  const told = symptomsNamed(context, fact.used);
  return (
    told.length > 0 && told.every((one) => lastedDays(context, one, RECENT_DAYS).holds === false)
  );
}

/**
 * The fact, with what the clinician judged of it. A judgement that was not made does not stop the
 * prompt: it stands in the text as a condition and among what is missing.
 */
export function withJudgement(
  context: CheckContext,
  fact: Fact,
  questions: readonly ('unexplained' | 'persistent')[],
  thing: Extract<Phrase, `the-${string}`>,
): Fact {
  if (fact.holds !== true) return fact;
  const { phrases } = context.words;
  const name = phrases[thing];
  return every([
    fact,
    ...questions.map((question) => {
      const answer = judged(
        context,
        fact.used,
        question,
        fill(phrases[`judge-${question}`], { name }),
      );
      return question === 'persistent' && isRecent(context, fact) ? answer : ifNotDenied(answer);
    }),
  ]);
}
