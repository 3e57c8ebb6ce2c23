import { createHash } from 'node:crypto';
import type { DiagnosticReport, DocumentReference } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { examples } from '../../../examples/all-exams.ts';
import {
  type AnyBundle,
  type ExportOptions,
  toBundle,
  toBundleOrThrow,
} from '../../../src/index.ts';
import { fromBundle } from '../../../src/read/from-bundle.ts';
import { htmlForm } from '../../../src/report/index.ts';
import { clinic } from '../../clinic.ts';

const exam = examples.get('skin-lesion');
const broken = examples.get('broken-off');
if (exam === undefined || broken === undefined) throw new Error('no example');

const pdf = new Uint8Array([0x25, 0x50, 0x44, 0x46, 0x2d, 0xff, 0x00]);
const presentedForms: ExportOptions['presentedForms'] = (one) => [
  ...htmlForm()(one),
  { contentType: 'application/pdf', content: pdf, title: 'As printed' },
];

function only<T>(bundle: AnyBundle, type: string): T {
  const found = (bundle.entry ?? []).flatMap(({ resource }) =>
    resource?.resourceType === type ? [resource] : [],
  );
  expect(found).toHaveLength(1);
  return found[0] as T; // of the type that was asked for
}

describe('forms for people', () => {
  const bundle = toBundleOrThrow(exam, { presentedForms, documentReference: true });
  const report = only<DiagnosticReport>(bundle, 'DiagnosticReport');
  const filed = only<DocumentReference>(bundle, 'DocumentReference');

  it('have their length and their SHA-1, as node:crypto computes it', () => {
    const forms = report.presentedForm ?? [];
    expect(forms.map(({ contentType }) => contentType)).toEqual(['text/html', 'application/pdf']);
    for (const { data = '', size, hash } of forms) {
      const bytes = Buffer.from(data, 'base64');
      expect(size).toBe(bytes.length);
      expect(hash).toBe(createHash('sha1').update(bytes).digest('base64'));
    }
    expect(Buffer.from(forms[1]?.data ?? '', 'base64')).toEqual(Buffer.from(pdf));
  });

  it('stand as a document of the chart too: whose, by whom, of which report, of a published type', () => {
    expect(filed.content.map(({ attachment }) => attachment)).toEqual(report.presentedForm);
    expect(filed.subject).toEqual(report.subject);
    expect(filed.author?.length).toBe(exam.examiners.length);
    expect(filed.context?.related).toEqual([{ reference: `urn:uuid:${report.id}` }]);
    // ValueSet c80-doc-typecodes and ValueSet document-classcodes of FHIR R4.
    expect(filed.type?.coding).toEqual([
      { system: 'http://loinc.org', code: '34109-9', display: 'Note' },
    ]);
    expect(filed.category?.[0]?.coding?.[0]?.code).toBe('34109-9');
  });

  it.each(['R4', 'R4B', 'R5'] as const)('leave the exam as it is, %s', (fhirVersion) => {
    for (const one of [exam, broken]) {
      for (const bundleType of ['collection', 'transaction'] as const) {
        const filing = {
          documentType: { system: 'https://clinic.example/types', code: 'visit' },
          security: [{ system: 'https://clinic.example/labels', code: 'R' }],
        };
        const made = toBundleOrThrow(one, {
          ...clinic,
          fhirVersion,
          bundleType,
          presentedForms,
          documentReference: true,
          filing,
        });
        const { value, remainder } = fromBundle(made, { ...clinic, filing });
        expect(value).toEqual(one);
        expect(remainder).toEqual([]);
      }
    }
  });

  it('that were changed on the way are left over and not taken for the page', () => {
    const altered = JSON.parse(JSON.stringify(bundle));
    for (const { resource } of altered.entry) {
      if (resource.resourceType === 'DiagnosticReport') resource.presentedForm[1].data = 'JVBERi0=';
    }
    const { value, remainder } = fromBundle(altered);
    expect(value).toEqual(exam);
    expect(remainder.map(({ what }) => what)).toEqual(
      expect.arrayContaining(['DiagnosticReport.presentedForm', 'DocumentReference.content']),
    );
  });

  it('stand in no document bundle, and need a maker', () => {
    for (const options of [
      { presentedForms, documentReference: true, bundleType: 'document' },
      { documentReference: true },
    ] as const) {
      const { ok, issues } = toBundle(exam, options);
      expect({ ok, codes: issues.map(({ facts }) => facts.reason) }).toEqual({
        ok: false,
        codes: [options.presentedForms ? 'filed-document' : 'forms'],
      });
    }
  });
});
