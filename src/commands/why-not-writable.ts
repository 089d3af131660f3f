import { constants } from 'node:fs';
import { access, stat } from 'node:fs/promises';
import { dirname } from 'node:path';

/** The two questions to the file system. */
interface FolderPorts {
  stat(path: string): Promise<{ isDirectory(): boolean }>;
  access(path: string, mode: number): Promise<void>;
}

/**
 * Why a folder cannot be written, or made where it does not exist yet; null where it can. Nothing is made.
 */
export async function whyNotWritable(
  folder: string,
  ports: FolderPorts = { stat, access },
): Promise<string | null> {
  try {
    if (!(await ports.stat(folder)).isDirectory()) return 'it is not a folder';
    await ports.access(folder, constants.R_OK | constants.W_OK | constants.X_OK);
    return null;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOTDIR') return 'a part of its path is not a folder';
    if (code !== 'ENOENT') return code === 'EROFS' ? 'it is read-only' : 'it is not writable';
    const parent = dirname(folder);
    if (parent === folder) return 'there is no such drive';
    return (await whyNotWritable(parent, ports)) === null ? null : 'it cannot be made there';
  }
}
