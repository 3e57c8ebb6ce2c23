import { writeFileSync } from 'node:fs';
import { askExamples, exampleVerdictsFile, exampleVerdictsText } from './example-verdicts.ts';

// tsx tests/reference/record-examples.ts: asks HL7's validator about every published example and
// writes verdicts/examples.json, to which tests/published holds this library without Java.
writeFileSync(exampleVerdictsFile, exampleVerdictsText(await askExamples()));
