import {
  abnormal,
  absent,
  type ExamDraft,
  measured,
  moved,
  normal,
  noted,
  present,
  scored,
  tested,
} from '../../../src/index.ts';
import { bothSides } from '../zones.ts';

/** Jaw joint, chewing muscles, opening and travel of the jaw. */
export function jaw(draft: ExamDraft): ExamDraft {
  const touch = ['inspection', 'palpation'] as const;
  let exam = normal(draft, [{ region: 'tmj', side: 'right', methods: touch }]);
  exam = abnormal(exam, { region: 'tmj', side: 'left', methods: touch });
  exam = absent(exam, 'tmj-click', { region: 'tmj', side: 'right', methods: ['palpation'] });
  exam = present(
    exam,
    'tmj-click',
    { region: 'tmj', side: 'left', methods: ['palpation'] },
    { key: 'click-left', attributes: { 'joint-sound-phase': 'opening' } },
  );
  for (const side of bothSides) {
    exam = absent(exam, 'tmj-tender', { region: 'tmj', side, methods: ['palpation'] });
    exam = absent(exam, 'jaw-locking', { region: 'tmj', side });
    exam = normal(exam, [
      { region: 'masseter', side, methods: ['inspection', 'palpation', 'motor-test'] },
      { region: 'temporalis', side, methods: ['inspection', 'palpation', 'motor-test'] },
      { region: 'pterygoids', side, methods: ['palpation', 'motor-test'] },
    ]);
    exam = present(exam, 'muscle-bulk.usual', { region: 'masseter', side, methods: touch });
    exam = present(exam, 'muscle-bulk.usual', { region: 'temporalis', side, methods: touch });
    exam = moved(exam, 'cn5-masseter', 'normal', { side });
  }
  exam = moved(exam, 'cn5-open', 'straight', {});
  exam = tested(exam, 'jaw-jerk', 'not-tested', { reason: 'not-indicated' });
  exam = normal(exam, [{ region: 'jaw-motion', methods: ['inspection', 'function-test'] }]);
  exam = present(exam, 'jaw-path.straight', { region: 'jaw-motion', methods: ['inspection'] });
  exam = absent(exam, 'jaw-limited-opening', { region: 'jaw-motion', methods: ['measurement'] });
  exam = scored(exam, 'pain-nrs', '0-10', 0, { region: 'tmj', side: 'left' });
  return noted(travel(exam), 'Click only on wide opening, painless, same as last year.', {
    region: 'tmj',
    side: 'left',
  });
}

function travel(draft: ExamDraft): ExamDraft {
  const ruler = { instruments: ['ruler'] };
  const motion = { region: 'jaw-motion' } as const;
  let exam = measured(draft, 'mio', motion, '48.0', 'mm', {
    ...ruler,
    readings: ['46.0', '48.0', '47.5'],
    convention: 'maximum',
    conditions: ['unassisted', 'pain-free', 'overlap-excluded'],
  });
  exam = measured(exam, 'mio-assist', motion, '50.0', 'mm', { ...ruler, conditions: ['assisted'] });
  exam = measured(exam, 'overbite', motion, '3.0', 'mm', ruler);
  exam = measured(exam, 'protrusion', motion, '8.0', 'mm', ruler);
  exam = measured(exam, 'lat-exc', { ...motion, side: 'right' }, '10.0', 'mm', ruler);
  return measured(exam, 'lat-exc', { ...motion, side: 'left' }, '9.5', 'mm', ruler);
}
