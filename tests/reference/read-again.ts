/** How often a read is asked for before it counts as failed. */
const ATTEMPTS = 3;

/**
 * A request that changes nothing, asked again where the connection ends before the answer: a server may
 * close a connection that was idle just when the next request is on its way.
 * https://www.rfc-editor.org/rfc/rfc9112#section-9.3.1
 */
export async function readAgain(url: string, request?: RequestInit): Promise<string> {
  for (let attempt = 1; ; attempt++) {
    try {
      const answer = await fetch(url, request);
      const text = await answer.text();
      if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
      return text;
    } catch (error) {
      // What fetch throws where there is no answer, or only a part of one; an answer of refusal is final.
      if (!(error instanceof TypeError) || attempt === ATTEMPTS) throw error;
      console.error(`the connection ended; asked again (${attempt})`);
    }
  }
}
