import { describe } from 'vitest';
import { runCases } from '../syntax-cases.ts';
import { cdaSuite } from './suite.ts';

describe('CDA to exams', () => {
  runCases(cdaSuite);
});
