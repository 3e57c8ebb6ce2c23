import type { Finding } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { every, type Fact, ifNotDenied, knownBy, some } from './fact.ts';
import { judged, sign, symptom } from './stated.ts';

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

/** A node that can be felt is no lump until it is called enlarged; no node felt is no enlarged one. */
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

/**
 * The fact, with what the clinician judged of it. A judgement that was not made does not stop the
 * prompt: it stands in the text as a condition and among what is missing.
 */
export function withJudgement(
  context: CheckContext,
  fact: Fact,
  questions: readonly ('unexplained' | 'persistent')[],
  name: string,
): Fact {
  if (fact.holds !== true) return fact;
  const words = { unexplained: 'unexplained', persistent: 'persistent' };
  return every([
    fact,
    ...questions.map((question) =>
      ifNotDenied(judged(context, fact.used, question, `whether ${name} is ${words[question]}`)),
    ),
  ]);
}
