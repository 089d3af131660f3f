import { GENERIC_DESKTOP_USAGES } from './generic-desktop-usages.ts';
import { SIMULATION_USAGES } from './simulation-usages.ts';
import { USAGE_PAGES } from './usage-pages.ts';

const BUTTON_PAGE = 0x09;
const FIRST_VENDOR_PAGE = 0xff00;

const NAMED_USAGES: Readonly<Record<number, Readonly<Record<number, string>>>> = {
  1: GENERIC_DESKTOP_USAGES,
  2: SIMULATION_USAGES,
};

/**
 * The usage's name in the HID Usage Tables: `Brake`, `Rz`, `Button 3`. Where this program carries no list of a page's
 * usages, the page's name with the id: `Consumer 0xe9`, `Vendor-defined 0xff00 0x21`.
 */
export function usageName(page: number, id: number): string {
  if (page === BUTTON_PAGE) return `Button ${id}`;
  return NAMED_USAGES[page]?.[id] ?? `${usagePageName(page)} ${hexNumber(id)}`;
}

/** The page's name in the HID Usage Tables; the number is part of it where the page has none of its own. */
export function usagePageName(page: number): string {
  const kind = page >= FIRST_VENDOR_PAGE ? 'Vendor-defined' : 'Reserved page';
  return USAGE_PAGES[page] ?? `${kind} ${hexNumber(page)}`;
}

function hexNumber(value: number): string {
  return `0x${value.toString(16).padStart(2, '0')}`;
}
