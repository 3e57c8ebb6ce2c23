import {
  conclude,
  finishExamOrThrow,
  normal,
  present,
  startExam,
  toBundleOrThrow,
  toJson,
} from '../src/index.ts';
import { validateBundle } from '../src/validate/versions/r4.ts';

let draft = startExam({
  id: 'demo-1',
  subject: { name: { text: 'Invented Picker' }, birthDate: '1990' },
  examiners: [{ key: 'nurse', role: 'vineyard nurse' }],
  performed: { start: '2025-09-01T10:00:00+02:00' },
  recorded: '2025-09-01T10:20:00+02:00',
  protocol: { id: 'skin-lesion', version: '1.0.0' },
});
draft = normal(draft, [{ region: 'forehead', side: 'both', methods: ['inspection'] }]);
draft = present(draft, 'naevus', { region: 'temple', side: 'right' }, { note: '"Mole", 4 mm' });
draft = conclude(draft, { text: 'A mole, nothing else looked at.', concern: 'none' });

const bundle = toBundleOrThrow(finishExamOrThrow(draft, 'final'));
const { valid, issues } = validateBundle(bundle);
console.log(valid, issues.length, toJson(bundle, { pretty: true }));
