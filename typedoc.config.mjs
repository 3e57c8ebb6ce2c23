import { readFileSync } from 'node:fs';
import { OptionDefaults } from 'typedoc';

const { exports } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

/** The API reference: a module for each entry of the package, as package.json exports them. */
export default {
  name: 'face-neck-fhir',
  tsconfig: 'tsconfig.json',
  entryPoints: Object.values(exports).flatMap(({ types }) =>
    types === undefined ? [] : [types.replace('./dist/', 'src/').replace(/\.d\.ts$/, '.ts')],
  ),
  out: 'output/docs',
  readme: 'none',
  projectDocuments: ['examples/guides/*.md'],
  // Of the guides, besides those that typedoc knows by itself.
  highlightLanguages: [...OptionDefaults.highlightLanguages, 'sql'],
  disableSources: true,
  sort: ['source-order'],
  // Tags that the JSON Schemas are made from.
  blockTags: [
    ...OptionDefaults.blockTags,
    ...['@minItems', '@maxItems', '@minLength', '@maxLength', '@pattern', '@minimum', '@maximum'],
    ...['@asType'],
  ],
  // Types that are parts of public ones are told where they stand; not each is a public name.
  validation: { notExported: false, invalidLink: true, rewrittenLink: true },
  treatWarningsAsErrors: true,
};
