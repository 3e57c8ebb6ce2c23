import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { harbourPath, maskCheck } from '../../clinic/harbour.ts';
import { inFolder, run } from '../in-process.ts';

const clinic = ['--clinic', harbourPath];
const earlier = maskCheck('quay-1', '2024-05-06T09:00:00+02:00');
const exam = maskCheck('quay-2', '2025-05-06T09:00:00+02:00');
const stdin = JSON.stringify(exam);

const table = 'id;day;left;nurse\nq-1;2025-05-06;mask-mark;Nurse\n';
const mapping = {
  format: 'face-neck-mapping/1',
  source: { syntax: 'csv', delimiter: ';' },
  exam: {
    id: { prefix: 'old', from: ['id'] },
    status: { value: 'final' },
    subject: { identifiers: [{ from: 'id', system: 'https://harbour.example/workers' }] },
    performed: { start: 'day' },
    recorded: { value: '2025-06-01T08:00:00Z' },
    examiner: { name: 'nurse' },
    protocol: { id: 'mask-check', version: '1.0.0' },
  },
  fields: { left: { kind: 'finding', region: 'seal-line', side: 'left', words: 'seal' } },
  words: { seal: { 'mask-mark': 'mask-mark' } },
  dates: { formats: ['YYYY-MM-DD'], zone: 'Europe/Lisbon' },
};

it('compare and convert take what a clinic has decided', async () => {
  await inFolder(async (cwd) => {
    writeFileSync(join(cwd, 'a.json'), JSON.stringify(earlier));
    writeFileSync(join(cwd, 'b.json'), stdin);
    const compared = await run(['compare', 'a.json', 'b.json', ...clinic], { cwd });
    expect(compared).toMatchObject({ code: 0, err: '' });

    writeFileSync(join(cwd, 'old.csv'), table);
    writeFileSync(join(cwd, 'map.json'), JSON.stringify(mapping));
    const args = ['convert', 'old.csv', '--mapping', 'map.json', '--patient', 'match'];
    const made = await run([...args, ...clinic], { cwd });
    expect(made).toEqual({ code: 0, out: made.out, err: '' });
    expect(JSON.parse(made.out).type).toBe('transaction');
    expect(made.out).toContain('Pressure mark of a mask');
    const refused = await run(args, { cwd });
    expect(refused.code).toBe(1);
  });
});
