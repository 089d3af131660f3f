import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { eventWarnings } from '../../../src/drill/event/event-warnings.ts';
import { readEvent } from '../../profile/read-sound.ts';

const FOLDER = new URL('../../../profiles/events/', import.meta.url);
const text = (file: string): string => readFileSync(new URL(file, FOLDER), 'utf8');

test('a test day of eight zones and a race weekend of thirteen', () => {
  const files = readdirSync(FOLDER);
  expect(files.map((file) => readEvent(text(file), file).zones.length)).toEqual([13, 8]);
});

describe.each(readdirSync(FOLDER))('%s', (file) => {
  test('names its schema, and says what it is for', () => {
    const [first, second, third] = text(file).split('\n');
    expect(first).toBe('# yaml-language-server: $schema=../schema/event.schema.json');
    expect(second).toBe('#');
    expect(third).toMatch(/^# \w/);
    const event = readEvent(text(file), file);
    expect(event.advice).not.toBeNull();
    expect(eventWarnings(event)).toEqual([]);
  });
});
