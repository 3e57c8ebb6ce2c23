import {
  abnormal,
  absent,
  type ExamDraft,
  indeterminate,
  measured,
  normal,
  noted,
  partlyExamined,
  present,
  tested,
} from '../../../src/index.ts';
import { bothSides } from '../zones.ts';

/** Outer ear, canal, drum and hearing. Wax hides half of the left drum. */
export function ears(draft: ExamDraft): ExamDraft {
  const touch = ['inspection', 'palpation'] as const;
  let exam = draft;
  for (const side of bothSides) {
    exam = normal(exam, [
      { region: 'pinna', side, methods: touch },
      { region: 'tragus', side, methods: touch },
      { region: 'mastoid', side, methods: touch },
    ]);
    exam = present(exam, 'auricle-shape.usual', { region: 'pinna', side });
    exam = absent(exam, 'vesicles', { region: 'pinna', side });
    exam = absent(exam, 'ear-lesion', { region: 'pinna', side });
    exam = absent(exam, 'eac-tender', { region: 'tragus', side, methods: ['palpation'] });
    exam = absent(exam, 'tender', { region: 'mastoid', side, methods: ['palpation'] });
  }
  exam = rightCanal(exam);
  exam = leftCanal(exam);
  exam = noted(exam, 'Left: soft yellow wax, front half of the drum hidden. "Feels stuffed."', {
    region: 'ears',
    side: 'left',
  });
  return hearing(exam);
}

const scope = { instruments: ['otoscope'] };

function rightCanal(draft: ExamDraft): ExamDraft {
  const canal = { region: 'eac', side: 'right', methods: ['otoscopy'] } as const;
  const drum = { region: 'tm', side: 'right', methods: ['otoscopy'] } as const;
  let exam = normal(draft, [canal, drum], scope);
  exam = present(exam, 'eac-clear', canal, scope);
  exam = present(exam, 'tm-view.adequate', drum, {
    ...scope,
    attributes: { 'tm-extent-seen': 'all' },
  });
  for (const sign of [
    'tm-intact.intact',
    'tm-colour.pearl-grey',
    'tm-appearance.translucent',
    'tm-position.neutral',
  ] as const) {
    exam = present(exam, sign, drum, scope);
  }
  exam = absent(exam, 'tm-position.bulging', drum, scope);
  return absent(exam, 'tm-fluid', drum, scope);
}

function leftCanal(draft: ExamDraft): ExamDraft {
  const canal = { region: 'eac', side: 'left', methods: ['otoscopy'] } as const;
  const drum = { region: 'tm', side: 'left', methods: ['otoscopy'] } as const;
  let exam = abnormal(draft, canal, scope);
  exam = present(exam, 'eac-wax-amount.partial', canal, { key: 'wax-left', ...scope });
  exam = absent(exam, 'eac-discharge', canal, scope);
  exam = partlyExamined(
    exam,
    drum,
    { code: 'unable-wax', text: 'Wax over the front half; not removed today' },
    scope,
  );
  exam = present(exam, 'tm-view.compromised', drum, {
    ...scope,
    attributes: {
      'tm-extent-seen': 'half',
      'tm-part-seen': ['posterosuperior', 'posteroinferior'],
    },
  });
  exam = present(exam, 'tm-colour.pearl-grey', drum, {
    ...scope,
    attributes: { 'tm-part': ['posterosuperior', 'posteroinferior'] },
  });
  return indeterminate(exam, 'tm-intact.perforated', drum, {
    ...scope,
    note: 'The part that is seen is whole; the rest is not seen.',
  });
}

function hearing(draft: ExamDraft): ExamDraft {
  let exam = tested(draft, 'cn8-whisper', 'pass', { side: 'right' });
  exam = tested(exam, 'cn8-whisper', 'pass', { side: 'left' });
  const six = { conditions: ['first-try'] } as const;
  exam = measured(exam, 'whisper', { region: 'hearing', side: 'right' }, '6', '{score}', six);
  exam = measured(exam, 'whisper', { region: 'hearing', side: 'left' }, '5', '{score}', six);
  const fork = { instruments: ['fork'] };
  exam = tested(exam, 'rinne', 'air-better', { side: 'right', ...fork });
  exam = tested(exam, 'rinne', 'air-better', { side: 'left', ...fork });
  return tested(exam, 'weber', 'central', fork);
}
