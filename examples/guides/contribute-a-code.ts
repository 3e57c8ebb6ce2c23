import { codesFromCsv } from '../../src/convert/code-map/index.ts';
import { issueText } from '../../src/index.ts';

const { value, issues } = codesFromCsv(`source,code,system,target,relation
findings,naevus,https://harbour.example/codes,M7,equivalent
`);
for (const issue of issues) console.log(issueText(issue));
console.log(value?.entries.get('findings|naevus')?.codings[0]?.code);
