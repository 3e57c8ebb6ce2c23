import { append } from '../../data/append.ts';
import { dataFaults, type Fault, type JsonObject, type Plant } from './fault.ts';
import {
  every,
  having,
  inOne,
  isObject,
  resources,
  setting,
  typeHaving,
  without,
} from './place.ts';
import { cardinality, invariant, section } from './rules.ts';

const documentRule = section('documents', 'documents.html#content');

/** Faults against the rules of documents; they leave other bundles alone. */
export const documentFaults: readonly Fault[] = dataFaults('document', [
  {
    id: 'document-without-identifier',
    title: 'a document without identifier',
    rule: invariant('bdl-9', 'Bundle'),
    code: 'invariant',
    plant: inDocument(without(root, 'identifier')),
  },
  {
    id: 'document-identifier-without-system',
    title: 'the identifier of a document says no system',
    rule: invariant('bdl-9', 'Bundle'),
    code: 'invariant',
    plant: inDocument(setting(root, 'identifier', { value: 'D-1' })),
  },
  {
    id: 'document-identifier-without-value',
    title: 'the identifier of a document says no value',
    rule: invariant('bdl-9', 'Bundle'),
    code: 'invariant',
    plant: inDocument(
      setting(root, 'identifier', { system: 'https://harbour-clinic.example/documents' }),
    ),
  },
  {
    id: 'document-without-timestamp',
    title: 'a document without time',
    rule: invariant('bdl-10', 'Bundle'),
    code: 'invariant',
    plant: inDocument(without(root, 'timestamp')),
  },
  {
    id: 'composition-not-first',
    title: 'a document does not begin with its composition',
    rule: invariant('bdl-11', 'Bundle'),
    code: 'invariant',
    plant: inDocument((bundle) => {
      const list = bundle['entry'];
      if (!Array.isArray(list) || list.length < 2) return undefined;
      append(list, list.splice(0, 1));
      return ['entry', 0];
    }),
  },
  {
    id: 'document-without-composition',
    title: 'a document has no composition',
    rule: invariant('bdl-11', 'Bundle'),
    code: 'invariant',
    plant: inDocument((bundle) => {
      const list = bundle['entry'];
      if (!Array.isArray(list) || list.length < 2) return undefined;
      list.shift();
      return ['entry', 0];
    }),
  },
  {
    id: 'composition-subject-missing',
    title: 'the subject of a document is not in it',
    rule: documentRule,
    code: 'not-found',
    plant: inDocument((bundle, random) =>
      inOne(resources(bundle, 'Composition'), random, (object) => {
        const before = object['subject'];
        const nobody = { reference: 'urn:uuid:0c1e2f3a-4b5c-4d6e-8f70-8192a3b4c5d6' };
        object['subject'] = Array.isArray(before) ? [nobody] : nobody;
        return ['subject'];
      }),
    ),
  },
  {
    id: 'section-entry-missing',
    title: 'a section names an entry that is not in the document',
    rule: documentRule,
    code: 'not-found',
    plant: inDocument((bundle, random) =>
      inOne(having(every('section')(bundle), 'entry'), random, (object) => {
        object['entry'] = [{ reference: 'urn:uuid:0c1e2f3a-4b5c-4d6e-8f70-8192a3b4c5d6' }];
        return ['entry', 0];
      }),
    ),
  },
  {
    id: 'entry-not-reached',
    title: 'a document holds a resource that nothing in it leads to',
    rule: documentRule,
    code: 'invalid',
    plant: inDocument((bundle) => {
      const list = bundle['entry'];
      if (!Array.isArray(list)) return undefined;
      const id = '6f9619ff-8b86-4d11-b42d-00c04fc964ff';
      list.push({
        fullUrl: `urn:uuid:${id}`,
        resource: { resourceType: 'Basic', id, code: { text: 'remark of the clinic' } },
      });
      return ['entry', list.length - 1];
    }),
  },
  {
    id: 'attester-without-mode',
    title: 'somebody attests a document in no way',
    rule: cardinality('Composition.attester.mode'),
    code: 'required',
    plant: setting(typeHaving('Composition', 'title'), 'attester', [
      { time: '2031-04-17T10:20:00+02:00' },
    ]),
  },
  {
    id: 'section-text-blank',
    title: 'the text of a section is blank',
    rule: invariant('txt-2', 'Narrative'),
    code: 'invariant',
    plant: (bundle, random) =>
      inOne(having(every('section')(bundle), 'text'), random, (object) => {
        const text = object['text'];
        if (!isObject(text)) return undefined;
        text['div'] = '<div xmlns="http://www.w3.org/1999/xhtml"> </div>';
        return ['text', 'div'];
      }),
  },
]);

function root(bundle: JsonObject): { object: JsonObject; path: [] }[] {
  return [{ object: bundle, path: [] }];
}

function inDocument(plant: Plant): Plant {
  return (bundle, random) => (bundle['type'] === 'document' ? plant(bundle, random) : undefined);
}
