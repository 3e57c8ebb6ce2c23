import { describe, expect, it } from 'vitest';
import { run } from './in-process.ts';

describe('find', () => {
  it('writes a line a code, with the word that was met', async () => {
    const { code, out, err } = await run(['find', 'beauty', 'mark', '--kind', 'sign']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out.split('\n')[0]).toBe('sign\tnaevus\tNaevus (mole)\t(beauty mark)');
  });

  it('writes JSON, and no more than asked for', async () => {
    const { out } = await run(['find', 'Kropf', '--format', 'json', '--limit', '1']);
    expect(JSON.parse(out)).toMatchObject([{ kind: 'sign', code: 'thy-size.enlarged' }]);
  });

  it('says where nothing is near, and what is wrong with a call', async () => {
    expect(await run(['find', 'qqqqzzzzqqqq'])).toEqual({
      code: 1,
      out: '',
      err: 'face-neck-fhir: nothing is similar to these words\n',
    });
    const { code, err } = await run(['find', 'wax', '--region', 'eardrum']);
    expect({ code, err }).toEqual({
      code: 2,
      err: 'face-neck-fhir: --region is not the code of a region; perhaps tm\n',
    });
    expect((await run(['find', 'wax', '--limit', '0'])).code).toBe(2);
    expect((await run(['find'])).code).toBe(2);
    expect((await run(['find', 'wax', '--kind', 'organ'])).code).toBe(2);
  });
});
