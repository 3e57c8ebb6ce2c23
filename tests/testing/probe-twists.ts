import type { Twist } from './fake-server.ts';

/** What a server answers wrongly or in a way of its own, the step that tells it, and its name in the report. */
export type Case = readonly [string, string, string, Twist];

export const isTransaction = (body: string): boolean => body.includes('"transaction"');

/** What a server does wrong, the step that shows it, and the name in the report. */
export const wrongAnswers: readonly Case[] = [
  [
    'a page of HTML',
    'capability',
    'html-answer',
    (_, answer) => {
      answer.headers = { 'content-type': 'text/html' };
      answer.body = '<!DOCTYPE html><html><body>Sign in</body></html>';
    },
  ],
  [
    'success with an OperationOutcome that says error',
    'store',
    'success-with-error',
    ({ body }, answer) => {
      if (!isTransaction(body)) return;
      answer.status = 200;
      answer.body =
        '{"resourceType":"OperationOutcome","issue":[{"severity":"error","code":"invalid"}]}';
    },
  ],
  [
    'the content type of plain JSON',
    'read-back',
    'wrong-content-type',
    (_, answer) => {
      answer.headers['content-type'] = 'text/plain';
    },
  ],
  [
    'an endless redirect',
    'capability',
    'endless-redirect',
    ({ path }, answer) => {
      answer.status = 302;
      answer.headers['location'] = `/fhir/${path}`;
    },
  ],
  [
    'twelve million bytes of junk',
    'capability',
    'too-large',
    (_, answer) => {
      answer.body = '{'.repeat(12_000_000);
    },
  ],
  [
    'JSON that ends too early',
    'capability',
    'truncated-json',
    (_, answer) => {
      answer.body = answer.body.slice(0, 100);
    },
  ],
  [
    'no JSON',
    'capability',
    'not-json',
    (_, answer) => {
      answer.body = 'all well';
    },
  ],
  [
    'JSON nested without end',
    'capability',
    'not-json',
    (_, answer) => {
      answer.body = `${'['.repeat(500_000)}`;
    },
  ],
  [
    'nothing',
    'capability',
    'empty-answer',
    (_, answer) => {
      answer.body = '';
    },
  ],
  [
    'another resource',
    'capability',
    'wrong-resource',
    (_, answer) => {
      answer.body = '{"resourceType":"Patient"}';
    },
  ],
  [
    'another version of FHIR',
    'capability',
    'wrong-version',
    (_, answer) => {
      answer.body = answer.body.replace('4.0.1', '3.0.2');
    },
  ],
  [
    'a login page',
    'capability',
    'not-authorised',
    (_, answer) => {
      answer.status = 401;
    },
  ],
  [
    'a fault of its own',
    'store',
    'server-fault',
    ({ body }, answer) => {
      if (isTransaction(body)) answer.status = 500;
    },
  ],
  [
    'ids other than those asked for',
    'store',
    'changed-ids',
    ({ body }, answer) => {
      if (isTransaction(body)) answer.body = answer.body.replaceAll('Patient/', 'Patient/new-');
    },
  ],
  [
    'no extensions',
    'read-back',
    'dropped-extension',
    ({ method, path }, answer) => {
      if (method !== 'GET' || !path.startsWith('Observation/')) return;
      answer.body = JSON.stringify(JSON.parse(answer.body), (property, value) =>
        property === 'extension' ? undefined : value,
      );
    },
  ],
  [
    'no places',
    'read-back',
    'dropped-content',
    ({ method, path }, answer) => {
      if (method !== 'GET' || !path.startsWith('Observation/')) return;
      answer.body = JSON.stringify(JSON.parse(answer.body), (property, value) =>
        property === 'bodySite' ? undefined : value,
      );
    },
  ],
  [
    'a figure without its precision',
    'read-back',
    'changed-content',
    (_, answer) => {
      answer.body = answer.body.replaceAll('"value":4.0', '"value":4');
    },
  ],
  [
    'no notes',
    'read-back',
    'changed-exam',
    ({ method, path }, answer) => {
      if (method !== 'GET' || !path.startsWith('Observation/')) return;
      answer.body = answer.body.replaceAll('Größe', 'Gr??e');
    },
  ],
  [
    'a reference to someone else',
    'read-back',
    'changed-reference',
    ({ method, path }, answer) => {
      if (method === 'GET' && path.startsWith('DiagnosticReport/')) {
        answer.body = answer.body.replace(/"Patient\/[^"]+"/, '"Patient/someone-else"');
      }
    },
  ],
  [
    'nothing found',
    'search',
    'not-found',
    ({ path }, answer) => {
      if (path.startsWith('Observation?')) {
        answer.body = '{"resourceType":"Bundle","type":"searchset","total":0}';
      }
    },
  ],
  [
    'everything, whatever is searched',
    'search',
    'found-too-much',
    ({ path }, answer) => {
      if (path.includes('date=2031-04-19')) {
        answer.body =
          '{"resourceType":"Bundle","type":"searchset","entry":[{"resource":{"resourceType":"DiagnosticReport","id":"x"}}]}';
      }
    },
  ],
  [
    'a next page on another host',
    'search',
    'redirect-to-other-host',
    ({ path }, answer) => {
      if (!path.includes('?')) return;
      answer.body =
        '{"resourceType":"Bundle","type":"searchset","link":[{"relation":"next","url":"http://192.0.2.1/fhir?page=2"}]}';
    },
  ],
  [
    'pages without end',
    'search',
    'found-too-much',
    ({ path, headers }, answer) => {
      if (!path.startsWith('Observation?')) return;
      const url = `http://${headers['host']}/fhir/Observation?more=1`;
      answer.body = `{"resourceType":"Bundle","type":"searchset","link":[{"relation":"next","url":"${url}"}]}`;
    },
  ],
  [
    'a version that never changes',
    'update',
    'same-version',
    ({ body }, answer) => {
      if (isTransaction(body)) answer.body = answer.body.replace(/_history\/\d+/g, '_history/1');
    },
  ],
];

/** What a server may do, the step that tells it, and the name in the report. */
export const ownWays: readonly Case[] = [
  [
    'that declares no search by code',
    'search',
    'not-declared',
    ({ path }, answer) => {
      if (path.startsWith('metadata'))
        answer.body = answer.body.replaceAll('"code","type"', '"x","type"');
    },
  ],
  [
    'that has one version and one format, whatever is asked for',
    'negotiation',
    'ignored-content-type',
    ({ path, headers }, answer) => {
      if (!path.startsWith('metadata') || answer.status !== 406) return;
      const accept = String(headers['accept']);
      if (!accept.includes('xml') && !path.includes('xml')) return;
      answer.status = 200;
      answer.headers = { 'content-type': 'application/fhir+json' };
      answer.body = '{"resourceType":"CapabilityStatement"}';
    },
  ],
  [
    'that makes a version of whatever is sent',
    're-send',
    'new-version',
    (() => {
      let sent = 0;
      return ({ body }, answer) => {
        if (!isTransaction(body)) return;
        sent += 1;
        answer.body = answer.body.replace(/_history\/\d+/g, `_history/${sent}`);
      };
    })(),
  ],
  [
    'that finds what it stored only when it is asked again',
    'search',
    'found-late',
    (() => {
      let asked = 0;
      return ({ path }, answer) => {
        if (!path.startsWith('DiagnosticReport?')) return;
        asked += 1;
        if (asked > 1) return;
        answer.body = '{"resourceType":"Bundle","type":"searchset","total":0}';
      };
    })(),
  ],
];
