import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { idsOf } from '../../src/fhir/names/ids.ts';

/** UUID v5 after RFC 9562 section 5.5, written anew with the SHA-1 of Node. */
function uuidV5(name: string, namespace: string): string {
  const space = Buffer.from(namespace.replaceAll('-', ''), 'hex');
  const hash = createHash('sha1').update(space).update(name, 'utf8').digest().subarray(0, 16);
  hash.writeUInt8((hash.readUInt8(6) & 0x0f) | 0x50, 6);
  hash.writeUInt8((hash.readUInt8(8) & 0x3f) | 0x80, 8);
  return hash.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}

/** Namespace IDs of RFC 9562 section 6.6. */
const DNS = '6ba7b810-9dad-11d1-80b4-00c04fd430c8';
const URL_SPACE = '6ba7b811-9dad-11d1-80b4-00c04fd430c8';

describe('ids of an exam', () => {
  it('the reference of this test gives the example of RFC 9562 appendix A.4', () => {
    expect(uuidV5('www.example.com', DNS)).toBe('2ed6657d-e927-568b-95e1-2665a8aea6a2');
  });

  it.each([
    ['report', 'E-1'],
    ['statement/finding/naevus/temple/right', 'E-1'],
    ['statement/é', 'Untersuchung/7'],
  ])('%s of %s is the UUID v5 of exam and name', (name, exam) => {
    const library = uuidV5('https://face-neck-fhir.example/fhir', URL_SPACE);
    const space = uuidV5(`https://clinic.example/exams|${exam}`, library);
    expect(idsOf('https://clinic.example/exams', exam)(name)).toBe(uuidV5(name, space));
  });

  it('differ by system, exam and name, and are the same again', () => {
    const ids = idsOf('a', '1');
    const all = [ids('x'), ids('y'), idsOf('a', '2')('x'), idsOf('b', '1')('x')];
    expect(new Set(all).size).toBe(4);
    expect(ids('x')).toBe(all[0]);
    expect(idsOf('a', '1')('x')).toBe(all[0]);
  });
});
