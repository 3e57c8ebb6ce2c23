import {
  absent,
  type ExamDraft,
  measured,
  moved,
  normal,
  notExamined,
  noted,
  present,
  tested,
} from '../../../src/index.ts';
import { bothSides, nodeLevels } from '../zones.ts';

const touch = ['inspection', 'palpation'] as const;

/** Vessels, salivary glands, neck, thyroid at rest and on swallowing, nodes level by level. */
export function neck(draft: ExamDraft): ExamDraft {
  return nodes(thyroid(throat(glandsAndVessels(draft))));
}

function glandsAndVessels(draft: ExamDraft): ExamDraft {
  let exam = draft;
  for (const side of bothSides) {
    exam = normal(exam, [
      { region: 'temporal-artery', side, methods: touch },
      { region: 'parotid', side, methods: touch },
      { region: 'submandibular-gland', side, methods: touch },
    ]);
    exam = normal(
      exam,
      [{ region: 'carotid', side, methods: ['inspection', 'palpation', 'auscultation'] }],
      { instruments: ['stethoscope'] },
    );
    exam = present(exam, 'artery-pulse.present', { region: 'temporal-artery', side });
    exam = absent(exam, 'tender', { region: 'temporal-artery', side, methods: ['palpation'] });
    exam = absent(
      exam,
      'carotid-bruit',
      { region: 'carotid', side, methods: ['auscultation'] },
      { instruments: ['stethoscope'] },
    );
    exam = absent(exam, 'gland-enlarged', { region: 'parotid', side, methods: touch });
    exam = absent(exam, 'gland-enlarged', { region: 'submandibular-gland', side, methods: touch });
  }
  return noted(exam, 'Glands soft & even. No bruit heard, breath held.', { region: 'salivary' });
}

function throat(draft: ExamDraft): ExamDraft {
  let exam = normal(draft, [{ region: 'neck-midline', methods: touch }]);
  exam = present(exam, 'trachea.central', { region: 'neck-midline', methods: ['palpation'] });
  exam = absent(exam, 'neck-mass', { region: 'neck-midline', methods: touch });
  exam = absent(exam, 'stridor', { region: 'neck-midline' });
  for (const side of bothSides) {
    exam = normal(exam, [
      { region: 'scm', side, methods: ['inspection', 'palpation', 'motor-test'] },
      { region: 'triangle-anterior', side, methods: touch },
      { region: 'triangle-posterior', side, methods: touch },
    ]);
    exam = absent(exam, 'neck-mass', { region: 'triangle-anterior', side, methods: touch });
    exam = absent(exam, 'neck-mass', { region: 'triangle-posterior', side, methods: touch });
    exam = moved(exam, 'cn11-scm', 'normal', { side });
    exam = moved(exam, 'cn11-trap', 'normal', { side });
  }
  exam = moved(exam, 'neck-flexion', 'full', {});
  exam = moved(exam, 'neck-extension', 'full', {});
  exam = moved(exam, 'neck-rotation', 'full', { side: 'right' });
  exam = moved(exam, 'neck-rotation', 'limited', {
    side: 'left',
    key: 'rotation-left',
    note: 'Stops a little short of the shoulder, no pain; the cab seat is turned the other way',
  });
  exam = absent(exam, 'stiff-neck', { region: 'neck-motion' });
  exam = moved(exam, 'cn9-10', 'central', {});
  exam = moved(exam, 'cn12', 'central', {});
  exam = tested(exam, 'swallow-water', 'normal', { instruments: ['water'] });
  exam = absent(exam, 'swallow-cough', { region: 'swallow', methods: ['function-test'] });
  return noted(exam, 'Turns less to the left: «depuis toujours», he says.', { region: 'neck' });
}

function thyroid(draft: ExamDraft): ExamDraft {
  const methods = ['inspection', 'palpation', 'function-test'] as const;
  let exam = normal(
    draft,
    [
      { region: 'thyroid-lobe', side: 'right', methods },
      { region: 'thyroid-lobe', side: 'left', methods },
      { region: 'thyroid-isthmus', methods },
    ],
    { instruments: ['water'] },
  );
  for (const side of bothSides) {
    const rest = { region: 'thyroid-lobe', side, methods: touch } as const;
    exam = present(exam, 'thy-size.palpable-usual', rest);
    exam = present(exam, 'thy-surface.smooth', rest);
    exam = present(exam, 'thy-consist.soft', rest);
    exam = absent(exam, 'thy-surface.single-nodule', rest);
    exam = absent(exam, 'thy-tender', rest);
    exam = present(
      exam,
      'thy-swallow.moves',
      { region: 'thyroid-lobe', side, methods: ['function-test'] },
      { instruments: ['water'] },
    );
  }
  return noted(exam, 'At rest not seen; on swallowing both lobes glide up under the fingers.', {
    region: 'thyroid',
  });
}

function nodes(draft: ExamDraft): ExamDraft {
  let exam = draft;
  const methods = ['palpation'] as const;
  for (const region of nodeLevels) {
    for (const side of bothSides) {
      if (region === 'ln-ib' && side === 'right') continue;
      exam = absent(exam, 'node-palpable', { region, side, methods });
    }
  }
  exam = absent(exam, 'node-palpable', { region: 'ln-ia', methods });
  exam = absent(exam, 'node-palpable', { region: 'ln-vi', methods });
  exam = notExamined(exam, { region: 'ln-vii' }, 'not-indicated');
  const felt = { region: 'ln-ib', side: 'right' } as const;
  exam = present(
    exam,
    'node-palpable',
    { ...felt, methods },
    {
      key: 'node-ib',
      tracking: 'P-10482/node-ib-right',
      attributes: {
        'node-number': 'one',
        'node-consistency': 'soft',
        'node-mobility': 'mobile',
        'node-tender': false,
        'node-skin': 'normal',
      },
    },
  );
  const size = { about: 'node-ib', instruments: ['ruler'] };
  exam = measured(exam, 'node-size', felt, '7.0', 'mm', { ...size, conditions: ['long-axis'] });
  exam = measured(exam, 'node-size', felt, '5.0', 'mm', { ...size, conditions: ['short-axis'] });
  return noted(exam, 'One small soft node below the right jaw, felt in 2023 & 2024 too.', {
    region: 'ln-ib',
    side: 'right',
  });
}
