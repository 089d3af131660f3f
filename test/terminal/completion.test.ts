import { execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { stripVTControlCharacters } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const MAIN = new URL('../../dist/bin/ebbline.js', import.meta.url).pathname;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline-shells-'));
  chmodSync(MAIN, 0o755);
  symlinkSync(MAIN, join(folder, 'ebbline'));
  writeFileSync(join(folder, 'mine.yaml'), '');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const shell = (program: string, ...args: string[]): string =>
  execFileSync(program, args, {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, PATH: `${folder}${delimiter}${process.env.PATH}`, HOME: folder },
  });

const BASH_TAB = [
  'source <(ebbline completion bash)',
  'COMP_LINE=$1; COMP_POINT=$' + '{#1}',
  '_ebbline ebbline; printf "%s\\n" "$' + '{COMPREPLY[@]}"',
].join('\n');

/** Calls the function that Bash would call for a tab, with the variables of its manual's "Programmable Completion". */
const byBash = (line: string): string[] =>
  shell('bash', '--norc', '-c', BASH_TAB, 'bash', line).trim().split('\n');

const byFish = (line: string): string[] =>
  shell('fish', '--no-config', '-c', 'ebbline completion fish | source; complete -C $argv[1]', line)
    .trim()
    .split('\n')
    .map((reply) => reply.split('\t')[0] ?? '');

/** Zsh completes at a terminal only: it gets one of its own. */
const byZsh = (line: string, awaited: string): string => {
  const said = shell(
    'zsh',
    '-f',
    '-c',
    [
      'zmodload zsh/zpty; zpty z zsh -f -i',
      `zpty -w z 'autoload -Uz compinit; compinit -u; source <(ebbline completion zsh); bindkey "^I" complete-word; PS1=""; print rea""dy'`,
      'said=""; until [[ $said == *ready* ]]; do zpty -r z line && said+=$line; done',
      `zpty -w -n z "$1"$'\\t'; said=""`,
      'for i in {1..80}; do while zpty -r -t z line; do said+=$line; done',
      '[[ $said == *"$2"* ]] && break; sleep .25; done; print -r -- $said',
    ].join('\n'),
    'zsh',
    line,
    awaited,
  );
  return stripVTControlCharacters(said).replaceAll(/[^\P{Cc}\n]/gu, '');
};

describe('a tab', () => {
  test.each([
    ['ebbline drill --headl', ['--headless']],
    ['ebbline drill --source virtual:c', ['club']],
    ['ebbline drill --units=', ['metric', 'imperial']],
    ['ebbline car show proto', ['prototype']],
    ['ebbline target check m', ['mine.yaml']],
    ['ebbline help ca', ['cautions', 'car']],
    ['ebbline help json event s', ['show']],
  ])('in bash after %j: %j', (line, expected) => {
    expect(byBash(line)).toEqual(expected);
  });

  test.each([
    ['ebbline drill --headl', ['--headless']],
    ['ebbline drill --source virtual:c', ['virtual:club']],
    ['ebbline car show proto', ['prototype']],
    ['ebbline target check m', ['mine.yaml']],
    ['ebbline help json event s', ['show']],
  ])('in fish after %j: %j', (line, expected) => {
    expect(byFish(line)).toEqual(expected);
  });

  test.each([
    ['ebbline drill --headl', 'ess', /drill --headless/],
    ['ebbline drill --source virtual:c', 'lub', /virtual:club/],
    ['ebbline help json event s', 'how', /event show/],
    ['ebbline rig ', 'setup', /check +-- judge the rig/],
  ])('in zsh after %j', (line, awaited, expected) => {
    expect(byZsh(line, awaited)).toMatch(expected);
  });
});
