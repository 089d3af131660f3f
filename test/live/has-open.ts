import { readdirSync, readlinkSync } from 'node:fs';

/** Whether a process has this file or device open. */
export function hasOpen(pid: number, path: string): boolean {
  const folder = `/proc/${pid}/fd`;
  return readdirSync(folder).some((fd) => {
    try {
      return readlinkSync(`${folder}/${fd}`) === path;
    } catch {
      // Closed since the folder was listed.
      return false;
    }
  });
}
