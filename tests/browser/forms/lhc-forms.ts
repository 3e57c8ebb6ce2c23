import { join } from 'node:path';
import { published } from '../../../src/generate/published.ts';
import { emptyPage, type Renderer } from './shown.ts';

const html = `<!doctype html><html lang="en"><meta charset="utf-8"><title>Form</title>
<link rel="stylesheet" href="/webcomponent/styles.css"><body><div id="f"></div>
<script src="/webcomponent/assets/lib/zone.min.js"></script>
<script src="/webcomponent/lhc-forms.js"></script>
<script src="/fhir/R4/lformsFHIR.min.js"></script>`;

/** The whole text of an answer in a list, where the first ones are numbered: `1: Swelling`. */
function numbered(display: string): RegExp {
  return new RegExp(`^(?:\\d*:\\s*)?${display.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`);
}

/** LHC-Forms 40.1.3 of the U.S. National Library of Medicine, as npm has it. */
export const lhcForms: Renderer = {
  name: 'LHC-Forms',
  ready: () => published('lforms', '40.1.3'),
  show: async (browser, form) => {
    const folder = join(await published('lforms', '40.1.3'), 'dist/lforms');
    const { page, elsewhere } = await emptyPage(browser, (pathname) =>
      pathname === '/' ? { body: html } : { path: join(folder, pathname) },
    );
    await page.waitForFunction('window.LForms && LForms.Util && LForms.FHIR');
    await page.evaluate(`LForms.Util.addFormToPage(${JSON.stringify(form)}, 'f')`);
    await page.locator('[id^="item-conclusion:concern/"]').waitFor();
    // Reached as by the keyboard: a list that opened by itself at the field before can lie over it.
    const field = (linkId: string) =>
      page.locator(`:is(input, textarea)[id^="${linkId}/"]:visible`).first();
    const enter = async (linkId: string, text: string): Promise<void> => {
      await field(linkId).selectText();
      await page.keyboard.type(text);
      await page.keyboard.press('Tab');
    };
    return {
      page,
      elsewhere,
      enter,
      choose: (linkId, { code }) =>
        page.locator(`label[id^="${linkId}/"][id$="|${code}"]`).first().click(),
      pick: async (linkId, { display = '' }) => {
        await field(linkId).focus();
        await page.keyboard.type(display);
        await page
          .locator('#completionOptions li')
          .filter({ hasText: numbered(display) })
          .click();
      },
      response: async () => {
        const call = "JSON.stringify(LForms.Util.getFormFHIRData('QuestionnaireResponse', 'R4'))";
        return String(await page.evaluate(call));
      },
    };
  },
};
