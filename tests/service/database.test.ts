import { afterEach, describe, expect, it } from 'vitest';
import { examsToSend } from './exams.ts';
import { fhirServer, service, stopAll } from './running.ts';
import { countsOf, drained, freshDatabase, post, startService } from './service.ts';

afterEach(stopAll);
describe('a full disk', () => {
  it('gives 507, keeps what was acknowledged, and takes the rest once there is room', async () => {
    const fhir = await fhirServer();
    const settings = { DATABASE: freshDatabase(), FHIR_URL: fhir.url };
    const small = await service({ ...settings, MAX_DATABASE_PAGES: '200' });
    const exams = examsToSend(1, 24);
    const statuses: (number | undefined)[] = [];
    for (const { text } of exams) statuses.push(await post(small.url, text));
    const refused = exams.filter((_, at) => statuses[at] === 507);
    expect(new Set(statuses)).toEqual(new Set([201, 507]));
    const kept = exams.length - refused.length;
    expect(await drained(small.url)).toEqual({ stored: kept, waiting: 0, refused: 0 });
    await small.end();

    const large = await service(settings);
    for (const { text } of refused) expect(await post(large.url, text)).toBe(201);
    expect((await drained(large.url)).stored).toBe(exams.length);
    const lost = exams.flatMap(({ resources }) => resources).filter((n) => !fhir.resources.has(n));
    expect(lost).toEqual([]);
    expect([...fhir.resources.values()].filter(({ versions }) => versions !== 1)).toEqual([]);
  });
});

describe('two processes', () => {
  it('do not share a database: the second does not start', async () => {
    const DATABASE = freshDatabase();
    const first = await service({ DATABASE });
    await expect(startService({ DATABASE })).rejects.toThrow(/did not start/);
    expect((await countsOf(first.url)).stored).toBe(0);
  });
});
