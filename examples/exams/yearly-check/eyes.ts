import {
  absent,
  type ExamDraft,
  measured,
  normal,
  noted,
  present,
  scored,
  tested,
} from '../../../src/index.ts';
import { bothSides } from '../zones.ts';

/** Brows, lids with their measures, lid margins, lashes, the visible eye and the pupils. */
export function eyes(draft: ExamDraft): ExamDraft {
  let exam = draft;
  for (const side of bothSides) {
    exam = lids(exam, side);
    exam = visibleEye(exam, side);
    exam = measures(exam, side);
  }
  exam = measured(exam, 'icd', { region: 'eyes' }, '33.0', 'mm', { instruments: ['ruler'] });
  exam = measured(exam, 'ipd', { region: 'eyes' }, '64', 'mm', {
    conditions: ['distance-gaze'],
    instruments: ['ruler'],
  });
  return noted(
    exam,
    'Lids level. MRD1 + MRD2 = PFH on both sides (4 + 5 = 9). Gritty only on windy days <his words>.',
    { region: 'eyes' },
  );
}

type Side = (typeof bothSides)[number];

function lids(draft: ExamDraft, side: Side): ExamDraft {
  const touch = ['inspection', 'palpation'] as const;
  const magnified = ['inspection', 'inspection-magnified'] as const;
  let exam = normal(draft, [
    { region: 'lid-upper', side, methods: touch },
    { region: 'lid-lower', side, methods: touch },
    { region: 'canthus-medial', side, methods: ['inspection'] },
    { region: 'canthus-lateral', side, methods: ['inspection'] },
    { region: 'punctum-lacrimal', side, methods: ['inspection'] },
  ]);
  exam = normal(
    exam,
    [
      { region: 'lid-margin-upper', side, methods: magnified },
      { region: 'lid-margin-lower', side, methods: magnified },
    ],
    { instruments: ['loupe'] },
  );
  exam = present(exam, 'brow-level', { region: 'eyebrow', side });
  for (const region of ['lid-upper', 'lid-lower'] as const) {
    exam = present(exam, 'lid-position.usual', { region, side, methods: ['inspection'] });
    exam = present(exam, 'lid-turn.apposed', { region, side, methods: ['inspection'] });
    exam = absent(exam, 'lid-swelling', { region, side, methods: touch });
    exam = absent(exam, 'lid-lesion', { region, side, methods: touch });
  }
  exam = absent(exam, 'lid-position.ptosis', { region: 'lid-upper', side });
  exam = absent(exam, 'lagophthalmos', { region: 'lid-upper', side });
  for (const region of ['lid-margin-upper', 'lid-margin-lower'] as const) {
    exam = present(exam, 'lid-margin-clean', { region, side, methods: magnified });
    exam = present(exam, 'lash-direction.outward', { region, side, methods: magnified });
    exam = present(exam, 'meibomian-orifices-clear', { region, side, methods: magnified });
    exam = absent(exam, 'lash-loss', { region, side, methods: magnified });
    exam = absent(exam, 'lash-direction.trichiasis', { region, side, methods: magnified });
    exam = absent(exam, 'collarettes', { region, side, methods: magnified });
  }
  return exam;
}

function visibleEye(draft: ExamDraft, side: Side): ExamDraft {
  let exam = normal(draft, [
    { region: 'conjunctiva', side, methods: ['inspection'] },
    { region: 'cornea', side, methods: ['inspection', 'reflex'] },
    { region: 'globe', side, methods: ['inspection', 'palpation'] },
  ]);
  exam = normal(exam, [{ region: 'pupil', side, methods: ['inspection', 'reflex'] }], {
    instruments: ['penlight'],
  });
  exam = present(exam, 'conjunctiva-quiet', { region: 'conjunctiva', side });
  exam = absent(exam, 'conjunctival-injection', { region: 'conjunctiva', side });
  exam = present(exam, 'cornea-clear', { region: 'cornea', side });
  exam = present(exam, 'globe-position.usual', { region: 'globe', side });
  exam = present(exam, 'pupil-equality.equal', { region: 'pupil', side });
  exam = present(exam, 'pupil-shape.round', { region: 'pupil', side });
  exam = present(exam, 'pupil-light.brisk', { region: 'pupil', side, methods: ['reflex'] });
  return tested(exam, 'corneal-reflex', 'present', { side, instruments: ['wisp'] });
}

function measures(draft: ExamDraft, side: Side): ExamDraft {
  const ruler = { instruments: ['ruler'] };
  const upper = { region: 'lid-upper', side } as const;
  const lower = { region: 'lid-lower', side } as const;
  let exam = measured(draft, 'mrd1', upper, '4.0', 'mm', {
    ...ruler,
    readings: side === 'right' ? ['4.0', '4.0', '4.0'] : ['4.0', '4.0', '3.5'],
    convention: 'median',
    conditions: ['primary-gaze', 'brow-fixed'],
  });
  exam = measured(exam, 'mrd2', lower, '5.0', 'mm', { ...ruler, conditions: ['primary-gaze'] });
  exam = measured(exam, 'pfh', { region: 'eyes', side }, '9.0', 'mm', {
    ...ruler,
    conditions: ['primary-gaze', 'brow-relaxed'],
  });
  exam = measured(exam, 'pfw', { region: 'eyes', side }, '29.5', 'mm', ruler);
  exam = measured(exam, 'levator', upper, '14.0', 'mm', { ...ruler, conditions: ['brow-fixed'] });
  exam = measured(exam, 'lid-crease', upper, '8.0', 'mm', ruler);
  exam = measured(exam, 'lagophthalmos', { region: 'eyes', side }, '0.0', 'mm', {
    ...ruler,
    conditions: ['gentle-closure'],
  });
  exam = measured(exam, 'lid-distraction', lower, '4.0', 'mm', ruler);
  exam = scored(exam, 'snapback', 'five-grade', 'snapback-0', { side });
  exam = measured(exam, 'pupil-diam', { region: 'pupil', side }, '3.0', 'mm', {
    ...ruler,
    conditions: ['light', 'distance-gaze'],
  });
  return measured(exam, 'pupil-diam', { region: 'pupil', side }, '5.5', 'mm', {
    ...ruler,
    conditions: ['dark', 'distance-gaze'],
  });
}
