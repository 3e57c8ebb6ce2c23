import { jsonForm } from './element-table.ts';

const decimalForm = /^-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?$/;
const integerForm = /^-?(?:0|[1-9]\d*)$/;

/** The value of a primitive as JSON has it; undefined where the text is not of the form of its type. */
export function primitiveValue(text: string, type: string): string | number | boolean | undefined {
  switch (jsonForm(type)) {
    case 'boolean':
      return text === 'true' || text === 'false' ? text === 'true' : undefined;
    case 'number': {
      const form = type === 'decimal' ? decimalForm : integerForm;
      return form.test(text) && Number.isFinite(Number(text)) ? Number(text) : undefined;
    }
    case 'string':
      return text;
  }
}
