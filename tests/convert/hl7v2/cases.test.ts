import { describe } from 'vitest';
import { runCases } from '../syntax-cases.ts';
import { hl7v2Suite } from './suite.ts';

describe('HL7 v2 to exams', () => {
  runCases(hl7v2Suite);
});
