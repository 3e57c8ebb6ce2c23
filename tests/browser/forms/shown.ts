import type { Coding, Questionnaire } from 'fhir/r4.js';
import type { Browser, Page } from 'playwright-core';

/** A form on a page of a renderer, and how an answer is entered there as a person does. */
export interface ShownForm {
  readonly page: Page;
  /** Requests for anything but the renderer itself; none is sent. */
  readonly elsewhere: readonly string[];
  /** One of the answers that are all shown. */
  readonly choose: (linkId: string, coding: Answer) => Promise<void>;
  /** One of a list that opens. */
  readonly pick: (linkId: string, coding: Answer) => Promise<void>;
  /** Words or a figure; what stood there is gone. */
  readonly enter: (linkId: string, text: string) => Promise<void>;
  /** What the renderer makes of it, as JSON. */
  readonly response: () => Promise<string>;
}

/** A Coding with a display, as a form offers it. */
export type Answer = Pick<Coding, 'code' | 'display'>;

export interface Renderer {
  readonly name: string;
  /** Fetches or builds what it needs, once. */
  readonly ready: () => Promise<unknown>;
  readonly show: (browser: Browser, form: Questionnaire) => Promise<ShownForm>;
}

/** What a page of a renderer is served from; by path, the file or the text. */
export type Served = (pathname: string) => { readonly path: string } | { readonly body: string };

/** An empty page on which nothing but what is served can be reached. */
export async function emptyPage(
  browser: Browser,
  served: Served,
): Promise<{ readonly page: Page; readonly elsewhere: string[] }> {
  const page = await browser.newPage();
  // A large form on a machine that has other work: the browser answers late, and that is no fault of the form.
  page.setDefaultTimeout(120_000);
  const elsewhere: string[] = [];
  await page.route('**/*', async (route) => {
    const { host, pathname, href, protocol } = new URL(route.request().url());
    if (protocol === 'data:') await route.continue();
    else if (host !== 'forms.test') {
      elsewhere.push(href);
      await route.abort();
    } else {
      const found = served(pathname);
      const answer = 'body' in found ? { contentType: 'text/html', ...found } : found;
      await route.fulfill(answer).catch(() => route.abort());
    }
  });
  await page.goto('http://forms.test/');
  return { page, elsewhere };
}
