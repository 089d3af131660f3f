import { describe, expect, test } from 'vitest';
import { noteAdd } from '../../src/commands/note-add.ts';
import { command as noteList } from '../../src/commands/note-list.ts';
import { PracticeLog } from '../../src/commands/practice-log.ts';
import { wordedNotes } from '../../src/commands/worded-notes.ts';
import type { FinishedRep } from '../../src/drill/drill-message.ts';
import { openHistory } from '../../src/history/open-history.ts';
import { Problem } from '../../src/problem.ts';
import { RAMP } from '../drill/drill-rig.ts';
import { addAll, aNote, aPractice, aRep, EVENING_MS } from '../history/fixtures.ts';
import { inFolder } from '../history/implementations.ts';
import { fakeContext } from './fake-context.ts';
import { runCommand } from './run-command.ts';

const AT = { utcMs: EVENING_MS + 600_000, zone: 'Europe/Berlin', offsetMin: 60 };

async function add(folder: string, text: string, values: Record<string, string> = {}) {
  const context = fakeContext(folder);
  const code = await noteAdd({ positionals: text === '' ? [] : [text], values }, context, AT);
  return { code, printed: context.printed() };
}

async function list(folder: string, corner?: string, json = true) {
  const context = fakeContext(folder);
  const positionals = corner === undefined ? [] : [corner];
  await noteList.run({ positionals, values: json ? { json: true } : {} }, context);
  return json ? JSON.parse(context.printed()).notes : context.printed();
}

async function refusal(work: Promise<unknown>): Promise<Problem> {
  const error = await work.then(
    () => null,
    (thrown: unknown) => thrown,
  );
  if (error instanceof Problem) return error;
  return expect.unreachable('it was taken');
}

describe('a note that may have been meant for a corner', () => {
  const warned = async (folder: string, ...words: readonly string[]): Promise<string> => {
    const { code, stderr } = await runCommand(['note', 'add', ...words, '--data-dir', folder]);
    expect(code).toBe(0);
    return stderr;
  };

  // edits by hand: a letter too few, two changed places, a space for the hyphen, and the apostrophe of the name
  test.each([
    [['kiln-harpin', 'ease over it'], 'kiln-hairpin', 'ease over it'],
    [['kiln-hairpin ease over it'], 'kiln-hairpin', 'ease over it'],
    [['koil-bedn ease', 'over it'], 'coil-bend', 'ease over it'],
    [['Kiln', 'hairpin', 'ease over it'], 'kiln-hairpin', 'ease over it'],
    [["Weaver's corner it's slow"], 'weavers-corner', "it'\\''s slow"],
  ])('%j is kept as text, and told with the command that names it', (words, corner, text) =>
    inFolder(async (folder) => {
      expect(await warned(folder, ...words)).toContain(`ebbline note add ${corner} '${text}'\n`);
      expect(await list(folder)).toMatchObject([{ corner: null, text: words.join(' ') }]);
    }),
  );

  test('is not told of other words, nor where the corner is named', () =>
    inFolder(async (folder) => {
      for (const words of [
        ['ease over the drain'],
        ['hairpin: brake late'],
        ['kiln-hairpin', 'ease'],
        ['kiln-harpin', '--corner', 'coil-bend'],
      ])
        expect(await warned(folder, ...words)).toBe('');
    }));
});

describe('note add', () => {
  test('keeps what was said, by the local day', () =>
    inFolder(async (folder) => {
      const values = { corner: 'kiln-hairpin', variant: 'qualifying', gear: '2' };
      expect(await add(folder, 'bump', values)).toEqual({
        code: 0,
        printed: 'Note 1 on kiln-hairpin is kept.\n',
      });
      expect(await list(folder)).toMatchObject([
        {
          text: 'bump',
          corner: 'kiln-hairpin',
          variant: 'qualifying',
          gear: 2,
          rep_id: null,
          driver: 'driver',
          local_date: '2026-11-25',
        },
      ]);
    }));

  test('takes a corner before the text, as other commands do, and is found with that corner', () =>
    inFolder(async (folder) => {
      const said = (...positionals: string[]) => {
        const context = fakeContext(folder);
        return noteAdd({ positionals, values: {} }, context, AT).then(() => context.printed());
      };
      expect(await said('kiln-hairpin', 'bump at 40 m')).toBe('Note 1 on kiln-hairpin is kept.\n');
      expect(await said('kiln-hairpin', 'ease', 'earlier')).toContain('on kiln-hairpin');
      expect(await said('kiln-hairpin is bumpy')).toBe('Note 3 is kept.\n');
      expect(await said('late', 'kiln-hairpin')).toBe('Note 4 is kept.\n');
      expect((await refusal(said('kiln-hairpin'))).message).toMatch(/no text/);
      expect(await list(folder, 'kiln-hairpin')).toMatchObject([
        { text: 'bump at 40 m', corner: 'kiln-hairpin' },
        { text: 'ease earlier', corner: 'kiln-hairpin' },
      ]);
    }));

  test('is not looked for on a corner that there is not, but on one whose sheet is gone', () =>
    inFolder(async (folder) => {
      expect((await refusal(list(folder, 'kiln-harpin'))).next).toMatch(/mean kiln-hairpin\?/);
      expect(await list(folder, 'kiln-hairpin', false)).toMatch(/^No notes on kiln-hairpin yet/);
      const history = openHistory(folder);
      history.addNote(aNote({ corner: 'gone', text: 'camber' }));
      history.close();
      expect(await list(folder, 'gone')).toMatchObject([{ text: 'camber' }]);
    }));

  test('of a rep takes its place from the last practice, and words replace the mark', () =>
    inFolder(async (folder) => {
      const history = openHistory(folder);
      addAll(history, [aRep({ number: 1, corner: 'old' })]);
      const later = history.startPractice(aPractice({ driver: 'Bo' }));
      const at = { ...AT, utcMs: AT.utcMs - 1 };
      const rep = history.addRep(later, aRep({ at, number: 1 }));
      history.addNote(aNote({ at, driver: 'Bo', text: '', gear: 3, repId: rep }));
      history.close();
      expect(await list(folder)).toMatchObject([{ text: '', gear: 3 }]);
      await add(folder, 'rear got light', { rep: '1' });
      expect(await list(folder)).toMatchObject([
        {
          text: 'rear got light',
          driver: 'Bo',
          car: 'prototype',
          corner: 'kiln-hairpin',
          variant: 'qualifying',
          gear: 3,
          rep_id: rep,
          rep_number: 1,
        },
      ]);
      expect((await refusal(list(folder, 'old'))).message).toMatch(/no corner "old"/);
    }));

  test('refuses what it cannot keep, and keeps nothing', () =>
    inFolder(async (folder) => {
      expect((await refusal(add(folder, ''))).message).toMatch(/no text/);
      expect((await refusal(add(folder, 'x'.repeat(501)))).message).toMatch(/longer than 500/);
      for (const gear of ['0', '2.5', 'two', '21', ''])
        expect((await refusal(add(folder, 'x', { gear }))).exitCode).toBe(2);
      const variant = add(folder, 'x', { corner: 'kiln-hairpin', variant: 'snow' });
      expect((await refusal(variant)).next).toMatch(/qualifying/);
      expect((await refusal(add(folder, 'x', { corner: 'no-such' }))).message).toMatch(/no-such/);
      expect((await refusal(add(folder, 'x', { rep: '4' }))).message).toMatch(/no rep 4/);
      expect(await list(folder)).toEqual([]);
    }));
});

test('the table shows text from outside without what steers a terminal', () =>
  inFolder(async (folder) => {
    const history = openHistory(folder);
    history.addNote(aNote({ driver: '\u202eKim', text: 'one\u001b[2J\u0007\ntwo {bold}' }));
    history.close();
    const table: string = await list(folder, undefined, false);
    expect(table).toContain('one[2Jtwo (bold)');
    expect(table.replaceAll('\n', '')).not.toMatch(/\p{Cc}|\p{Cf}/u);
    expect(table.split('\n')).toHaveLength(3);
  }));

test('a mark in a drill is kept with the gear the rep ended in, once for each rep', () =>
  inFolder((folder) => {
    const history = openHistory(folder);
    const { startedAt: _, ...start } = aPractice();
    const log = new PracticeLog(history, start, null, () => AT);
    const { record, outcome } = aRep();
    // The ramp goes from gear 4 down; one click of the left paddle leaves the third.
    const buttons = [
      { timeS: 0.002, control: 'left', pressed: true, action: 'downshift' as const },
    ];
    const rep: FinishedRep = {
      number: 1,
      place: 1,
      block: 1,
      phase: 'block',
      feedback: 'shown',
      target: RAMP,
      zone: null,
      order: 'blocked',
      targetChange: null,
      condition: null,
      rating: null,
      voided: null,
      record: { ...record, buttons },
      outcome,
    };
    log.mark(1);
    log.add(rep);
    log.mark(1);
    log.mark(1);
    const [stored] = [...history.reps({})];
    expect(history.notes({})).toEqual([
      {
        id: 1,
        at: AT,
        driver: 'Kim',
        text: '',
        car: null,
        corner: null,
        variant: null,
        gear: 3,
        repId: stored?.id,
      },
    ]);
    log.say(1, 'ease over the drain');
    log.say(2, 'no such rep');
    expect(history.notes({})[1]).toMatchObject({
      text: 'ease over the drain',
      gear: 3,
      repId: stored?.id,
    });
    expect(wordedNotes(history.notes({})).map(({ text }) => text)).toEqual(['ease over the drain']);
    history.close();
  }));
