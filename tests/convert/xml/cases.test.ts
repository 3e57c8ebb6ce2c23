import { describe } from 'vitest';
import { runCases } from '../syntax-cases.ts';
import { xmlSuite } from './suite.ts';

describe('XML to exams', () => {
  runCases(xmlSuite);
});
