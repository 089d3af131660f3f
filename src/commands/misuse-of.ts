import { Problem } from '../problem.ts';

/** Says what is wrong in the usage of one command (exit code 2); its help is where to look unless `next` says more. */
export function misuseOf(command: string): (what: string, next?: string) => Problem {
  return (what, next = `See \`ebbline ${command} --help\`.`) =>
    new Problem(what, { where: command, next, exitCode: 2 });
}
