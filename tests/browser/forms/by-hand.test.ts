import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { fromQuestionnaireResponse, toQuestionnaire } from '../../../src/forms/index.ts';
import { finishExamOrThrow, fromJson, orThrow, toBundleOrThrow } from '../../../src/index.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';
import { head } from '../../forms/fill.ts';
import { launch } from '../chromium.ts';
import { lhcForms } from './lhc-forms.ts';

/** A form filled in by hand in a renderer that knows nothing of this library. */
const pictures = join(import.meta.dirname, '../../../output/screenshots');

let browser: Browser;
beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  [browser] = await Promise.all([launch(), lhcForms.ready()]);
}, 600_000);
afterAll(() => browser.close());

it('a renderer shows the form, and what is entered in it comes back as the exam', async () => {
  const form = orThrow('make the form', toQuestionnaire('jaw-pain'));
  const {
    page,
    elsewhere,
    enter,
    response: written,
    ...shown
  } = await lhcForms.show(browser, form);
  const choose = (linkId: string, code: string) => shown.choose(linkId, { code });
  const pick = (linkId: string, display: string) => shown.pick(linkId, { display });
  const state = 'region-state/tmj/right';
  await choose(state, 'state.abnormal');
  await choose(`${state}:methods`, 'palpation');
  await choose('finding/tmj-click/tmj/right', 'presence.present');
  await choose('finding/jaw-locking/tmj/right', 'presence.absent');
  await pick(`${state}:further:sign`, 'Lump felt');
  await choose(`${state}:further:presence`, 'presence.indeterminate');
  // A sign that was entered, and then the side was said not to have been examined.
  await choose('region-state/tmj/left', 'state.abnormal');
  await choose('finding/tmj-click/tmj/left', 'presence.present');
  await choose('region-state/tmj/left', 'state.not-examined');
  await pick('region-state/tmj/left:reason', 'Declined by the patient');
  await enter('measurement/mio/jaw-motion', '41.5');
  await enter('measurement/lat-exc/jaw-motion/left', '9.5');
  await pick('sensation/v3/left:light-touch', 'Reduced');
  await choose('movement/cn5-open', 'straight');
  await enter('note/tmj', 'Clicks <b>louder</b> in the morning');
  await enter('conclusion:text', 'A clicking jaw');
  await choose('conclusion:concern', 'concern.low');
  await page.screenshot({ path: join(pictures, 'form.png'), fullPage: true });
  expect(elsewhere).toEqual([]);

  const response = orThrow('read', fromJson(await written()));
  const outcome = fromQuestionnaireResponse(response, { protocol: 'jaw-pain', exam: head });
  // Nothing but what was left open is told: this renderer takes back what it has hidden.
  expect([...new Set(outcome.issues.map(({ code }) => code))]).toEqual(['missing-property']);
  const draft = orThrow('read the answers', outcome);
  expect(draft.exam.statements).toEqual([
    {
      key: 'sensation/v3/left',
      kind: 'sensation',
      point: 'v3',
      side: 'left',
      results: [{ modality: 'light-touch', result: 'reduced' }],
    },
    {
      key: 'region-state/tmj/right',
      kind: 'region-state',
      region: 'tmj',
      side: 'right',
      state: 'abnormal',
      methods: ['palpation'],
    },
    finding('tmj-click', 'present'),
    finding('jaw-locking', 'absent'),
    finding('lump-felt', 'indeterminate'),
    {
      key: 'region-state/tmj/left',
      kind: 'region-state',
      region: 'tmj',
      side: 'left',
      state: 'not-examined',
      reason: { code: 'declined' },
    },
    { key: 'note/tmj', kind: 'note', region: 'tmj', text: 'Clicks <b>louder</b> in the morning' },
    { key: 'movement/cn5-open', kind: 'movement', test: 'cn5-open', grade: 'straight' },
    figure('mio', '41.5'),
    figure('lat-exc', '9.5', 'left'),
  ]);
  expect(draft.exam.conclusion).toEqual({ text: 'A clicking jaw', concern: 'low' });
  const bundle = toBundleOrThrow(finishExamOrThrow(draft, 'final'));
  expect(validateBundle(bundle).valid).toBe(true);
}, 240_000);

function finding(sign: string, presence: string): object {
  const key = `finding/${sign}/tmj/right`;
  return { key, kind: 'finding', finding: sign, region: 'tmj', side: 'right', presence };
}

function figure(measure: string, value: string, side?: string): object {
  const key = ['measurement', measure, 'jaw-motion', ...(side === undefined ? [] : [side])];
  return {
    key: key.join('/'),
    kind: 'measurement',
    measure,
    region: 'jaw-motion',
    ...(side !== undefined && { side }),
    value,
    unit: 'mm',
  };
}
