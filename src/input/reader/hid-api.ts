/** One top-level collection of one interface of one device, as the system lists it. Strings are the device's own. */
export interface HidRecord {
  readonly vendorId: number;
  readonly productId: number;
  readonly path?: string | undefined;
  readonly serialNumber?: string | undefined;
  readonly manufacturer?: string | undefined;
  readonly product?: string | undefined;
  /** -1 where the device has no interfaces. */
  readonly interface: number;
  readonly usagePage?: number | undefined;
  readonly usage?: number | undefined;
}

/** An open device. Reports flow from the moment someone listens to `data`. */
export interface HidHandle {
  /** A report as the device sent it: with its id in front where reports are numbered. */
  on(event: 'data', listener: (report: Uint8Array) => void): unknown;
  /** Reading has stopped for good, in words or as an Error. */
  on(event: 'error', listener: (reason: unknown) => void): unknown;
  /** Once only. */
  close(): Promise<void>;
}

/** What this program needs of a HID library. */
export interface HidApi {
  records(): Promise<readonly HidRecord[]>;
  /** Rejects with the library's words where the device cannot be opened. */
  open(path: string): Promise<HidHandle>;
}

/** A module that can stand in for the HID library; it is loaded by address, also inside the reader's worker. */
export interface HidModule {
  /** @throws Problem where the library does not load. */
  loadHid(): Promise<HidApi>;
}
