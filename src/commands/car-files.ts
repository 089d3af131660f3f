import type { CarFile } from '../car/car-file.ts';
import { checkCar } from '../car/check-car.ts';
import { findProfile, type ProfileKind } from './profile-files.ts';

/** Car files: bundled in profiles/cars, own ones in `<data-dir>/cars`. */
export const CAR_FILES: ProfileKind<CarFile> = { noun: 'car', folder: 'cars', check: checkCar };

/** The car file that the user names by id or path. @throws Problem as `findProfile` does */
export function findCar(idOrPath: string, dataDir: string): Promise<CarFile> {
  return findProfile(CAR_FILES, idOrPath, dataDir);
}
