// Known holes in packages are told apart from a registry that does not answer. The answers have the form of npm's report, version 2.
import { expect, it } from 'vitest';
import { auditTold } from '../scripts/audit.mjs';

it('names each package with a known hole', () => {
  const vulnerabilities = { one: { name: 'one', severity: 'high', range: '<2.0.0', via: [] } };
  const answer = JSON.stringify({ auditReportVersion: 2, vulnerabilities });
  expect(auditTold(answer)).toEqual({
    known: ['one <2.0.0 (high)'],
    words: 'Holes are known: one <2.0.0 (high)',
  });
});

it('says that none are known', () => {
  expect(auditTold(JSON.stringify({ auditReportVersion: 2, vulnerabilities: {} })).known).toEqual([]);
});

it.each([
  ['', 'no answer'],
  ['null', 'no answer'],
  [JSON.stringify({ message: '405 Method Not Allowed', error: { summary: '' } }), '405 Method Not Allowed'],
])('takes %j for a registry that does not answer', (answer, words) => {
  expect(auditTold(answer)).toEqual({ known: null, words });
});
