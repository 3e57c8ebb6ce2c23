import type { CheckContext } from '../context.ts';
import { conditionHolds } from '../facts/conditions.ts';
import { alsoMissing, every, type Fact, known } from '../facts/fact.ts';
import { type OneSide, oneSides } from '../places/sides.ts';
import { wordedFinding } from '../prompts/prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';
import type { Picture } from '../tables/picture.ts';
import { type PictureId, pictures } from '../tables/pictures.ts';
import { fill } from '../words/check-words.ts';

/** A prompt for each row of the tables of pictures, in their order. */
export const pictureRules: readonly PromptRule[] = /*@__PURE__*/ (
  Object.entries(pictures) as readonly (readonly [PictureId, Picture])[]
) // entries of that literal
  .map(([id, picture]) => ({
    id,
    title: picture.title,
    kind: 'prompt',
    ruleSet: picture.ruleSet,
    version: '1',
    severity: picture.urgency === 'now' || picture.urgency === 'same-day' ? 'urgent' : 'prompt',
    source: picture.source,
    evidence: picture.evidence,
    run: (context) =>
      picture.eachSide === true
        ? bySide(context, id, picture)
        : pictureFinding(context, id, picture, undefined),
  }));

/**
 * Both sides, where each has something of its own. A side that rests on nothing but what the other
 * rests on too (a complaint told without a side) is not told again; where neither has anything of
 * its own, neither is named.
 */
function bySide(context: CheckContext, id: PictureId, picture: Picture): readonly RuleFinding[] {
  const found = oneSides.flatMap((side) => pictureFinding(context, id, picture, side));
  const [right, left] = found;
  if (right === undefined || left === undefined || right.outcome !== left.outcome) return found;
  if (right.outcome === 'does-not-fire') return found;
  const rightOwn = right.inputsUsed.some((key) => !left.inputsUsed.includes(key));
  const leftOwn = left.inputsUsed.some((key) => !right.inputsUsed.includes(key));
  if (rightOwn && leftOwn) return found;
  if (rightOwn) return [right];
  return leftOwn ? [left] : pictureFinding(context, id, picture, undefined);
}

function pictureFinding(
  context: CheckContext,
  id: PictureId,
  picture: Picture,
  side: OneSide | undefined,
): readonly RuleFinding[] {
  const { words, catalogue } = context;
  const anchor = conditionHolds(context, picture.anchor, side);
  // What no statement points to does not concern this exam, and would fill it with questions.
  if (anchor.holds === undefined) return [];
  const rest =
    picture.with === undefined ? known(true) : conditionHolds(context, picture.with, side);
  const fact = every([anchor, rest]);
  const raising = raisedBy(context, picture, side, fact);
  const urgency = raising?.holds === true && picture.raised ? picture.raised.to : picture.urgency;
  const seen = words.pictures?.[id] ?? picture.title;
  const criterion = side === undefined ? seen : `${seen} ${words.sides[side]}`;
  const service = words.within(catalogue.services.get(picture.service)?.display ?? picture.service);
  const advice = words.advice[picture.verb ?? 'consider'][urgency];
  const remarks = (picture.remarks ?? []).map((remark) => words.remarks[remark]);
  return [
    wordedFinding(
      context,
      raising === undefined ? fact : joined(fact, raising),
      { ...(side !== undefined && { on: side, side }), urgency },
      fill([`${criterion}: ${advice} (${service}).`, ...remarks].join(' ')),
      criterion,
    ),
  ];
}

function raisedBy(
  context: CheckContext,
  { raised }: Picture,
  side: OneSide | undefined,
  fact: Fact,
): Fact | undefined {
  return raised === undefined || fact.holds !== true
    ? undefined
    : conditionHolds(context, raised.by, side);
}

/** What makes it more urgent is used where it holds, and missing where it is not known. */
function joined(fact: Fact, raising: Fact): Fact {
  if (raising.holds === true) return every([fact, raising]);
  return raising.holds === undefined ? alsoMissing(fact, raising) : fact;
}
