import {
  abnormal,
  absent,
  type ExamDraft,
  normal,
  noted,
  present,
  tested,
} from '../../../src/index.ts';
import { bothSides } from '../zones.ts';

/** The nose outside and inside, its airflow by side, and the sinuses. */
export function nose(draft: ExamDraft): ExamDraft {
  const touch = ['inspection', 'palpation'] as const;
  const inside = { instruments: ['headlight', 'speculum'] };
  let exam = normal(draft, [
    { region: 'nose-root', methods: touch },
    { region: 'nose-dorsum', methods: touch },
    { region: 'nose-tip', methods: touch },
    { region: 'columella', methods: ['inspection'] },
    { region: 'nose-sidewall', side: 'right', methods: touch },
    { region: 'nose-sidewall', side: 'left', methods: touch },
    { region: 'nose-ala', side: 'right', methods: touch },
    { region: 'nose-ala', side: 'left', methods: touch },
  ]);
  exam = present(exam, 'ext-nose.straight', { region: 'nose-dorsum', methods: ['inspection'] });
  exam = normal(
    exam,
    [
      {
        region: 'vestibule',
        side: 'right',
        methods: ['inspection', 'anterior-rhinoscopy'],
      },
      { region: 'vestibule', side: 'left', methods: ['inspection', 'anterior-rhinoscopy'] },
      { region: 'turbinate-inf', side: 'right', methods: ['anterior-rhinoscopy'] },
    ],
    inside,
  );
  const septum = { region: 'septum', methods: ['anterior-rhinoscopy'] } as const;
  exam = abnormal(exam, septum, inside);
  exam = present(exam, 'septum.deviated-right', septum, { key: 'septum', ...inside });
  exam = absent(exam, 'septal-perforation', septum, inside);
  exam = present(
    exam,
    'turbinate-usual',
    { region: 'turbinate-inf', side: 'right', methods: ['anterior-rhinoscopy'] },
    inside,
  );
  const leftTurbinate = {
    region: 'turbinate-inf',
    side: 'left',
    methods: ['anterior-rhinoscopy'],
  } as const;
  exam = abnormal(exam, leftTurbinate, inside);
  exam = present(exam, 'turbinate-hypertrophy', leftTurbinate, inside);
  for (const side of bothSides) {
    const rhinoscopy = { region: 'vestibule', side, methods: ['anterior-rhinoscopy'] } as const;
    exam = absent(exam, 'nasal-blood', rhinoscopy, inside);
    exam = absent(exam, 'nasal-polyp', rhinoscopy, inside);
    exam = absent(exam, 'nasal-discharge', rhinoscopy, inside);
  }
  const airway = { region: 'nasal-airway', methods: ['function-test'] } as const;
  exam = present(exam, 'airflow.reduced', { ...airway, side: 'right' }, { key: 'airflow-right' });
  exam = present(exam, 'airflow.free', { ...airway, side: 'left' });
  exam = tested(exam, 'mirror-mist', 'reduced-right', { instruments: ['mirror'] });
  exam = noted(exam, 'Old break of the septum; not bothered by it, wants nothing done.', {
    region: 'nose',
  });
  return sinuses(exam);
}

function sinuses(draft: ExamDraft): ExamDraft {
  let exam = draft;
  for (const side of bothSides) {
    for (const region of ['sinus-frontal', 'sinus-maxillary'] as const) {
      exam = normal(exam, [{ region, side, methods: ['inspection', 'palpation', 'percussion'] }]);
      exam = absent(exam, 'tender', { region, side, methods: ['palpation'] });
    }
  }
  return exam;
}
