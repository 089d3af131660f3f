import { readdirSync, readFileSync } from 'node:fs';
import type { CarFile } from '../../src/car/car-file.ts';
import { readCar } from '../profile/read-sound.ts';

const FOLDER = new URL('../../profiles/cars/', import.meta.url);

export const CAR_FILE_NAMES: readonly string[] = readdirSync(FOLDER);

export function carText(fileName: string): string {
  return readFileSync(new URL(fileName, FOLDER), 'utf8');
}

/** A bundled car file by its id. */
export function bundledCar(id: string): CarFile {
  return readCar(carText(`${id}.yaml`), `${id}.yaml`);
}
