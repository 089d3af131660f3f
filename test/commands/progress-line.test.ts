import { expect, test } from 'vitest';
import { ProgressLine, progressText } from '../../src/commands/progress-line.ts';

test('says count, rate and time left', () => {
  expect(progressText(0, 1000, 0, 'reps')).toBe('0 of 1000 reps');
  expect(progressText(120, 1000, 3, 'reps')).toBe('120 of 1000 reps, 40 per s, 22 s left');
  expect(progressText(3, 4, 2, 'reps')).toBe('3 of 4 reps, 1.5 per s, 1 s left');
});

test('draws at most ten times a second on a terminal, and nothing elsewhere', () => {
  const drawn = (isTerminal: boolean): string[] => {
    const [written, now] = [[] as string[], { ms: 0 }];
    const line = new ProgressLine(
      { write: (text) => void written.push(text), isTerminal, columns: 20, nowMs: () => now.ms },
      'reps',
      100,
    );
    for (let done = 1; done <= 100; done++) {
      now.ms += 10;
      line.show(done);
    }
    line.end();
    return written;
  };
  const lines = drawn(true);
  expect(lines).toHaveLength(11);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the terminal's own code for an empty line
  for (const line of lines) expect(line.replace(/^\r\u001b\[K/, '').length).toBeLessThan(20);
  expect(drawn(false)).toEqual([]);
});
