import { readdirSync, readFileSync } from 'node:fs';

/** Clock ticks a second in which Linux tells processor times to programs (USER_HZ). */
const TICKS_PER_S = 100;
/** Fields of /proc/PID/stat counted from the third, which follows the name in brackets: proc_pid_stat(5). */
const USER_TICKS = 11;
const SYSTEM_TICKS = 12;

/** Time that processors worked for a process so far, all its threads and the ended ones included, to 10 ms. */
export function cpuMs(pid: number): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1)!.split(' ');
  return ((Number(fields[USER_TICKS]) + Number(fields[SYSTEM_TICKS])) * 1000) / TICKS_PER_S;
}

/** The same without ended threads, to a microsecond. */
export function fineCpuMs(pid: number): number {
  const tasks = readdirSync(`/proc/${pid}/task`);
  const ns = tasks.map((task) =>
    Number(readFileSync(`/proc/${pid}/task/${task}/schedstat`, 'utf8').split(' ')[0]),
  );
  return ns.reduce((sum, one) => sum + one, 0) / 1e6;
}
