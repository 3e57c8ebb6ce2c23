import { exportJWK, generateKeyPair } from 'jose';
import {
  finishExamOrThrow,
  normal,
  orThrow,
  signExam,
  startExam,
  toBundleOrThrow,
} from '../../src/index.ts';
import { htmlForm } from '../../src/report/index.ts';
import { contentToSign, verifySignatures } from '../../src/sign/index.ts';
import { jwsVerifier, signDetached } from '../../src/sign/jws.ts';

let draft = startExam({
  id: 'quay-2025-19',
  subject: { reference: 'Patient/419' },
  examiners: [{ key: 'nurse' }],
  performed: { start: '2025-05-06T08:00:00Z' },
  recorded: '2025-05-06T08:10:00Z',
  protocol: { id: 'skin-lesion', version: '1.0.0' },
});
draft = normal(draft, [{ region: 'forehead', side: 'both', methods: ['inspection'] }]);
const at = '2025-05-06T08:30:00Z';
const exam = orThrow('sign', signExam(finishExamOrThrow(draft, 'draft'), { by: 'nurse', at }));

// The page of this library and a PDF of yours, in the report and as a document of the chart.
const pdf = { contentType: 'application/pdf', content: new Uint8Array([37, 80, 68, 70]) };
const filed = toBundleOrThrow(exam, {
  detail: 'report',
  presentedForms: (one) => [...htmlForm()(one), pdf],
});
console.log(filed.entry?.map(({ resource }) => resource?.resourceType).join(' '));

// Signed by a key of the nurse, here a new one, and verified as whoever receives it does.
const { privateKey, publicKey } = await generateKeyPair('ES256', { extractable: true });
const content = orThrow('write what is signed', contentToSign(toBundleOrThrow(exam)));
const made = await signDetached(content, { ...(await exportJWK(privateKey)), alg: 'ES256' }, at);
const signatures = [{ version: 1, purpose: 'author', when: at, ...made }] as const;
const record = toBundleOrThrow(exam, { signatures });
const key = { ...(await exportJWK(publicKey)), alg: 'ES256' };
console.log(
  (
    await verifySignatures(
      record,
      jwsVerifier(() => key),
    )
  ).ok,
);
