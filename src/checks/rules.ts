import type { Rule } from './rule.ts';
import { pictureRules } from './rules/pictures.ts';
import { r01Coverage } from './rules/r01-coverage.ts';
import { r02SideInWords } from './rules/r02-side-in-words.ts';
import { r03NormalWithSign } from './rules/r03-normal-with-sign.ts';
import { r04Negatives } from './rules/r04-negatives.ts';
import { r06LidSum } from './rules/r06-lid-sum.ts';
import { r07LidDifference } from './rules/r07-lid-difference.ts';
import { r08SideDifference } from './rules/r08-side-difference.ts';
import { r09Change } from './rules/r09-change.ts';
import { r10SkinChange } from './rules/r10-skin-change.ts';
import { r11ThyroidGrowth } from './rules/r11-thyroid-growth.ts';
import { r12SevenPoint } from './rules/r12-seven-point.ts';
import { r13Abcde } from './rules/r13-abcde.ts';
import { r14SkinReferral } from './rules/r14-skin-referral.ts';
import { r15LarynxMouth } from './rules/r15-larynx-mouth.ts';
import { r16Thyroid } from './rules/r16-thyroid.ts';
import { r16bScotland } from './rules/r16b-scotland.ts';
import { r17NeckMass } from './rules/r17-neck-mass.ts';
import { r18Horner } from './rules/r18-horner.ts';
import { r19FacialPattern } from './rules/r19-facial-pattern.ts';
import { r19aForeheadSpared } from './rules/r19a-forehead-spared.ts';
import { r19bOpenEye } from './rules/r19b-open-eye.ts';
import { r20SensationMap } from './rules/r20-sensation-map.ts';
import { r21Hutchinson } from './rules/r21-hutchinson.ts';
import { r22GiantCell } from './rules/r22-giant-cell.ts';
import { r23Hearing } from './rules/r23-hearing.ts';
import { r24LumpMotion } from './rules/r24-lump-motion.ts';
import { r25Jaw } from './rules/r25-jaw.ts';
import { r26Whisper } from './rules/r26-whisper.ts';
import { r28Copied } from './rules/r28-copied.ts';
import { r29AllNormalWords } from './rules/r29-all-normal-words.ts';
import { r30TimeOrder } from './rules/r30-time-order.ts';
import { r31DiameterBoundary } from './rules/r31-diameter-boundary.ts';
import { r32TermAndSize } from './rules/r32-term-and-size.ts';
import { r34Pseudoptosis } from './rules/r34-pseudoptosis.ts';
import { r35ContradictorySigns } from './rules/r35-contradictory-signs.ts';
import { r36ContradictoryStates } from './rules/r36-contradictory-states.ts';
import { r37About } from './rules/r37-about.ts';
import { r38HouseBrackmann } from './rules/r38-house-brackmann.ts';
import { r39ScaleTotal } from './rules/r39-scale-total.ts';
import { r40ComparedSides } from './rules/r40-compared-sides.ts';
import { r41Range } from './rules/r41-range.ts';
import { r42Readings } from './rules/r42-readings.ts';
import { r43Pupils } from './rules/r43-pupils.ts';
import { r44JawOpening } from './rules/r44-jaw-opening.ts';
import { r45MovementSides } from './rules/r45-movement-sides.ts';
import { r46SensationSides } from './rules/r46-sensation-sides.ts';
import { r47PlausibleFigure } from './rules/r47-plausible-figure.ts';
import { r48Exclusions } from './rules/r48-exclusions.ts';
import { r49FiguresTogether } from './rules/r49-figures-together.ts';
import { r50Conclusion } from './rules/r50-conclusion.ts';
import { r51Members } from './rules/r51-members.ts';

/**
 * Every rule, in the order in which results are given. A new rule is a file, a line here and its
 * cases; a new picture of danger is a row of the tables of pictures. R05 (units), R27 (status) and the sides and dates of R02 and R30 are checked with the form
 * and the life of the record; R33 is the one form that `wordedFinding` (prompt.ts) gives every prompt.
 */
export const rules: readonly Rule[] = [
  r01Coverage,
  r02SideInWords,
  r03NormalWithSign,
  r04Negatives,
  r06LidSum,
  r07LidDifference,
  r08SideDifference,
  r09Change,
  r10SkinChange,
  r11ThyroidGrowth,
  r12SevenPoint,
  r13Abcde,
  r14SkinReferral,
  r15LarynxMouth,
  r16Thyroid,
  r16bScotland,
  r17NeckMass,
  r18Horner,
  r19FacialPattern,
  r19aForeheadSpared,
  r19bOpenEye,
  r20SensationMap,
  r21Hutchinson,
  r22GiantCell,
  r23Hearing,
  r24LumpMotion,
  r25Jaw,
  r26Whisper,
  r28Copied,
  r29AllNormalWords,
  r30TimeOrder,
  r31DiameterBoundary,
  r32TermAndSize,
  r34Pseudoptosis,
  r35ContradictorySigns,
  r36ContradictoryStates,
  r37About,
  r38HouseBrackmann,
  r39ScaleTotal,
  r40ComparedSides,
  r41Range,
  r42Readings,
  r43Pupils,
  r44JawOpening,
  r45MovementSides,
  r46SensationSides,
  r47PlausibleFigure,
  r48Exclusions,
  r49FiguresTogether,
  r50Conclusion,
  r51Members,
  ...pictureRules,
];
