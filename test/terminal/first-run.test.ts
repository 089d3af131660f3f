import { expect, test } from 'vitest';
import { programInTerminal } from './program.ts';

const ebbline = programInTerminal();

/** A new user who only ever presses Enter when asked; the simulated driver moves the pedals and the wheel. */
test('setting up takes three movements and a button on the virtual rig, and folds its words at 80 columns', async () => {
  const open = await ebbline(['rig', 'setup', '--source', 'virtual', '--short'], {
    cols: 80,
    rows: 40,
  });
  const start = await open.waitFor('Touch nothing for two seconds');
  expect(start).toContain('stop at pain');
  expect(start).toMatch(/^ {2}brake {5}Brake of Virtual pedals$/m);
  const steps: readonly (string | RegExp)[] = [
    'Brake: press it once',
    /Found Brake[\s\S]*does this follow your foot/,
    'Throttle: press it once',
    /Found Accelerator[\s\S]*does this follow your foot/,
    'Wheel: from straight ahead',
    'How many degrees from stop to stop? [900]',
    'does this follow your hands? [Y/n]',
    'Press the button to start a rep or a block, and let it go.',
  ];
  // Reports at rest have to come before the first Enter.
  await new Promise((done) => setTimeout(done, 1000));
  for (const step of steps) {
    await open.send('Enter');
    await open.waitFor(step);
    if (/press it once|Wheel/.test(String(step)))
      await open.waitFor((screen) => /has done it\. Enter goes on\.\s*$/.test(screen));
  }
  // The button is pressed once, and nothing for the next job.
  await open.waitFor(/Button 4 of Virtual wheel\s+Press the button to repeat a rep/);
  await open.waitFor('Ready.');
  await open.waitFor('Tried out: nothing was saved.');
  expect(await open.exitCode()).toBe(0);
});

test('Ctrl-C while setting up ends it', async () => {
  const open = await ebbline(['rig', 'setup', '--source', 'virtual']);
  await open.waitFor('Which foot brakes?');
  await open.send('C-c');
  expect(await open.exitCode()).toBe(130);
});
