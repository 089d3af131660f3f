import { describe, expect, test } from 'vitest';
import { SpareTurns } from '../../src/commands/spare-turns.ts';
import type { InPieces } from '../../src/score/in-pieces.ts';

function bench() {
  const done: string[] = [];
  function* work(name: string, pieces: number): InPieces<void> {
    for (let piece = 1; piece <= pieces; piece++) {
      done.push(`${name}${piece}`);
      if (piece < pieces) yield;
    }
  }
  return { turns: new SpareTurns(), done, work };
}

describe('spare turns', () => {
  test('take a piece each, one work after the other', () => {
    const { turns, done, work } = bench();
    turns.add(work('a', 2));
    turns.add(work('b', 1));
    turns.take(false);
    expect(done).toEqual(['a1']);
    turns.take(false);
    turns.take(false);
    turns.take(false);
    expect(done).toEqual(['a1', 'a2', 'b1']);
  });

  test('rehearse only in calm, and when nothing is due', () => {
    const { turns, done, work } = bench();
    turns.rehearse(work('rehearsal', 2));
    turns.add(work('due', 1));
    for (const isCalm of [true, false, true, false, true, true]) turns.take(isCalm);
    expect(done).toEqual(['due1', 'rehearsal1', 'rehearsal2']);
  });

  test('finish what is due and leave the rehearsal', () => {
    const { turns, done, work } = bench();
    turns.rehearse(work('rehearsal', 1));
    turns.add(work('a', 3));
    turns.add(work('b', 2));
    turns.take(true);
    turns.finish();
    turns.finish();
    expect(done).toEqual(['a1', 'a2', 'a3', 'b1', 'b2']);
  });

  test('do not try again what has failed, and go on with the rest', () => {
    const { turns, done, work } = bench();
    turns.add(
      (function* fail(): InPieces<void> {
        yield;
        throw new Error('disk full');
      })(),
    );
    turns.add(work('a', 1));
    turns.take(false);
    expect(() => turns.take(false)).toThrow('disk full');
    turns.take(false);
    expect(done).toEqual(['a1']);
  });
});
