// Writes docs/errors.md from the list of codes and one example each, with what the program really answers.
import type { InputError, Reading } from '../src/model/inputError.ts';
import { ERROR_CODES } from '../src/read/errorCodes.ts';
import { readScenario, readScenarioValue } from '../src/read/readScenario.ts';
import { ERROR_EXAMPLES, type ErrorExample } from './errorExamples.ts';

const MOST_SHOWN = 160;

const HEAD = `# Input errors

Everything that is wrong with a scenario or a plan is reported at once, sorted by place. An error is data:

| field | meaning |
| --- | --- |
| \`code\` | one of the words below |
| \`path\` | JSON Pointer (RFC 6901) into the input; empty for the whole |
| \`line\`, \`column\` | place in the text, counted from 1; absent when no text was read |
| \`says\` | what is wrong |
| \`doThis\` | what to do about it |

At most 200 errors are shown at once. Where the text itself is no YAML, the rest cannot be judged and is not. Each example
below is one change to the [whole scenario](scenario.md#a-whole-scenario), with the answer to it. Plans use the same codes.
`;

function outcomeOf(example: ErrorExample, good: string): Reading<unknown> {
  return 'value' in example ? readScenarioValue(example.value()) : readScenario(example.spoil(good));
}

/** The error an example is about. */
export function exampleError(example: ErrorExample, good: string): InputError | undefined {
  const outcome = outcomeOf(example, good);
  return outcome.ok ? undefined : outcome.errors.find(({ code }) => code === example.code);
}

function shortened(text: string): string {
  return text
    .split('\n')
    .map((line) => (line.length > MOST_SHOWN ? `${line.slice(0, MOST_SHOWN)} ...` : line))
    .join('\n');
}

function sectionOf(code: string, means: string, good: string): string {
  const example = ERROR_EXAMPLES.find((each) => each.code === code);
  const error = example === undefined ? undefined : exampleError(example, good);
  if (example === undefined || error === undefined) throw new Error(`no example gives ${code}`);
  return [
    '',
    `## ${code}`,
    '',
    means,
    '',
    '```yaml',
    shortened(example.shows),
    '```',
    '',
    '```text',
    error.says,
    error.doThis,
    '```',
    '',
  ].join('\n');
}

/** The whole page. `good` is the scenario of docs/scenario.md. */
export function errorsPage(good: string): string {
  return (
    HEAD +
    Object.entries(ERROR_CODES)
      .map(([code, means]) => sectionOf(code, means, good))
      .join('')
  );
}
