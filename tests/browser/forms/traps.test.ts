import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fromQuestionnaireResponse, toQuestionnaire } from '../../../src/forms/index.ts';
import { fromJson, orThrow } from '../../../src/index.ts';
import { head } from '../../forms/fill.ts';
import { launch } from '../chromium.ts';
import { lhcForms } from './lhc-forms.ts';
import type { Renderer, ShownForm } from './shown.ts';
import { smartForms } from './smart-forms.ts';

/** What renderers do to answers, each seen here, and what the reading makes of it. */

const form = orThrow('make', toQuestionnaire('droopy-lid'));
const lid = 'region-state/lid-upper/left';
const ptosis = 'finding/lid-position.ptosis/lid-upper/left';
const distance = 'measurement/mrd1/lid-upper/left';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
}, 60_000);
afterAll(() => browser.close());

type Enters = (shown: ShownForm) => Promise<void>;

async function readAfter(
  renderer: Renderer,
  entering: Enters,
): Promise<{ written: string; outcome: ReturnType<typeof fromQuestionnaireResponse> }> {
  const shown = await renderer.show(browser, form);
  await entering(shown);
  await shown.page.waitForTimeout(500);
  const written = await shown.response();
  await shown.page.close();
  const response = orThrow('parse', fromJson(written));
  const outcome = fromQuestionnaireResponse(response, { protocol: 'droopy-lid', exam: head });
  return { written, outcome };
}

const hides: Enters = async ({ choose, enter }) => {
  await choose(lid, { code: 'state.abnormal', display: 'Examined, abnormality found' });
  await choose(ptosis, { code: 'presence.present', display: 'Present' });
  await choose(lid, { code: 'state.not-examined', display: 'Not examined' });
  await enter('note/lid-upper', 'Closed');
};

describe('Smart Forms', () => {
  beforeAll(() => smartForms.ready(), 900_000);

  it('keeps an answer that it has hidden; that is told and not taken', async () => {
    const { written, outcome } = await readAfter(smartForms, hides);
    expect(written).toContain('presence.present');
    const hidden = outcome.issues.filter(({ code }) => code === 'not-in-exam');
    expect(hidden.map(({ path, severity }) => [severity, path.join('.')])).toEqual([
      ['warning', ptosis],
    ]);
  });

  it('takes the comma out of a figure; one that no face has is refused', async () => {
    const { written, outcome } = await readAfter(smartForms, ({ page }) =>
      page.locator(`[id="decimal-${distance}"]`).pressSequentially('2,5'),
    );
    expect(written).toContain('"valueDecimal":25');
    expect(outcome.ok).toBe(false);
    const errors = outcome.issues.filter(({ severity }) => severity === 'error');
    expect(errors.map(({ code, path }) => [code, path.join('.')])).toEqual([
      ['implausible-figure', distance],
    ]);
  });
});

describe('LHC-Forms', () => {
  beforeAll(() => lhcForms.ready(), 600_000);

  it('takes back an answer that it has hidden', async () => {
    const { written, outcome } = await readAfter(lhcForms, hides);
    expect(written).not.toContain('presence.present');
    expect(outcome.issues.map(({ code }) => code)).not.toContain('not-in-exam');
  });

  it('gives no response while a figure has a comma, which is no exam', async () => {
    const { written, outcome } = await readAfter(lhcForms, ({ enter }) => enter(distance, '2,5'));
    expect(written).toBe('null');
    expect(outcome.issues.map(({ code }) => code)).toEqual(['wrong-type']);
  });

  it('marks a form as complete that is not; what is open is told all the same', async () => {
    const { written, outcome } = await readAfter(lhcForms, ({ enter }) =>
      enter('note/lid-upper', 'Closed'),
    );
    expect(written).toContain('"status":"completed"');
    expect(outcome.issues.map(({ path }) => path.join('.'))).toContain(lid);
  });
});
