import { expect, test } from 'vitest';
import { FRAME_END, seenLevels } from './seen-levels.ts';

const SIZE = { cols: 40, rows: 4 };
const at = (atUs: number, text: string) => ({ atUs, bytes: Buffer.from(text) });
const frame = (percent: number) => `\x1b[2;1Hbrake    ██▍░░░  ${percent} %  throttle${FRAME_END}`;

test('a level is seen with the last byte of the first frame that shows it', () => {
  const [first, rest] = [frame(27).slice(0, 25), frame(27).slice(25)];
  const written = [at(50, frame(0)), at(120, first), at(130, rest), at(140, frame(27))];
  expect(seenLevels(written, SIZE, [{ atUs: 100, percent: 27 }])).toEqual([130]);
});

test('a frame that changes one digit shows the whole level', () => {
  const changed = `\x1b[2;18H4${FRAME_END}`;
  const written = [at(90, frame(27)), at(120, changed)];
  expect(seenLevels(written, SIZE, [{ atUs: 100, percent: 47 }])).toEqual([120]);
});

test('a level that was passed over between two frames was never seen', () => {
  const sent = [
    { atUs: 100, percent: 30 },
    { atUs: 110, percent: 40 },
  ];
  expect(seenLevels([at(120, frame(40))], SIZE, sent)).toEqual([null, 120]);
});

test('of equal levels the screen shows the last one that was sent before', () => {
  const sent = [
    { atUs: 100, percent: 30 },
    { atUs: 200, percent: 50 },
    { atUs: 300, percent: 30 },
    { atUs: 400, percent: 30 },
  ];
  const written = [at(210, frame(50)), at(310, frame(30))];
  expect(seenLevels(written, SIZE, sent)).toEqual([null, 210, 310, null]);
});

test('another screen than a drill shows no level', () => {
  const written = [at(120, `brake, % of full scale   30 %${FRAME_END}`)];
  expect(seenLevels(written, SIZE, [{ atUs: 100, percent: 30 }])).toEqual([null]);
});
