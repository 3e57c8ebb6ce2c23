// The installed package in a runtime other than Node: run where it is installed; prints what it did.
import { fromBundle, parseExamOrThrow, toBundleOrThrow, toJson } from 'face-neck-fhir';
import { fromCsv } from 'face-neck-fhir/convert/csv';
import { toHtml } from 'face-neck-fhir/report';
import { sampleExam, sampleMapping, writeExams } from 'face-neck-fhir/testing';
import { validateBundle as validateR4 } from 'face-neck-fhir/validate/r4';
import { validateBundle as validateR5 } from 'face-neck-fhir/validate/r5';
import { fromXml, toXml } from 'face-neck-fhir/xml';

const again = (given) => toJson(toBundleOrThrow(parseExamOrThrow(fromBundle(given).value)));
const exam = parseExamOrThrow(sampleExam(1));
const bundle = toBundleOrThrow(exam);
const told = {
  r4: validateR4(bundle).valid,
  r5: validateR5(toBundleOrThrow(exam, { fhirVersion: 'R5' })).valid,
  refused: validateR4({ resourceType: 'Bundle' }).valid,
  readBack: again(bundle) === toJson(bundle),
  xml: again(fromXml(toXml(bundle).value ?? '').value) === toJson(bundle),
  csv: fromCsv(writeExams([exam], 'csv'), sampleMapping('csv')).exams.length,
  html: toHtml(exam).includes('<html'),
};
console.log(JSON.stringify(told));
const { refused, csv, ...others } = told;
if (refused || csv !== 1 || Object.values(others).includes(false)) throw new Error('not as in Node');
